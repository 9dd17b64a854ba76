#include "cli/command.h"
#include "plan/job/starter_job.h"
#include "quantity/printable.h"
#include "report/file/write_file.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <ostream>

namespace riserun::cli {

namespace {

int run_new(const std::string& file, const Session& session) {
  // Made here or not at all, so that no job of the user's is ever written over.
  report::write_file(file, plan::starter_job(), report::Overwrite::no);
  const std::string shown = quantity::printable(file);
  session.out << fmt::format(
      "{} is a starter job that works as it stands. Change it to your measures, then: riserun plan {}\n", shown, shown);
  return kDone;
}

}  // namespace

void add_new_verb(CLI::App& app, Session& session) {
  const auto file = std::make_shared<std::string>();
  CLI::App* verb = app.add_subcommand("new", "Write a commented starter job into a new file");
  verb->add_option("file", *file, "The file to make")->required();
  verb->callback([file, &session] { session.chosen_verb = [file, &session] { return run_new(*file, session); }; });
}

}  // namespace riserun::cli
