// The options of the chain verb that say what is asked of a run and of a distance: one for each row of
// chain/ask/askable.h that has one.
#pragma once

#include "chain/ask/askable.h"
#include "cli/inputs.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace CLI {
class App;
}

namespace riserun::cli {

/// What was written, by the code of its row.
struct AskedOptions {
  std::map<std::string_view, bool> flags;
  std::map<std::string_view, std::string> texts;
  std::map<std::string_view, std::vector<std::string>> lists;  // of what may be given again

  bool has(std::string_view code) const;
  /// Empty: it was not given.
  const std::string& text(std::string_view code) const;
  const std::vector<std::string>& list(std::string_view code) const;
};

void add_asked_options(CLI::App& verb, AskedOptions& options);

/// What is asked of the run, its two ends' port types aside; what is wrong is kept by `words`.
chain::ChainRequest read_request(const AskedOptions& options, const Stock& stock, WordReader& words);

/// The distance between the two ports; nullopt: none is asked for. Ports with a distance between them stand still
/// unless it is said how they move.
std::optional<chain::Span> read_span(const AskedOptions& options, WordReader& words, chain::ChainRequest& request);

/// Says of each option given that it is for a run between two ports.
void refuse_options_of_one_run(const AskedOptions& options, WordReader& words);

/// One that may be given again was given too often.
void refuse_too_many(const chain::Askable& row, const std::vector<std::string>& texts, std::size_t most,
                     WordReader& words);

}  // namespace riserun::cli
