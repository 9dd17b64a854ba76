#include "plan/judge/limits.h"
#include "plan/judge/open.h"

namespace riserun::plan {

namespace {

/// Fines that bring the closed air space to the lower limit of hydrogen in air: h / (V + h) at the limit.
Mass fines_to_the_limit(const Plan& plan) {
  const double per_gram = plan.job.cutting.aluminium ? kHydrogenOfAluminium : kHydrogenOfMagnesium;
  const double hydrogen = in_litres(plan.levels.ullage_at_charge) * kHydrogenLimit / (1.0 - kHydrogenLimit);
  return kilograms(hydrogen / per_gram / 1000.0);
}

}  // namespace

void judge_use(const Plan& plan, const Settled& /*settled*/, Open& open) {
  const Job& job = plan.job;
  if (job.liquid.flammable)
    open.refuse(Topic::whole_job, fact("liquid_burns", job.liquid.name), {}, fact("use_water"),
                "29 CFR 1910.106(e)(2)(iv)(d)")
        .ways_to_mend = {{{"liquid", "water"}}};
  if (job.cutting.aluminium_lithium)
    open.refuse(Topic::whole_job, fact("aluminium_lithium_over_water"), {}, fact("cut_it_dry_elsewhere"),
                "trade safety notes on cutting tables");
  const bool makes_hydrogen = job.cutting.aluminium || job.cutting.magnesium;
  if (makes_hydrogen && !(job.vent.stays_open && job.vent.purged))
    open.not_yet(Topic::whole_job,
                 fact("fines_make_hydrogen", job.cutting.aluminium ? "Aluminium" : "Magnesium",
                      fines_to_the_limit(plan), plan.levels.ullage_at_charge),
                 {}, fact("keep_vent_open_and_purge"), "trade safety notes on cutting tables")
        .ways_to_mend = {{{"vent.stays open", "yes"}, {"vent.purged", "yes"}}};
}

}  // namespace riserun::plan
