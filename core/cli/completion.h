// Completion of the command's words in a shell: verbs and their options, ports and parts of the shipped catalog, keys
// of a job, codes of findings.
#pragma once

#include <string>

namespace CLI {
class App;
}

namespace riserun::cli {

/// A script that the shell reads at its start.
/// @throws InputError where the shipped catalog cannot be read
/// @param shell bash, zsh or fish
std::string completion_for(const std::string& shell, const CLI::App& app);

}  // namespace riserun::cli
