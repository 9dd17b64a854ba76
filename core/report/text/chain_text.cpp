#include "report/text/chain_text.h"

#include "report/text/duty_text.h"
#include "report/text/span_text.h"
#include "report/words/reason.h"
#include "report/words/run_words.h"
#include "report/words/say.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

namespace riserun::report {

namespace {

using catalog::Catalog;
using chain::Chain;
using chain::ChainRequest;
using chain::NoChain;
using chain::RunPart;

constexpr std::size_t kReachableShown = 12;
constexpr std::size_t kMaterialsShown = 2;

// "hex bushing (brass)", a part twice as "2 x hex bushing (brass)".
std::string shopping_words(const Catalog& catalog, const std::vector<chain::PartId>& parts) {
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (std::find(parts.begin(), parts.begin() + static_cast<std::ptrdiff_t>(i), parts[i]) !=
        parts.begin() + static_cast<std::ptrdiff_t>(i))
      continue;
    const auto times = std::count(parts.begin(), parts.end(), parts[i]);
    const catalog::Part& part = catalog.part(parts[i]);
    text += fmt::format("{}{}{} ({})", text.empty() ? "" : " and ", times > 1 ? fmt::format("{} x ", times) : "",
                        part.name, catalog.material(part.material).name);
  }
  return text;
}

std::string price_change(Price before, Price after) {
  if (after == before) return "at the same price";
  return after < before ? write_price(before - after) + " less" : write_price(after - before) + " more";
}

std::string shelf_note(const Catalog& catalog, const Chain& chain, const chain::Substitute& substitute) {
  const std::string lead = "or, if the shelf is empty: ";
  if (!substitute.chain) return lead + "nothing else on sale makes up for it";
  std::string text = lead + (substitute.buy_also.empty() ? "the rest of the cart does without it"
                                                         : shopping_words(catalog, substitute.buy_also));
  if (!substitute.put_back.empty()) text += ", and put back " + shopping_words(catalog, substitute.put_back);
  return text + fmt::format("; {} in all, {}", counted(substitute.chain->part_count, "part", "parts"),
                            price_change(chain.price, substitute.chain->price));
}

// Each note stands under the line of the part that it is about; a part bought twice has one note, under the first.
std::string with_notes(const std::string& lines, const std::vector<std::string>& notes) {
  std::string text;
  std::size_t start = 0;
  for (std::size_t row = 0; start < lines.size(); ++row) {
    const std::size_t end = lines.find('\n', start) + 1;
    text += lines.substr(start, end - start);
    if (!notes[row].empty()) text += wrapped("       ", notes[row]);
    start = end;
  }
  return text;
}

// A piece that is cut to measure says so; what must be bought for it says how much.
std::string cut_label(const Catalog& catalog, const catalog::Part& part, const RunPart& link, const Style& style) {
  const std::string label = part_label(catalog, part);
  return link.cut_length ? fmt::format("{}, cut to {}", label, write_length(*link.cut_length, style.units)) : label;
}

std::string part_rows(const Catalog& catalog, const Chain& chain, const std::vector<chain::Substitute>& substitutes,
                      const Style& style) {
  std::vector<std::vector<std::string>> rows;
  std::vector<std::string> notes;
  std::vector<chain::PartId> noted;
  const auto add_note = [&](chain::PartId part, bool from_bin) {
    notes.emplace_back();
    const auto substitute = std::find_if(substitutes.begin(), substitutes.end(),
                                         [&](const chain::Substitute& s) { return s.instead_of == part; });
    const bool known = std::find(noted.begin(), noted.end(), part) != noted.end();
    if (from_bin || known || substitute == substitutes.end()) return;
    notes.back() = shelf_note(catalog, chain, *substitute);
    noted.push_back(part);
  };
  for (std::size_t i = 0; i < chain.parts.size(); ++i) {
    const RunPart& link = chain.parts[i];
    const catalog::Part& part = catalog.part(link.part);
    rows.push_back(
        {fmt::format("{}.", i + 1), cut_label(catalog, part, link, style),
         catalog.written(part.ports[link.enter].type) + " -> " + catalog.written(part.ports[link.leave()].type),
         source_of(part, link.from_bin, link.pieces)});
    add_note(link.part, link.from_bin);
    for (const chain::Follower& port : link.plugs()) {
      const catalog::Part& plug = catalog.part(port.plug);
      rows.push_back({"", "  plugged: " + part_label(catalog, plug), "", source_of(plug, port.from_bin)});
      add_note(port.plug, port.from_bin);
    }
  }
  return with_notes(columns(rows, "  ", {0}), notes);
}

std::string length_with_band(const Chain& chain, const Style& style) {
  // Where more goes in than the bodies are long, the two faces pass each other.
  const bool overlap = chain.length < Length{};
  const std::string nominal =
      overlap ? "overlapping by " + write_length(-chain.length, style.units) : write_length(chain.length, style.units);
  if (chain.length_tolerance <= Length{}) return nominal;
  return fmt::format("{}, plus or minus {}", nominal, write_length(chain.length_tolerance, style.units));
}

std::string sums(const Catalog& catalog, const ChainRequest& request, const Chain& chain, const Style& style) {
  std::string text;
  if (!chain.parts.empty())
    text = fmt::format("{}, {} to buy, about {}. ", counted(chain.part_count, "part", "parts"), chain.buy_count,
                       write_price(chain.price));
  text += fmt::format("Port to port {}.", length_with_band(chain, style));
  if (!chain.parts.empty()) {
    text += fmt::format(" Weakest part: {} of water at room temperature{}.",
                        write_pressure_alone(chain.rating, style.units), chain.air ? "" : "; not for compressed air");
    text += " " + duty_sentence(catalog, all_parts(chain), style.units);
    if (request.service == chain::Service::water)
      text += fmt::format(" Head lost at {}: {}.", write_volume_flow(request.flow, style.units),
                          write_head(chain.head, style.units));
  }
  return wrapped("  ", text);
}

std::string reachable(const Catalog& catalog, const std::string& from, const std::vector<chain::PortTypeId>& ports) {
  std::string list;
  for (std::size_t i = 0; i < std::min(ports.size(), kReachableShown); ++i)
    list += (i ? ", " : "") + catalog.written(ports[i]);
  if (ports.size() > kReachableShown) list += fmt::format(" and {} more", ports.size() - kReachableShown);
  return wrapped("    - ",
                 fmt::format("from {}: {}", from, list.empty() ? "nothing that may be used goes onto it" : list));
}

std::string found_text(const Catalog& catalog, const ChainRequest& request, const Chain& chain, const Style& style,
                       const std::vector<chain::Substitute>& substitutes = {}) {
  std::string text = part_rows(catalog, chain, substitutes, style);
  if (chain.parts.empty()) text = "  The two ports go straight together; no part is needed.\n";
  text += sums(catalog, request, chain, style);
  if (chain.span) text += wrapped("  ", span_sentences(catalog, chain, style.units));
  return text + build_order_text(chain, style) + bullet_list("Watch", say_all(chain.cautions, style.units));
}

bool names_held_ends(const NoChain& none) {
  return std::any_of(none.conflict.begin(), none.conflict.end(),
                     [](const quantity::Fact& rule) { return rule.code == "held_ends"; });
}

std::string what_it_takes(const chain::Lift& lift) {
  const std::string parts = counted(lift.part_count, "part", "parts");
  if (lift.buy_count == 0) return parts + ", nothing to buy";
  return fmt::format("{}, {} to buy, about {}", parts, lift.buy_count, write_price(lift.price));
}

// "allow more parts: 4 parts, 3 to buy, about $9.10"
std::vector<std::string> lifts_with_cost(const NoChain& none, UnitSystem units) {
  std::vector<std::string> lines;
  for (const chain::Lift& lift : none.lifts)
    lines.push_back(words_of(lift, units) + ": then " +
                    (lift.part_count == 0 ? "no part is needed" : what_it_takes(lift)));
  return lines;
}

std::string none_text(const Catalog& catalog, const ChainRequest& request, const NoChain& none, UnitSystem units) {
  std::string text = wrapped("  ", "No chain: " + say(none.reason, units));
  if (none.special_order) {
    const catalog::Part& part = catalog.part(*none.special_order);
    text += wrapped("  ", fmt::format("A special order mends it: {} (about {}).", part_label(catalog, part),
                                      write_price(part.price)));
  }
  if (none.missing_part && !none.special_order)
    text += wrapped("  ", "One part would complete it, if it can be had: " + say(*none.missing_part, units) + ".");
  if (none.conflict.size() > 1)
    if (const quantity::Fact at_odds = chain::cannot_be_kept(none.conflict); none.reason != at_odds)
      text += wrapped("  ", "And " + say(at_odds, units) + ".");
  if (none.conflict.size() > 1 && names_held_ends(none))
    text += wrapped("  ",
                    "Between held ends the last joint must be made without turning either: by a union, a swivel nut, a "
                    "hose or a flange.");
  text += bullet_list("Any one of these mends it",
                      none.lifts.empty() ? say_all(none.mends, units) : lifts_with_cost(none, units));
  text += bullet_list("Do not try", say_all(none.look_alikes, units));
  if (none.only_the_distance) return text;
  text += "  What can be got to\n" + reachable(catalog, chain::name_of_first(request.from), none.reachable_from) +
          reachable(catalog, chain::name_of_last(request.to), none.reachable_to);
  return text;
}

std::string figures_side_by_side(const std::vector<chain::Alternative>& rows, const Style& style) {
  std::vector<std::vector<std::string>> table{{"", "parts", "buy", "price", "length", "head lost"}};
  std::vector<std::string> beside{"beside the first"};
  for (const chain::Alternative& row : rows) {
    const Chain& chain = row.chain;
    table.push_back({fmt::format("{}.", table.size()), std::to_string(chain.part_count),
                     std::to_string(chain.buy_count), write_price(chain.price), write_length(chain.length, style.units),
                     chain.parts.empty() ? "none" : write_head(chain.head, style.units)});
    beside.push_back(&row == rows.data() ? kBestOfAll : reason(rows.front().chain, chain, style.units));
  }
  const std::string lines = columns(table, "  ", {0, 1, 2, 3, 4, 5});
  std::string text;
  std::size_t start = 0;
  for (const std::string& words : beside) {
    const std::size_t end = lines.find('\n', start);
    text += wrapped(lines.substr(start, end - start) + "  ", words);
    start = end + 1;
  }
  return text;
}

std::string parts_side_by_side(const Catalog& catalog, const std::vector<chain::Alternative>& rows) {
  std::string text;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    std::string words = chain_in_one_line(catalog, rows[i].chain);
    const std::vector<std::string>& same_in = rows[i].same_in;
    for (std::size_t k = 0; k < std::min(same_in.size(), kMaterialsShown); ++k)
      words += (k ? ", or " : "; the same in ") + same_in[k];
    if (same_in.size() > kMaterialsShown) words += fmt::format(", and {} more", same_in.size() - kMaterialsShown);
    text += wrapped(fmt::format("  {:>2}. ", i + 1), words);
  }
  return text;
}

}  // namespace

