#include "plan/judge/limits.h"
#include "plan/judge/open.h"
#include "plan/sold.h"
#include "quantity/nearly.h"
#include "reservoir/relief.h"

#include <utility>

namespace riserun::plan {

namespace {

constexpr const char* kGaugeRule = "ASME BPVC Section VIII UG-102: 1.5 to 4 times";

struct Dial {
  Fact mend;
  Purchase buy;
};

Dial dial_for(const Plan& plan) {
  const GaugePressure setting = plan.transfer.setting;
  const reservoir::GaugeChoice choice = reservoir::choose_gauge(setting);
  if (choice.full_scale)
    return {fact("gauge_that_reads_to", *choice.full_scale),
            {"gauge", "low-pressure gauge", fact("gauge_to_and_marks", *choice.full_scale, choice.mark),
             gauge_for(*plan.catalog, *choice.full_scale)}};
  const Length hose = reservoir::water_column_for(setting, plan.transfer.system.water.density).hose_length;
  return {fact("use_a_water_column"),
          {"water-column", "clear hose for a water column", fact("hose_for_water_column", hose)}};
}

}  // namespace

void judge_gauge(const Plan& plan, const Settled& /*settled*/, Open& open) {
  const GaugePressure setting = plan.transfer.setting;
  Fact reason = fact("no_gauge");
  bool shows_nothing = false;  // one is there, behind what can shut it off
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::gauge) continue;
    const std::string& name = way.branched ? way.end : way.connection;
    if (const catalog::Part* shut = first_that_stops(*plan.catalog, way)) {
      reason = fact("gauge_behind", name, shut->name);
      shows_nothing = true;
      continue;
    }
    const GaugePressure scale = plan.catalog->part(*way.device).full_scale.value_or(psig(0.0));
    const double times = in_pascals(scale) / in_pascals(setting);
    if (quantity::at_most(kLeastOfScale * kAsPrinted, times) && quantity::at_most(times, kMostOfScale / kAsPrinted))
      return;
    reason = fact("gauge_cannot_show", name, scale, setting);
    shows_nothing = false;
  }
  if (shows_nothing) {
    open.not_yet(Topic::relief, std::move(reason), {}, fact("gauge_with_nothing_between"), "common practice");
    return;
  }
  if (reason.code == "no_gauge" && devices_are_missing(plan)) return;
  Dial dial = dial_for(plan);
  const auto part = dial.buy.part;
  Finding& finding =
      open.not_yet(Topic::relief, std::move(reason), {}, std::move(dial.mend), kGaugeRule, std::move(dial.buy));
  if (part) finding.ways_to_mend = {{{"connections", "", part}}};
}

}  // namespace riserun::plan
