#include "report/figures/figures.h"

namespace riserun::report {

FigureGroup riser_figures(const plan::RiserPlan& plan) {
  const reservoir::Riser& riser = plan.riser;
  const bool is_welded = plan.request.bung == reservoir::BungKind::welded_riser;
  FigureGroup group{"riser", "Riser", plan::Topic::riser, {}};
  group.figures = {
      {.key = "cut_length",
       .label = "cut length",
       .value = riser.cut_length,
       .beside = is_welded ? Phrase{"end to end, {0} of it below the lid's inside",
                                    {riser.cut_length - plan.request.above_lid}}
                           : Phrase{"from the threaded end", {}},
       .source = {is_welded ? "Inside height less what lies under the riser and the clearance, and what stands over "
                              "the lid's inside."
                            : "Inside height less bung projection, what lies under the riser and the clearance, plus "
                              "the make-up in the bung. Make-up: hand-tight engagement and wrench make-up of ASME "
                              "B1.20.1, plus or minus one turn.",
                  {}}},
      {.key = "make_up",
       .label = "make-up in the bung",
       .value = riser.make_up,
       .source = {"ASME B1.20.1: hand-tight engagement plus wrench make-up.", {}}},
      {.key = "clearance",
       .label = "clearance",
       .value = riser.clearance,
       .low = riser.clearance_low,
       .high = riser.clearance_high,
       .source =
           {"What is left over the floor with the nominal make-up; the range is one turn of the thread either way. "
            "Common practice: 1/2 to 1 in.",
            {}}},
      {.key = "curtain_to_bore",
       .label = "gap area to bore area",
       .value = riser.curtain_to_bore,
       .form = "2",
       .beside = {"1 or more costs little", {}},
       .source = {"Area of the gap under the pipe, pi D c, over the area of the bore, pi D2 / 4.", {}}},
      {.key = "inlet_k",
       .label = "inlet loss",
       .value = riser.inlet.entry_k,
       .form = "2",
       .beside = {"K, plus or minus {0:2} %", {100.0 * riser.inlet.scatter}},
       .source = {"{0}", {riser.inlet.source}}},
      {.key = "heel",
       .label = "heel below it",
       .value = riser.heel,
       .source = {"Water below the riser's end: free floor area times the height of that end.", {}}},
      {.key = "offcut",
       .label = "offcut",
       .value = riser.offcut,
       .source = {"Stock length less the cut length and the saw's width.", {}}}};
  return group;
}

}  // namespace riserun::report
