// Sentences of a plan: its cautions, notes and refusals with what mends them, and why its pressures are what they are.
#include "report/words/say.h"

namespace riserun::report {

std::span<const Words> plan_words() {
  static constexpr Words kWords[] = {

      // The whole job, and its daily use.
      {"air_in_a_flat_tank",
       "Compressed air in a flat-sided tank stores dangerous energy and has killed people: a low-pressure regulator, a "
       "low-range gauge and a full-flow relief valve are the least; or lift the water with a pump."},
      {"no_design_to_code",
       "This is arithmetic, not a design to a pressure-vessel code, and no approval: a competent person must judge the "
       "box. 15 psig and more is code territory."},
      {"local_codes",
       "Connections to drinking water, electrical heaters and pumps, and trailers fall under local codes and licensed "
       "trades."},
      {"name_speaks_of_what_burns",
       "'{0}' names something that burns or held it: a used drum or cylinder blows up under the torch. Start from new "
       "sheet, or have it cleaned and tested by who is trained for it."},
      {"reservoir_has_no_drain",
       "No port lets the water out of the reservoir: {0} that the riser cannot push up stays behind. A drain low in a "
       "side, with a ball valve, saves pumping it out."},
      {"bungs_into_a_shut_tank",
       "The lid is closed, and {0:and} must still be welded in: never heat a chamber that is shut, leave a port open, "
       "and get out what the cutter drops into it."},
      {"look_for_the_supports",
       "The lid is closed, and the limit of the walls rests on the stays and baffles of 'supports', which are taken to "
       "be in there: look for each through a bung before any air goes on."},
      {"leave_more_between",
       "'{0}' is rigid and {1:tape} long from face to face: leave that between '{3}' and '{4}', {2:tape} more than the "
       "heights make, of which one is assumed."},
      {"leave_less_between",
       "'{0}' is rigid and {1:tape} long from face to face: leave that between '{3}' and '{4}', {2:tape} less than the "
       "heights make, of which one is assumed."},
      {"reservoir_drains_by_a_plug",
       "Nothing but the plug in '{0}' lets the water out of the reservoir: pull it with the air off and a hose or a "
       "pan "
       "under it, or pump the tank out through the riser first. A ball valve there saves that."},
      {"weld_on_a_used_tank",
       "Before any weld on a reservoir that has been in use: drain, clean, open, test the air, fill with water to near "
       "the weld."},
      {"zinc_makes_fume",
       "Zinc boils off {0} where it is welded and makes a fume that gives metal fever, and porous welds: grind it off "
       "a "
       "hand's breadth round every seam and bung, draw the fume away, breathe through a respirator for it."},
      {"table_drains_onto_the_floor",
       "'{0}' lets the table's water out and nothing leads it on: give it a hose back to the reservoir's fill port or "
       "to "
       "a drain, or it runs onto the floor and is missing from the next fill."},
      {"way_back_is_shut",
       "'{0}' joins the reservoir to the open table: its valve stays shut from before the air goes in until the gauge "
       "is back at zero, or air and water blow out by it."},
      {"fines_settle",
       "{0} fines go on making hydrogen in the water: clean them out, purge before each use, and keep the vent open."},
      {"drained_is_not_empty",
       "Against frost the job says '{0}'. A drained table is not an empty plant: the charge in the reservoir, the "
       "riser "
       "in it, check valves and low places of runs and hoses keep water, which must go too (a drain at the floor, the "
       "runs blown out) or be kept from freezing (antifreeze, heat)."},
      {"hot_water", "The water comes to {0} and scalds in seconds. Against that the job says '{1}'."},
      {"copper_eats_aluminium", "Brass and copper eat aluminium in the same water: keep them apart or change them."},
      {"water_breeds_bugs",
       "Warm, stale, dirty water breeds bugs: drain, clean and treat it, and do not jet slime into a mist."},

      // Weld bungs.
      {"material_is_no_bung", "{0} is no weld bung: {1}"},
      {"material_cannot_be_welded", "{0} cannot be welded"},
      {"not_the_metal_of_the_tank", "{0} is not the metal of the tank, {1}"},
      {"part_may_be_tapped_straight", "the {0} may be tapped straight, so that a taper thread seals on a turn or two"},
      {"part_is_no_bung", "the {0} is not made to be welded into a wall"},
      {"weld_in_a_coupling", "weld in a half or full coupling of {0}, class 3000"},
      {"bung_part_has_no_such_port", "The bung of '{0}', {1}, has no {2}."},
      {"name_the_bung_part", "name the part that the port is of in 'bung part'"},
      {"bung_must_not_be_welded_in", "The bung of '{0}': {1}."},
      {"bung_not_in_catalog",
       "'{0}': no {1} {2} is in the catalog, so its hole is on no list: have it in hand, measure across its outside, "
       "cut the hole 1/16 in wider, and give its 'bung length'."},
      {"bung_is_welded_in", "The bung of '{0}': {1}. Look at its weld for cracks before each leak test, or {2}."},

      // The connections.
      {"connection_has_no_chain", "'{0}' has no chain: {1}"},
      {"plastic_port_on_the_reservoir",
       "'{0}' has no chain: nothing joins '{1}' ({2}) but plastic that shatters under compressed air, and the leak "
       "test "
       "and an uncovered riser put air into a run from the reservoir"},
      {"port_with_a_pipe_thread",
       "a pipe thread on '{0}' in place of the socket ('port: {1} FNPT', as a threaded flange or a bulkhead fitting "
       "has), and a hose or metal pipe to it"},
      {"branches_cannot_be_joined", "'{0}' cannot be put together: {1}"},
      {"connection_cannot_be_built",
       "'{0}' cannot be screwed together: neither end turns, and no joint of the chain can be made up without turning "
       "one "
       "of its sides"},
      {"let_an_end_turn_or_add_union", "let one end turn, or add a union to 'need'"},
      {"flow_falls_through_swing_check",
       "'{0}': the flow runs down through the {1}, whose flap hangs open there and does not close"},
      {"take_a_spring_check",
       "take a light spring check valve in its place, which closes any way up, or put the swing check into a flat "
       "run"},
      {"spring_check_in_its_place", "take a light spring check valve in its place, which closes any way up"},
      {"end_a_connection_in_it", "give it a connection, or a branch, of its own that ends in it ('ends in: {0}')"},
      {"take_another_that_fits",
       "take another {0} that goes there: one with the threads of its port, or one that a store must order ('special "
       "order: yes'). It is needed, so do not leave it out"},
      {"carry_air_in_what_is_made_for_it",
       "not that way: garden hose thread and plastic pipe burst under compressed air. Take metal pipe or air hose, and "
       "ends with pipe thread (1/2 FNPT) in place of theirs"},
      {"metal_or_air_hose_in_its_place",
       "plastic and garden hose burst under compressed air: in place of the {0} take one of metal, or air hose, or "
       "leave "
       "it out"},
      {"plastic_asked_for_on_the_reservoir",
       "'{0}' has no chain: the {1} is of plastic that shatters under compressed air, and the leak test and an "
       "uncovered "
       "riser put air into a run from the reservoir"},
      {"metal_end_in_its_place", "plastic bursts under compressed air: end it in one of metal in place of the {0}"},
      {"metal_in_its_place", "one of metal in place of the {0}, in 'need' of '{1}'"},
      {"rigid_pipe_or_cooler_water", "metal pipe with a union in its place, or keep the water cooler"},
      {"order_one_part_specially", "order one part specially: {0} ('special order: yes' in '{1}')"},
      {"one_part_would_complete_it", "one part would complete it: {0}"},
      {"way_to_relief_valve_may_narrow",
       "The job lets the way to '{0}' narrow to {1:thickness3}, whatever the valve's own inlet is."},

      // Bungs on the lid.
      {"stays_stand_anywhere",
       "Where the stays stand the job does not say: keep the bungs of the lid {0} clear of them."},

      // The riser's bung.
      {"no_pipe_fits_port", "no tapered pipe thread of size {0} is made to be screwed into {1}"},
      {"no_pipe_fits_bung", "no tapered pipe thread of size {0} is made to be screwed into the riser's bung"},
      {"riser_is_held_by",
       "The riser is of another size than '{0}': {1:and} in its lower thread, put in from inside, holds it."},
      {"double_tapped_is_rare",
       "'{0}' is a bushing with an inside thread at both ends, which stores do not stock and often hand out by "
       "mistake for a plain one: see both threads before it is screwed in, order it by that name, or weld in a full "
       "coupling instead."},
      {"riser_takes_no_thread",
       "pipe of {0} is joined in sockets and takes no cut thread, and the riser screws into its bung"},
      {"riser_of_what_takes_a_thread",
       "'material' of the riser: one that takes a thread, such as the reservoir's own metal, or none"},
      {"give_riser_a_pipe_thread", "give the riser a pipe thread bung, such as 1 FNPT"},

      // Levels.
      {"reservoir_too_small", "the reservoir does not hold what the table needs"},
      {"charge_so_deep", "charge the reservoir {0} deep"},
      {"reservoir_so_high", "a reservoir {0} high inside, charged {1} deep"},
      {"charge_so_deep_with_rim",
       "charge the reservoir {0} deep; that is more than the table holds, so a rim {1} high, or shut the air in time"},
      {"want_no_deeper_table",
       "even filled to 95 % it gives the table {0}: want no more than that, or make the reservoir larger"},
      {"charge_can_overflow",
       "The charge is more than the table holds to its rim: left alone, it overflows. Charged no deeper than {0}, the "
       "riser uncovers first; from {1} up a day's losses are spare."},
      {"no_charge_does_both",
       "The charge is more than the table holds to its rim: left alone, it overflows. No charge does both: over {0} "
       "the "
       "table can overflow, under {1} a day's losses uncover the riser. A rim {2} high does, or a longer reservoir."},

      // The walls.
      {"share_of_yield", "{0} of the yield of {1}, {2:both}"},
      {"panel_bulges_beyond_theory",
       "Nothing to mend: a panel bulges by more than half its thickness, and there the plate theory behind these "
       "figures "
       "over-states stress and bulge, so that they are on the safe side."},
      {"fill_needs_more_than_walls_may_see", "the fill needs more air pressure than the walls may see"},
      {"setting_is_more_than_walls_may_see", "the set pressure is more than the walls may see"},
      {"stay_lifts_limit", "{0}: the limit rises to {1}"},
      {"stay_lifts_limit_too_little",
       "{0} lifts the limit only to {1}: more rows of stays, thicker sheet, or a lower table"},
      {"stays_every", "{0}: the limit rises to {1}"},
      {"baffles_in_all", "'baffles across: {0}, baffles along: {1}' in all: the limit rises to {2}"},
      {"sheet_at_least", "sheet at least {0:no_less} thick: the limit rises to {1}"},
      {"lid_and_floor_welded_to_baffles",
       "lid and floor welded to every baffle, so that they are bare over {0} x {1} and no more"},
      {"mends_together", "{0:, together with }"},
      {"mend_then_open", "{0:, } (then open: {1:; })"},
      {"on_the_free_port",
       "{0:, }, on '{1}', which is free ('from: {1}', 'ends in: \"{2}\"', 'carries: air', 'special order: yes')"},
      {"on_the_free_port_from_stock",
       "{0:, }, on '{1}', free for it ('from: {1}', 'ends in: \"{2}\"', 'carries: air')"},
      {"on_a_bung_of_its_own", "{0:, }, on a bung of its own in the lid, a {1} in a hole of {2} (and 'carries: air')"},
      {"goes_with_those_before", "what is said above, done, settles this, too"},
      {"mend_unless_those_before", "what is said above, done, settles this, too; by itself: {0:, }"},
      {"mend_once_those_before", "with what is said above done: {0:, }; by itself: {1:, }"},
      {"either_mend", "{0:; or }"},
      {"stays_in_a_grid",
       "stays every {0} x {1} between lid and floor ({2} of them; 'lid bays' and 'floor bays': {3} x {4}, "
       "'lid stays: posts')"},
      {"stiffeners_on_long_sides", "an upright stiffener every {0} on each long side ('long side bays': {1} x {2})"},
      {"stiffeners_on_short_sides", "an upright stiffener every {0} on each short side ('short side bays': {1} x {2})"},
      {"thicker_sheet_or_lower_table", "thicker sheet, or a lower table"},
      {"another_box_or_lower_table", "another box, or a lower table"},
      {"lid_comes_off_first",
       "with the lid cut off first ('lid: open', and 'welded in: yes' of the bungs that are there): {0:, }"},
      {"set_the_regulator_lower", "set the regulator to {0:dial} or less; {1} finishes the fill"},

      // The list.
      {"cut_when_hose_is_laid",
       "at the table, when it is laid: {0} goes up from the bung, out past the table's edge and back in"},
      {"cut_when_gap_is_measured",
       "the gap of {0} that it is worked out of is assumed: set reservoir and table up, measure, then cut"},
      {"stay_with_mouse_holes",
       "carries {0} at {1:alone}, if it is of a grade no weaker than the sheet's; at its foot a mouse-hole {2} long "
       "and "
       "{3} high in every bay, for the water, not where it is welded; {4:; }"},
      {"stay_on_edge", "carries {0} at {1:alone}, if it is of a grade no weaker than the sheet's; {2:; }"},
      {"stay_of_a_section",
       "carries {0} at {1:alone}: no flat bar up to 12 in does; a beam, by whoever may say so; {2:; }"},
      {"crop_baffle_corners", "crop both corners at the floor {0} and both at the lid {1}, for water and air; {2}"},
      {"middles_from_left", "middles {0:and} from the left end, inside"},
      {"middles_from_front", "middles {0:and} from the front, inside"},
      {"middles_over_floor", "middles {0:and} over the floor, inside"},
      {"the_length", "{0}"},
      {"the_number", "{0}"},
      {"bays_from_left", "in bays {0:and} of their row from the left end"},
      {"bays_from_front", "in bays {0:and} of their row from the front"},

      // The setting.
      {"as_the_job_says", "as the job says"},
      {"fills_in_wished_time", "fills in the {0} wished for"},
      {"fills_in_wished_time_below_usual",
       "fills in the {0} wished for; without the wish {1} would be set, which is quicker"},
      {"no_setting_fills_in_wished_time", "no setting up to {0}, {1}, fills in the {2} wished for"},
      {"what_walls_may_see", "what the walls may see"},
      {"what_keeps_relief_shut", "what keeps the relief valve shut while the tank is left alone"},
      {"what_keeps_four_to_one", "what keeps the walls' factor of safety at 4"},
      {"what_regulator_can_be_set_to", "what the regulator can be set to"},
      {"what_just_finishes", "what just finishes the fill; it is more than {0}"},
      {"half_as_much_again", "half as much again as the pressure that just finishes the fill"},
      {"as_high_as_may_be", "as high as {0}"},
      {"wish_not_met", "A fill in {0} was wished for; it takes {1}."},
      {"wished_time_cannot_be_met", "The wish for a fill in {0} cannot be met: {1}."},

      // Filling and draining.
      {"fill_needs_more_than_regulator", "the fill needs more than the regulator can be set to"},
      {"crest_out_of_reach",
       "the set pressure does not lift the water over the highest point of the pipe over the rim: heights over the "
       "water "
       "in the reservoir"},
      {"setting_does_not_lift_the_water", "the set pressure does not lift the water to the wanted depth"},
      {"setting_only_balances",
       "the setting is no more than what holds the table at its depth: the water comes to rest short of it"},
      {"set_the_regulator_higher", "set the regulator to {0:dial}"},
      {"riser_uncovers_too_soon", "the riser uncovers before the table is at its depth, and air blows through"},
      {"table_overflows_too_soon", "the table overflows before it is at its depth"},
      {"rim_so_high", "a rim {0} high"},
      {"air_gives_out", "the air supply gives out before the table is at its depth"},
      {"check_valve_holds", "by nothing: the check valve keeps the water up"},
      {"siphon_runs_back", "by nothing: full of water, the pipe over the rim draws it back as a siphon"},
      {"inlet_over_the_water_holds", "by nothing: the water cannot run back over its inlet"},
      {"receiver_that_holds", "a receiver of {0} or more at {1}, for {2}"},
      {"compressor_that_delivers", "a compressor that delivers {0:air}, for {1}"},
      {"receiver_or_compressor", "a receiver of {0} or more at {1}, or {2}"},
      {"table_overflows_if_left", "If nobody shuts the air off, {0} go over the rim."},
      {"table_overflows_unless_set_to",
       "If nobody shuts the air off, {0} go over the rim. Set to {1}, the water stops by itself below the rim."},
      {"jet_goes_over_the_rim",
       "The first water shoots up to {0} over the inlet, and the rim stands {1} over it: turn it down with an elbow, "
       "or "
       "a plate over the inlet."},
      {"air_blows_through_if_left",
       "If nobody shuts the air off, the riser uncovers and air blows up through the table with a slug of water: put a "
       "splash plate over the inlet."},
      {"vents_are_the_connections",
       "Air leaves by the connections that let it out, and the table drains through their parts: what the job says of "
       "its vent is not counted."},
      {"water_runs_fast", "Over {0} in '{1}': open valves slowly."},

      // Relief.
      {"relief_valve_on_the_reservoir",
       "Put the relief valve on the reservoir itself with no valve between: a shut valve or a stopped riser puts all "
       "of "
       "the regulator's pressure on the walls."},
      {"riser_is_not_relief_enough",
       "If the regulator fails open, the feed can hold {0} with the riser open, and the walls may see {1}: the riser "
       "is not relief enough, and it takes the relief valve."},

      // The leak test.
      {"walls_too_weak_for_test",
       "The walls stand {0} at most, and a test with air needs {1} and a relief valve below the walls' limit: add "
       "stays "
       "until the limit is {2}, or fill with water and look for drips."},
      {"test_at_the_most", "{0} is the most for flat-sided tanks (UL 142, 42.2.1)."},
      {"test_at_the_pressure_in_use",
       "{0} is the most that it may come to in use, within 1.5 to 3 psi (UL 142, 42.2.1)."},
      {"test_at_the_least", "{0} is the least for flat-sided tanks (UL 142, 42.2.1)."},
      {"test_that_keeps_the_factor",
       "{0}: at the {1} that is the least for flat-sided tanks (UL 142, 42.2.1) the walls' factor of safety is below "
       "4."},
      {"test_as_weak_walls_allow",
       "{0} because the walls stand {1} at most; start lower and stop at the first visible bow (common practice)."},
      {"walls_do_not_stand_the_test",
       "A test at {0} is refused: the walls stand {1} at most, and the relief valve must stand between the two, so "
       "test "
       "at {2} or less, or add stays."},
      {"test_as_asked", "As asked for; the walls stand it."},
      {"leave_test_pressure_out", "leave 'test pressure' out and one is chosen under the limit"},
      {"test_air_can_kill",
       "Air under pressure in a flat-sided tank can kill. Test with a relief valve in the line, raise the pressure in "
       "steps from {0:distance} away with nobody nearer, go near only where the steps let you, never stand before a "
       "lid "
       "or end, never leave, lift or weld the tank under pressure."},
      {"use_leak_test_solution",
       "Use leak-test solution, not household soap, without froth; wash it off afterwards. Wait for welds to cool: a "
       "cooling tank reads like a leak."},
      {"water_lessens_stored_energy",
       "Filled with water to near the lid, the tank stores a small part of that energy: test so if you can."},

      // The list and the bin.
      {"bin_is_shared",
       "The bin is shared over the whole job at once, riser and plugs of the leak test with it: a part is free only as "
       "often as it is there, and no other way to share it is better for the job."},
      {"bin_is_shared_by_order",
       "The bin is shared over the whole job at once, riser and plugs of the leak test with it: a part is free only as "
       "often as it is there, and no other way to share it is better for the job. Connections with an order of their "
       "own "
       "come after those that go by the order of the job."},
      {"bin_is_short_of", "More is wanted of these than the bin has: {0:; }."},
      {"list_above_cost_cap", "The list comes to {0:about}, more than the {1} wished for."},
      {"cost_cap_not_sure",
       "Whether the list keeps within the {1} wished for is not known: it comes to {0:about}, and no price is known "
       "for "
       "the {2: and the }."},
      {"clamp_for_hose", "for {0} in hose"},
      {"bung_for_port", "{0} {1}"},
      {"tapped_from_both_sides", "{0} from both sides"},
      {"hose_for_water_column", "{0:long} long"},
      {"gauge_to_and_marks", "0 to {0:mark}, marks of {1:alone} or finer"},
      {"reads_to", "0 to {0:mark}"},
      {"hole_no_larger_than", "hole of {0:thickness2} or less"},
      {"least_that_the_regulator_holds",
       "the least that the regulator holds surely over what just finishes; sooner than the wished {0}"},
      {"pipe_threaded_at_one_end", "threaded {1} at one end, {0:tape_up} or longer"},
      {"for_the_vent", "for the vent"},
      {"to_fill_and_dip_by", "in the lid, to dip and to fill by"},
      {"set_at", "set at {0:mark}"},
      {"adjustable_set_at", "adjustable, to be set at {0:mark}"},
      {"to_weld_in_for_it", "to weld into the lid"},
      {"set_at_with_clear_bore", "set at {0:mark}, clear bore {1:thickness2} or more"},
  };
  return kWords;
}

}  // namespace riserun::report
