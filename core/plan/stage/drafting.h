// A plan in the making: the stages of make_plan, each in a file of its own, and what they hand on to each other.
#pragma once

#include "chain/finder.h"
#include "plan/plan.h"
#include "plan/settle/settled.h"

#include <string>
#include <vector>

namespace riserun::plan {

/// What is left of the bin while the plan takes parts from it.
class BinLeft {
 public:
  explicit BinLeft(Bin bin) : bin_(std::move(bin)) {}

  int count_of(PartId part) const { return bin_.count_of(part); }
  /// Takes one; false when there is none.
  bool take(PartId part);
  /// Takes all that an allocation gave.
  void take(const Bin& given);
  const Bin& bin() const { return bin_; }

 private:
  Bin bin_;
};

/// A part that the job uses up and is not in a chain: a riser nipple, a plug, a gauge.
struct ExtraPart {
  PartId part;
  bool from_bin = false;
  std::string used_for;
};

struct Draft {
  Plan plan;
  Settled settled;
  BinLeft bin;
  std::vector<ExtraPart> extras;
  std::vector<PartId> riser_bin{};    // nipples that the riser could be of, from the bin and from the shelf
  std::vector<PartId> riser_shelf{};  // shortest first
  std::vector<TestPlug> test_plugs{};
  Volume riser_and_chain{};

  const Catalog& catalog() const { return *plan.catalog; }
  UnitSystem units() const { return plan.job.units; }
  /// The key of a connection of the job, as messages have it: `connections[2].gap`.
  std::string key_of(const JobConnection& connection, const char* key) const;
  void assume(std::string what, std::string value, std::string why, std::string key = "");
  void caution(Topic where, std::string text, std::string source);
  void standing_caution(Topic where, std::string text, std::string source);
  void note(Topic where, std::string text);
  void refuse(Refusal refusal);
};

/// Turns the run round where that costs nothing and leaves the valve with the reservoir when the union is opened; else
/// says what it would cost (common practice).
void leave_valve_with_reservoir(Draft& draft, const chain::Finder& finder, ConnectionPlan& plan);

// The stages, in the order in which make_plan runs them. Each needs what the ones before it have put into the draft.
void draft_bungs(Draft& draft);         // refusals and cautions about weld bungs
void draft_riser(Draft& draft);         // plan.riser
void draft_connections(Draft& draft);   // plan.connections, plan.water_connection
void draft_manifolds(Draft& draft);     // plan.manifolds, and the feed's bore where a branch narrows it
void draft_line(Draft& draft);          // plan.line
void draft_levels(Draft& draft);        // plan.levels
void draft_wall_limit(Draft& draft);    // plan.walls: panels, limit, next stay
void draft_transfer(Draft& draft);      // plan.transfer and the rest of plan.levels
void draft_walls_in_use(Draft& draft);  // plan.walls at the setting and at full supply
void draft_relief(Draft& draft);        // plan.relief
void draft_leak_test(Draft& draft);     // plan.leak_test
void draft_list(Draft& draft);          // plan.list
void draft_cautions(Draft& draft);      // plan.cautions that belong to the whole job

/// What a connection carries, and how one of its ports is held: given, or assumed.
Service settle_service(Draft& draft, const JobConnection& connection);
chain::Freedom settle_freedom(Draft& draft, const JobConnection& connection, const std::string& port,
                              const std::optional<chain::Freedom>& given);
/// What the job asks of a connection, its far ends aside.
chain::ChainRequest request_for(Draft& draft, const JobConnection& connection, Service service);
/// Shares the bin between the connections (`demands`, one for each), the riser and the plugs of the leak test.
void share_bin(Draft& draft, const chain::Finder& finder, const std::vector<chain::Demand>& demands);
/// What the riser is cut from: one of the bin, or what the shelf has; and what is said of it.
void settle_riser_stock(Draft& draft, std::optional<PartId> from_bin);
/// The stock that the riser can be cut from: each nipple of the bin that is long enough, and the shelf's shortest.
std::vector<chain::EndPart> riser_stock(const Draft& draft);
/// The ports that are plugged for the leak test, and what closes one: all of the bin that does and the cheapest on
/// sale.
std::vector<const JobPort*> ports_to_plug(const Draft& draft);
std::vector<chain::EndPart> closing_parts(const Draft& draft, PortTypeId port);

/// The reservoir port that the riser hangs in; nullptr: none is given.
const JobPort* riser_bung(const Job& job);
/// True if the port of that name is one of these.
const JobPort* port_named(const std::vector<JobPort>& ports, const std::string& name);
/// A bung of that material is of the tank's metal.
bool welds_to_tank(const Draft& draft, MaterialId material);
/// Trade name and measure of a part as a list prints it: "1 x 4 in nipple, black iron".
std::string part_title(const Catalog& catalog, PartId part);
/// The pressure at which a relief valve of the catalog opens; nullopt: it is no relief valve.
std::optional<GaugePressure> opens_at(const Catalog& catalog, PartId part);
/// The end of a pressure gauge's scale; nullopt: it is no gauge.
std::optional<GaugePressure> full_scale(const Catalog& catalog, PartId part);
/// End to end length of a straight part with two ports.
Length straight_length(const catalog::Part& part);

}  // namespace riserun::plan
