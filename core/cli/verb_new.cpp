#include "catalog/load/starter_part.h"
#include "cli/command.h"
#include "plan/job/starter_job.h"
#include "quantity/printable.h"
#include "report/file/write_file.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <ostream>

namespace riserun::cli {

namespace {

struct NewOptions {
  std::string file;
  bool part = false;
};

int run_new(const NewOptions& options, const Session& session) {
  // Made here or not at all, so that nothing of the user's is ever written over.
  report::write_file(options.file,
                     options.part ? catalog::starter_part()
                                  : plan::starter_job(units_given(session.common).value_or(UnitSystem::inch)),
                     report::Overwrite::no);
  const std::string shown = quantity::printable(options.file);
  session.out << (options.part ? fmt::format("{} holds a part of your own. Change it to the one in your hand, then: "
                                             "riserun check {}\n",
                                             shown, shown)
                               : fmt::format("{} is a starter job that works as it stands. Change it to your measures, "
                                             "then: riserun plan {}\n",
                                             shown, shown));
  return kDone;
}

}  // namespace

void add_new_verb(CLI::App& app, Session& session) {
  const auto options = std::make_shared<NewOptions>();
  CLI::App* verb = app.add_subcommand("new", "Write a commented starter job into a new file");
  verb->add_option("file", options->file, "The file to make")->required();
  verb->add_flag("--part", options->part, "A starter for a part of your own, in place of a job");
  verb->callback(
      [options, &session] { session.chosen_verb = [options, &session] { return run_new(*options, session); }; });
}

}  // namespace riserun::cli
