// Weld bungs: of the tank's metal, and of nothing that cracks, fumes or will not weld.
#include "plan/stage/bungs.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::plan {

namespace {

using reservoir::BungKind;

/// What a bung must be welded to, in the words of catalog/materials.yaml.
std::string metal_of_tank(const Settled& settled) {
  const std::string& name = settled.metal.name;
  if (name.find("alumin") != std::string::npos) return "aluminium";
  return name.find("stainless") != std::string::npos ? "stainless steel" : "steel";
}

/// Why the part or the material is no weld bung for the tank; empty: nothing against it.
std::string objection(const Inputs& inputs, const JobPort& port) {
  const Catalog& catalog = inputs.catalog;
  const catalog::Part* part = port.bung_part ? &catalog.part(*port.bung_part) : nullptr;
  const auto id = part != nullptr ? std::optional(part->material) : port.material;
  if (!id) return "";
  const catalog::Material& material = catalog.material(*id);
  if (!material.not_welded.empty()) return fmt::format("{} is no weld bung: {}", material.name, material.not_welded);
  if (!material.metal) return fmt::format("{} cannot be welded", material.name);
  if (material.welds_to != metal_of_tank(inputs.settled))
    return fmt::format("{} is not the metal of the tank, {}", material.name, metal_of_tank(inputs.settled));
  if (part == nullptr) return "";
  if (part->straight_tapped)
    return fmt::format("the {} may be tapped straight, so that a taper thread seals on a turn or two", part->name);
  if (!catalog.family(part->family).weld_bung)
    return fmt::format("the {} is not made to be welded into a wall", part->name);
  return "";
}

bool has_port(const catalog::Part& part, PortTypeId type) {
  return std::any_of(part.ports.begin(), part.ports.end(), [&](const catalog::Port& end) { return end.type == type; });
}

void check_bung(const Inputs& inputs, const JobPort& port, Remarks& remarks) {
  const Catalog& catalog = inputs.catalog;
  const std::string mend =
      fmt::format("weld in a half or full coupling of {}, class 3000",
                  metal_of_tank(inputs.settled) == "steel" ? "forged steel" : metal_of_tank(inputs.settled));
  if (port.bung_part && !has_port(catalog.part(*port.bung_part), port.type))
    remarks.refuse({Topic::whole_job,
                    fmt::format("The bung of '{}', {}, has no {}.", port.name, part_title(catalog, *port.bung_part),
                                catalog.written(port.type)),
                    "", "", "name the part that the port is of in 'bung part'"});
  const std::string why = objection(inputs, port);
  if (why.empty()) return;
  if (!port.welded_in.value_or(true))
    remarks.refuse({Topic::whole_job, fmt::format("The bung of '{}': {}.", port.name, why), "", "", mend});
  else
    remarks.caution(Topic::whole_job,
                    fmt::format("The bung of '{}': {}. Look at its weld for cracks before each leak test, or {}.",
                                port.name, why, mend),
                    "common practice");
}

}  // namespace

void check_bungs(const Inputs& inputs, Remarks& remarks) {
  for (const JobPort& port : inputs.job.reservoir.ports) {
    const bool screwed_in = port.bung == BungKind::double_tapped_bushing;
    if (!screwed_in) check_bung(inputs, port, remarks);
  }
}

bool welds_to_tank(const Inputs& inputs, MaterialId material) {
  return inputs.catalog.material(material).welds_to == metal_of_tank(inputs.settled);
}

}  // namespace riserun::plan
