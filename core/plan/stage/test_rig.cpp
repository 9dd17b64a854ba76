#include "plan/stage/test_rig.h"

#include "plan/judge/dials.h"
#include "plan/stage/rig_upright.h"
#include "plan/stage/test_air.h"
#include "quantity/nearly.h"
#include "reservoir/relief.h"

#include <algorithm>
#include <utility>

namespace riserun::plan {

namespace {

using quantity::at_most;
using quantity::more_than;

using catalog::Role;
using chain::BranchFlow;
using chain::BranchRules;
using chain::Freedom;

/// Where the catalog has nothing for a place, it ends in a port of this size for what is bought elsewhere: the usual
/// one of gauges and small valves (common practice).
const char* const kUsualInstrumentSize = "1/4";

template <class Fits>
std::vector<PartId> parts_that(const Catalog& catalog, Fits fits) {
  std::vector<PartId> found;
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row)
    if (fits(PartId{row})) found.push_back(PartId{row});
  return found;
}

/// The job's own of that kind, as they stand in its runs.
std::vector<PartId> own_of(const Catalog& catalog, const std::vector<ConnectionPlan>& connections, Role role) {
  std::vector<PartId> found = lent_by_job(catalog, connections);
  std::erase_if(found, [&](PartId part) { return catalog.family(catalog.part(part).family).role != role; });
  return found;
}

/// What shuts by hand and passes both ways, with like ends.
bool is_shut_off(const Catalog& catalog, PartId id) {
  const catalog::Part& part = catalog.part(id);
  const catalog::Family& family = catalog.family(part.family);
  return family.can_shut && family.role == Role::device && !part.one_way && !part.arrow && part.ports.size() == 2 &&
         part.ports[0].type == part.ports[1].type && is_sold_for_air(catalog, id);
}

/// Those that the job lends, and of each kind of end the cheapest on the shelf.
std::vector<PartId> shut_offs(const Catalog& catalog, const std::vector<PartId>& lent) {
  std::vector<PartId> found;
  for (const PartId part : parts_that(catalog, [&](PartId id) { return is_shut_off(catalog, id); })) {
    const catalog::Part& row = catalog.part(part);
    if (std::find(lent.begin(), lent.end(), part) != lent.end()) {
      found.push_back(part);
      continue;
    }
    if (!row.stocked) continue;
    const auto alike = std::find_if(found.begin(), found.end(), [&](PartId other) {
      return catalog.part(other).ports[0].type == row.ports[0].type &&
             std::find(lent.begin(), lent.end(), other) == lent.end();
    });
    if (alike == found.end())
      found.push_back(part);
    else if (row.price < catalog.part(*alike).price)
      *alike = part;
  }
  return found;
}

std::vector<catalog::PortUse> entered_by_first(const std::vector<PartId>& parts) {
  std::vector<catalog::PortUse> uses;
  uses.reserve(parts.size());
  for (const PartId part : parts) uses.push_back({part, 0});
  return uses;
}

class Rig {
 public:
  Rig(const Inputs& inputs, const std::vector<ConnectionPlan>& connections, const RigRequest& wanted, TestRig& rig)
      : inputs_(inputs), catalog_(inputs.catalog), connections_(connections), wanted_(wanted), rig_(rig) {}

  void ask(const Bin& bin);
  /// Kinds of joint and sizes that neither the port nor what goes on the rig has are of no use on it.
  void keep_to_own_kinds();

 private:
  void add(std::string name, const std::vector<PartId>& devices, bool relief);
  void add_feed();
  chain::PortEnd loose(PortTypeId type, std::string called) const {
    return {type, std::nullopt, Freedom::loose, std::move(called)};
  }
  /// The male end of the wall port's own kind in the size of most instruments.
  PortTypeId instrument_port() const;
  const JobPort* air_port() const;

