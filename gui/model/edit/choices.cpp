#include "gui/model/edit/choices.h"

#include <algorithm>
#include <tuple>

namespace riserun::gui {

namespace {

using catalog::Catalog;
using catalog::Part;
using catalog::PartId;
using catalog::PortTypeId;

/// Whether the part leads from one neighbour's open end to the other's.
bool fits_between(const Catalog& catalog, const Part& part, std::size_t enter, PortTypeId behind) {
  for (std::size_t leave = 0; leave < part.ports.size(); ++leave) {
    if (leave == enter || (part.one_way && enter > leave)) continue;
    if (catalog.mating_rule(part.ports[leave].type, behind) != nullptr) return true;
  }
  return false;
}

bool is_allowed(const plan::ConnectionPlan& connection, const Catalog& catalog, PartId id, int in_bin) {
  const Part& part = catalog.part(id);
  const chain::ChainRequest& request = connection.request;
  const bool banned = !request.banned.empty() && request.banned[id.row];
  const bool to_be_had = part.stocked || request.special_order || in_bin > 0;
  const bool stands_it =
      (!request.rating || part.rating >= *request.rating) && (request.service != chain::Service::air || part.air);
  return !banned && to_be_had && stands_it && !catalog.family(part.family).weld_bung;
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
  std::vector<bool> seen(catalog.parts().size(), false);
  seen[now.row] = true;
  std::vector<Choice> choices;
  for (const catalog::Mate& mate : catalog.mates(before)) {
    for (const catalog::PortUse& use : catalog.uses(mate.other)) {
      const Part& part = catalog.part(use.part);
      if (seen[use.part.row] || part.ports.size() > most_ports) continue;
      const int in_bin = plan.job.bin.count_of(use.part);
      if (!fits_between(catalog, part, use.port, behind) || !is_allowed(run, catalog, use.part, in_bin)) continue;
      seen[use.part.row] = true;
      choices.push_back({use.part, in_bin});
    }
  }
  std::sort(choices.begin(), choices.end(), [&](const Choice& a, const Choice& b) {
    const auto rank = [&](const Choice& choice) {
      const Part& part = catalog.part(choice.part);
      return std::tuple(choice.in_bin == 0, !part.stocked, part.price.cents(), std::string_view(part.id));
    };
    return rank(a) < rank(b);
  });
  return choices;
}

}  // namespace riserun::gui
