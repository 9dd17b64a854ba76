// Why a run that a person has chosen cannot be made.
#include "report/words/say.h"

namespace riserun::report {

std::span<const Words> taken_words() {
  static constexpr Words kWords[] = {
      {"taken_cannot_be_made", "the run that 'take' holds cannot be made: {0}"},
      {"leave_take_out", "leave 'take' out, and the best run is planned again"},
      {"taken_is_not_so_long", "its parts do not come to {0:both}"},
      {"part_of_material", "{0} ({1})"},
      {"the_thing", "the {0}"},
      {"taken_plugs_nothing", "the {0} has one port and stands behind no part that it could plug"},
      {"taken_wants_other_plugs", "the {0} has {1:#port|ports} to plug, and {2:#plug|plugs} behind it"},
      {"taken_is_avoided", "the {0} is avoided: {1}"},
      {"taken_is_ruled_out", "the {0} is ruled out"},
      {"taken_is_not_proved", "the {0} is not proved for what the run must stand"},
      {"taken_is_not_stocked", "the {0} is not stocked"},
      {"taken_is_not_asked_for", "nothing asks for the {0}"},
      {"taken_is_no_plug", "the {0} is no plug"},
      {"taken_does_not_go_onto", "{0} does not go onto {1}"},
      {"taken_plugs_do_not_fit", "the plugs behind the {0} do not fit its spare ports"},
      {"taken_way_is_not_let_in",
       "the way through the {0} is too narrow, runs against it, or has no room to be turned"},
      {"taken_joint_cannot_be_made",
       "the joint of {0} with {1} cannot be made: metals that must be kept apart, or nothing to hold"},
      {"taken_has_too_many_parts", "it has {0} parts, and {1} are allowed"},
      {"taken_has_too_many_bushings", "it has {0} bushings, and {1} are allowed"},
      {"taken_lacks", "it has no {0}"},
      {"taken_lacks_needs_or_their_order", "it does not hold all that is needed, or not in its order"},
      {"taken_closes_nowhere", "neither end turns, and it has nothing that closes without turning"},
  };
  return kWords;
}

}  // namespace riserun::report
