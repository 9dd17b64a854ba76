// Sentences of the order of work.
#include "report/words/say.h"

namespace riserun::report {

std::span<const Words> work_words() {
  static constexpr Words kWords[] = {
      {"work_baffle_places",
       "Mark out where the baffles stand, every measure from the same wall: {0:; }. They are evenly spaced, and the "
       "walls' limit rests on that."},
      {"work_baffles",
       "Crop the corners of the {0:#baffle|baffles} for the passages of water and air, then weld {0:?it|them} in."},
      {"work_tight_baffles", "Weld the {0:#baffle|baffles} in, tight all round."},
      {"work_bungs",
       "Weld the bungs in while the inside can be reached: {0:and}. A plug in each keeps its thread round and clean; "
       "run a tap through it afterwards."},
      {"work_bungs_into_closed",
       "Weld the bungs in: {0:and}. The reservoir is closed: never weld on it shut, leave a port open, and see what "
       "is said of a used tank."},
      {"work_cut_riser",
       "Cut the riser, {0}, to {1:both}, measured from its threaded end, and clean the cut. That is for a bung whose "
       "lower end reaches {2:tape} into the reservoir, under the lid's inside: measure it first."},
      {"work_riser_as_it_is",
       "The riser, {0}, is a stock piece of {1:both} and is not cut. That is for a bung whose lower end reaches "
       "{2:tape} into the reservoir, under the lid's inside: measure it first."},
      {"work_riser_for_bushing_as_it_is",
       "The riser, {0}, is a stock piece of {1:both} and is not cut. That is for a coupling whose lower end reaches "
       "{2:tape} into the reservoir, under the lid's inside, and the bushing made up in its upper end: measure both "
       "first."},
      {"work_cut_welded_riser",
       "Cut the riser, {0}, to {1:both} end to end, thread its upper end and clean the cut: {2:tape} of it hang below "
       "the lid's inside."},
      {"work_cut_welded_riser_of_stock",
       "Cut the riser, {0}, to {1:both}, measured from the threaded end that goes up, and clean the cut: {2:tape} of "
       "it hang below the lid's inside."},
      {"work_hole_for_coupling",
       "Cut the hole for the {1} coupling of '{0}', {2:thickness}: a smaller bung that stands in its place comes out "
       "first. What falls in is swept or sucked out again."},
      {"work_cut_riser_for_bushing",
       "Cut the riser, {0}, to {1:both}, measured from its threaded end, and clean the cut. That is for a coupling "
       "whose lower end reaches {2:tape} into the reservoir, under the lid's inside, and the bushing made up in its "
       "upper end: measure both first."},
      {"work_bushing_from_above",
       "Screw the riser into the lower end of the {2} x {3} double-tapped bushing, let it down through the coupling of "
       "'{0}' and screw the bushing in; measure {1:tape} from the riser's end to the floor."},
      {"work_bushing_then_riser",
       "Screw the {2} x {3} double-tapped bushing into the coupling of '{0}', and the riser into it from inside, "
       "before the lid closes; measure {1:tape} from the riser's end to the floor."},
      {"work_riser_from_inside",
       "Screw the riser into '{0}' from inside, before the lid closes; measure {2:tape} from the lid's inside to its "
       "end, which is {1:tape} off the floor with the lid on."},
      {"work_riser_from_above",
       "Let the riser down through '{0}' and screw it in; measure {1:tape} from its end to the floor."},
      {"work_weld_riser", "Weld the riser through the lid; measure {0:tape} from its end to the floor first."},
      {"work_coupling_on_riser",
       "Once the weld is cold, screw the {0} coupling of '{1}' onto the riser's upper thread, hand-tight and 1-1/2 to "
       "3 "
       "turns more, the riser held by a wrench, not by its weld: tape or paste on the male thread only, first thread "
       "bare."},
      {"work_last_look", "Look inside a last time: no slag, no rag, nothing loose, and every passage open."},
      {"work_mouse_holes",
       "Cut the mouse-holes into the bars that stand on the floor before they go in: one in every bay, {0} long and "
       "{1} "
       "high at the foot, away from where bars cross. Without them each bay keeps its water from the riser."},
      {"work_stay_places",
       "Mark out where the stays and stiffeners stand, every measure from the same wall: {0:; }. They are evenly "
       "spaced, and the walls' limit rests on that."},
      {"posts_stand_at", "posts where these rows cross, {0:; }"},
      {"bars_stand_at", "{0}, {1:; }"},
      {"work_stays",
       "Weld in the stays and stiffeners that the job counts on, bars of floor and sides on edge and welded to the "
       "sheet on both sides and at both ends to the wall, baffle or bar that they end at, posts upright and welded to "
       "the floor all round, with the welds under 'Walls'. What ends at the lid is welded to that from outside, when "
       "it "
       "is on."},
      {"work_lid_bars",
       "Set the bars of the lid on edge, their upper edges flush with those of the walls (a straightedge over them), "
       "and weld them at both ends to the wall, baffle or bar that they end at: the lid is welded to them from outside "
       "afterwards, as to a baffle (common practice)."},
      {"work_openings_over_stays",
       "Before the lid goes on, lay it in its place, mark it out from inside by the same measures and cut: {0:; }. "
       "Through each of them it is welded to what stands below, filled flush; none is wider than that, and what stands "
       "on the floor ends no more than 1/16 in (2 mm) under the lid (AWS D1.1, from memory)."},
      {"holes_over_posts", "{0:#plug hole|plug holes} of {1} over the posts, {2:; }"},
      {"slots_over_lid_bars",
       "{0:#slot|slots} {1} wide and {2} long over the bars of the lid, {3} or less from middle to middle, {4:; }"},
      {"slots_over_uprights",
       "{0:#slot|slots} {1} wide, {2} long from the wall inwards, over the upper ends of the upright bars of the {3}, "
       "{4:; }"},
      {"slots_over_baffles",
       "{0:#slot|slots} {1} wide and {2} long over the baffles, {3} or less from middle to middle, {4:; }"},
      {"slots_are_bevelled", "the edges of those that are narrower bevelled until they are {0} wide at the top"},
      {"work_stays_of_your_own",
       "Weld in the stays that leave no panel barer than the job says, with the welds under 'Walls': how many, and of "
       "what, the job does not say, so they are not on the cut list."},
      {"work_weld_lid_to",
       "Weld the lid on all round, and through every opening that was cut in it: {1:; }. Fill each flush: the walls' "
       "limit of {0:alone} rests on these welds, and 'Walls' says what they carry. Look at each of them, and let it "
       "cool."},
      {"weld_to_posts", "{0:#plug hole|plug holes} over the posts"},
      {"weld_to_lid_bars", "{0:#slot|slots} over the bars of the lid"},
      {"weld_to_uprights", "{0:#slot|slots} over the upright bars of the {1}"},
      {"weld_to_baffles", "{0:#slot|slots} over the baffles"},
      {"weld_to_stays_of_your_own", "slots or plug holes over every stay of your own that ends at it"},
      {"work_weld_lid", "Weld the lid on, and let it cool."},
      {"work_leak_test", "Test for leaks at {0:mark}, by the sheet, before anything is built on."},
      {"work_no_leak_test_yet",
       "No leak test yet: the rig of one at {0:mark} has no relief valve, and without one no air goes in. Nothing is "
       "built on before what is open is settled and the tank is tested."},
      {"work_test_with_water",
       "No test with air is possible: plug all ports but one, fill with water and look for drips, before anything is "
       "built on."},
      {"work_plug_out_for_valve",
       "The leak test passed, and before its rig comes off: with all pressure off take the plug out of '{0}'. What "
       "goes "
       "on there now is proved, and stays."},
      {"work_prove_relief",
       "The leak test passed, and before its rig comes off: prove that the relief valve '{0}' opens (common practice). "
       "With all pressure off {7} goes onto '{1}' in place of the plug and stays, upright, its outlet away from "
       "people; every other port stays plugged, the riser's too. Nobody nearer than {2:distance}: from the far end of "
       "the test hose turn "
       "the regulator up slowly until the valve opens, which must be between {3:mark} and {4:mark} by the gauge. At "
       "{4:mark} stop, open or not, and shut the air off: the pressure never passes the {5:mark} of the leak test. "
       "Let down to nothing from the far end before anybody goes near, and turn the regulator back to its mark of "
       "{6:mark}. A valve that opens elsewhere, stays shut or does not shut again is changed, and the new one "
       "proved."},
      {"the_valve_alone", "it"},
      {"the_valve_on_its_elbow", "its run, with the elbow turned up and the valve in that,"},
      {"work_bench_test_relief_over_test",
       "Have the relief valve '{0}' bench-tested before the first fill: it must open between {1:mark} and {2:mark}. "
       "On the tank it is not proved, as that may pass the {3:mark} of the leak test (common practice)."},
      {"work_bench_test_relief_by_finer_gauge",
       "Have the relief valve '{0}' bench-tested before the first fill, by a gauge that is right to within {4}: it "
       "must "
       "open between {1:mark} and {2:mark}. On the tank it is not proved, as the gauge of the leak test is right to "
       "within {3} there and tells no good valve from a bad one (common practice: right to a quarter of what is "
       "proved)."},
      {"work_bench_test_relief",
       "Have the relief valve '{0}' bench-tested before the first fill: it must open between {1:mark} and {2:mark}. "
       "On the tank it is not proved, as the leak test has no rig that it can be opened by from a distance (common "
       "practice)."},
      {"work_table_in_place", "Set the table where it stays, level, and check the gap before the line to it is built."},
      {"work_table_held_up",
       "Do not set the table down yet: with {1:tape} between its barbs the {0} is too short to be bent onto the second "
       "one between two ports that stand still. Hold the table up, screw both barbs in, push the hose right onto the "
       "lower one, and slip all its clamps on."},
      {"work_table_held_up_hose_hangs",
       "Do not set the table down yet: with {1:tape} between its barbs the {0} is too short to be bent onto the second "
       "one between two ports that stand still. Hold the table up, screw both barbs in, push the hose right onto the "
       "upper one, and slip all its clamps on."},
      {"work_table_onto_hose",
       "Set the table down where it stays, level, in one move so that {0:; }: two people or a jack, no hand between."},
      {"barb_into_hose", "in '{2}' the table's barb goes {1:tape} into the {0}"},
      {"hose_onto_lower_barb", "in '{2}' the {0} goes {1:tape} over the barb below it"},
      {"work_bow_hose",
       "All clamps on the {0} first; it is long enough to be bowed until its end goes {1:tape} over the second barb."},
      {"work_hose_between_fixed_ports",
       "The {0} is too short to be bent onto its second barb: let one of its two ports give way until it goes {1:tape} "
       "over it, or ask for a 'union' in 'need', which closes the run instead."},
      {"work_relief_upright",
       "The relief valve stands upright, spindle vertical, with nothing on its outlet and that away from people: a "
       "spring valve that lies or hangs opens elsewhere (API 520 part II, from memory; the maker's sheet beats this). "
       "Out of a port in a side that takes a 90 degree elbow in 'need', on a manifold 'looks: straight on'."},
      {"work_vent_outdoors",
       "Lead the vent high and outdoors, rising all the way, away from flame and sparks, and leave it open whenever "
       "the "
       "table stands idle."},
      {"work_purge",
       "Before each day's work, vent open and nobody grinding: let air through the reservoir for {0}, {1:2} times its "
       "air space, the gauge near nothing; hydrogen lies under the lid until then."},
      {"work_handles",
       "Let every handle and dial be reached and read from where the shop stands, and swing clear: {0:and}."},
      {"work_carry_arms",
       "Carry the arms on a bracket or a hanger: their weight is not the bung's to bear (common practice)."},
      {"work_settle_what_is_open", "No air before what is open is settled: {0:#line|lines} at the top of the plan."},
      {"work_charge", "Charge the reservoir {0} deep, and mark the line {1} below the lid's inside."},
      {"work_charge_at_table",
       "Pour the charge, {0}, into the table with the vent open: it runs down through the riser (common practice)."},
      {"work_charge_at_port",
       "Pour the charge, {1}, in through '{0}' with its fitting out: from the table it does not run down (common "
       "practice)."},
      {"work_dip",
       "Read the charge with a clean straight rod let down to the floor through '{0}', no air on and its fitting out "
       "or "
       "its full-bore valve open; notch the rod at {1} for the charge and at {2} for topping up (common practice)."},
      {"work_regulator_at_its_mark",
       "Turn the regulator to the mark that it got in the leak test, {0:mark} with a little air flowing, and let the "
       "air on. While the water runs the gauge on the reservoir shows less, at most {1:mark}: do not turn it up for "
       "that. When nothing flows any more it shows up to {2:mark}, as the regulator locks up."},
      {"work_set_regulator",
       "Back the regulator right off, stop the riser (its end in a plug, or a valve in its line shut), let the air on, "
       "crack the vent so that a little air flows, turn the regulator up to {2:mark} by the gauge on the reservoir, "
       "mark the knob and shut the vent: it is set to {0:mark} then, and what opens the check valve behind it takes "
       "off the rest. With nothing flowing that gauge shows up to {3:mark}, as the regulator locks up; while the water "
       "runs less, at most {1:mark}: do not turn it up for that."},
      {"work_watch_first_fill",
       "Stay with the first fill and the first drain, hand on the vent: every joint, the walls, both water levels."},
  };
  return kWords;
}

}  // namespace riserun::report
