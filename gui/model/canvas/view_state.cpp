#include "gui/model/canvas/view_state.h"

#include "catalog/yaml/document.h"
#include "gui/model/text/job_texts.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>

namespace riserun::gui {

namespace {

using catalog::Value;
using quantity::UnitSystem;

constexpr float kFarthest = 1.0e6F;  // nothing is drawn beyond
constexpr float kLeastZoom = 0.05F;
constexpr float kMostZoom = 8.0F;
constexpr std::size_t kMostMoved = 20000;

std::optional<float> read_float(const Value& value) {
  const std::string_view text = value.text();
  float number = 0.0F;
  const auto [end, failed] = std::from_chars(text.data(), text.data() + text.size(), number);
  const bool whole = failed == std::errc() && end == text.data() + text.size() && !text.empty();
  return whole && std::isfinite(number) ? std::optional(std::clamp(number, -kFarthest, kFarthest)) : std::nullopt;
}

std::optional<Point> read_point(const Value& value) {
  if (!value.is_list() || value.size() != 2) return std::nullopt;
  const std::vector<Value> items = value.items();
  const auto x = read_float(items[0]);
  const auto y = read_float(items[1]);
  return x && y ? std::optional(Point{*x, *y}) : std::nullopt;
}

std::string written(Point point) { return fmt::format("[{}, {}]", point.x, point.y); }

}  // namespace

std::filesystem::path side_file_of(const std::filesystem::path& job_file) {
  return job_file.parent_path() / (job_file.stem().string() + ".view.yaml");
}

ViewState read_view(const std::string& text) {
  ViewState view;
  catalog::Problems problems;
  const auto document = catalog::Document::parse(text, "view", problems);
  const Value root = document.root();
  if (!root.is_map()) return view;
  if (root["units"].text() == "inch") view.units = UnitSystem::inch;
  if (root["units"].text() == "metric") view.units = UnitSystem::metric;
  if (root["looks"].text() == "dark") view.looks = Looks::dark;
  view.pan = read_point(root["pan"]).value_or(Point());
  view.zoom = std::clamp(read_float(root["zoom"]).value_or(1.0F), kLeastZoom, kMostZoom);
  for (const Value& row : root["moved by"].items()) {
    const auto place = row.is_map() ? read_point(row["at"]) : std::nullopt;
    if (place && row["node"].is_text() && view.moved.size() < kMostMoved)
      view.moved.emplace(std::string(row["node"].text()), *place);
  }
  return view;
}

std::string write_view(const ViewState& view) {
  std::string text = "# How the window shows the job: Riserun writes this file, and the job does not need it.\n";
  if (view.units) text += fmt::format("units: {}\n", *view.units == UnitSystem::inch ? "inch" : "metric");
  text += fmt::format("looks: {}\n", view.looks == Looks::dark ? "dark" : "light");
  text += fmt::format("pan: {}\nzoom: {}\n", written(view.pan), view.zoom);
  if (!view.moved.empty()) text += "moved by:\n";
  for (const auto& [node, place] : view.moved)
    text += fmt::format("  - {{node: {}, at: {}}}\n", in_double_quotes(node), written(place));
  return text;
}

}  // namespace riserun::gui
