// Sentences of what is open where it gets hot or freezes.
#include "report/words/say.h"

namespace riserun::report {

std::span<const Words> heat_words() {
  static constexpr Words kWords[] = {
      {"drain_leaves_what_freezes",
       "drained by '{0}', the reservoir keeps {1} of water ({2}), and the riser's foot freezes in it"},
      {"drain_in_the_floor_or_more",
       "a drain in the floor ('where: floor'), or heat or antifreeze beside it, said in 'against frost'"},
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
      {"part_too_hot", "the {0} is not made for water so hot"},
      {"air_part_too_hot", "the {1} of '{0}' stands at the lid, which comes to {2}, and is not made for that"},
      {"air_part_in_hot_place",
       "the {1} of '{0}' comes to {2} where the place does ('hottest'), and is not made for that"},
      {"cooler_place_or_water_alone",
       "none like the {0} is known to stand it: one whose maker's data sheet says so, written as 'duties' into a "
       "catalog of your own; or, where the "
       "water alone comes to that and not the place, 'water temperature: {1}', and at least {2} of pipe or air hose "
       "between it and the reservoir (a '{3} x 12 nipple' or a hose in that connection's 'need')"},
      {"away_from_the_heat",
       "none like the {0} is known to stand it: set it at least {1} of pipe or air hose away from the reservoir, with "
       "a "
       "'{2} x 12 nipple' or a hose between in that connection's 'need'"},
      {"cooler_place_or_pipe",
       "none like the {0} is known to stand it: one whose maker's data sheet says so, written as 'duties' into a "
       "catalog of your own; or, where the "
       "water alone comes to that and not the place, 'water temperature: {1}', and at least {2} of pipe between it and "
       "the reservoir (a '{3} x 12 nipple' in that connection's 'need')"},
      {"away_from_the_heat_by_pipe",
       "none like the {0} is known to stand it: set it at least {1} of pipe away from the reservoir, with a '{2} x 12 "
       "nipple' in that connection's 'need'"},
      {"away_from_the_heat_aside",
       "none like the {0} is known to stand it: set it at least {1} of pipe away from the reservoir, with a '{2} x 12 "
       "nipple' right behind it in that connection's 'need', and, as that stands too tall under the table, a '90 "
       "elbow' "
       "at the bung, which turns it aside"},
      {"part_of_unknown_heat", "the {0} stands in hot water, and nothing is known of what heat it stands"},
      {"part_that_stands_the_heat", "the {0} in place of the {1}"},
      {"ask_maker_of_heat",
       "none like the {0} is known to stand {1}: another kind of part, or one whose maker's data sheet says so, "
       "written as 'duties' into a catalog of your own; or cooler water"},
      {"insulation_stops_no_frost", "it comes to {0}: insulation slows frost and stops none"},
      {"antifreeze_too_weak", "it comes to {0}: what the water may hold of antifreeze does not keep it liquid"},
      {"drain_or_heat_too",
       "heat it too, or drain it when idle, by a port low on the reservoir that ends in a valve ('against frost: "
       "antifreeze, drained when idle')"},
      {"drained_by_nothing", "'against frost' says that it is drained, and nothing drains the reservoir"},
      {"water_can_freeze", "it comes to {0}, and the water can freeze"},
      {"say_what_is_done_against_frost", "say how that is handled in 'against frost': drained, heated or antifreeze"},
  };
  return kWords;
}

}  // namespace riserun::report
