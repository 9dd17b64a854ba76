// The cautions that belong to the whole job, whatever is in it.
#include "plan/stage/cautions.h"

namespace riserun::plan {

namespace {

bool wets_aluminium(const Settled& settled) { return settled.metal.weld_metal == reservoir::WeldMetal::aluminium; }

void caution_water_and_metal(const Inputs& inputs, Remarks& remarks) {
  if (inputs.job.cutting.aluminium || inputs.job.cutting.magnesium)
    remarks.caution(Topic::whole_job, fact("aluminium_fines"), "trade safety notes on air-lift cutting tables");
  if (wets_aluminium(inputs.settled))
    remarks.caution(Topic::whole_job, fact("copper_eats_aluminium"), "galvanic series");
  remarks.standing_caution(Topic::care, fact("water_breeds_bugs"), "HSE guidance on metalworking fluids");
}

}  // namespace

void caution_whole_job(const Inputs& inputs, Remarks& remarks) {
  remarks.standing_caution(Topic::whole_job, fact("air_in_a_flat_tank"), "NIOSH FACE reports 13CA003 and 01MI038");
  remarks.standing_caution(Topic::whole_job, fact("no_design_to_code"), "scope of ASME BPVC Section VIII Div. 1");
  remarks.standing_caution(Topic::care, fact("local_codes"), "local codes");
  remarks.standing_caution(Topic::care, fact("weld_on_a_used_tank"), "AWS F4.1; 29 CFR 1910.252");
  caution_water_and_metal(inputs, remarks);
}

}  // namespace riserun::plan
