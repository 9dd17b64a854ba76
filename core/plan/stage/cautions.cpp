// The cautions that belong to the whole job, whatever is in it.
#include "plan/stage/cautions.h"

namespace riserun::plan {

namespace {

bool wets_aluminium(const Settled& settled) { return settled.metal.name.find("alumin") != std::string::npos; }

void caution_water_and_metal(const Inputs& inputs, Remarks& remarks) {
  if (inputs.job.cuts_aluminium)
    remarks.caution(
        Topic::whole_job,
        "Aluminium fines in the water make hydrogen that gathers in the closed air space: do not cut aluminium "
        "over this reservoir unless the air space is purged, its vent leads high and outdoors, and the fines are "
        "cleaned out.",
        "trade safety notes on air-lift cutting tables");
  if (wets_aluminium(inputs.settled))
    remarks.caution(Topic::whole_job,
                    "Brass and copper eat aluminium in the same water: keep them apart or change them.",
                    "galvanic series");
  remarks.standing_caution(
      Topic::care, "Warm, stale, dirty water breeds bugs: drain, clean and treat it, and do not jet slime into a mist.",
      "HSE guidance on metalworking fluids");
}

}  // namespace

void caution_whole_job(const Inputs& inputs, Remarks& remarks) {
  remarks.standing_caution(
      Topic::whole_job,
      "Compressed air in a flat-sided tank stores dangerous energy and has killed people: a low-pressure regulator, "
      "a low-range gauge and a full-flow relief valve are the least; or lift the water with a pump.",
      "NIOSH FACE reports 13CA003 and 01MI038");
  remarks.standing_caution(
      Topic::whole_job,
      "This is arithmetic, not a design to a pressure-vessel code, and no approval: a competent person must judge "
      "the box. 15 psig and more is code territory.",
      "scope of ASME BPVC Section VIII Div. 1");
  remarks.standing_caution(
      Topic::care,
      "Connections to drinking water, electrical heaters and pumps, and trailers fall under local codes and "
      "licensed trades.",
      "local codes");
  remarks.standing_caution(
      Topic::care,
      "Before any weld on a reservoir that has been in use: drain, clean, open, test the air, fill with water to "
      "near the weld.",
      "AWS F4.1; 29 CFR 1910.252");
  caution_water_and_metal(inputs, remarks);
}

}  // namespace riserun::plan