  const Inputs& inputs_;
  const Catalog& catalog_;
  const std::vector<ConnectionPlan>& connections_;
  const RigRequest& wanted_;
  TestRig& rig_;
};

PortTypeId Rig::instrument_port() const {
  const auto size = catalog_.find_size(kUsualInstrumentSize);
  for (const PartId part :
       parts_that(catalog_, [&](PartId id) { return catalog_.family(catalog_.part(id).family).role == Role::gauge; })) {
    const PortTypeId type = catalog_.part(part).ports[0].type;
    if (size && catalog_.port_type(type).size == *size) return type;
  }
  return wanted_.port.type;
}

void Rig::add(std::string name, const std::vector<PartId>& devices, bool relief) {
  BranchRules rules;
  rules.flow = BranchFlow::from_base;
  rules.relief = relief;
  rules.devices = entered_by_first(devices);
  rig_.request.targets.push_back(loose(devices.empty() ? instrument_port() : PortTypeId{}, std::move(name)));
  rig_.request.branches.push_back(std::move(rules));
}

const JobPort* Rig::air_port() const {
  const std::vector<JobPort>& ports = inputs_.job.air.ports;
  for (const ConnectionPlan& connection : connections_)
    for (const JobPort& port : ports)
      if (connection.from == port.name ||
          std::find(connection.ends.begin(), connection.ends.end(), port.name) != connection.ends.end())
        return &port;
  return ports.empty() ? nullptr : &ports.front();
}

/// It ends in the shut-off: a hose leads from there to where the supply is worked. There the job's regulator stands,
/// with its restrictor towards the supply, as in the job's own run; without one a hand pump or a borrowed regulator.
void Rig::add_feed() {
  BranchRules rules;
  rules.flow = BranchFlow::to_base;
  for (const PartId valve : shut_offs(catalog_, lent_by_job(catalog_, connections_)))
    rules.devices.push_back({valve, 0});
  rig_.request.targets.push_back(loose(PortTypeId{}, "the shut-off"));
  rig_.request.branches.push_back(std::move(rules));
  const JobPort* supply = air_port();
  if (supply != nullptr && wanted_.fed_by_job) rig_.fed_from = supply->name;
}

void Rig::ask(const Bin& bin) {
  chain::ChainRequest& rules = rig_.request.rules;
  rules.from = {wanted_.port.type, wanted_.port.material, Freedom::fixed, "the " + wanted_.port.name, true};
  ask_for_test_air(inputs_, bin, rules);
  add("the gauge", wanted_.gauges, false);
  add("the relief valve", wanted_.reliefs, true);
  add_feed();
}

void Rig::keep_to_own_kinds() {
  const chain::AssemblyRequest& request = rig_.request;
  std::vector<PortTypeId> own = {request.rules.from.type};
  const auto add_ends = [&](PartId part) {
    for (const catalog::Port& port : catalog_.part(part).ports) own.push_back(port.type);
  };
  for (std::size_t i = 0; i < request.targets.size(); ++i) {
    if (request.branches[i].devices.empty()) own.push_back(request.targets[i].type);
    for (const catalog::PortUse& use : request.branches[i].devices)
      if (!is_shut_off(catalog_, use.part)) add_ends(use.part);
  }
  double widest = 0.0;
  std::vector<bool> kinds(catalog_.kinds().size(), false);
  for (const PortTypeId type : own) {
    kinds[catalog_.port_type(type).kind.row] = true;
    widest = std::max(widest, catalog_.nominal_inches(catalog_.port_type(type).size));
  }
  std::vector<bool>& banned = rig_.request.rules.banned;
  for (std::uint32_t row = 0; row < banned.size(); ++row)
    for (const catalog::Port& port : catalog_.parts()[row].ports) {
      const catalog::PortType& type = catalog_.port_type(port.type);
      if (!kinds[type.kind.row] || catalog_.nominal_inches(type.size) > widest) banned[row] = true;
    }
}

/// Of the bin first what the job lends, then what is left there.
class Owners {
 public:
  Owners(std::vector<PartId> lent, BinLeft& left) : lent_(std::move(lent)), left_(left) {}

  RigPart of(PartId part) {
    const auto there = std::find(lent_.begin(), lent_.end(), part);
    if (there != lent_.end()) {
      lent_.erase(there);
      return {part, RigPart::Whose::job};
    }
    return {part, left_.take(part) ? RigPart::Whose::bin : RigPart::Whose::bought};
  }

 private:
  std::vector<PartId> lent_;
  BinLeft& left_;
};

/// Whose each part is; the run then says so, too.
std::vector<RigPart> share_out(const Catalog& catalog, chain::Run& run, Owners owners) {
  std::vector<RigPart> parts;
  run.buy_count = 0;
  run.price = {};
  const auto owned = [&](PartId part, bool& from_bin) {
    parts.push_back(owners.of(part));
    from_bin = parts.back().whose != RigPart::Whose::bought;
    if (from_bin) return;
    ++run.buy_count;
    run.price += catalog.part(part).price;
  };
  for (chain::RunPart& link : run.parts) {
    owned(link.part, link.from_bin);
    for (chain::Follower& port : link.ports)
      if (port.what == chain::Follower::What::plug) owned(port.plug, port.from_bin);
  }
  for (chain::RunEnd& end : run.ends)
    if (end.device) owned(*end.device, end.from_bin);
  return parts;
}

/// As many of each as a rig could take: to share few of them out best would take longer than all else in a plan.
Bin plenty_of(const std::vector<PartId>& lent, const Bin& left) {
  constexpr int kPlenty = 16;
  Bin bin;
  for (const PartId part : lent)
    if (bin.count_of(part) == 0) bin.add(part, kPlenty);
  for (const catalog::BinItem& item : left.items)
    if (item.count > 0 && bin.count_of(item.part) == 0) bin.add(item.part, kPlenty);
  return bin;
}

}  // namespace

