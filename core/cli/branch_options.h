// What the options of the chain verb say of single branches of an assembly: "2=3/4 in", the number of a port behind the
// base, then what holds there.
#pragma once

#include "chain/ask/assembly.h"
#include "cli/inputs.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace CLI {
class App;
}

namespace riserun::cli {

/// What was written, by the code of its row in chain/ask/askable.h; each option may be given again.
struct BranchOptions {
  std::map<std::string_view, std::vector<std::string>> lists;
};

void add_branch_options(CLI::App& verb, BranchOptions& options);

/// Reads them into the rules of so many branches; what is wrong is kept by `words`.
/// @param vacuum  the assembly can come under vacuum
std::vector<chain::BranchRules> read_branch_options(const BranchOptions& options, const Stock& stock,
                                                    std::size_t branches, bool vacuum, WordReader& words);

/// Says of each option given that there is no branch for it.
void refuse_branch_options(const BranchOptions& options, WordReader& words);

}  // namespace riserun::cli
