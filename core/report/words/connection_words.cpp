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
      {"hose_too_short", "The {0} is {1} too short for the gap of {2}."},
      {"ports_out_of_line",
       "The ports are {0} out of line and this run has nothing that gives: ask for a hose or a flexible connector in "
       "'need'."},
      {"run_too_short",
       "This run is {0} too short for the gap of {1}, and its thread tolerance is only {2} either way: put a nipple "
       "that much longer into it, or ask for a hose in 'need'."},
      {"run_too_long",
       "This run is {0} too long for the gap of {1}, and its thread tolerance is only {2} either way: move the ports "
       "apart by that much, or ask for a shorter order."},

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
