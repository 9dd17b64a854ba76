#include "cli/command.h"

#include "quantity/input_error.h"
#include "quantity/printable.h"
#include "report/json/error_json.h"

#include <CLI/CLI.hpp>
#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <iostream>
#include <optional>
#include <string_view>

namespace riserun::cli {

namespace {

constexpr const char* kCaution =
    "Compressed air in a flat-sided tank stores dangerous energy. Riserun does arithmetic; it is not a design to a\n"
    "pressure-vessel code. Local codes and licensed practice come first.";

void add_common_options(CLI::App& app, CommonOptions& common) {
  app.add_option("--units", common.units,
                 "inch or metric (a job's own units when left out); also of numbers without a unit")
      ->check(CLI::IsMember({"inch", "metric"}));
  app.add_flag("--json", common.json, "Answer in JSON: SI numbers, the unit in each key");
  app.add_option("--catalog", common.catalog_files, "A file with your own parts or prices; may be given again")
      ->allow_extra_args(false);
  app.add_option("--bin", common.bin_files,
                 "A file that says what your bin holds, in place of a job's own 'bin'; may be given again")
      ->allow_extra_args(false);
  app.add_option("--color", common.color, "auto or never")->check(CLI::IsMember({"auto", "never"}));
}

/// The first word, when it is no verb: the likeliest reason for a command line that cannot be read.
std::optional<std::string> unknown_verb(const CLI::App& app, int argc, const char* const* argv) {
  if (argc < 2 || argv[1][0] == '-') return std::nullopt;
  for (const CLI::App* verb : app.get_subcommands([](const CLI::App*) { return true; }))
    if (verb->get_name() == argv[1]) return std::nullopt;
  return argv[1];
}

/// What is wrong: in words, or for a program that asked for JSON.
void tell(const quantity::InputError& error, bool json, std::ostream& err) {
  err << (json ? report::error_json(error) : std::string(error.what()) + "\n");
}

/// A full disk or a closed pipe shows only now, when what is buffered is written.
int written_whole(std::ostream& out, std::ostream& err, int status) {
  if (out.flush()) return status;
  err << "error: the answer could not be written.\n";
  return kNotWritten;
}

/// What is missing is found first; what was written in its place, or besides, is said with it.
std::string wrong_words(const CLI::App& app, const CLI::ParseError& error) {
  std::string words = error.what();
  if (dynamic_cast<const CLI::RequiredError*>(&error) == nullptr) return words;
  for (const std::string& unknown : app.remaining(true)) words += "; '" + unknown + "' is not known here";
  return words;
}

int parse_error_status(const CLI::App& app, const CLI::ParseError& error, bool json, std::ostream& out,
                       std::ostream& err) {
  if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::Success)) {
    app.exit(error, out, err);
    return written_whole(out, err, kDone);
  }
  if (json)
    tell(quantity::InputError({{"", 0, 0, wrong_words(app, error), ""}}), json, err);
  else
    err << "error: " << quantity::printable(wrong_words(app, error))
        << "\nriserun --help lists the verbs, riserun VERB --help their options.\n";
  return kBadInput;
}

}  // namespace

std::optional<UnitSystem> units_given(const CommonOptions& common) {
  if (common.units.empty()) return std::nullopt;
  return common.units == "metric" ? UnitSystem::metric : UnitSystem::inch;
}

namespace {

/// Of the terminal window; lines beyond 120 are hard to follow back.
std::size_t terminal_width() {
  constexpr std::size_t kLeast = 80;
  constexpr std::size_t kMost = 120;
  winsize window{};
  if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &window) != 0 || window.ws_col == 0) return report::kPageWidth;
  return std::clamp<std::size_t>(window.ws_col, kLeast, kMost);
}

/// Empty where it is not set: an empty NO_COLOR counts for nothing (no-color.org).
std::string_view environment(const char* name) {
  const char* const value = std::getenv(name);
  return value == nullptr ? "" : value;
}

}  // namespace

report::Style Session::style(UnitSystem otherwise) const {
  report::Style result;
  result.units = units_given(common).value_or(otherwise);
  const bool terminal = &out == &std::cout && isatty(STDOUT_FILENO) != 0;
  result.bold_headings =
      common.color == "auto" && environment("NO_COLOR").empty() && environment("TERM") != "dumb" && terminal;
  if (terminal) result.width = terminal_width();
  return result;
}

int run(int argc, const char* const* argv, std::ostream& out, std::ostream& err) {
  CLI::App app{
      "Riserun plans the plumbing of a sealed water reservoir under an open work table.\n" + std::string(kCaution),
      "riserun"};
  Session session{{}, out, err, {}};
  add_common_options(app, session.common);
  app.set_version_flag("--version", "riserun " RISERUN_VERSION);
  app.require_subcommand(0, 1);
  app.fallthrough();  // the common options may stand after the verb, too
  add_plan_verb(app, session);
  add_chain_verb(app, session);
  add_riser_verb(app, session);
  add_transfer_verb(app, session);
  add_walls_verb(app, session);
  add_leak_test_verb(app, session);
  add_list_verb(app, session);
  add_bin_verb(app, session);
  add_catalog_verb(app, session);
  add_check_verb(app, session);
  add_identify_verb(app, session);
  add_explain_verb(app, session);
  add_new_verb(app, session);
  add_help_verb(app, session);
  // As the words may not be read as far as that.
  const bool json = std::find(argv, argv + argc, std::string_view("--json")) != argv + argc;
  try {
    app.parse(argc, argv);
    if (!session.chosen_verb) out << app.help();
    return written_whole(out, err, session.chosen_verb ? session.chosen_verb() : kDone);
  } catch (const CLI::ParseError& error) {
    if (const std::optional<std::string> word = unknown_verb(app, argc, argv)) {
      const std::string wrong =
          "'" + quantity::printable(*word) + "' is no verb of riserun; riserun --help lists them.";
      if (json)
        tell(quantity::InputError({{"", 0, 0, wrong, ""}}), json, err);
      else
        err << "error: " << wrong << "\n";
      return kBadInput;
    }
    return parse_error_status(app, error, json, out, err);
  } catch (const quantity::InputError& error) {
    tell(error, json, err);
    return kBadInput;
  }
}

}  // namespace riserun::cli
