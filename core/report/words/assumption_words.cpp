// Sentences of a plan's assumptions: what, which value, and why.
#include "report/words/remark_words.h"

namespace riserun::report {

std::span<const AssumptionWords> assumption_words() {
  static constexpr AssumptionWords kWords[] = {
      // Reservoir and table.
      {"no_room_for_supports", "room that supports take in the reservoir", "none",
       "stays and baffles of sheet take about 1 % (common practice)"},
      {"nothing_under_the_riser", "what lies on the floor under the riser", "nothing",
       "not given: look for a stay or an angle there"},
      {"welded_riser_above_lid", "what of the welded riser stands over the lid's inside", "{0}",
       "its port has no 'face height': room for its thread and a wrench (common practice)"},
      {"lid_not_welded_on", "lid", "not yet welded on", "not given"},
      {"no_slats", "room that slats take under water in the table", "none",
       "not given: without them the table needs the most water"},
      {"rim", "height of the table's rim", "{0}", "{1} over the wanted depth, so that an overflow is not missed"},
      {"water_comes_in_at_floor_unconnected", "where the water comes into the table", "at its floor",
       "no connection reaches a port of the table"},
      {"water_comes_in_at_floor", "where the water comes into the table", "at its floor",
       "'opens at' was not given for the table's port"},
      {"crest_over_rim", "highest point of the pipe over the rim", "{0} above the table's floor",
       "one bore over the rim; 'crest' was not given"},
      {"mouth_at_crest", "where the pipe over the rim ends", "at its highest point",
       "'opens at' was not given: nothing hangs into the water that could draw it back"},
      {"charge_for_the_table", "charge", "{0} deep",
       "what the table takes and, the greater, a tenth or two days' evaporation and splash more, over what the riser "
       "leaves behind"},
      {"charge_as_full_as_may_be", "charge", "{0} deep", "all but 5 % of the reservoir: the table takes more"},

      // The walls.
      {"floor_stays_have_mouse_holes", "mouse-holes through the bars on the floor", "{0} long, {1} high in every bay",
       "without them each bay keeps its water: the cut list and the order of work have them (common practice)"},
      {"yield_of_sheet", "yield strength of the sheet", "{0}", "{1}"},
      {"ultimate_of_sheet", "ultimate strength of the sheet", "{0}", "{1}"},
      {"least_of_gauge", "thickness of the sheet", "{0:thickness}",
       "the least that a mill may send as '{1}', {2:thickness} by its name (ASTM A568 and its like): write the "
       "thickness "
       "itself where it was measured"},
      {"no_corrosion_allowance", "corrosion allowance of the sheet", "none",
       "not given; steel in still tap water loses 1 to 6 thousandths of an inch a year, its pits 3 to 5 times that "
       "(corrosion handbooks, from memory)"},
      {"design_stress", "design stress of the walls", "{0}, {1}",
       "screening value for flat tank walls (common practice)"},
      {"baffles_of_plate", "baffles", "of {0} plate, thicker than the sheet",
       "slots over the edge of {1:alone} sheet would be narrower than 1/8 in (3 mm): nobody cuts and fills those "
       "(common practice)"},
      {"bare_panel_in_lid_and_floor", "where the widest bare panel is", "in the lid, and in the floor under the charge",
       "'in: lid' was not given: the worse of the two counts"},
      {"sides_are_bare", "stiffeners of the sides and ends", "none: bare from corner to corner",
       "the widest bare panel says nothing of them: 'long side bays' and 'short side bays' do"},
      {"floor_on_legs", "floor of the reservoir", "on legs: it bears water and air as the lid bears air",
       "'floor carried' was not given: one that lies flat all over does not bulge"},
      {"supports_are_inside", "stays and baffles of 'supports'", "in the closed reservoir already",
       "its lid is welded: nobody can put them in"},
      {"no_stays", "stays and baffles of the reservoir", "none: each wall is one bare panel",
       "none were given, and that is on the safe side"},

      // Air, and where it goes.
      {"no_compressor", "compressor", "none: the receiver's air alone", "only a receiver was given"},
      {"no_receiver", "receiver", "none", "not given: the compressor's delivery alone must do it"},
      {"receiver_pressure", "receiver pressure at the start of a fill", "{0}",
       "low end of shop air, 90 to 125 psi (common practice)"},
      {"full_supply_pressure", "full supply pressure for the fault case", "{0}",
       "high end of shop air, 90 to 125 psi (common practice)"},
      {"regulator_range", "regulator range", "0 to {0}", "low-pressure regulator (common practice)"},
      {"regulator_repeatability", "what the regulator comes back to", "plus or minus {0}",
       "usual for a spring regulator of 0 to {1:alone} (common practice)"},
      {"relief_tolerance", "tolerance of the relief valve of '{0}'", "plus or minus {1}",
       "a code valve's, up to 70 psi (ASME BPVC Section XIII Table 3.6.3.1-2): at a few psi it says little, so ask the "
       "maker"},
      {"relief_rise", "rise to full flow of the relief valve of '{0}'", "{1}",
       "a code valve's, 10 % or 3 psi, the greater (ASME BPVC Section VIII UG-125): ask the maker"},
      {"baffles_have_passages", "passages through the baffles", "at each corner: {0} at the floor, {1} at the lid",
       "not given: without them neither water nor air gets from one bay to the next (common practice)"},
      {"regulator_droop", "regulator droop", "{0} %",
       "usual for a small regulator at its rated flow (common practice)"},
      {"regulator_rated_flow", "regulator's rated flow", "{0:air}", "low-pressure regulator (common practice)"},
      {"first_stage_setting", "setting of the first stage", "{0:alone}",
       "in the middle of its range a regulator holds best, and at least twice what the one behind it is set to; when "
       "one of the two fails, all that the supply has is counted (common practice)"},
      {"regulator_lock_up", "rise of the regulator's outlet until it shuts tight", "{0:alone}",
       "0.2 to 0.5 psi for a low-pressure regulator, 1 to 3 psi for a general-purpose one (common practice)"},
      {"check_valve_opens", "what opens the foot valve", "{0:alone}",
       "as a check valve with a light spring does (common practice)"},
      {"regulator_setting", "regulator setting", "{0}", "{1}"},
      {"feed_bore", "smallest bore before the regulator", "{0}", "1/4 in quick-connect (common practice)"},
      {"vent_bore", "vent bore", "{0}", "1/2 in ball valve (common practice)"},
      {"one_vent", "vents", "one", "not given"},

      // Surroundings and wishes.
      {"water_temperature", "water temperature", "{0}", "room temperature"},
      {"coldest_place", "coldest that the shut reservoir gets", "{0}",
       "'coldest' was not given: below that its water may freeze (common practice)"},
      {"at_sea_level", "altitude", "sea level", "standard atmosphere (ISO 2533)"},
      {"order_of_a_job_without_a_bin", "what decides between fittings",
       "the line's size and kind kept, then fewest size changes, parts, one material, price", "no bin was given"},
      {"order_of_a_job_with_a_bin", "what decides between fittings",
       "the line's size kept, no foreign thread, then fewest parts to buy, then kind and the rest", "a bin was given"},

      // The riser.
      {"riser_bung", "riser bung", "{0} FNPT full coupling in the lid", "no port was given for the riser"},
      {"kind_of_riser_bung", "bung of the riser", "full coupling through the lid",
       "a riser hung inside needs a thread from below"},
      {"bung_length_of_catalog", "length of the riser's bung", "{0}", "catalog, {1}"},
      {"bung_length_for_two_threads", "length of the riser's bung", "{0}",
       "twice the make-up and {1} (common practice)"},
      {"riser_hangs_in_bushing", "what the riser hangs in",
       "{0} x {1} double-tapped bushing, {2} long, {4} of it in a {0} coupling of {3}",
       "catalog; made up as ASME B1.20.1 has it"},
      {"bung_projection", "how far the riser's bung stands below the lid", "{0}",
       "half of its length: set through the lid and welded both sides (common practice)"},
      {"riser_material_of_bin", "material of the riser", "{0}", "the bin has a nipple of it"},
      {"riser_material", "material of the riser", "{0}", "the usual one; the metal of the reservoir was not given"},
      {"riser_material_of_reservoir", "material of the riser", "{0}", "the metal of the reservoir"},
      {"riser_bore", "bore of the riser", "{0:thickness3}",
       "0.8 of the outside diameter: the catalog has no pipe of it"},
      {"riser_pipe", "pipe of the riser", "1 in schedule 40",
       "the bung takes no pipe: the rest of the plan needs a bore"},

      // The connections.
      {"connection_carries_air", "what '{0}' carries", "air", "one end is on the air supply"},
      {"connection_carries_water", "what '{0}' carries", "water", "neither end is on the air supply"},
      {"end_is_fixed", "how '{0}' is held in '{1}'", "fixed", "its port is welded or mounted"},
      {"end_hangs_loose", "how '{0}' is held in '{1}'", "free to turn and slide", "it hangs on an air hose"},
      {"gap_of_connection", "gap of '{0}'", "{1}",
       "from the lid's bung to the table's floor; measure it between the faces and give 'gap'"},
      {"hose_length", "length of the {0} in '{1}'", "{2}", "neither its length nor the gap was given"},
      {"smallest_bore", "smallest bore in '{0}'", "{1:thickness3}",
       "{2} of the riser's bore: a narrower run would throttle the fill"},
      {"mark_of_device", "pressure of the '{0}' in '{1}'", "{2:mark}",
       "its words name none: the lowest that is sold and suits the air (common practice)"},
      {"lightest_spring", "spring of the '{0}' in '{1}'", "opens at {2}",
       "its words name none: the lightest that can be ordered, as what it holds back is lost to the lift (common "
       "practice)"},
      {"hottest_in_connection", "hottest that '{0}' gets", "{1}", "the water's temperature"},
      {"vacuum_in_connection", "vacuum in '{0}'", "it must be stood",
       "hot water that cools in a shut reservoir draws one (common practice); 'vacuum: no' says that it is vented"},
      {"plain_pipe_to_the_table", "line from the lid to the table", "plain pipe of the riser's bore, {0}",
       "no fittings are known for it: no water connection from the riser's bung to the table has a chain"},

      // Connections with branches.
      {"device_is_special_order", "'{0}' in '{1}'", "ordered specially", "no store has one on the shelf"},
      {"way_to_relief_valve", "way from '{0}' to '{1}'", "nothing on it that can shut",
       "a shut valve would take the relief valve away (ASME BPVC Section VIII UG-135, from memory)"},
      {"bore_to_relief_valve", "smallest bore on the way to '{0}'", "the relief valve's own inlet",
       "what is narrower would throttle it (ASME BPVC Section VIII UG-135, from memory)"},
      {"order_of_branches", "what decides in '{0}'", "the line's size and kind kept",
       "branches have no one length and no one loss"},
      {"branched_hose_length", "length of the {0} in '{1}'", "{2}", "as it is sold; cut it to what is wanted"},
  };
  return kWords;
}

}  // namespace riserun::report
