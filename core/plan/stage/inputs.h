// What every stage of make_plan starts from, and what several of them read out of it. A stage is a function that takes
// this and the earlier sections that it needs, returns its own section, and says what is to be said in Remarks.
#pragma once

#include "chain/ask/answer.h"
#include "plan/remarks.h"
#include "plan/settle/settled.h"
#include "transfer/transfer.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace riserun::plan {

/// How far: to the findings, which is all that a mend is checked by, or the whole plan with its mends checked.
enum class Upto : std::uint8_t { findings, end };

struct Inputs {
  const Catalog& catalog;
  const Job& job;          // as it was asked
  const Settled& settled;  // with nothing missing
  Upto upto = Upto::end;

  /// Ranges and limits are read by people; no finding hangs on them.
  transfer::Detail detail() const { return upto == Upto::end ? transfer::Detail::all : transfer::Detail::course; }
};

/// The key of a connection of the job, as messages have it: `connections[2].gap`.
std::string key_of(const Job& job, const JobConnection& connection, const char* key);

/// Trade name and measure of a part as a list prints it: "1 x 4 in nipple, black iron".
std::string part_title(const Catalog& catalog, PartId part);
/// The end of a pressure gauge's scale; nullopt: it is no gauge.
std::optional<GaugePressure> full_scale(const Catalog& catalog, PartId part);
/// What a relief valve is set to; nullopt: it is no relief valve.
std::optional<GaugePressure> relief_setting(const Catalog& catalog, PartId part);
/// A run of the job asks for a regulator, whose own range stands beside the key for it.
bool names_a_regulator(const Inputs& inputs);
/// The joint is made with a hose clamp.
bool is_clamped(const Catalog& catalog, const chain::RunJoint& joint);
/// End to end length of a straight part with two ports.
Length straight_length(const catalog::Part& part);

}  // namespace riserun::plan
