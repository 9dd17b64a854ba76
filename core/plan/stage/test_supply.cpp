#include "plan/stage/test_supply.h"

#include "plan/stage/test_air.h"
#include "plan/stage/test_rig.h"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <utility>

namespace riserun::plan {

namespace {

/// What the regulator's outlet is screwed together with, of its own size: the tee that the hose leads from.
std::optional<PortTypeId> beyond(const Catalog& catalog, PartId regulator) {
  const PortTypeId outlet = catalog.part(regulator).ports.back().type;
  for (const catalog::Mate& mate : catalog.mates(outlet))
    if (catalog.port_type(mate.other).kind == catalog.port_type(outlet).kind &&
        catalog.port_type(mate.other).size == catalog.port_type(outlet).size)
      return mate.other;
  return std::nullopt;
}

/// Of the parts that the job lends those that the rig did not take.
std::vector<PartId> left_by_rig(std::vector<PartId> lent, const std::vector<RigPart>& rig) {
  for (const RigPart& taken : rig) {
    const auto there = std::find(lent.begin(), lent.end(), taken.part);
    if (taken.whose == RigPart::Whose::job && there != lent.end()) lent.erase(there);
  }
  return lent;
}

chain::ChainRequest request_for(const Inputs& inputs, const JobPort& supply, PortTypeId tee, const Bin& bin,
                                const std::vector<RigPart>& parts) {
  const Catalog& catalog = inputs.catalog;
  chain::ChainRequest request;
  request.from = {supply.type, supply.material, chain::Freedom::loose, "'" + supply.name + "'"};
  request.to = {tee, std::nullopt, chain::Freedom::loose, "the tee"};
  for (const RigPart& part : parts) request.needs.push_back({catalog.part(part.part).name, {part.part}});
  request.needs_in_order = true;
  request.special_order = true;
  ask_for_test_air(inputs, bin, request);
  return request;
}

}  // namespace

void join_up_at_supply(const Inputs& inputs, const chain::Finder& finder,
                       const std::vector<ConnectionPlan>& connections, LeakTestPlan& test, BinLeft& left) {
  if (!test.rig || test.rig->fed_from.empty() || test.at_supply.empty()) return;
  const JobPort* supply = port_named(inputs.job.air.ports, test.rig->fed_from);
  const auto tee = beyond(inputs.catalog, test.at_supply.back().part);
  if (supply == nullptr || !supply->type.valid() || !tee) return;
  std::vector<PartId> lent = left_by_rig(lent_by_job(inputs.catalog, connections), test.rig->parts);
  Bin bin = left.bin();
  for (const PartId part : lent) bin.add(part, 1);
  for (const RigPart& part : test.at_supply)
    if (part.whose != RigPart::Whose::job) bin.add(part.part, 1);  // it is there already
  const chain::Answer answer = finder.find(request_for(inputs, *supply, *tee, bin, test.at_supply));
  const auto* run = std::get_if<chain::Chain>(&answer);
  if (run == nullptr || run->parts.empty() || run->parts.back().part != test.at_supply.back().part) return;
  std::vector<RigPart> joined;
  auto asked = test.at_supply.begin();
  for (const chain::RunPart& link : run->parts) {
    if (asked != test.at_supply.end() && asked->part == link.part) {
      joined.push_back(*asked++);
      continue;
    }
    const auto there = std::find(lent.begin(), lent.end(), link.part);
    if (there != lent.end()) {
      lent.erase(there);
      joined.push_back({link.part, RigPart::Whose::job});
    } else {
      joined.push_back({link.part, left.take(link.part) ? RigPart::Whose::bin : RigPart::Whose::bought});
    }
  }
  if (asked == test.at_supply.end()) test.at_supply = std::move(joined);
}

}  // namespace riserun::plan
