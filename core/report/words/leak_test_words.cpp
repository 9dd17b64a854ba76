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
      {"rig_relief_on_the_port",
       "The rig's relief valve stands upright, its outlet away from people: lying flat it opens at another pressure."},
      {"rig_relief_straight_on",
       "The rig's relief valve goes into the opening of part {0} ({1}) that looks straight up, in line with the bung: "
       "lying flat it opens at another pressure (common practice). Its outlet looks away from people."},
      {"rig_relief_turned_up",
       "Stop part {0} ({1}) with the opening that leads to the rig's relief valve looking straight up, and the valve "
       "upright in it: lying flat it opens at another pressure (common practice). Its outlet looks away from people."},
      {"rig_relief_on_an_elbow",
       "Put a 90 degree elbow between part {0} ({1}) and the rig's relief valve, turned up, and the valve upright in "
       "that: lying flat it opens at another pressure (common practice). Its outlet looks away from people."},
      {"test_feed_from",
       "{0:distance} from the reservoir or farther put {2}, backed right off, on '{1}', the job's restrictor "
       "towards the supply, joined up as the rig's list has it, then a tee with a valve to let down by, and the test "
       "hose from there to the rig's "
       "shut-off. Set a field glass or a camera up so "
       "that the gauge is read from the regulator."},
      {"test_feed_throttled",
       "{0:distance} from the reservoir or farther put {3}, backed right off, on '{1}', and on its "
       "inlet, in place of the job's own restrictor, the {2} that is for the test alone: with another the rig's "
       "relief "
       "valve does not hold a regulator that sticks; all joined up as the rig's list has it. Behind it stands a tee "
       "with a valve to let down by, and the test "
       "hose leads from there to the rig's shut-off. Set a field "
       "glass or a camera up so that the gauge is read from the regulator."},
      {"regulator_of_the_job", "the job's regulator"},
      {"regulator_of_the_test", "the {0} of the test (the job's own does not go up to its pressure)"},
      {"test_feed_by_hand",
       "Lead the test hose from the rig's shut-off to a tee with a valve to let down by, and a hand pump or a "
       "low-pressure regulator, backed right off, "
       "{0:distance} away or farther. Set a field glass or a camera up so that the gauge is read from there."},
      {"test_stand_off",
       "Open the rig's shut-off and go. From here on all is worked from the far end of the hose, and nobody comes "
       "nearer than {0:distance} but where a step says so (ASME PCC-2 Article 501)."},
      {"test_first_rung",
       "Let the air on, turn the regulator up slowly until the gauge shows {0:mark}, shut the air off before it, hold "
       "{1}. If it stays "
       "there one person goes up, listens, brushes rig and plugs, and comes back; a large leak blows the film away at "
       "more."},
      {"test_rung",
       "From the far end go up to {0:mark}, shut the air off before the regulator, hold {1}: watch the walls for a "
       "bow and the gauge for a fall."},
      {"test_mark_regulator",
       "Stop on the way at {0:mark}: with the valve on the tee at the far end just cracked, so that a little air flows "
       "(with none the gauge shows up to the lock-up more than the setting), turn the knob until the gauge stands "
       "there, "
       "mark it and shut the valve: it is the job's setting. In use the gauge never shows it, for the water takes off "
       "what it lifts."},
      {"test_last_rung",
       "From the far end go up to {0:mark}, shut the air off before the regulator, hold {1} with nobody near, and "
       "uncouple the shop's air: nothing "
       "can "
       "raise the pressure any more."},
      {"test_let_down_to_brush",
       "Let down to {0:mark} by the valve on the tee at the far end, and shut that: now one person may go near with "
       "the "
       "solution, "
       "with a long brush or a sprayer for lid, ends and floor, beside the tank and never over the lid, under the "
       "floor or "
       "before an end."},
      {"test_soak",
       "The pressure has stood for {0} and more (ASME BPVC Section V Article 10, I-1071): flow leak-test solution on "
       "in "
       "the order below, in good light, and mark each place where bubbles keep growing."},
      {"test_read",
       "Then write down gauge and temperatures, shut the rig's shut-off, leave it alone for {0}, and write them down "
       "again."},
      {"test_drift",
       "The air's temperature alone moves the gauge by {0:mark} for each degC ({1:alone} for each degF): p2 x T1 / "
       "T2, "
       "both absolute, brings a reading back to the first temperature (gas law)."},
      {"test_least_leak",
       "A further fall of {0:mark}, one mark, in {1} is a leak of {2:2} cm3/s of free air, as through a round hole of "
       "{3:thickness2} (Q = V dp / (p t)): the gauge sees nothing smaller. The solution shows 0.001 cm3/s (ASME B31.3, "
       "345.8), so it decides."},
      {"test_leak_found",
       "A leak: let all pressure off first, grind out, weld, and begin again. Nothing is welded or tightened under "
       "pressure."},
      {"test_let_down",
       "With the rig's shut-off open let down to nothing by the valve on the tee at the far end, then look at the "
       "walls."},
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
      {"brush_floor", "the floor's weld all round, {0:long}"},
  };
  return kWords;
}

}  // namespace riserun::report
