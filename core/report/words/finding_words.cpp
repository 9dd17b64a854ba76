// Sentences of what is open in a plan, and of what is to be bought, changed or said.
#include "report/words/say.h"

namespace riserun::report {

std::span<const Words> finding_words() {
  static constexpr Words kWords[] = {
      // What it is used for.
      {"liquid_burns", "'{0}' burns, and air pressure must not move a flammable liquid"},
      {"use_water", "use water"},
      {"aluminium_lithium_over_water", "aluminium-lithium must never be cut in or over water: it explodes"},
      {"cut_it_dry_elsewhere", "cut it dry, away from the table"},
      {"fines_make_hydrogen",
       "{0} fines make hydrogen that gathers in the closed air space: {1:2} of them bring its {2} to the lower limit "
       "of "
       "hydrogen in air"},
      {"keep_vent_open_and_purge",
       "a vent that leads high and outdoors and stays open while idle, and a purge before work; then 'vent: {{stays "
       "open: "
       "yes, purged: yes}}'"},

      // Walls.
      {"code_pressure", "{0:alone} and more is in the scope of the pressure-vessel code"},
      {"stay_under_code_pressure", "stay under {0:alone}: a lower table, a lower setting, a relief valve set lower"},
      {"setting_passes_four_to_one",
       "the setting worked out, {0}, leaves a factor of safety of {1:2}; the local rule may "
       "ask 4"},
      {"stiffer_walls_or_own_setting",
       "more stays or thicker sheet; or, where the rule does not hold, give 'air.set pressure' yourself"},
      {"floor_stays_dam_the_water",
       "nothing passes the bars that stand on the floor ('passages: no'): each bay keeps its water from the riser"},
      {"mouse_holes_in_floor_stays", "mouse-holes at their foot, then 'passages: yes'"},
      {"baffles_are_tight",
       "the baffles are tight and make {0:#compartment|compartments}: neither water nor air gets from one to the next, "
       "so that those without riser, air and vent neither fill nor drain"},
      {"baffles_too_near", "{0:#baffle|baffles} {1} {0:?leaves|leave} bays of {2}: to weld in, {3} is the least"},
      {"baffles_that_do",
       "{0:#baffle|baffles} {1} at most; {2} across and {3} along keep 4 to 1 already: the limit is then {4}"},
      {"baffles_at_most", "{0:#baffle|baffles} {1} at most, or a thicker sheet in their place"},
      {"bung_near_wall",
       "'{0}' stands {1} from the inside of a wall: with room for both welds {2} is the least from its axis"},
      {"bung_near_baffle",
       "the axis of '{0}' is {1} from a baffle under the lid: with room for both welds {2} is the least"},
      {"bung_near_stay",
       "the axis of '{0}' is {1} from a row of stays under the lid: with room for both welds {2} is the least"},
      {"bung_near_tie", "the axis of '{0}' is {1} from a tie under the lid: with room for both welds {2} is the least"},
      {"bungs_too_near",
       "'{0}' and '{1}' are {2} apart: for their welds and a wrench {3} is the least between their axes"},
      {"move_bung_to", "move '{0}' to {1} from the left and {2} from the front ('at: [{1}, {2}]')"},
      {"lid_has_no_room", "the lid has no free place for '{0}': set it into a side over the water"},
      {"crop_corners_of_baffles",
       "crop their corners: 1 to 1-1/2 in at the floor, 1/2 to 3/4 in at the lid, at every corner"},
      {"stay_beyond_flat_bar",
       "the stays of the {0} span {1} and carry {2} each at {3:alone}: no flat bar up to 12 in does that"},
      {"baffles_or_shorter_bays",
       "baffles in place of these stays, or more bays the other way, so that they are shorter"},
      {"yield_of_no_welded_sheet",
       "a yield of {0} is that of no sheet beside its welds, and the walls' limit rests on it"},
      {"give_yield_as_welded",
       "the least that the grade promises as welded, by the certificate; or leave 'yield' out, and the plain grade "
       "counts"},

      // Water.
      {"charge_leaves_no_air",
       "the charge leaves {0} under the lid: gauge, vent and relief valve would stand in water"},
      {"leave_charge_out", "leave 'charge' out, and what the table takes is worked out"},
      {"line_below_the_least_bore",
       "'{0}' is narrower inside than {1:thickness3}, {2} of the riser's bore: nothing that may be used is that wide"},
      {"let_it_take_special_order", "let it take parts that a store must order ('special order: yes')"},
      {"wider_port_or_least_bore_of_its_own",
       "give the table a wider port, or say with 'smallest bore' what is enough"},
      {"longer_gap_or_least_bore_of_its_own",
       "a longer gap, in which a run of that width has room, or say with 'smallest bore' what is enough"},
      {"run_short_of_its_gap", "'{0}' ends {1} short of the gap of {2} that the job gives; its threads give {3}"},
      {"make_run_span_the_gap",
       "both ends 'held: fixed' and no 'hose length', so that the run makes the gap; or a nipple {0} longer in it, or "
       "a hose in 'need'"},
      {"hose_short_of_its_gap", "the hose of '{0}' is {1} too short for the gap of {2} that the job gives"},
      {"no_room_for_hose",
       "'{0}' is a hose over a gap of {1}: its fittings, its two barbs and a hose that still bends take {2}"},
      {"gap_for_hose_or_rigid",
       "a gap of {0} or more (a higher table; where it is there, measure it and give 'gap'); or no hose: a 'union' in "
       "'need' in its place closes a rigid run"},
      {"longer_hose", "a 'hose length' of {0}, or none, and it is cut to the gap"},
      {"hose_loops_in_its_gap",
       "the hose of '{0}' is {1} longer than its gap of {2}: it kinks, or lies in a loop that holds water"},
      {"hose_cut_to_the_gap", "no 'hose length', and one hose alone: it is cut to the gap"},
      {"run_beyond_its_gap",
       "'{0}' is {1} longer than the gap of {2} that the job gives, between ports that do not move; its threads give "
       "{3}"},
      {"ports_further_apart", "ports {0} further apart, or an order of shorter parts ('order: length')"},
      {"run_short_of_its_assumed_gap", "'{0}' ends {1} short of its gap: {2} by the heights, of which one is assumed"},
      {"hose_short_of_its_assumed_gap",
       "the hose of '{0}' is {1} too short for its gap: {2} by the heights, of which one is assumed"},
      {"run_beyond_its_assumed_gap", "'{0}' is {1} longer than its gap: {2} by the heights, of which one is assumed"},
      {"measure_the_assumed_gap",
       "measure and give 'gap', or the 'face height' of {0:and}; a run with both ends 'held: fixed' and no 'hose "
       "length' is then made to it"},
      {"hose_bends_do_not_fit",
       "the hose of '{0}' cannot take the offset of {3} within its gap of {1}, bent no tighter than {2}"},
      {"gap_or_offset_for_hose", "a gap of {0} or more, or an offset of {1} or less"},
      {"gap_for_hose", "a gap of {0} or more"},
      {"table_port_under_bung",
       "'{0}' looks down from {1} over the reservoir's inside floor, and '{2}' looks up at it from {3}: no run goes "
       "between them"},
      {"raise_the_table_over_the_bung",
       "the table's port higher than {0} ('floor height', 'face height'), with room for the run, or a bung that stands "
       "lower"},
      {"check_valve_against_fill", "in '{0}' the {1} stops the water on its way up"},
      {"leave_it_out_of_the_line", "leave the {0} out, or turn the run round"},
      {"check_valve_against_drain",
       "in '{0}' the {1} stops the water on its way back, and nothing else drains the table"},
      {"leave_it_out_or_drain_elsewhere", "leave the {0} out, or give the table a drain of its own"},
      {"foot_valve_against_drain", "the foot valve stops the water on its way back, and nothing else drains the table"},
      {"leave_out_foot_valve_or_drain_elsewhere", "leave the foot valve out, or give the table a drain of its own"},
      {"measured_time_is_far_off", "a fill was measured at {0} and is worked out at {1}: the job is not as it says"},
      {"find_what_differs", "look for what differs: the setting, the charge, a bore, a leak"},
      {"table_does_not_drain", "{0} of the {1} stays in the table: it does not drain back"},
      {"lower_mouth_or_own_drain", "a lower mouth or inlet, or a drain of the table's own"},
      {"margin_below_a_days_loss",
       "after a fill {0:fixed1} of water is spare over the riser's end; a day's evaporation and splash takes "
       "{1:fixed1}: "
       "top up at {2}"},
      {"riser_falls_through_bung", "the {0} in riser falls through '{1}', a {2} in bung: nothing holds it"},
      {"of_two_sizes", "{0} x {1}"},
      {"hold_riser_with_bushing",
       "a {0} x {1} bushing with an inside thread at both ends: stores have none, so order it by that name, or have a "
       "plain "
       "one tapped through ('bung: double-tapped bushing')"},

      // Relief.
      {"no_relief_valve", "no relief valve stands on the reservoir; a reducing valve is none"},
      {"buy_relief_valve",
       "a relief valve set at {0:mark} that passes {1:air} of free air, on a port of its own with no valve between"},
      {"relief_valve_once_walls_allow",
       "a relief valve set above {0:alone} that passes {1:air} of free air, once the walls make room for it under "
       "their "
       "limit"},
      {"no_relief_valve_is_sold_so_low",
       "a relief valve set at {0:alone} that passes {1:air} of free air; none that is sold opens above {2:alone} and "
       "by "
       "{0:alone}: more stays or thicker sheet make room for the one set at {3:alone}"},
      {"no_relief_valve_is_sold_between",
       "a relief valve set at {0:alone} that passes {1:air} of free air; none that is sold opens above {2:alone} and "
       "by "
       "{0:alone}: more stays or thicker sheet make room for the one set at {3:alone}, a lower setting for the one set "
       "at {4:alone}"},
      {"relief_setting_passes_four_to_one",
       "a relief valve above the set pressure opens at {0:alone}, where the factor of safety is below the 4 that the "
       "local rule may ask"},
      {"stiffer_walls_or_lower_setting", "more stays, thicker sheet, or a lower 'air.set pressure'"},
      {"relief_valve_on_the_supply",
       "the relief valve of '{0}' stands on '{1}', before the regulator: it sees the supply, not the reservoir"},
      {"relief_valve_off_the_reservoir",
       "the relief valve of '{0}' stands on '{1}', which is no port of the reservoir: the air never comes there"},
      {"relief_valve_under_water",
       "the relief valve of '{0}' stands on '{1}', on the water: it lets out water, and far less of it than of air"},
      {"relief_valve_behind", "the relief valve of '{0}' stands behind the {1}, which can keep the air from it"},
      {"relief_valve_on_a_port_of_its_own",
       "put it on a port of its own in the reservoir's lid, with nothing between that can shut, check or reduce"},
      {"relief_valve_opens_above_limit",
       "the relief valve of '{0}', set at {1:alone}, is fully open only at {2:alone} with its tolerance and its rise: "
       "the "
       "walls see more than they may"},
      {"give_the_valves_own_figures",
       "give the valve's own tolerance and rise to full flow from the maker's sheet ('relief valve'), or a valve set "
       "lower"},
      {"relief_valve_blows_in_use",
       "the relief valve of '{0}' opens at {1:alone}, below the set pressure of {2:alone}: it blows in use"},
      {"valve_that_opens_at", "a relief valve set at {0:mark}"},
      {"relief_valve_weeps",
       "the relief valve of '{0}', set at {1:alone}, may open at {2:alone}, and the reservoir comes to {3:alone} when "
       "it "
       "is left alone: it blows in use"},
      {"lower_setting", "turn 'air.set pressure' down to {0:dial} or less"},
      {"room_for_a_higher_valve",
       "more stays or thicker sheet, which make room for a relief valve set higher; or a lower table"},
      {"restrictor_before_relief_valve",
       "in '{0}' the {1} stands before the relief valve and throttles it: it cannot let the air out"},
      {"take_restrictor_to_the_supply", "take it out: it belongs on the supply side of the regulator"},
      {"way_to_relief_valve_is_necked",
       "the way to the relief valve of '{0}' passes the {1}, {2} at one end: the valve's inlet is {3}"},
      {"relief_valve_on_a_hose",
       "the relief valve of '{0}' hangs on a {1}, which can kink, swell or come off and keep the air from it"},
      {"relief_valve_on_fittings", "screw it into its bung, with nothing but short fittings of its own size between"},
      {"way_to_relief_valve_is_narrower",
       "the way to the relief valve of '{0}' narrows to {1:thickness2}, less than the valve's own {2:thickness2}"},
      {"fittings_as_wide_as_the_valve", "a bung and fittings of the valve's own size"},
      {"full_flow_passes_four_to_one",
       "the relief valve of '{0}', set at {1:mark}, is fully open only at {2:alone} with its tolerance and its rise: "
       "the walls' factor is under 4 there"},
      {"stiffer_walls_or_valve_of_less_tolerance",
       "more stays or thicker sheet, or a valve of less tolerance and rise, with its maker's figures"},
      {"relief_valve_too_narrow",
       "the relief valve of '{0}', bore {1:thickness2}, passes {2:air}; with the regulator failed and the riser "
       "stopped "
       "the supply gives {3:air}"},
      {"relief_valve_fed_too_narrow",
       "the relief valve of '{0}', bore {1:thickness2}, is fed through {2:thickness2} and passes {3:air}; with the "
       "regulator failed and the riser stopped the supply gives {4:air}"},
      {"relief_valve_of_clear_bore",
       "a valve of more than {0:thickness3} clear bore: no restrictor that is sold is so fine"},
      {"restrictor_on_supply_side",
       "a restrictor of {0:thickness3} or less on the supply side of the regulator, or a valve of {1:thickness2} clear "
       "bore"},
      {"no_leak_test_possible", "no leak test with air is possible. {0}"},
      {"test_below_what_may_be_seen", "the leak test at {0} is below the {1} that the reservoir may come to in use"},
      {"test_passes_four_to_one",
       "the leak test at {0} stresses the walls beyond a quarter of their yield, and beyond what they see in use"},
      {"test_at", "a 'test pressure' of {0}"},
      {"relief_valve_and_test_at", "a relief valve set at {0:mark}, and a 'test pressure' of {1}"},
      {"stiffer_walls", "more stays or thicker sheet"},

      // Gauge.
      {"no_gauge", "no gauge shows the pressure in the reservoir"},
      {"gauge_cannot_show", "the gauge of '{0}' reads to {1:alone}: {2:alone} is read badly on it"},
      {"gauge_behind", "the gauge of '{0}' stands behind the {1}: shut, it shows nothing of the reservoir"},
      {"gauge_with_nothing_between",
       "take that out, or put the gauge on a bung of its own in the lid: nothing that can shut, check or reduce comes "
       "between"},
      {"gauge_that_is_sold", "a {0}"},
      {"use_a_water_column", "a water column in clear hose: no dial that is sold shows so little"},

      // Air.
      {"regulator_range_too_wide",
       "the regulator goes to {0:alone} and is set to {1}: more than {2:2} times as far as it is set"},
      {"regulator_of_another_range",
       "'air.regulator range' says 0 to {0:alone}, and the {2} in '{1}' goes to {3:alone}: one of the two is wrong"},
      {"range_of_the_regulator", "'regulator range: {0:alone}', or another regulator in 'need'"},
      {"first_stage_gives_too_little",
       "in '{0}' the {1} stands before the regulator that is set to {3} and gives {2:alone} at most: too little for "
       "it"},
      {"first_stage_of_range", "a first stage of 0 to {0:mark} or more, or none"},
      {"take_regulator_with_range", "a regulator of 0 to {0:mark}"},
      {"regulator_repeats_too_coarsely",
       "the regulator comes back to within {0} of {1}, and {2} decides between right and wrong"},
      {"regulator_that_repeats_within",
       "a precision regulator that comes back to within {0}, said in 'air.regulator repeatability'"},
      {"restrictor_behind_regulator",
       "in '{0}' the restrictor stands behind the regulator, where it throttles each fill and no failed regulator"},
      {"restrictor_before_regulator", "change it round with the regulator, so that it faces the supply"},
      {"restrictor_in_no_run",
       "'air.restrictor' counts on a hole of {1:thickness3}, and no restrictor stands in '{0}': nobody builds it in"},
      {"name_restrictor_in_need",
       "a restrictor of {0:thickness3} or less before the regulator in that connection's 'need', with 'in order: yes'"},
      {"no_regulator", "no regulator stands in '{0}': the supply's whole pressure goes into the reservoir"},
      {"no_air_line", "no connection brings air from the supply to the reservoir"},
      {"connect_the_air",
       "a connection from the supply's port to the reservoir, with a regulator of 0 to {0:mark} in it"},
      {"part_below_supply", "in '{0}' the {1} stands {2:alone} of air, and the supply gives {3:alone}"},
      {"lower_supply_or_stronger_part", "a supply that gives less, or a part that is made for it"},
      {"no_vent", "nothing lets the air out: the table cannot drain, and the pressure cannot be let off"},
      {"vent_said_to_carry_water",
       "nothing lets the air out, unless '{0}' does, which is in the lid and said to carry water ('carries: air')"},
      {"vent_that_no_hand_opens", "'{0}' ends in a {1}, which no hand opens: it lets no air out when it is wanted"},
      {"open_to_the_air", "'{0}' ends open to the air in a {1}: the reservoir never holds pressure"},
      {"vent_behind_check_valve",
       "'{0}' lets the air out through the {1}, which holds back {2:alone}: opened, the reservoir stays under "
       "pressure"},
      {"take_check_valve_out", "take it out of the vent"},
      {"air_comes_in_twice",
       "air comes in by {0:and}: what holds a failed regulator is worked out for one of them alone"},
      {"one_feed_alone", "one connection from the supply to the reservoir"},
      {"no_relief_sold_for_the_test",
       "no relief valve that is sold opens between the leak test's {0:alone} and {1:alone}, and the rig must have one"},
      {"relief_of_test_too_narrow",
       "the relief valve of the leak test's rig passes {0:air}; with the test's regulator stuck open the supply gives "
       "{1:air}"},
      {"restrictor_for_the_test",
       "a restrictor of {0:thickness3} or less on the supply side of the regulator for the test; none so fine is in "
       "the catalog"},
      {"test_by_hand_pump", "a hand pump for the test, in place of the supply"},
      {"test_lower_or_with_water", "a lower 'test pressure', or fill with water and look for drips"},
      {"no_device_is_so_exact", "'{0}' of {1}: no device is so exact, the best come to {2}"},
      {"take_it_from_the_makers_sheet", "'{0}' as the maker's sheet has it"},
      {"no_receiver_is_so_low",
       "'air.receiver pressure' of {0} is no shop's receiver: a failed regulator lets through all that is in it"},
      {"read_the_receivers_own_gauge",
       "what the gauge on the compressor's receiver shows when the compressor stops; left out, the highest of a shop "
       "is taken"},
      {"regulator_that_locks_up_within",
       "a regulator that rises no more than {0} over its setting while no air is drawn, said in "
       "'air.lock up'"},
      {"plug_of_test_is_not_sold", "no plug or cap is sold that closes '{0}' ({1}), and the leak test needs it closed"},
      {"bung_of_another_thread", "a bung of a thread that plugs are sold for, as FNPT"},
      {"put_a_valve_there", "end it in a ball valve"},
      {"port_closed_by_nothing", "nothing is on '{0}': air or water comes out of it under pressure"},
      {"end_port_in_plug", "a connection that leads from it, or a plug that stays: 'from: {0}, ends in: plug'"},
      {"water_runs_out", "'{0}' ends in a {1} that nothing shuts: the water runs out under pressure"},
      {"riser_leads_nowhere", "no connection leads from '{0}' to the table: the water has no way up"},
      {"connect_riser_and_table", "a connection from it to the table that carries water"},
      {"no_vent_behind_check_valve",
       "in '{0}' the {1} keeps the air in and nothing lets it out: the table cannot drain"},
      {"vent_is_a_throttle",
       "'{0}' throttles the air on its way out: the table drains in {1}, with nothing in the way in {2}"},
      {"vent_as_wide_as", "end '{0}' in a {1} on a bung of that size, and nothing narrower between: {2} then"},
      {"take_out_of_the_vent", "take the {1} out of '{0}': leave it out of that connection's 'need'"},
      {"wider_vents", "a vent as wide as the riser, or several"},
      {"add_a_vent", "a vent on the reservoir: a ball valve that opens to the air"},

      {"relief_valve_lies_flat",
       "'{0}' leaves a side and nothing turns it up: the relief valve lies on its side, where it may stick"},
      {"elbow_to_stand_upright", "a 90 degree elbow before it ('need: [90 elbow]'), or its bung in the lid"},
      {"device_not_rated", "the {1} that '{0}' ends in stands {2:alone}, and the reservoir may come to {3:alone}"},
      {"device_that_stands", "one that is rated for {0:alone} or more"},
      {"relief_valve_far_away",
       "the relief valve of '{0}' stands {1} of pipe away from the reservoir: the way takes of its flow, and it "
       "chatters"},
      {"smaller_restrictor",
       "a restrictor of {0:thickness3} or less in place of the one of {1:thickness3}, or a valve of more than "
       "{2:thickness3} clear bore"},
      {"check_valve_before_regulator",
       "in '{0}' the {1} stands before the regulator: water that comes back gets into the regulator"},
      {"check_valve_behind_regulator", "change it round with the regulator, so that it stands on the reservoir's side"},
      {"supply_of_what_shatters", "'{0}' is of {1}, which shatters under compressed air and throws splinters"},
      {"supply_of_metal", "an end of metal, or of hose that is made for air"},
      {"gas_that_is_no_air",
       "'{0}' is no air: oxygen makes oil and grease explode, fuel gas burns, and the others choke whoever stands by"},
      {"use_shop_air", "use shop air"},
      {"second_line_to_the_table",
       "'{0}' is a second way from the reservoir to the table: its time, and when it draws air, are not worked out"},
      {"one_line_alone", "one line from the reservoir to the table; branch it on its way ('branches') for two inlets"},
      {"drain_high_up", "'{0}' stands {1} over the floor: what is below it does not come out"},
      {"feed_narrower_than_any_line",
       "'air.feed bore' counts on {0:thickness3}, narrower than the end of any air line: nobody builds that in"},
      {"table_port_closed_by_nothing", "nothing is on '{0}' of the table: the water runs out of it onto the floor"},
      {"drain_in_the_lid", "'{0}' stands on '{1}' in the lid: the water does not come to it"},
      {"drain_low_on_the_reservoir",
       "a port low in a side, or in a floor that stands on legs, that ends in a valve: 'where: side'"},
      {"port_under_a_carried_floor",
       "'{0}' is in the floor, which lies on what carries it: nothing can be screwed on there"},
      {"port_in_a_side", "put '{0}' low in a side"},

      // Heights.
      {"side_port_of_unknown_height",
       "'{0}' stands on '{1}' in a side, at a height that the job does not say: under the {2} of water it would let "
       "water out and see none of the air"},
      {"give_height_or_lid",
       "give the height of its middle over the inside floor, more than {0}, as 'face height' of '{1}', or put it in "
       "the lid"},
      {"gauge_under_water",
       "the gauge of '{0}' stands on '{1}', under water: it shows the water's weight with the air"},
      {"vent_under_water", "'{0}' stands on '{1}', under water: opened, it lets out water and no air"},
      {"air_comes_in_under_water",
       "'{0}' brings the air in at '{1}', under water: with the air off the water runs back into the regulator"},
      {"nothing_to_dip_by",
       "no opening in the lid but the riser's: no rod goes in to read the charge, nothing to fill or look in by"},
      {"plug_in_the_lid", "a bung and a {0} in the lid, to dip and to fill by"},
      {"vent_valve_far_away",
       "the valve of '{0}' stands {1:long} of hose away from the reservoir: who stands at the tank cannot let the "
       "pressure off, and the hose holds it, too"},
      {"vent_valve_on_its_bung", "the valve on its bung, and the hose, open at its far end, behind it"},
      {"bushing_does_not_hold_riser",
       "'{1}' is a bushing tapped {2} from both sides, and the riser is {0}: nothing holds it"},
      {"bushing_tapped_for_riser",
       "a bushing that is tapped {0} inside ('port: {0} FNPT'), or a riser of {1} pipe ('riser: {{pipe: {1}}}')"},
      {"port_into_lid", "'{0}' in the lid instead"},
      {"port_into_floor", "'{0}' in the table's floor instead"},
      {"bung_that_ends_over_the_water",
       "a bung that reaches less far down ('projects'): its mouth more than {0} over the inside floor"},
      {"port_over_the_water", "put it in the lid, or its middle more than {0} over the inside floor"},

      // Hot and cold.
      {"water_scalds", "the water comes to {0}, and scalds in seconds"},
      {"say_what_is_done_against_heat",
       "say what keeps hands and water apart in 'against heat': guarded, insulated, covered or mixing valve"},
      {"gloves_alone", "the water comes to {0}, and gloves alone keep no hand from it"},
      {"cooling_pulls_walls_in",
       "shut at {0} and cooled to {1}, the moist air space pulls the walls in harder than they may bend"},
      {"keep_vent_open_or_break_vacuum",
       "a vent that stays open while idle ('vent: {{stays open: yes}}'), or no valve in the water's way, so that the "
       "riser "
       "lets air in"},
      {"parts_too_hot", "{0:and}: {1} is not made for water so hot"},
      {"parts_for_hot_water", "parts of something else than {0}, or of a sort that is marked for it; or cooler water"},
      {"drain_is_a_plug",
       "the drain '{0}' ends in a plug: nothing lets the water out of the reservoir but pulling it under its whole "
       "head"},
      {"drain_by_a_valve", "a ball valve there ('ends in: ball valve'), a plug or a hose in its outlet"},
      {"part_too_hot", "the {0} is not made for water so hot"},
      {"part_of_unknown_heat", "the {0} stands in hot water, and nothing is known of what heat it stands"},
      {"part_that_stands_the_heat", "the {0} in place of the {1}"},
      {"ask_maker_of_heat",
       "none like the {0} is known to stand {1}: another kind of part, its maker's word as 'duties' in a catalog of "
       "your own, or cooler water"},
      {"insulation_stops_no_frost", "it comes to {0}: insulation slows frost and stops none"},
      {"antifreeze_too_weak", "it comes to {0}: what the water may hold of antifreeze does not keep it liquid"},
      {"drain_or_heat_too", "drain it or heat it too ('against frost: antifreeze, drained when idle')"},
      {"drained_by_nothing", "'against frost' says that it is drained, and nothing drains the reservoir"},
      {"water_can_freeze", "it comes to {0}, and the water can freeze"},
      {"say_what_is_done_against_frost", "say how that is handled in 'against frost': drained, heated or antifreeze"},
  };
  return kWords;
}

}  // namespace riserun::report
