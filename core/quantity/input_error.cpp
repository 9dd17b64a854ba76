#include "quantity/input_error.h"

#include <fmt/format.h>

namespace riserun::quantity {

namespace {

std::string all_texts(const std::vector<Problem>& problems) {
  std::string text;
  for (const Problem& problem : problems) {
    if (!text.empty()) text += '\n';
    text += problem.text();
  }
  return text;
}

}  // namespace

std::string Problem::text() const {
  std::string place = file;
  if (line > 0) place += fmt::format(":{}:{}", line, column);
  std::string result = place.empty() ? "error: " + message : place + ": error: " + message;
  if (source_line.empty()) return result;
  result += "\n  " + source_line;
  if (column > 0) result += "\n  " + std::string(static_cast<std::size_t>(column - 1), ' ') + '^';
  return result;
}

InputError::InputError(std::vector<Problem> problems)
    : std::runtime_error(all_texts(problems)), problems_(std::move(problems)) {}

}  // namespace riserun::quantity
