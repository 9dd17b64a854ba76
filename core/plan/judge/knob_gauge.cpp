#include "plan/judge/knob_gauge.h"

#include "plan/judge/dials.h"
#include "plan/judge/open.h"
#include "plan/judge/relief_room.h"
#include "quantity/nearly.h"

namespace riserun::plan {

namespace {

GaugePressure scale_of(const Plan& plan, const Way& way) {
  return plan.catalog->part(*way.device).full_scale.value_or(psig(0.0));
}

}  // namespace

const Way* gauge_read(const Plan& plan) {
  const Way* read = nullptr;
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::gauge || !way.device || !scale_shows(scale_of(plan, way), plan.transfer.setting) ||
        first_that_stops(*plan.catalog, way) != nullptr)
      continue;
    if (read == nullptr || scale_of(plan, way) < scale_of(plan, *read)) read = &way;
  }
  return read;
}

std::optional<Mend> finer_gauge_under(const Plan& plan, GaugePressure opens) {
  const Way* gauge = gauge_read(plan);
  if (gauge == nullptr) return std::nullopt;
  const catalog::Part& part = plan.catalog->part(*gauge->device);
  const GaugePressure setting = plan.transfer.setting;
  const GaugePressure exact = left_alone(plan) - dial_error(scale_of(plan, *gauge), setting);
  const auto finer = gauge_that_stands(
      *plan.catalog, setting, most_in_use(plan), part.ports[0].type,
      [&](GaugePressure scale) { return quantity::at_most(exact + dial_error(scale, setting), opens); });
  if (!finer) return std::nullopt;
  return Mend{fact("gauge_that_is_sold", plan.catalog->part(*finer).name), {}, {{other_device(*gauge, *finer)}}};
}

}  // namespace riserun::plan
