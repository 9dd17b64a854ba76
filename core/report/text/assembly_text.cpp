#include "report/text/assembly_text.h"

#include "report/text/chain_text.h"
#include "report/words/say.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace riserun::report {

namespace {

using catalog::Catalog;
using chain::Assembly;
using chain::Follower;
using chain::NoAssembly;
using chain::RunPart;
using What = Follower::What;

class TreeRows {
 public:
  TreeRows(const Catalog& catalog, const Assembly& assembly) : catalog_(catalog), assembly_(assembly) {}

  std::string text();

 private:
  void add_part(std::size_t row, std::size_t depth, const std::string& place);
  void add_followers(std::size_t row, std::size_t depth);
  void add_end(std::size_t target, std::size_t depth, const std::string& place);
  std::string ways(const RunPart& link) const;
  static bool is_narrow(const std::string& lines);
  std::string direction(const RunPart& link, std::size_t port) const;
  static std::string indented(std::size_t depth, const std::string& label) {
    return std::string(depth * 3, ' ') + label;
  }

  static constexpr std::size_t kWays = 2;
  static constexpr std::size_t kPlace = 4;
  const Catalog& catalog_;
  const Assembly& assembly_;
  std::vector<std::vector<std::string>> rows_;  // number, part, its ends, where from, where it sits
};

// Columns where they fit on a page; else where a row's part sits, and then its ends too, stand below it.
std::string TreeRows::text() {
  add_part(0, 0, "");
  std::vector<std::string> below(rows_.size());
  for (const std::size_t column : {kPlace, kWays}) {
    if (is_narrow(columns(rows_, "  ", {0}))) break;
    for (std::size_t row = 0; row < rows_.size(); ++row) {
      std::string& cell = rows_[row][column];
      if (!cell.empty()) below[row] = below[row].empty() ? cell : cell + ", " + below[row];
      cell.clear();
    }
  }
  const std::string lines = columns(rows_, "  ", {0});
  std::string text;
  std::size_t start = 0;
  for (std::size_t row = 0; row < rows_.size(); ++row) {
    const std::size_t end = lines.find('\n', start) + 1;
    text += lines.substr(start, end - start);
    const std::size_t label_starts = rows_[row][1].find_first_not_of(' ');
    if (!below[row].empty()) text += wrapped(std::string(8 + label_starts, ' '), below[row]);
    start = end;
  }
  return text;
}

bool TreeRows::is_narrow(const std::string& lines) {
  std::size_t start = 0;
  for (std::size_t end = lines.find('\n'); end != std::string::npos; end = lines.find('\n', start)) {
    if (end - start > kPageWidth) return false;
    start = end + 1;
  }
  return true;
}

// "1/2 FNPT -> 1/4 FNPT, two 1/2 FNPT": like ends that follow each other are counted.
std::string TreeRows::ways(const RunPart& link) const {
  static constexpr const char* kCounts[] = {"", "", "two ", "three ", "four "};
  const catalog::Part& part = catalog_.part(link.part);
  std::vector<std::pair<std::string, std::size_t>> ends;
  for (std::size_t port = 0; port < part.ports.size(); ++port) {
    if (!link.ports[port].leads_on()) continue;
    const std::string end = catalog_.written(part.ports[port].type);
    if (ends.empty() || ends.back().first != end || ends.back().second + 1 == std::size(kCounts))
      ends.emplace_back(end, 0);
    ++ends.back().second;
  }
  std::string text = catalog_.written(part.ports[link.enter].type) + " ->";
  for (std::size_t i = 0; i < ends.size(); ++i)
    text += (i == 0 ? " " : ", ") + std::string(kCounts[ends[i].second]) + ends[i].first;
  return text;
}

// Only where there is a choice: a part with two ports says nothing new.
std::string TreeRows::direction(const RunPart& link, std::size_t port) const {
  const catalog::Part& part = catalog_.part(link.part);
  if (part.ports.size() == 2) return "";
  const double angle = std::abs(part.ports[port].heading_degrees - part.ports[link.enter].heading_degrees);
  return std::abs(std::fmod(angle, 360.0) - 180.0) < 1.0 ? "straight on" : "to the side";
}

void TreeRows::add_part(std::size_t row, std::size_t depth, const std::string& place) {
  const RunPart& link = assembly_.parts[row];
  const catalog::Part& part = catalog_.part(link.part);
  rows_.push_back({fmt::format("{}.", row + 1), indented(depth, part_label(catalog_, part)), ways(link),
                   source_of(part, link.from_bin), place});
  add_followers(row, depth);
}

void TreeRows::add_end(std::size_t target, std::size_t depth, const std::string& place) {
  const chain::RunEnd& end = assembly_.ends[target];
  const std::string& name = end.port.called;
  if (!end.device) {
    rows_.push_back(
        {"", indented(depth, fmt::format("= {}: {}", name, catalog_.written(end.port.type))), "", "", place});
    return;
  }
  const catalog::Part& part = catalog_.part(*end.device);
  rows_.push_back({"", indented(depth, fmt::format("= {}: {}", name, part_label(catalog_, part))),
                   catalog_.written(end.port.type), source_of(part, end.from_bin), place});
}

// The tree moves in only where it branches.
void TreeRows::add_followers(std::size_t row, std::size_t depth) {
  const RunPart& link = assembly_.parts[row];
  const auto leads_on = [](const Follower& f) { return f.leads_on(); };
  const std::size_t inner = depth + (std::count_if(link.ports.begin(), link.ports.end(), leads_on) > 1 ? 1 : 0);
  for (std::size_t port = 0; port < link.ports.size(); ++port) {
    const Follower& follower = link.ports[port];
    const std::string way = direction(link, port);
    const std::string place = way.empty() ? "" : fmt::format("on part {}, {}", row + 1, way);
    if (follower.what == What::part) add_part(follower.row, inner, place);
    if (follower.what == What::end) add_end(follower.row, inner, place);
    if (follower.what == What::plug) {
      const catalog::Part& plug = catalog_.part(follower.plug);
      rows_.push_back({"", indented(inner, "  plugged: " + part_label(catalog_, plug)), "",
                       source_of(plug, follower.from_bin), place});
    }
  }
}

std::string sums(const Assembly& assembly, const Style& style) {
  return wrapped("  ", fmt::format("{}, {} to buy, about {}. Weakest part: {} of water at room temperature{}.",
                                   counted(assembly.part_count, "part", "parts"), assembly.buy_count,
                                   write_price(assembly.price), write_pressure_alone(assembly.rating, style.units),
                                   assembly.air ? "" : "; not for compressed air"));
}

std::string none_text(const Catalog& catalog, const NoAssembly& none, UnitSystem units) {
  std::string text = wrapped("  ", "No assembly: " + say(none.reason, units) + ".");
  if (none.way && none.way->special_order)
    text += wrapped("  ", fmt::format("A special order leads there: {}.",
                                      part_label(catalog, catalog.part(*none.way->special_order))));
  if (none.way && none.way->missing_part)
    text += wrapped("  ", "One part would lead there, if it can be had: " + say(*none.way->missing_part, units) + ".");
  text += bullet_list("Any one of these mends it", say_all(none.mends, units));
  if (none.way) text += bullet_list("Do not try", say_all(none.way->look_alikes, units));
  return text;
}

}  // namespace

std::string assembly_text(const Catalog& catalog, const chain::AssemblyAnswer& answer, const Style& style) {
  if (const auto* none = std::get_if<NoAssembly>(&answer)) return none_text(catalog, *none, style.units);
  const Assembly& assembly = std::get<Assembly>(answer);
  return TreeRows(catalog, assembly).text() + sums(assembly, style) + build_order_text(assembly, style) +
         bullet_list("Watch", say_all(assembly.cautions, style.units));
}

}  // namespace riserun::report
