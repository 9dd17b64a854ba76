// The manual page, made from the command's own verbs and options and the table of a job's keys.
#pragma once

#include <string>

namespace CLI {
class App;
}

namespace riserun::cli {

/// In the language of man(7).
std::string manual_page(const CLI::App& app);

}  // namespace riserun::cli
