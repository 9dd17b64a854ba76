// Sentences of the build order.
#include "report/words/say.h"

namespace riserun::report {

std::span<const Words> build_words() {
  static constexpr Words kWords[] = {
      // How the bodies are called.
      {"name", "{0}"},
      {"end", "{0}"},
      {"end_and_port", "{0} ({1})"},
      {"part", "part {0}"},
      {"part_and_name", "part {0} ({1})"},
      {"the_part", "the {0}"},
      {"that_half", "that half"},
      {"first_half", "the first half of {0}"},
      {"second_half", "the second half of {0}"},
      {"with_what_hangs_on_it", "{0}, with what is made up on it,"},
      {"joint_of", "joint of {0} with {1}"},

      // At the bench.
      {"cut_and_thread_both", "At the bench, cut {0} to {1:both} end to end, and thread both ends."},
      {"cut_and_thread", "At the bench, cut {0} to {1:both} end to end, from a threaded end, and thread the sawn one."},
      {"cut_hose", "At the bench, cut {0} to {1:both} end to end, ends square."},
      {"cut_tube", "At the bench, cut {0} to {1:both} end to end, ends square and free of burrs."},
      {"plug_into", "At the bench, screw the {0} into the spare {1} port of {2}, held in the vise. {3}"},
      {"plug_onto", "At the bench, screw the {0} onto the spare {1} port of {2}, held in the vise. {3}"},

      // A joint that is made by turning one side.
      {"screw_into", "Screw {0} into {1}: turn {2} {3}; {4}.{5} {6}"},
      {"screw_onto", "Screw {0} onto {1}: turn {2} {3}; {4}.{5} {6}"},
      {"last_screw_into", "Last, screw {0} into {1}: turn {2} {3}; {4}.{5} {6}"},
      {"last_screw_onto", "Last, screw {0} onto {1}: turn {2} {3}; {4}.{5} {6}"},
      {"hand_tight_and_a_little", "hand-tight, then a little more"},
      {"hand_tight_and_turn", "hand-tight, then {0:quarters} turn more"},
      {"hand_tight_and_turns", "hand-tight, then {0:quarters} turns more"},
      {"hand_tight_and_turns_between", "hand-tight, then {0:quarters} to {1:quarters} turns more"},
      {"hand_tight_and_no_more", "hand-tight and no more: what goes onto it draws it up"},
      {"stays_still", "{0} stays still by itself"},
      {"held_in_the_vise", "{0} is held in the vise"},
      {"close_nipple_draws_up", "{0} draws up in both, so no wrench touches its threads"},
      {"close_nipple_draws_up_held", "{0} draws up in both, so no wrench touches its threads, and {1}"},
      {"hold_with_a_wrench", "hold {0} with a second wrench"},
      {"in_turn", "{0}{1}"},
      {"arrow_points_to", " Its arrow points to {0}."},
      {"arrow_points_away_from", " Its arrow points away from {0}."},
      {"flap_lies_flat_or_flow_runs_up",
       " It lies flat with its cap up, or stands upright with the flow upward: never with the flow downward."},
      {"other_end_faces_right", " Stop where its other end faces right, at most one turn further and never back."},
      {"side_port_faces", " Stop within the last turn with its side port facing where it is wanted."},
      {"side_port_faces_and_swings",
       " Stop within the last turn with its side port facing where it is wanted; it swings {0:fixed1} clear of the "
       "joint's axis."},

      // A joint that is made without turning either side, and a union's nut.
      {"bring_together", "Bring {0} and {1} together{2}{3}. {4}{5}"},
      {"last_bring_together", "Last, bring {0} and {1} together{2}{3}. {4}{5}"},
      {"to_close_bring_together", "To close, bring {0} and {1} together{2}{3}. {4}{5}"},
      {"after_the_nut", "First slide the nut of {0} over {1}, its thread towards {0}: it does not pass later. {2}"},
      {"let_it_cool", " Let it cool before anything is screwed up with tape."},
      {"keep_the_heat_off", " Keep the heat off tape and seats beside it: wrap them in a wet rag."},
      {"moves_up_to_it", "; {0} moves up to it"},
      {"turn_the_swivel_nut", "; turn the swivel nut only"},
      {"neither_side_turns", "; neither side turns"},
      {"last_close_union",
       "Last, close {0}: bring its halves together face to face, seat clean and without sealant; hold the half beside "
       "the nut with one wrench and tighten the nut with another; nothing else turns."},
      {"to_close_union",
       "To close, bring the halves of {0} together face to face, seat clean and without sealant; hold the half beside "
       "the nut with one wrench and tighten the nut with another; nothing else turns."},
      {"tighten_the_nut", "Tighten the nut of {0}, which is left together; hold the body with a second wrench."},

      // How it is made tight.
      {"seal_as_in_step", "Seal as in step {0}."},
      {"seal_instruction", "{0:sentence}"},
      {"seal_by_name", "Seal: {0}."},
  };
  return kWords;
}

}  // namespace riserun::report