std::string source_of(const catalog::Part& part, bool from_bin, int pieces) {
  if (from_bin) return pieces == 1 ? "bin" : fmt::format("bin, {} of them", pieces);
  const std::string price =
      (pieces == 1 ? "buy " : fmt::format("buy {} for ", pieces)) + write_price(part.price * pieces);
  return part.stocked ? price : price + " (special order)";
}

std::string part_label(const Catalog& catalog, const catalog::Part& part) {
  std::string label = part.name + ", " + catalog.material(part.material).name;
  if (part.far_material) label += "/" + catalog.material(*part.far_material).name;
  return part.measured ? label + " (measured)" : label;
}

std::string build_order_text(const chain::Run& run, const Style& style) {
  std::string text = run.buildable ? "  Build order\n" : "  It cannot be screwed together\n";
  if (!run.buildable) return text + wrapped("    ", kNotBuildable);
  for (std::size_t i = 0; i < run.steps.size(); ++i)
    text += wrapped(fmt::format("    {:>2}. ", i + 1), say(run.steps[i].what, style.units));
  return text;
}

std::string bullet_list(const std::string& title, const std::vector<std::string>& sentences) {
  if (sentences.empty()) return "";
  std::string text = "  " + title + "\n";
  for (const std::string& sentence : sentences) text += wrapped("    - ", sentence);
  return text;
}

std::string chain_text(const Catalog& catalog, const ChainRequest& request, const chain::Answer& answer,
                       const Style& style) {
  if (const Chain* chain = std::get_if<Chain>(&answer)) return found_text(catalog, request, *chain, style);
  return none_text(catalog, request, std::get<NoChain>(answer), style.units);
}

std::string alternatives_text(const Catalog& catalog, const ChainRequest& request,
                              const std::vector<chain::Alternative>& rows,
                              const std::vector<chain::Substitute>& substitutes, const Style& style) {
  return figures_side_by_side(rows, style) + parts_side_by_side(catalog, rows) + "\nThe first in full\n" +
         found_text(catalog, request, rows.front().chain, style, substitutes);
}

std::string chain_in_one_line(const Catalog& catalog, const Chain& chain) {
  if (chain.parts.empty()) return "the two ports go straight together";
  std::string text = counted(chain.part_count, "part", "parts") + ": ";
  for (std::size_t i = 0; i < chain.parts.size(); ++i)
    text += (i ? " + " : "") + part_label(catalog, catalog.part(chain.parts[i].part));
  return text;
}

}  // namespace riserun::report
