#include "plan/judge/limits.h"
#include "plan/judge/open.h"

#include <algorithm>

namespace riserun::plan {

void judge_heat(const Plan& plan, const Settled& settled, Open& open) {
  const Job& job = plan.job;
  const Temperature hottest = std::max(settled.temperature, job.hottest.value_or(settled.temperature));
  const Temperature coldest = std::min(settled.temperature, job.coldest.value_or(settled.temperature));
  if (hottest > kScalding && job.against_heat.empty())
    open.not_yet(Topic::whole_job, fact("water_scalds", hottest), Against{hottest, kScalding},
                 fact("say_what_is_done_against_heat"), "Moritz and Henriques 1947");
  if (coldest < kFreezing && job.against_frost.empty())
    open.not_yet(Topic::whole_job, fact("water_can_freeze", coldest), Against{coldest, kFreezing},
                 fact("say_what_is_done_against_frost"), "common practice");
}

}  // namespace riserun::plan
