// Common practice, where no standard is named.
#include "report/words/glossary.h"

namespace riserun::report {

std::span<const Term> glossary() {
  static constexpr Term kTerms[] = {
      {"baffle", "An upright plate across the reservoir that ties lid and floor; it needs openings for water and air"},
      {"barb", "A ribbed end that hose is pushed over and clamped on"},
      {"BSP",
       "Pipe threads of Whitworth form, 55 degrees: G is parallel (ISO 228-1), R a male and Rc a female taper, Rp a "
       "parallel female for R (ISO 7-1)"},
      {"bung", "A threaded piece that is welded into a wall, as a half or a full coupling (ASME B16.11)"},
      {"bushing", "A fitting, male outside and female inside, that makes an opening smaller"},
      {"charge", "The water that is put in while all of it stands in the reservoir, as a depth"},
      {"clearance", "From the riser's end to the floor, or to what lies on it there"},
      {"close nipple", "A nipple so short that its two threads meet, with nothing left to hold it by"},
      {"droop", "How far a regulator's pressure falls while air flows"},
      {"factor of safety", "The pressure that the walls would yield at, divided by the greatest that can occur"},
      {"GHT", "Garden hose thread, 3/4-11.5 NH (ASME B1.20.7); it seals on a washer"},
      {"head", "A pressure as the height of water that it carries: 1 psi is 27.7 inches"},
      {"heel", "The water that stays below the riser's end"},
      {"lock-up", "How far a regulator's pressure climbs over its setting when the flow stops"},
      {"make up", "To screw a joint tight, by hand first and then by a wrench"},
      {"nipple", "A short pipe, threaded at both ends"},
      {"NPT", "The taper pipe thread of North America (ASME B1.20.1): it seals on the thread, with tape or paste"},
      {"regulator", "Holds the air behind it near its setting; when it fails, it passes what the supply gives"},
      {"relief valve",
       "Opens by itself at its set pressure and lets out what comes in; it protects only what nothing can "
       "shut off from it"},
      {"repeatability", "How nearly a regulator comes back to the same pressure"},
      {"restrictor", "A small hole before the regulator, so that the relief valve can pass all that gets through"},
      {"riser", "The pipe that hangs from the lid to near the floor, up which the air pushes the water"},
      {"run", "The parts from one port to another, as they are screwed together"},
      {"slug", "Water that air throws up the riser once its end is uncovered"},
      {"soap test", "Brushing leak-test solution on joints and welds under low pressure, and looking for bubbles"},
      {"stay", "A bar or tube that ties two opposite walls against the pressure"},
      {"street", "With one end male and the other female"},
      {"ullage", "The room above the water"},
      {"union", "A joint of three pieces that closes a run between two ends that cannot turn"},
      {"vent", "The valve that lets the air out, so that the water runs back"},
  };
  return kTerms;
}

}  // namespace riserun::report
