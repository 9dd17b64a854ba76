#include "gui/model/edit/places_in_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace riserun::gui {

namespace {

std::string scalar_under(const TextNode& map, const std::string& key) {
  const TextNode* node = map.child(key);
  return node != nullptr ? node->scalar : "";
}

/// A port written short gets the long form, so that there is a place for a second key.
Edited set_in_short_port(const JobText& text, const JobPath& path, const Content& content) {
  const TextNode& port = *text.find(path.parent());
  return text.set(path.parent(),
                  Content(Content::Map{{"port", Content(port.scalar)}, {std::get<std::string>(path.last()), content}}));
}

bool is_in_short_port(const JobText& text, const JobPath& path) {
  if (path.steps().size() < 3 || !std::holds_alternative<std::string>(path.last())) return false;
  const auto* ports = std::get_if<std::string>(&path.steps()[path.steps().size() - 3]);
  const TextNode* port = text.find(path.parent());
  return ports != nullptr && *ports == "ports" && port != nullptr && port->is_text();
}

/// The two distances as a list; any other number of them is for the reader of jobs to refuse.
Content list_of(const std::string& typed) {
  Content::List items;
  for (std::size_t from = 0; from <= typed.size();) {
    const std::size_t comma = std::min(typed.find(',', from), typed.size());
    const std::size_t first = std::min(typed.find_first_not_of(' ', from), comma);
    items.emplace_back(typed.substr(first, comma - first));
    from = comma + 1;
  }
  return {std::move(items)};
}

}  // namespace

bool is_place_in_lid(const JobPath& path) {
  const std::vector<PathStep>& steps = path.steps();
  return steps.size() == 4 && steps[0] == PathStep("reservoir") && steps[1] == PathStep("ports") &&
         steps[3] == PathStep("at");
}

Edited set_value(const JobText& text, const JobPath& path, const std::string& typed) {
  const Content content = is_place_in_lid(path) ? list_of(typed) : Content(typed);
  return is_in_short_port(text, path) ? set_in_short_port(text, path, content) : text.set(path, content);
}

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
