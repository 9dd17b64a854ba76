// What help and the manual page explain beyond keys and options.
#pragma once

#include <span>
#include <string_view>

namespace riserun::report {

struct HelpTopic {
  std::string_view title;  // "verdict"
  std::string_view text;   // paragraphs, parted by a line break
};

std::span<const HelpTopic> help_topics();

}  // namespace riserun::report
