// The command `riserun`: reads its words, calls one verb, and answers with an exit status. Results go to `out`,
// messages to `err`.
#pragma once

#include "report/text/text_layout.h"

#include <functional>
#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace riserun::cli {

/// Exit statuses, as README documents them.
inline constexpr int kDone = 0;
inline constexpr int kNoSolution = 1;
inline constexpr int kBadInput = 2;    // the input is wrong
inline constexpr int kNotWritten = 2;  // or the answer could not be written

/// What every verb understands.
struct CommonOptions {
  std::string units;  // empty: inch, or what the job says
  bool json = false;
  std::vector<std::string> catalog_files;
  std::vector<std::string> bin_files;
  std::string color = "auto";
};

/// What --units says; nullopt: nothing.
std::optional<UnitSystem> units_given(const CommonOptions& common);

/// One run of the command: its options, where it writes, and the verb that was asked for.
struct Session {
  CommonOptions common;
  std::ostream& out;
  std::ostream& err;
  std::function<int()> chosen_verb;

  report::Style style(UnitSystem otherwise) const;
};

// One function a verb adds its subcommand and its options to the app, and sets `chosen_verb` when it is asked for.
void add_plan_verb(CLI::App& app, Session& session);
void add_chain_verb(CLI::App& app, Session& session);
void add_riser_verb(CLI::App& app, Session& session);
void add_transfer_verb(CLI::App& app, Session& session);
void add_walls_verb(CLI::App& app, Session& session);
void add_leak_test_verb(CLI::App& app, Session& session);
void add_list_verb(CLI::App& app, Session& session);
void add_bin_verb(CLI::App& app, Session& session);
void add_catalog_verb(CLI::App& app, Session& session);
void add_check_verb(CLI::App& app, Session& session);
void add_identify_verb(CLI::App& app, Session& session);
void add_explain_verb(CLI::App& app, Session& session);
void add_new_verb(CLI::App& app, Session& session);
void add_help_verb(CLI::App& app, Session& session);

/// Never throws but for a bug, or when memory runs out.
/// @param argv  as main gets it: the first is the program's own name
/// @return the exit status: 0 done, 1 no solution (said why), 2 the input is wrong or `out` takes no more
int run(int argc, const char* const* argv, std::ostream& out, std::ostream& err);

}  // namespace riserun::cli
