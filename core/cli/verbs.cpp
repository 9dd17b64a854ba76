#include "cli/verbs.h"

#include <CLI/CLI.hpp>

namespace riserun::cli {

std::vector<VerbRow> verb_rows(const CLI::App& app) {
  std::vector<VerbRow> rows;
  for (const CLI::App* verb : app.get_subcommands([](const CLI::App*) { return true; })) {
    rows.push_back({verb->get_name(), verb});
    for (VerbRow& further : verb_rows(*verb)) rows.push_back({verb->get_name() + " " + further.name, further.verb});
  }
  return rows;
}

}  // namespace riserun::cli
