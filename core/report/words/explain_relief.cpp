// Of the relief valve.
#include "report/words/explanations.h"

namespace riserun::report {

std::span<const Explanation> relief_explanations() {
  static constexpr Explanation kRows[] = {
      {"no_relief_valve", "No relief valve stands on the reservoir; a reducing valve is none.",
       "A regulator that sticks puts the shop's pressure into flat sheet.",
       "The relief valve that is named, on a port of its own.",
       "ASME BPVC Section VIII UG-125 (from memory); common practice"},
      {"relief_setting_passes_four_to_one", "Any relief valve above the setting opens where the factor is under 4.",
       "Local rules may ask 4 at the greatest pressure.", "More stays, thicker sheet, or a lower setting.",
       "California Title 8 section 3301"},
      {"relief_valve_on_the_supply", "The relief valve stands before the regulator.",
       "It sees the supply, not the reservoir.", "On a port of its own in the reservoir's lid.", "common practice"},
      {"relief_valve_off_the_reservoir", "The relief valve stands on no port of the reservoir.",
       "The air never comes there.", "On a port of its own in the reservoir's lid.", "common practice"},
      {"relief_valve_under_water", "The relief valve stands on the water.", "It passes far less of it than of air.",
       "On a port of its own in the reservoir's lid.", "common practice"},
      {"relief_valve_behind", "Something that can shut, check or reduce stands before the relief valve.",
       "It can keep the air from it.", "On a port of its own with nothing between.",
       "ASME BPVC Section VIII UG-135 (from memory)"},
      {"relief_valve_opens_above_limit",
       "With its tolerance and its rise the valve is fully open only above the walls' limit.",
       "The walls see more than they may.",
       "Its own figures from the maker's sheet, a valve set lower, or stiffer walls.",
       "ASME BPVC Section VIII UG-126, UG-134 (from memory)"},
      {"relief_valve_blows_in_use", "The relief valve opens below the setting.",
       "It blows all the time, and is then screwed down or plugged.",
       "The setting that is named, or a valve set higher.", "worked out"},
      {"relief_valve_weeps", "Left alone, the reservoir comes to where the relief valve may open.",
       "It blows in use, and is then screwed down or plugged.", "The setting that is named, or a valve set higher.",
       "worked out"},
      {"relief_valve_too_narrow",
       "With the regulator failed and the riser stopped more air comes in than the valve lets out.",
       "The pressure passes the valve's setting and the walls' limit.",
       "A restrictor on the supply side of the regulator, or a larger valve.",
       "compressible flow; ASME BPVC Section VIII UG-125 (from memory)"},
      {"relief_valve_fed_too_narrow", "The valve is fed through less than its own bore and passes too little.",
       "The pressure passes the valve's setting and the walls' limit.",
       "Fittings as wide as the valve; a restrictor on the supply side.", "compressible flow"},
      {"restrictor_before_relief_valve", "A restrictor stands before the relief valve.", "It cannot let the air out.",
       "Take it to the supply side of the regulator.", "common practice"},
      {"way_to_relief_valve_is_necked", "A fitting on the way to the relief valve is smaller than its inlet.",
       "It throttles the valve, which then chatters.", "A bung and fittings of the valve's own size.",
       "ASME BPVC Section VIII UG-135 (from memory)"},
      {"way_to_relief_valve_is_narrower", "The way to the relief valve narrows below the valve's own bore.",
       "It throttles the valve, which then chatters.", "A bung and fittings of the valve's own size.",
       "ASME BPVC Section VIII UG-135 (from memory)"},
      {"relief_valve_on_a_hose", "The relief valve hangs on a hose.", "It can kink, swell or come off.",
       "Into its bung, with nothing but short fittings between.", "common practice"},
      {"relief_valve_lies_flat", "The relief valve lies on its side.", "Its disc may stick, or not seat again.",
       "An elbow that stands it upright, or its bung in the lid.", "makers' instructions: common practice"},
      {"device_not_rated", "A gauge or a valve at the end of a run is rated for less than the reservoir may come to.",
       "It may burst beside whoever reads it.", "One that is rated for that.", "worked out"},
      {"relief_valve_far_away", "More than a foot of pipe leads to the relief valve.",
       "The way takes of its flow, and it chatters.", "Into its bung, with nothing but short fittings between.",
       "ASME BPVC Section VIII UG-135 (from memory); the foot: common practice"},
  };
  return kRows;
}

}  // namespace riserun::report
