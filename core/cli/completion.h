// Completion of the command's words in a shell: verbs, their options, the words that an option takes.
#pragma once

#include <string>

namespace CLI {
class App;
}

namespace riserun::cli {

/// A script that the shell reads at its start.
/// @param shell bash, zsh or fish
std::string completion_for(const std::string& shell, const CLI::App& app);

}  // namespace riserun::cli
