// Sentences of what a job's connection adds to the cautions of its run.
#include "report/words/say.h"

namespace riserun::report {

std::span<const Words> connection_words() {
  static constexpr Words kWords[] = {
      {"hose_not_bent_on",
       "The {0}, {1:tape} long between its barbs, is too short to be bent onto the second one between two ports that "
       "stand still: the order of work says what is put in place last."},
      {"no_device_is_proved", "No '{0}' is proved for what this run must stand: ask its maker."},

      // The gap between the two ports.
      {"ports_out_of_line",
       "The ports are {0} out of line and this run has nothing that gives: ask for a hose or a flexible connector in "
       "'need'."},
      {"run_too_short",
       "This run is {0} too short for the gap of {1}, and its thread tolerance is only {2} either way: put a nipple "
       "that much longer into it, or ask for a hose in 'need'."},
      {"run_too_long",
       "This run is {0} too long for the gap of {1}, and its thread tolerance is only {2} either way: move the ports "
       "apart by that much, or ask for a shorter order."},

      {"vent_behind_regulator",
       "'{0}' lets the air out through the {1}, which is shut where it is backed off: nothing comes out"},
      {"dirt_lies_on_the_strainer",
       "The {0} in '{1}' catches what comes by its arrow, and the chips come down from the table against it: a screen "
       "over the table's inlet keeps them out of the line."},
      {"siphon_flattens_hose",
       "'{0}' drains as a siphon, and the {1} in it is not made for suction: where it goes flat the table stays full. "
       "Suction hose does not."},

      {"line_branches_on_its_way",
       "'{0}' branches on its way to the table: its time, and when it draws air, are worked out for a line without "
       "branches"},
      {"line_without_branches",
       "'{0}' from the riser's bung to the inlet alone ('to' in place of 'branches'), and what else it has on bungs of "
       "their own"},

      // Turns.
      {"rigid_run_round_a_corner",
       "'{0}' has no hose, and '{1}' and '{2}' do not look at each other: where it turns and what its pipes measure is "
       "not worked out"},
      {"gap_round_a_corner",
       "'{0}' gives a 'gap', and '{1}' and '{2}' do not look at each other, one up and the other down: no straight gap "
       "is between them"},
      {"heights_in_place_of_gap", "leave 'gap' out and give heights: 'face height' or 'opens at', 'crest'"},
      {"hose_round_the_corner", "a hose in it ('need: [hose]')"},
      {"hose_takes_up_the_gap", "a hose in it ('need: [hose]'), which takes up the gap"},
      {"take_one_with_a_hose", "take another run, with a hose in it"},
      {"fitting_turns_beside_a_hose",
       "in '{0}' the {1} turns aside, and the hose has to turn back: how long it is is not worked out"},
      {"hose_short_beside_a_turn", "the hose of '{0}' does not reach: beyond the {1} it has {2} to make and its bends"},
      {"leave_turn_out_or_lay_the_hose",
       "leave the {0} out, or bend a piece of hose in place and give its length ('hose length')"},
      {"hose_short_of_its_bends",
       "the hose of '{0}' does not reach: both ports look out of the wall, {1} apart, and it bends out and back in"},
      {"hose_for_its_bends", "a 'hose length' of {0} or more, or none"},

      // The valve that goes with the run.
      {"valve_comes_off",
       "The {0} is between the {1} and the {2}: once it is opened, the valve goes with the run and the reservoir "
       "stands "
       "open. {3}"},
      {"beyond_the_valve", "To have the {0} beyond the valve, {1}"},
      {"beyond_the_valve_it_takes", "With the {0} beyond the valve it takes {1: and }: {2}"},
      {"drain_before_you_open", "Drain the reservoir before you open it."},
      {"ask_valve_first", "ask for valve and {0} in 'need', the valve first, with 'in order: yes'."},
      {"ask_opening_first", "ask for valve and {0} in 'need', the {0} first, with 'in order: yes'."},
      {"parts_more", "{0:#part|parts} more"},
      {"parts_fewer", "{0:#part|parts} fewer"},
      {"price_more", "{0} more"},
      {"price_less", "{0} less"},
      {"parts_without_price", "parts without price"},
      {"other_parts_of_the_bin", "other parts of the bin and no more money"},
  };
  return kWords;
}

}  // namespace riserun::report
