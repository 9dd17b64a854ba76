#include "plan/job/weld_bung.h"

namespace riserun::plan {

using catalog::WeldBung;
using reservoir::BungKind;

const catalog::Part* weld_bung(const Catalog& catalog, const JobPort& port, BungKind kind) {
  if (!port.type.valid() || kind == BungKind::welded_riser) return nullptr;
  const auto is_bung = [&](const catalog::Part& part) { return catalog.family(part.family).weld_bung; };
  if (port.bung_part && is_bung(catalog.part(*port.bung_part)) != WeldBung::none) return &catalog.part(*port.bung_part);
  const WeldBung wanted = kind == BungKind::half_coupling ? WeldBung::half_coupling : WeldBung::full_coupling;
  for (const catalog::PortUse& use : catalog.uses(port.type))
    if (is_bung(catalog.part(use.part)) == wanted) return &catalog.part(use.part);
  return nullptr;
}

std::optional<Length> bung_length(const Catalog& catalog, const JobPort& bung, std::optional<BungKind> kind) {
  if (bung.bung_length) return bung.bung_length;
  if (!kind || *kind == BungKind::double_tapped_bushing) return std::nullopt;
  const catalog::Part* part = weld_bung(catalog, bung, *kind);
  if (part == nullptr) return std::nullopt;
  Length length{};
  for (const catalog::Port& port : part->ports) length += port.reach;
  return length;
}

}  // namespace riserun::plan