std::vector<PartId> lent_by_job(const Catalog& catalog, const std::vector<ConnectionPlan>& connections) {
  std::vector<PartId> lent;
  for (const ConnectionPlan& connection : connections) {
    if (connection.run() == nullptr) continue;
    for (const chain::RunPart& link : connection.run()->parts) {
      const bool cut = link.cut_length || catalog.part(link.part).cut_to_length;
      if (!cut) lent.push_back(link.part);
      for (const chain::Follower& plug : link.plugs()) lent.push_back(plug.plug);
    }
    for (const chain::RunEnd& end : connection.run()->ends)
      if (end.device) lent.push_back(*end.device);
  }
  return lent;
}

TestDial dial_for_test(const Inputs& inputs, const std::vector<ConnectionPlan>& connections, GaugePressure pressure,
                       std::optional<GaugePressure> marked) {
  const Catalog& catalog = inputs.catalog;
  std::optional<PartId> own;
  for (const PartId part : own_of(catalog, connections, Role::gauge)) {
    const auto scale = full_scale(catalog, part);
    if (!scale || !scale_shows(*scale, pressure)) continue;
    if (!own || (marked && dial_error(*scale, *marked) < dial_error(*full_scale(catalog, *own), *marked))) own = part;
  }
  if (own) return {{*own}, true};
  return {marked ? gauges_least_off(catalog, pressure, *marked) : gauges_to_show(catalog, pressure), false};
}

std::vector<PartId> reliefs_for_test(const Inputs& inputs, const std::vector<ConnectionPlan>& connections,
                                     GaugePressure pressure, GaugePressure most) {
  const Catalog& catalog = inputs.catalog;
  const auto fits = [&](PartId part) {
    const auto opens = relief_setting(catalog, part);
    return opens && more_than(*opens, pressure) && at_most(*opens, most);
  };
  for (const PartId part : own_of(catalog, connections, Role::relief_valve))
    if (fits(part)) return {part};
  std::vector<PartId> valves = parts_that(catalog, fits);
  std::optional<GaugePressure> nearest;
  for (const PartId part : valves) {
    const GaugePressure opens = *relief_setting(catalog, part);
    if (!nearest || more_than(opens, *nearest)) nearest = opens;
  }
  std::erase_if(valves, [&](PartId part) { return more_than(*nearest, *relief_setting(catalog, part)); });
  // It passes what a throttled test feed gives, whatever its size: the cheapest.
  const auto price = [&](PartId part) { return catalog.part(part).price; };
  const auto least =
      std::min_element(valves.begin(), valves.end(), [&](PartId a, PartId b) { return price(a) < price(b); });
  if (least == valves.end()) return valves;
  const Price lowest = price(*least);
  std::erase_if(valves, [&](PartId part) { return lowest < price(part); });
  return valves;
}

TestRig plan_test_rig(const Inputs& inputs, const chain::Finder& finder, const std::vector<ConnectionPlan>& connections,
                      const RigRequest& wanted, BinLeft& left) {
  TestRig rig;
  const std::vector<PartId> lent = lent_by_job(inputs.catalog, connections);
  const Bin bin = plenty_of(lent, left.bin());
  Rig asked(inputs, connections, wanted, rig);
  asked.ask(bin);
  const std::vector<bool> unfit = rig.request.rules.banned;
  asked.keep_to_own_kinds();
  // What no store has on its shelf, a way narrower than the valve, and other kinds only where nothing else does.
  for (const bool any_kind : {false, true}) {
    if (any_kind) rig.request.rules.banned = unfit;
    for (const bool narrow : {false, true}) {
      rig.request.branches[1].smallest_bore.reset();
      if (narrow) rig.request.branches[1].smallest_bore = millimetres(1.0);
      for (const bool special : {false, true}) {
        rig.request.rules.special_order = special;
        chain::Demand demand;
        demand.branched = rig.request;
        chain::Allocation allocation = finder.allocate({demand}, bin, chain::Order::bin);
        if (!allocation.of.front().met) continue;
        rig.answer = std::move(*allocation.of.front().run);
        rig.relief_stands = stand_relief_upright(inputs, wanted.port, std::get<chain::Run>(rig.answer));
        rig.parts = share_out(inputs.catalog, std::get<chain::Run>(rig.answer), Owners(lent, left));
        return rig;
      }
    }
  }
  rig.answer = std::get<chain::NoAssembly>(finder.find_assembly(rig.request));
  return rig;
}

}  // namespace riserun::plan
