// Weld bungs: of the tank's metal, and of nothing that cracks, fumes or will not weld.
#include "plan/stage/bungs.h"

#include "plan/job/weld_bung.h"

#include <algorithm>

namespace riserun::plan {

namespace {

using reservoir::BungKind;

/// Why the part or the material is no weld bung for the tank; nullopt: nothing against it.
std::optional<Fact> objection(const Inputs& inputs, const JobPort& port) {
  const Catalog& catalog = inputs.catalog;
  const catalog::Part* part = port.bung_part ? &catalog.part(*port.bung_part) : nullptr;
  const auto id = part != nullptr ? std::optional(part->material) : port.material;
  if (!id) return std::nullopt;
  const catalog::Material& material = catalog.material(*id);
  if (!material.not_welded.empty()) return fact("material_is_no_bung", material.name, material.not_welded);
  if (!material.metal) return fact("material_cannot_be_welded", material.name);
  if (material.welds_to != metal_of_tank(inputs.settled))
    return fact("not_the_metal_of_the_tank", material.name, metal_of_tank(inputs.settled));
  if (part == nullptr) return std::nullopt;
  if (part->straight_tapped) return fact("part_may_be_tapped_straight", part->name);
  if (catalog.family(part->family).weld_bung == catalog::WeldBung::none) return fact("part_is_no_bung", part->name);
  return std::nullopt;
}

bool has_port(const catalog::Part& part, PortTypeId type) {
  return std::any_of(part.ports.begin(), part.ports.end(), [&](const catalog::Port& end) { return end.type == type; });
}

void check_bung(const Inputs& inputs, const JobPort& port, Remarks& remarks) {
  const Catalog& catalog = inputs.catalog;
  const bool of_steel = inputs.settled.metal.weld_metal == reservoir::WeldMetal::steel;
  const Fact mend = fact("weld_in_a_coupling", of_steel ? "forged steel" : metal_of_tank(inputs.settled));
  if (port.bung_part && !has_port(catalog.part(*port.bung_part), port.type))
    remarks.refuse({Topic::whole_job,
                    fact("bung_part_has_no_such_port", port.name, part_title(catalog, *port.bung_part),
                         catalog.written(port.type)),
                    {},
                    fact("name_the_bung_part")});
  const BungKind kind = port.bung.value_or(BungKind::half_coupling);
  if (port.welded_in == false && kind != BungKind::welded_riser && weld_bung(catalog, port, kind) == nullptr)
    remarks.caution(Topic::whole_job,
                    fact("bung_not_in_catalog", port.name, catalog.written(port.type),
                         kind == BungKind::half_coupling ? "half coupling" : "full coupling"),
                    "catalog");
  const std::optional<Fact> why = objection(inputs, port);
  if (!why) return;
  // What no weld holds is not there either, whatever the job says; of the rest only what is said to be there is left to
  // its inspection.
  const bool is_there = port.welded_in.value_or(inputs.settled.lid_closed) && why->code != "material_cannot_be_welded";
  if (!is_there)
    remarks.refuse({Topic::whole_job, fact("bung_must_not_be_welded_in", port.name, *why), {}, mend});
  else
    remarks.caution(Topic::whole_job, fact("bung_is_welded_in", port.name, *why, mend), "common practice");
}

}  // namespace

void check_bungs(const Inputs& inputs, Remarks& remarks) {
  for (const JobPort& port : inputs.job.reservoir.ports) {
    const bool screwed_in = port.bung == BungKind::double_tapped_bushing;
    if (screwed_in)
      remarks.caution(Topic::riser, fact("double_tapped_is_rare", port.name), "common practice");
    else
      check_bung(inputs, port, remarks);
  }
}

std::string_view metal_of_tank(const Settled& settled) { return reservoir::weld_metal_name(settled.metal.weld_metal); }

bool welds_to_tank(const Inputs& inputs, MaterialId material) {
  return inputs.catalog.material(material).welds_to == metal_of_tank(inputs.settled);
}

}  // namespace riserun::plan
