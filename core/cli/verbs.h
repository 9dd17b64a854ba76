// The verbs of the command in a row, those of a verb (`bin take`) behind it: for help, manual and completion.
#pragma once

#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace riserun::cli {

struct VerbRow {
  std::string name;  // "bin take"
  const CLI::App* verb = nullptr;
};

std::vector<VerbRow> verb_rows(const CLI::App& app);

}  // namespace riserun::cli
