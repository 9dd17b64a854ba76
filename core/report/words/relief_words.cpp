// Sentences of what is open about relief valves, the leak test and the gauge.
#include "report/words/say.h"

namespace riserun::report {

std::span<const Words> relief_words() {
  static constexpr Words kWords[] = {
      // Relief.
      {"no_relief_valve", "no relief valve stands on the reservoir; a reducing valve is none"},
      {"buy_relief_valve",
       "a relief valve set at {0:mark} that passes {1:air} of free air, with no valve between it and the reservoir"},
      {"setting_goes_down_for_it",
       "{0:, }; the regulator's setting, which the plan works out, then comes out lower, so that the valve stays shut"},
      {"relief_valve_once_walls_allow",
       "a relief valve set above {0:mark} that passes {1:air} of free air, once the walls make room for it under "
       "their "
       "limit"},
      {"no_relief_valve_is_sold_so_low",
       "a relief valve set at {0:mark} that passes {1:air} of free air; none that is sold opens above {2:mark} and "
       "by "
       "{0:alone}: more stays or thicker sheet make room for the one set at {3:mark}"},
      {"no_relief_valve_is_sold_between",
       "a relief valve set at {0:mark} that passes {1:air} of free air; none that is sold opens above {2:mark} and "
       "by "
       "{0:alone}: more stays or thicker sheet make room for the one set at {3:mark}, a lower setting for the one set "
       "at {4:mark}"},
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
       "the relief valve of '{0}', set at {1:mark}, is fully open only at {2:alone} with its tolerance and its rise: "
       "the "
       "walls see more than they may"},
      {"give_the_valves_own_figures",
       "the valve's own tolerance and rise to full flow in the job ('relief valve: {{tolerance: ..., rise: ...}}'), as "
       "its tag or its maker's data sheet has them: set pressure tolerance, and overpressure"},
      {"relief_valve_on_a_bung_of_its_own",
       "take the relief valve out of the branches and give it a bung of its own size in the lid"},
      {"valve_of_less_tolerance",
       "a valve of its mark whose maker holds it within {0}, said in 'relief valve.tolerance'"},
      {"valve_of_less_tolerance_and_rise",
       "a valve of its mark whose maker holds it within {0} and has it fully open within {1} more, said in 'relief "
       "valve: {{tolerance: ..., rise: ...}}'"},
      {"valve_set_at_of_less_tolerance",
       "a relief valve set at {0:mark} whose maker holds it within {1}, said in 'relief valve.tolerance'"},
      {"relief_valve_blows_in_use",
       "the relief valve of '{0}' opens at {1:mark}, below the set pressure of {2:alone}: it blows in use"},
      {"check_valve_as_it_is_sold",
       "the {0} as it is sold, which opens at {1:mark}: 'air.check valve opens at' left out"},
      {"valve_that_opens_at", "a relief valve set at {0:mark}"},
      {"relief_valve_weeps",
       "the relief valve of '{0}', set at {1:mark}, may open at {2:alone}, and the reservoir may come to {3:alone} "
       "when it is left alone ({4:alone} of it for what the knob may be off): it blows in use"},
      {"mark_by_test_gauge_opens_relief",
       "the knob is marked in the leak test by a gauge of 0 to {0:mark} that is right to within {1} there: left alone "
       "the reservoir may come to {4:mark}, and the relief valve of '{2}' may open at {3:alone}"},
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
      {"relief_valve_behind_a_screen",
       "the relief valve of '{0}' stands behind a {1}: what that catches keeps the air from it"},
      {"take_it_out_of_the_way", "take the {0} out: nothing stands between the tank and its relief valve"},
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
       "the relief valve of '{0}', bore {1:bore}, passes {2:air}; with the regulator failed and the riser "
       "stopped "
       "the supply gives {3:air}"},
      {"relief_valve_has_no_margin",
       "the relief valve of '{0}', bore {1:bore}, passes {2:air} if it lifts to its whole bore, and the supply gives "
       "{3:air}: less than a quarter over"},
      {"relief_valve_fed_too_narrow",
       "the relief valve of '{0}', bore {1:bore}, is fed through {2:bore} and passes {3:air}; with the "
       "regulator failed and the riser stopped the supply gives {4:air}"},
      {"relief_valve_of_clear_bore", "{0}: no restrictor that is sold is so fine"},
      {"restrictor_on_supply_side", "a restrictor of {0:bore} or less on the supply side of the regulator, or {1}"},
      {"no_leak_test_possible", "no leak test with air is possible. {0}"},
      {"test_below_what_may_be_seen", "the leak test at {0} is below the {1} that the reservoir may come to in use"},
      {"test_passes_four_to_one",
       "the leak test at {0} stresses the walls beyond a quarter of their yield, and beyond what they see in use"},
      {"test_far_above_use",
       "the leak test at {0} is above what tests go over the {1} that the reservoir may come to: it proves nothing "
       "more, and stores "
       "more energy beside people"},
      {"test_at", "a 'test pressure' of {0}"},
      {"relief_valve_and_test_at", "a relief valve set at {0:mark}, and a 'test pressure' of {1}"},
      {"stiffer_walls", "more stays or thicker sheet"},

      // Gauge.
      {"no_gauge", "no gauge shows the pressure in the reservoir"},
      {"gauge_cannot_show", "the gauge of '{0}' reads to {1:mark}: {2:mark} is read badly on it"},
      {"gauge_behind", "the gauge of '{0}' stands behind the {1}: shut, it shows nothing of the reservoir"},
      {"gauge_on_a_hose",
       "the gauge of '{0}' hangs on a {1}: pinched, or with water in it, it does not show what the reservoir has"},
      {"gauge_with_nothing_between",
       "take that out, or put the gauge on a bung of its own in the lid: nothing that can shut, check, reduce or be "
       "pinched comes between"},
      {"gauge_that_is_sold", "a {0}"},
      {"no_room_for_relief_of_test",
       "the leak test's {0:mark} is as high as the relief valve of its rig may open, and the rig must have one that "
       "opens over the test"},
      {"gauge_that_shows_and_stands", "one that reads to between {0:mark} and {1:mark} and is rated for {2:alone}"},
      {"use_a_water_column", "a water column in clear hose: no dial that is sold shows so little"},
  };
  return kWords;
}

}  // namespace riserun::report
