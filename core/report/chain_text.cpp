#include "report/chain_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

namespace riserun::report {

namespace {

using catalog::Catalog;
using chain::Chain;
using chain::ChainPart;
using chain::ChainRequest;
using chain::NoChain;

constexpr std::size_t kReachableShown = 12;

std::string part_rows(const Catalog& catalog, const Chain& chain) {
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = 0; i < chain.parts.size(); ++i) {
    const ChainPart& link = chain.parts[i];
    const catalog::Part& part = catalog.part(link.part);
    rows.push_back(
        {fmt::format("{}.", i + 1), part_label(catalog, part),
         catalog.written(part.ports[link.enter].type) + " -> " + catalog.written(part.ports[link.leave].type),
         source_of(part, link.from_bin)});
    for (std::size_t k = 0; k < link.plugs.size(); ++k) {
      const catalog::Part& plug = catalog.part(link.plugs[k]);
      rows.push_back({"", "  plugged: " + part_label(catalog, plug), "", source_of(plug, link.plug_from_bin[k])});
    }
  }
  return columns(rows, "  ", {0});
}

std::string length_with_band(const Chain& chain, const Style& style) {
  const std::string nominal = write_length(chain.length, style.units);
  if (chain.length_tolerance <= Length{}) return nominal;
  return fmt::format("{}, plus or minus {}", nominal, write_length(chain.length_tolerance, style.units));
}

std::string sums(const ChainRequest& request, const Chain& chain, const Style& style) {
  std::string text = fmt::format("{}, {} to buy, about {}.", counted(chain.part_count, "part", "parts"),
                                 chain.buy_count, write_price(chain.price));
  text += fmt::format(" Port to port {}.", length_with_band(chain, style));
  if (!chain.parts.empty()) {
    text += fmt::format(" Weakest part: {} of water at room temperature{}.",
                        write_pressure_alone(chain.rating, style.units), chain.air ? "" : "; not for compressed air");
    text += fmt::format(" Head lost at {}: {}.", write_volume_flow(request.flow, style.units),
                        write_head(chain.head, style.units));
  }
  return wrapped("  ", text);
}

std::string build_order(const Chain& chain) {
  std::string text = chain.buildable ? "  Build order\n" : "  It cannot be screwed together\n";
  if (!chain.buildable) return text + wrapped("    ", chain.not_buildable_because);
  for (std::size_t i = 0; i < chain.steps.size(); ++i)
    text += wrapped(fmt::format("    {:>2}. ", i + 1), chain.steps[i].text);
  return text;
}

std::string reachable(const Catalog& catalog, const std::string& from, const std::vector<chain::PortTypeId>& ports) {
  std::string list;
  for (std::size_t i = 0; i < std::min(ports.size(), kReachableShown); ++i)
    list += (i ? ", " : "") + catalog.written(ports[i]);
  if (ports.size() > kReachableShown) list += fmt::format(" and {} more", ports.size() - kReachableShown);
  return wrapped("    - ", fmt::format("from {}: {}", from, list.empty() ? "nothing goes onto it" : list));
}

std::string found_text(const Catalog& catalog, const ChainRequest& request, const Chain& chain, const Style& style) {
  std::string text = part_rows(catalog, chain);
  if (chain.parts.empty()) text = "  The two ports go straight together; no part is needed.\n";
  return text + sums(request, chain, style) + build_order(chain) + bullet_list("Watch", chain.cautions);
}

std::string none_text(const Catalog& catalog, const ChainRequest& request, const NoChain& none) {
  std::string text = wrapped("  ", "No chain: " + none.reason);
  if (none.special_order) {
    const catalog::Part& part = catalog.part(*none.special_order);
    text += wrapped("  ", fmt::format("A special order mends it: {} (about {}).", part_label(catalog, part),
                                      write_price(part.price)));
  }
  if (none.missing_part)
    text += wrapped("  ", "One part would complete it, if it can be had: " + *none.missing_part + ".");
  text += bullet_list("Any one of these mends it", none.mends);
  text += bullet_list("Do not try", none.look_alikes);
  text += "  What can be got to\n" + reachable(catalog, chain::name_of_first(request.from), none.reachable_from) +
          reachable(catalog, chain::name_of_last(request.to), none.reachable_to);
  return text;
}

}  // namespace

std::string source_of(const catalog::Part& part, bool from_bin) {
  if (from_bin) return "bin";
  const std::string price = "buy " + write_price(part.price);
  return part.stocked ? price : price + " (special order)";
}

std::string part_label(const Catalog& catalog, const catalog::Part& part) {
  std::string label = part.name + ", " + catalog.material(part.material).name;
  if (part.far_material) label += "/" + catalog.material(*part.far_material).name;
  return part.measured ? label + " (measured)" : label;
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
  return none_text(catalog, request, std::get<NoChain>(answer));
}

std::string chain_in_one_line(const Catalog& catalog, const Chain& chain) {
  if (chain.parts.empty()) return "the two ports go straight together";
  std::string text = counted(chain.part_count, "part", "parts") + ": ";
  for (std::size_t i = 0; i < chain.parts.size(); ++i)
    text += (i ? " + " : "") + part_label(catalog, catalog.part(chain.parts[i].part));
  return text;
}

}  // namespace riserun::report
