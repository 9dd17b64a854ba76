#include "gui/model/edit/choices.h"

#include "chain/finder.h"

#include <algorithm>
#include <tuple>

namespace riserun::gui {

namespace {

using catalog::Catalog;
using catalog::Part;
using catalog::PartId;
using catalog::PortTypeId;

/// The ways through the part from one neighbour's open end to the other's.
void add_ways(const Catalog& catalog, const catalog::PortUse& use, const chain::PlacedPart& place, PortTypeId behind,
              std::vector<chain::PlacedPart>& ways) {
  const Part& part = catalog.part(use.part);
  for (std::size_t leave = 0; leave < part.ports.size(); ++leave) {
    if (leave == use.port || catalog.mating_rule(part.ports[leave].type, behind) == nullptr) continue;
    ways.push_back({use.part, use.port, static_cast<std::uint8_t>(leave), place.before, place.behind});
  }
}

/// The metals that stand beside that place of the chain.
chain::PlacedPart place_in(const Catalog& catalog, const plan::ConnectionPlan& run, std::size_t place) {
  const std::vector<chain::RunPart>& parts = run.chain()->parts;
  const auto metal = [&](const chain::RunPart& link, std::size_t port) {
    return catalog.part(link.part).material_at(port);
  };
  chain::PlacedPart now{parts[place].part};
  now.before =
      place == 0 ? run.request.from.material : std::optional(metal(parts[place - 1], parts[place - 1].leave()));
  now.behind = place + 1 == parts.size() ? run.request.to.material
                                         : std::optional(metal(parts[place + 1], parts[place + 1].enter));
  return now;
}

}  // namespace

std::vector<Choice> choices_at(const plan::Plan& plan, std::size_t connection, std::size_t place) {
  const Catalog& catalog = *plan.catalog;
  const plan::ConnectionPlan& run = plan.connections[connection];
  const chain::Chain& chain = *run.chain();
  const PartId now = chain.parts[place].part;
  const std::size_t most_ports = std::max<std::size_t>(2, catalog.part(now).ports.size());
  const PortTypeId before = chain.joints[place].a;
  const PortTypeId behind = chain.joints[place + 1].b;
  std::vector<chain::PlacedPart> ways;
  for (const catalog::Mate& mate : catalog.mates(before)) {
    for (const catalog::PortUse& use : catalog.uses(mate.other)) {
      const Part& part = catalog.part(use.part);
      if (part.ports.size() > most_ports || catalog.family(part.family).weld_bung != catalog::WeldBung::none) continue;
      add_ways(catalog, use, place_in(catalog, run, place), behind, ways);
    }
  }
  chain::ChainRequest request = run.request;
  request.bin = plan.job.bin;  // what other runs of the job have taken can be had all the same
  const std::vector<bool> allowed = chain::allowed_parts(catalog, request, ways);
  std::vector<bool> seen(catalog.parts().size(), false);
  seen[now.row] = true;
  std::vector<Choice> choices;
  for (std::size_t row = 0; row < ways.size(); ++row) {
    const PartId id = ways[row].part;
    if (!allowed[row] || seen[id.row]) continue;
    seen[id.row] = true;
    choices.push_back({id, plan.job.bin.count_of(id)});
  }
  std::sort(choices.begin(), choices.end(), [&](const Choice& a, const Choice& b) {
    const auto rank = [&](const Choice& choice) {
      const Part& part = catalog.part(choice.part);
      return std::tuple(choice.in_bin == 0, !part.stocked, part.price.weight(), std::string_view(part.id));
    };
    return rank(a) < rank(b);
  });
  return choices;
}

}  // namespace riserun::gui
