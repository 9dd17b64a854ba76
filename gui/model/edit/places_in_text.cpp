#include "gui/model/edit/places_in_text.h"

#include <fmt/format.h>

namespace riserun::gui {

namespace {

std::string scalar_under(const TextNode& map, const std::string& key) {
  const TextNode* node = map.child(key);
  return node != nullptr ? node->scalar : "";
}

}  // namespace

std::string connection_name(const TextNode& connection) {
  const std::string name = scalar_under(connection, "name");
  if (!name.empty()) return name;
  if (const TextNode* branches = connection.child("branches"))
    return fmt::format("{} to {} branches", scalar_under(connection, "from"), branches->children.size());
  const std::string device = scalar_under(connection, "ends in");
  return scalar_under(connection, "from") + " to " + (device.empty() ? scalar_under(connection, "to") : device);
}

std::optional<JobPath> path_of_connection(const JobText& text, const std::string& name) {
  const TextNode* list = text.find(at("connections"));
  if (list == nullptr) return std::nullopt;
  for (std::size_t row = 0; row < list->children.size(); ++row)
    if (connection_name(list->children[row]) == name) return at("connections") / row;
  return std::nullopt;
}

CannotEdit no_connection(const std::string& name) {
  return {fmt::format("The job has no connection called '{}'.", name)};
}

JobPath as_written(const JobText& text, const JobPath& path) {
  if (path.steps().size() < 2) return path;
  const TextNode* around = text.find(path.parent());
  if (around == nullptr || !around->is_text()) return path;
  const auto* key = std::get_if<std::string>(&path.last());
  const auto* place = std::get_if<std::size_t>(&path.last());
  const bool is_port = key != nullptr && *key == "port";
  return is_port || (place != nullptr && *place == 0) ? path.parent() : path;
}

}  // namespace riserun::gui
