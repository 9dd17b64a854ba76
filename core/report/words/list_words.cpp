#include "report/words/list_words.h"

#include "report/words/say.h"

#include <fmt/format.h>

namespace riserun::report {

std::string joined(const std::vector<std::string>& words, std::string_view between) {
  return fmt::format("{}", fmt::join(words, between));
}

std::string item_size(const plan::ListItem& item, UnitSystem units) {
  return item.measure ? say(*item.measure, units) : item.size;
}

std::string item_name(const plan::ListItem& item) {
  std::string name = item.name;
  if (!item.material.empty()) name += ", " + item.material;
  if (item.measured) name += " (measured)";
  if (item.special_order) name += " (special order)";
  return name;
}

}  // namespace riserun::report
