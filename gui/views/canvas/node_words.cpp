#include "gui/views/canvas/node_words.h"

#include "gui/views/scene/words.h"
#include "plan/run_cost.h"
#include "report/drawing/stays.h"

#include <fmt/format.h>
#include <imgui.h>

#include <cctype>
#include <cmath>

namespace riserun::views {

namespace {

using gui::Node;
using gui::NodeKind;

/// One mark a run is enough: the joint of the worst two metals has it, the first of several.
const gui::Link* worst_joint(const gui::Sketch& sketch, std::size_t connection) {
  const gui::Link* worst = nullptr;
  for (const gui::Link& link : sketch.links) {
    if (link.connection != connection || link.galvanic == catalog::GalvanicVerdict::fine) continue;
    const bool apart = link.galvanic == catalog::GalvanicVerdict::keep_apart;
    if (worst == nullptr || (apart && worst->galvanic != catalog::GalvanicVerdict::keep_apart)) worst = &link;
  }
  return worst;
}

/// The part of a joint that its words stand beside.
std::size_t bearer(const gui::Sketch& sketch, const gui::Link& link) {
  return sketch.nodes[link.b.node].part ? link.b.node : link.a.node;
}

gui::Size measured(const ImFont& font, float scale, const std::string& text) {
  const ImVec2 size = font.CalcTextSizeA(font.FontSize, FLT_MAX, 0.0F, text.c_str());
  return {std::ceil(size.x / scale) + 1.0F, std::ceil(size.y / scale)};
}

/// Where the word ends that begins there; a unit belongs to its number.
std::size_t end_of_word(const std::string& text, std::size_t from) {
  const std::size_t to = std::min(text.find(' ', from), text.size());
  if (to == text.size() || to == from || std::isdigit(static_cast<unsigned char>(text[to - 1])) == 0) return to;
  const std::size_t after = std::min(text.find_first_of(" ,", to + 1), text.size());
  const std::string unit = text.substr(to + 1, after - to - 1);
  const bool is_unit = unit == "in" || unit == "ft" || unit == "mm" || unit == "m" || unit == "psi" || unit == "bar";
  return is_unit ? std::min(text.find(' ', to + 1), text.size()) : to;
}

/// With new lines between words, so that none is wider than the column where its words let it.
std::string in_lines(const ImFont& font, float scale, const std::string& text, float wide = kWordsWide) {
  std::string lines;
  std::string line;
  for (std::size_t from = 0; from <= text.size();) {
    const std::size_t to = end_of_word(text, from);
    const std::string word = text.substr(from, to - from);
    const std::string longer = line.empty() ? word : line + " " + word;
    if (!line.empty() && measured(font, scale, longer).width > wide) {
      lines += line + "\n";
      line = word;
    } else {
      line = longer;
    }
    from = to + 1;
  }
  return lines + line;
}

std::string supply_words(const plan::JobAir& air, UnitSystem units) {
  std::string text = "Air supply";
  if (air.delivery) text += "\n" + write_air_flow(*air.delivery, units);
  if (air.receiver) text += (air.delivery ? ", " : "\n") + write_volume(*air.receiver, units);
  return text;
}

int parts_in(const gui::Sketch& sketch, std::size_t connection) {
  int count = 0;
  for (const Node& node : sketch.nodes) count += node.part && node.connection == connection ? 1 : 0;
  return count;
}

std::string count_of_run(const plan::Plan& plan, const gui::Sketch& sketch, std::size_t row) {
  const plan::ConnectionPlan& connection = plan.connections[row];
  if (connection.run() == nullptr) return "no run";
  const int count = parts_in(sketch, row);
  return fmt::format("{} {}, {}", count, count == 1 ? "part" : "parts",
                     write_price(plan::cost_of(plan.list, connection.name)));
}

}  // namespace

std::string title_of(const plan::Plan& plan, const Node& node) {
  switch (node.kind) {
    case NodeKind::reservoir:
      return "Reservoir";
    case NodeKind::table:
      return "Table";
    case NodeKind::air_supply:
      return "Air supply";
    case NodeKind::open_end:
      return fmt::format("No run for '{}'", gui::name_of_connection(plan, node.connection));
    default:
      return node.part ? plan.catalog->part(*node.part).name : "";
  }
}

std::string source_words(const plan::Plan& plan, const Node& node) {
  if (node.kind == NodeKind::open_end) return "choose it to see why";
  if (node.from_bin && node.bought == 0) return "in stock";
  if (!node.part) return "";
  if (node.bought == 0) return "not on the list";
  const catalog::Part& part = plan.catalog->part(*node.part);
  const char* const how = part.stocked ? "buy" : "order";
  if (node.bought == 1 && node.pieces == 1) return fmt::format("{} {}", how, write_price(node.price));
  return fmt::format("{} {}{} for {}", how, node.bought, catalog::sold_by_the_foot(part) ? " ft" : "",
                     write_price(node.price));
}

PartWords words_beside(const plan::Plan& plan, const gui::Sketch& sketch, std::size_t row, UnitSystem units) {
  const Node& node = sketch.nodes[row];
  PartWords words;
  if (!node.part) return words;
  const catalog::Part& part = plan.catalog->part(*node.part);
  words.name = part.name;
  // Hose that no distance was asked of is cut to what the connection says.
  const auto cut =
      node.cut_length || !part.cut_to_length ? node.cut_length : plan.connections[node.connection].hose_length;
  if (cut) words.name += ", cut " + write_length(*cut, units);
  words.source = plan.catalog->material(part.material).name + ", " + source_words(plan, node);
  if (node.clamps > 0) words.source += fmt::format(", {} clamps {}", node.clamps, write_price(node.clamps_price));
  for (const gui::Link& link : sketch.links)
    if (link.connection == node.connection && link.closing && bearer(sketch, link) == row)
      words.mark = words::kMakeUpLast;
  const gui::Link* worst = worst_joint(sketch, node.connection);
  if (worst == nullptr || bearer(sketch, *worst) != row) return words;
  words.apart = worst->galvanic == catalog::GalvanicVerdict::keep_apart;
  words.mark +=
      std::string(words.mark.empty() ? "" : "; ") + (words.apart ? words::kKeepApart : words::kDissimilarMetals);
  return words;
}

std::string title_of_joint(const plan::Plan& plan, const gui::Sketch& sketch, const gui::Link& link) {
  const auto port = [&](const gui::PinAt& at) {
    return plan.catalog->written(sketch.nodes[at.node].pins[at.pin].type);
  };
  return fmt::format("{} and {}: {}", port(link.a), port(link.b), link.seal);
}

std::string title_of_run(const plan::Plan& plan, const gui::Sketch& sketch, std::size_t row) {
  const plan::ConnectionPlan& connection = plan.connections[row];
  std::string text = connection.name;
  if (plan.connections.size() > gui::kMostStanding)
    text += connection.ends_in ? ", on " + connection.from : fmt::format(", {} to {}", connection.from, connection.to);
  return text + ": " + count_of_run(plan, sketch, row);
}

namespace {
std::string on_a_line(const std::string& text) { return text.empty() ? text : "\n" + text; }
}  // namespace

std::string vessel_words(const plan::Plan& plan, const Node& node, UnitSystem units) {
  const plan::JobReservoir& tank = plan.job.reservoir;
  const reservoir::Table& table = plan.transfer.system.table;
  switch (node.kind) {
    case NodeKind::reservoir:
      return fmt::format("Reservoir {} x {} x {}, {} deep, {}", write_length(tank.length, units),
                         write_length(tank.width, units), write_length(tank.height, units),
                         write_length(plan.levels.charge_depth, units), write_volume(plan.levels.charge, units)) +
             on_a_line(report::posts_and_bars(plan));
    case NodeKind::table:
      return fmt::format("Table {} long, wants {}, {}", write_length(table.length, units),
                         write_length(plan.job.table.depth, units), write_volume(plan.levels.need, units));
    default:
      return supply_words(plan.job.air, units);
  }
}

CanvasTexts canvas_texts(const plan::Plan& plan, const gui::Sketch& sketch, const Fonts& fonts, float scale,
                         UnitSystem units) {
  CanvasTexts texts;
  const ImFont& font = *fonts.small;
  const bool in_rows = plan.connections.size() > gui::kMostStanding;
  for (std::size_t row = 0; row < sketch.nodes.size(); ++row) {
    PartWords words = words_beside(plan, sketch, row, units);
    gui::Size& size = texts.sizes.beside.emplace_back();
    gui::Size& brief = texts.sizes.brief.emplace_back();
    for (std::string* text : {&words.name, &words.source, &words.mark}) {
      if (text->empty()) continue;
      *text = in_lines(font, scale, *text, in_rows ? kListWide : kWordsWide);
      const gui::Size one = measured(font, scale, *text);
      size = {std::max(size.width, one.width), size.height + one.height};
      if (text != &words.source) brief = {std::max(brief.width, one.width), brief.height + one.height};
    }
    texts.sizes.listed.push_back(words.name.empty() ? gui::Size{} : measured(font, scale, words.name));
    texts.parts.push_back(std::move(words));
  }
  for (std::size_t row = 0; row < plan.connections.size(); ++row) {
    const std::string title = title_of_run(plan, sketch, row);
    texts.folded.push_back(title);
    if (const std::size_t colon = title.find(": "); colon != std::string::npos) texts.folded.back()[colon + 1] = '\n';
    texts.brief.push_back(plan.connections[row].name + (in_rows ? ":\n" : ": ") + count_of_run(plan, sketch, row));
    texts.runs.push_back(in_lines(font, scale, title, in_rows ? kListWide : kWordsWide));
    texts.sizes.titles.push_back(measured(font, scale, texts.runs.back()));
  }
  return texts;
}

}  // namespace riserun::views
