// Sentences of the leak test's sheet.
#include "report/words/say.h"

namespace riserun::report {

std::span<const Words> leak_test_words() {
  static constexpr Words kWords[] = {
      // Its steps.
      {"test_clean",
       "Clean every weld of slag, spatter, oil and paint, and let it cool: metal between 5 and 50 degC (40 and 125 "
       "degF; ASME BPVC Section V Article 10, T-1041 and I-1072)."},
      {"test_plug", "Plug {0:and}."},
      {"test_build_rig", "Build the rig up on '{0}'; its shut-off stays open until all is screwed up."},
      {"test_feed_from", "Back the regulator right off, shut the shut-off, and let the air on at '{0}'."},
      {"test_feed_by_hand",
       "Shut the shut-off and put a hand pump on it, or a low-pressure regulator backed right off."},
      {"test_first_rung",
       "Open the shut-off and turn the supply up slowly until the gauge shows {0:alone}, shut it, hold {1}: listen, "
       "and brush rig and plugs. "
       "A large leak blows the film away at more."},
      {"test_rung", "Go up to {0:alone}, shut it, hold {1}: watch the walls for a bow and the gauge for a fall."},
      {"test_mark_regulator",
       "Stop on the way at {0:alone} and mark the regulator's knob there: it is the job's setting. In use the gauge "
       "never shows it, for the water takes off what it lifts."},
      {"test_last_rung",
       "Go up to {0:alone} and shut it; shut the shop's air, let its hose blow down, and take the supply off the "
       "rig."},
      {"test_soak",
       "After {0} at that pressure (ASME BPVC Section V Article 10, I-1071) flow leak-test solution on in the order "
       "below, in good light, and mark each place where bubbles keep growing."},
      {"test_read", "Then write down gauge and temperatures, leave it alone for {0}, and write them down again."},
      {"test_drift",
       "The air's temperature alone moves the gauge by {0:alone} for each degC ({1:alone} for each degF): p2 x T1 / "
       "T2, "
       "both absolute, brings a reading back to the first temperature (gas law)."},
      {"test_least_leak",
       "A further fall of {0:alone}, one mark, in {1} is a leak of {2:2} cm3/s of free air, as through a round hole of "
       "{3:thickness2} (Q = V dp / (p t)): the gauge sees nothing smaller. The solution shows 0.001 cm3/s (ASME B31.3, "
       "345.8), so it decides."},
      {"test_leak_found",
       "A leak: let all pressure off first, grind out, weld, and begin again. Nothing is welded or tightened under "
       "pressure."},
      {"test_let_down",
       "Open the shut-off a crack, or lift the relief valve by its ring: down to {0:alone}, a look at the walls, then "
       "down to nothing."},
      {"test_unplug", "With the shut-off open and the gauge at nothing take the plugs out, {0:and}, and the rig last."},
      {"test_take_rig_off", "With the shut-off open and the gauge at nothing take the rig off."},
      {"test_compartments",
       "The tight baffles make {0} compartments: each is tested by itself with the others open, and needs a port for "
       "the rig (UL 142, 42.2.2)."},
      {"no_rig_goes_on_port", "The rig of the leak test does not go on '{0}': {1}"},

      // What is brushed.
      {"brush_rig_and_plugs", "the joints of the rig and the threads of the plugs"},
      {"brush_bungs", "the weld of each bung: {0:and}"},
      {"brush_supports", "the welds of baffles and stays that show on lid, sides and floor"},
      {"brush_lid", "the lid's weld all round, {0:long}"},
      {"brush_corners", "the four upright corners, {0:long} each"},
      {"brush_floor", "the floor's weld all round, {0:long}, from below too where it can be reached"},
  };
  return kWords;
}

}  // namespace riserun::report
