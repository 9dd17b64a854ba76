// The cautions that belong to the whole job, whatever is in it.
#include "plan/stage/cautions.h"

#include "plan/judge/limits.h"

#include <algorithm>

namespace riserun::plan {

namespace {

bool wets_aluminium(const Settled& settled) { return settled.metal.weld_metal == reservoir::WeldMetal::aluminium; }

void caution_water_and_metal(const Inputs& inputs, Remarks& remarks) {
  // While vent and purge are open, that is a finding.
  const Job& job = inputs.job;
  if ((job.cutting.aluminium || job.cutting.magnesium) && job.vent.stays_open && job.vent.purged)
    remarks.caution(Topic::whole_job, fact("fines_settle", job.cutting.aluminium ? "Aluminium" : "Magnesium"),
                    "trade safety notes on air-lift cutting tables");
  if (wets_aluminium(inputs.settled))
    remarks.caution(Topic::whole_job, fact("copper_eats_aluminium"), "galvanic series");
  remarks.standing_caution(Topic::care, fact("water_breeds_bugs"), "HSE guidance on metalworking fluids");
}

/// What is drained is the table: what stands in the reservoir, the riser and the low places of the runs stays.
void caution_frost(const Inputs& inputs, Remarks& remarks) {
  const Job& job = inputs.job;
  const Temperature coldest = std::min(inputs.settled.temperature, job.coldest.value_or(inputs.settled.temperature));
  if (coldest < kFreezing && !job.against_frost.empty())
    remarks.caution(Topic::whole_job, fact("drained_is_not_empty", job.against_frost), "common practice");
}

void caution_heat(const Inputs& inputs, Remarks& remarks) {
  const Job& job = inputs.job;
  const Temperature hottest = std::max(inputs.settled.temperature, job.hottest.value_or(inputs.settled.temperature));
  if (hottest >= kScalding && !job.against_heat.empty())
    remarks.caution(Topic::whole_job, fact("hot_water", hottest, job.against_heat), "Moritz and Henriques 1947");
}

}  // namespace

void caution_whole_job(const Inputs& inputs, Remarks& remarks) {
  caution_frost(inputs, remarks);
  caution_heat(inputs, remarks);
  remarks.standing_caution(Topic::whole_job, fact("air_in_a_flat_tank"), "NIOSH FACE reports 13CA003 and 01MI038");
  remarks.standing_caution(Topic::whole_job, fact("no_design_to_code"), "scope of ASME BPVC Section VIII Div. 1");
  remarks.standing_caution(Topic::care, fact("local_codes"), "local codes");
  remarks.standing_caution(Topic::care, fact("weld_on_a_used_tank"), "AWS F4.1; 29 CFR 1910.252");
  caution_water_and_metal(inputs, remarks);
}

}  // namespace riserun::plan
