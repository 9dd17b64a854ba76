#include "plan/stage/riser_bushing.h"

#include "plan/job/weld_bung.h"
#include "plan/sold.h"
#include "plan/stage/bungs.h"

#include <algorithm>
#include <vector>

namespace riserun::plan {

namespace {

/// The weld coupling that takes that male thread: of the metal, else of any.
std::optional<PartId> coupling_for(const Catalog& catalog, PortTypeId outer, std::string_view metal) {
  std::optional<PartId> any;
  for (const catalog::Mate& mate : catalog.mates(outer))
    for (const catalog::PortUse& use : catalog.uses(mate.other)) {
      const catalog::Part& part = catalog.part(use.part);
      if (catalog.family(part.family).weld_bung != catalog::WeldBung::full_coupling) continue;
      if (catalog.material(part.material).welds_to == metal) return use.part;
      if (!any) any = use.part;
    }
  return any;
}

std::optional<RiserBushing> as_bushing(const Catalog& catalog, PartId id, PortTypeId inner, std::string_view metal) {
  const catalog::Part& part = catalog.part(id);
  if (part.ports.size() != 2 || part.ports[1].type != inner) return std::nullopt;
  const auto size_of = [&](const catalog::Port& port) { return catalog.size_name(catalog.port_type(port.type).size); };
  const catalog::JointSize* outer = catalog.joint_size(catalog.port_type(part.ports[0].type));
  RiserBushing bushing;
  bushing.part = id;
  bushing.large = size_of(part.ports[0]);
  bushing.small = size_of(part.ports[1]);
  bushing.length = straight_length(part);
  bushing.goes_in = outer != nullptr ? outer->make_up() : bushing.length;
  bushing.coupling = coupling_for(catalog, part.ports[0].type, metal);
  return bushing;
}

}  // namespace

Length opening_of(const Catalog& catalog, const RiserBushing& bushing) {
  return bushing.coupling ? catalog.part(*bushing.coupling).ports[0].bore : Length{};
}

std::optional<RiserBushing> riser_bushing(const Catalog& catalog, PortTypeId inner, Length outside,
                                          std::optional<PartId> named, std::string_view metal) {
  if (named) return as_bushing(catalog, *named, inner, metal);
  std::optional<RiserBushing> best;
  for (const PartId id : parts_of(catalog, "double-tapped bushing")) {
    const auto bushing = as_bushing(catalog, id, inner, metal);
    if (!bushing || !(opening_of(catalog, *bushing) > outside)) continue;
    if (!best || opening_of(catalog, *bushing) < opening_of(catalog, *best)) best = bushing;
  }
  return best;
}

void hang_in_bushing(const Inputs& inputs, const JobPort& bung, RiserPlan& plan, Remarks& remarks) {
  reservoir::RiserRequest& request = plan.request;
  if (request.bung != reservoir::BungKind::double_tapped_bushing) return;
  plan.bushing = riser_bushing(inputs.catalog, bung.type, request.pipe.outside_diameter, bung.bung_part,
                               metal_of_tank(inputs.settled));
  if (!plan.bushing || !plan.bushing->coupling) return;
  const RiserBushing& held = *plan.bushing;
  const Length coupling = bung.bung_length.value_or(straight_length(inputs.catalog.part(*held.coupling)));
  remarks.assume(fact("riser_hangs_in_bushing", held.large, held.small, held.length, coupling, held.goes_in));
  const Length over_coupling = held.length - held.goes_in;
  if (bung.projects) {
    plan.bung_projection = *bung.projects;
  } else if (bung.face_height) {
    plan.bung_projection = std::max(metres(0.0), request.box.height + coupling + over_coupling - *bung.face_height);
  } else {
    plan.bung_projection = coupling / 2.0;
    remarks.assume(fact("bung_projection", plan.bung_projection));
  }
  request.bung_length = held.length;
  request.bung_projection = plan.bung_projection - coupling + held.goes_in;
  request.bung_opening = opening_of(inputs.catalog, held);
}

}  // namespace riserun::plan
