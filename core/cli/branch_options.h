// What the options of the chain verb say of single branches of an assembly: "2=3/4 in", the number of a port behind the
// base, then what holds there.
#pragma once

#include "chain/ask/assembly.h"
#include "cli/inputs.h"

#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace riserun::cli {

struct BranchOptions {
  std::vector<std::string> bores;
  std::vector<std::string> needs;
  std::vector<std::string> in_order;
  std::vector<std::string> avoid;
  std::vector<std::string> looks;
  std::vector<std::string> feeds;
  std::vector<std::string> reliefs;
};

void add_branch_options(CLI::App& verb, BranchOptions& options);

/// Reads them into the rules of so many branches; what is wrong is kept by `words`.
std::vector<chain::BranchRules> read_branch_options(const BranchOptions& options, const Stock& stock,
                                                    std::size_t branches, WordReader& words);

/// Says of each option given that there is no branch for it.
void refuse_branch_options(const BranchOptions& options, WordReader& words);

}  // namespace riserun::cli
