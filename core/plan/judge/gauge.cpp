#include "plan/judge/dials.h"
#include "plan/judge/open.h"
#include "plan/judge/relief_room.h"
#include "reservoir/relief.h"

#include <algorithm>
#include <utility>

namespace riserun::plan {

namespace {

constexpr const char* kGaugeRule = "ASME BPVC Section VIII UG-102: 1.5 to 4 times";

struct Dial {
  Fact mend;
  Purchase buy;
};

/// What bends on the way to it; nullptr: nothing.
const catalog::Part* first_that_bends(const catalog::Catalog& catalog, const Way& way) {
  for (const WayPart& each : way.parts) {
    const catalog::Part& part = catalog.part(each.part);
    if (part.flexible || catalog.family(part.family).flexible) return &part;
  }
  return nullptr;
}

/// One that is sold, and stands on the list as it is advised; below what any dial shows, a water column.
Dial dial_for(const Plan& plan) {
  const catalog::Catalog& catalog = *plan.catalog;
  const GaugePressure setting = plan.transfer.setting;
  if (const auto part = gauge_to_buy(catalog, setting, most_in_use(plan))) {
    const catalog::Part& gauge = catalog.part(*part);
    return {fact("gauge_that_is_sold", gauge.name), {"gauge", gauge.name, fact("reads_to", *gauge.full_scale), part}};
  }
  const Length hose = reservoir::water_column_for(setting, plan.transfer.system.water.density).hose_length;
  return {fact("use_a_water_column"),
          {"water-column", "clear hose for a water column", fact("hose_for_water_column", hose)}};
}

}  // namespace

void judge_gauge(const Plan& plan, const Settled& /*settled*/, Open& open) {
  const GaugePressure setting = plan.transfer.setting;
  Fact reason = fact("no_gauge");
  const Way* misread = nullptr;  // its gauge shows another pressure than what is set
  bool shows_nothing = false;    // one is there, behind what can shut it off or be pinched
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::gauge) continue;
    const std::string& name = way.branched ? way.end : way.connection;
    if (const catalog::Part* shut = first_that_stops(*plan.catalog, way)) {
      reason = fact("gauge_behind", name, shut->name);
      shows_nothing = true;
      continue;
    }
    if (const catalog::Part* hose = first_that_bends(*plan.catalog, way)) {
      reason = fact("gauge_on_a_hose", name, hose->name);
      shows_nothing = true;
      continue;
    }
    const GaugePressure scale = plan.catalog->part(*way.device).full_scale.value_or(psig(0.0));
    if (scale_shows(scale, setting)) return;
    reason = fact("gauge_cannot_show", name, scale, setting);
    misread = &way;
    shows_nothing = false;
  }
  if (shows_nothing) {
    open.not_yet(Topic::relief, std::move(reason), {}, fact("gauge_with_nothing_between"), "common practice");
    return;
  }
  if (reason.code == "no_gauge" && devices_are_missing(plan)) return;
  const auto down = misread != nullptr ? turned_down(plan) : std::nullopt;
  if (down &&
      scale_shows(plan.catalog->part(*misread->device).full_scale.value_or(psig(0.0)), plan.transfer.usual_setting)) {
    open.not_yet(Topic::relief, std::move(reason), {}, down->fact, kGaugeRule).ways_to_mend = down->ways_to_mend;
    return;
  }
  Dial dial = dial_for(plan);
  const auto part = dial.buy.part;
  Finding& finding =
      open.not_yet(Topic::relief, std::move(reason), {}, std::move(dial.mend), kGaugeRule, std::move(dial.buy));
  if (!part) return;
  // One that stands there is changed for another: a bung, or a branch, holds one.
  if (misread != nullptr)
    finding.ways_to_try = {{other_device(*misread, *part)}};
  else
    put_on_lid(plan, *part, free_port_for(plan, "gauge"), finding);
}

}  // namespace riserun::plan
