#include "plan/judge/wide_riser.h"

#include "quantity/nearly.h"

namespace riserun::plan {

std::optional<Finding> wider_than_its_bung(const Catalog& catalog, const JobPort* bung, const RiserPlan& riser) {
  const reservoir::BungKind kind = riser.request.bung;
  if (bung == nullptr || !bung->type.valid() || !riser.material || kind == reservoir::BungKind::welded_riser ||
      kind == reservoir::BungKind::double_tapped_bushing)
    return std::nullopt;
  const catalog::JointSize* thread = catalog.joint_size(catalog.port_type(bung->type));
  if (thread == nullptr || thread->outside_diameter <= Length() ||
      !quantity::more_than(riser.request.pipe.outside_diameter, thread->outside_diameter))
    return std::nullopt;
  const std::string& size = catalog.size_name(catalog.port_type(bung->type).size);
  return Finding{Topic::riser,
                 fact("riser_wider_than_its_bung", riser.size, bung->name, size),
                 {},
                 fact("bung_as_wide_as_riser", riser.size, size),
                 Severity::not_yet,
                 "common practice"};
}

}  // namespace riserun::plan
