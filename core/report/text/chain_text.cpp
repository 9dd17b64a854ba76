#include "report/text/chain_text.h"

#include "catalog/words/part_search.h"
#include "catalog/yaml/nearest_name.h"
#include "chain/finder.h"
#include "report/text/duty_text.h"
#include "report/text/run_text.h"
#include "report/words/reason.h"
#include "report/words/say.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::report {

namespace {

using catalog::Catalog;
using chain::Chain;
using chain::ChainRequest;
using chain::NoChain;

constexpr std::size_t kReachableShown = 12;
constexpr std::size_t kMaterialsShown = 2;

std::string reachable(const Catalog& catalog, const std::string& from, const std::vector<chain::PortTypeId>& ports,
                      const Style& style) {
  std::string list;
  for (std::size_t i = 0; i < std::min(ports.size(), kReachableShown); ++i)
    list += (i ? ", " : "") + catalog.written(ports[i]);
  if (ports.size() > kReachableShown) list += fmt::format(" and {} more", ports.size() - kReachableShown);
  return wrapped("    - ",
                 fmt::format("from {}: {}", from, list.empty() ? "nothing that may be used goes onto it" : list),
                 style.width);
}

bool names_held_ends(const NoChain& none) {
  return std::any_of(none.conflict.begin(), none.conflict.end(),
                     [](const quantity::Fact& rule) { return rule.code == "held_ends"; });
}

std::string what_it_takes(const chain::Lift& lift) {
  const std::string parts = counted(lift.part_count, "part", "parts");
  if (lift.buy_count == 0) return parts + ", nothing to buy";
  return fmt::format("{}, {} to buy, {}", parts, lift.buy_count, write_about(lift.price));
}

// "allow more parts: 4 parts, 3 to buy, about $9.10"
std::vector<std::string> lifts_with_cost(const NoChain& none, UnitSystem units) {
  std::vector<std::string> lines;
  for (const chain::Lift& lift : none.lifts)
    lines.push_back(words_of(lift, units) + ": then " +
                    (lift.part_count == 0 ? "no part is needed" : what_it_takes(lift)));
  return lines;
}

std::string none_text(const Catalog& catalog, const ChainRequest& request, const NoChain& none, const Style& style) {
  const UnitSystem units = style.units;
  std::string text = wrapped("  ", "No chain: " + say(none.reason, units), style.width);
  if (none.special_order) {
    const catalog::Part& part = catalog.part(*none.special_order);
    text += wrapped(
        "  ", fmt::format("A special order mends it: {} ({}).", part_label(catalog, part), write_about(part.price)),
        style.width);
  }
  if (none.missing_part && !none.special_order)
    text += wrapped("  ", "One part would complete it, if it can be had: " + say(*none.missing_part, units) + ".",
                    style.width);
  if (none.conflict.size() > 1)
    if (const quantity::Fact at_odds = chain::cannot_be_kept(none.conflict); none.reason != at_odds)
      text += wrapped("  ", "And " + say(at_odds, units) + ".", style.width);
  if (none.conflict.size() > 1 && names_held_ends(none))
    text += wrapped("  ",
                    "Between held ends the last joint must be made without turning either: by a union, a swivel nut, a "
                    "hose or a flange.",
                    style.width);
  text += bullet_list("Any one of these mends it",
                      none.lifts.empty() ? say_all(none.mends, units) : lifts_with_cost(none, units), style);
  text += bullet_list("Do not try", say_all(none.look_alikes, units), style);
  if (none.only_the_distance) return text;
  text += "  What can be got to\n" +
          reachable(catalog, chain::name_of_first(request.from), none.reachable_from, style) +
          reachable(catalog, chain::name_of_last(request.to), none.reachable_to, style);
  return text;
}

/// What of compressed air it is proved for.
std::string air_of(const Catalog& catalog, const Chain& chain, const Style& style) {
  if (chain.parts.empty()) return "none";
  const auto air = chain::duty_of_run(catalog, all_parts(chain)).air;
  return air ? write_pressure_alone(*air, style.units) : "no";
}

std::string figures_side_by_side(const Catalog& catalog, const std::vector<chain::Alternative>& rows,
                                 const Style& style) {
  std::vector<std::vector<std::string>> table{{"", "parts", "buy", "price", "length", "head lost", "weakest", "air"}};
  std::vector<std::string> beside{"beside the first"};
  for (const chain::Alternative& row : rows) {
    const Chain& chain = row.chain;
    table.push_back({fmt::format("{}.", table.size()), std::to_string(chain.part_count),
                     std::to_string(chain.buy_count), write_price(chain.price), write_length(chain.length, style.units),
                     chain.parts.empty() ? "none" : write_head(chain.head, style.units),
                     chain.parts.empty() ? "none" : write_pressure_alone(chain.rating, style.units),
                     air_of(catalog, chain, style)});
    beside.push_back(&row == rows.data() ? kBestOfAll : reason(rows.front().chain, chain, style.units));
  }
  const std::vector<std::string> lines = column_lines(std::move(table), "  ", {0, 1, 2, 3, 4, 5, 6, 7});
  std::string text;
  for (std::size_t row = 0; row < lines.size(); ++row) text += wrapped(lines[row] + "  ", beside[row], style.width);
  return text;
}

std::string parts_side_by_side(const Catalog& catalog, const std::vector<chain::Alternative>& rows,
                               const Style& style) {
  std::string text;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    std::string words = chain_in_one_line(catalog, rows[i].chain);
    const std::vector<std::string>& same_in = rows[i].same_in;
    for (std::size_t k = 0; k < std::min(same_in.size(), kMaterialsShown); ++k)
      words += (k ? ", or " : "; the same in ") + same_in[k];
    if (same_in.size() > kMaterialsShown) words += fmt::format(", and {} more", same_in.size() - kMaterialsShown);
    text += wrapped(fmt::format("  {:>2}. ", i + 1), words, style.width);
  }
  return text;
}

}  // namespace

std::string chain_text(const Catalog& catalog, const ChainRequest& request, const chain::Answer& answer,
                       const Style& style) {
  if (const Chain* chain = std::get_if<Chain>(&answer)) return run_text(catalog, request, *chain, style);
  return none_text(catalog, request, std::get<NoChain>(answer), style);
}

std::string alternatives_text(const Catalog& catalog, const ChainRequest& request,
                              const std::vector<chain::Alternative>& rows,
                              const std::vector<chain::Substitute>& substitutes, const Style& style) {
  return figures_side_by_side(catalog, rows, style) + parts_side_by_side(catalog, rows, style) +
         "\nThe first in full\n" + run_text(catalog, request, rows.front().chain, style, substitutes);
}

std::string chain_in_one_line(const Catalog& catalog, const Chain& chain) {
  if (chain.parts.empty()) return "the two ports go straight together";
  std::string text = counted(chain.part_count, "part", "parts") + ": ";
  for (std::size_t i = 0; i < chain.parts.size(); ++i)
    text += (i ? " + " : "") + part_label(catalog, catalog.part(chain.parts[i].part));
  return text;
}

std::string taken_for_text(const Catalog& catalog, const ChainRequest& request, const Style& style) {
  std::string text;
  catalog::PartSearch search(catalog);
  for (const chain::Need& need : request.needs) {
    const std::vector<std::string> names = search.taken_for(need.words, need.parts);
    if (names.empty()) continue;
    const std::vector<std::string_view> views(names.begin(), names.end());
    text += wrapped("  ", fmt::format("'{}' is taken for: {}.", need.words, catalog::either_of(views)), style.width);
  }
  return text;
}

}  // namespace riserun::report
