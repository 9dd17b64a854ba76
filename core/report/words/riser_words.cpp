// Sentences of the riser: why it cannot be made so, how it gets in, and what it is cut from.
#include "report/words/say.h"

namespace riserun::report {

std::span<const Words> riser_words() {
  static constexpr Words kWords[] = {
      // Why it cannot be made so.
      {"no_room_for_riser",
       "From the bung down to what lies under it there are {0:tape}, which leaves no riser at a clearance of {1:tape}: "
       "{2}."},
      {"lower_the_clearance", "lower the clearance to {0:tape} or less"},
      {"bung_elsewhere_or_higher_reservoir",
       "place the bung where nothing lies under it, or make the reservoir higher"},
      {"riser_may_stand_on_the_floor",
       "With the thread made up at the short end of its band the riser would stand on the floor: a clearance of "
       "{0:tape} is within its {1:tape} of tolerance, so leave at least {2:tape_up}."},
      {"half_coupling_takes_no_riser",
       "A half coupling is threaded from one end only, so it cannot take the riser from below and a nipple from above: "
       "weld in a full coupling, or weld the riser itself through the lid."},
      {"riser_meets_nipple",
       "The riser goes {0:tape} in from below and the nipple {1:tape} from above, so their ends would meet inside the "
       "{2:tape} {3}: use one at least {4:tape_up} long."},
      {"riser_clearance_of", "'clearance: {0:no_less}'"},
      {"headroom_over_bung",
       "{0:no_less} of free height over '{1}' ('headroom'), with the table lifted off or higher while the riser goes "
       "in"},
      {"no_headroom_for_riser",
       "The lid is closed, and putting the riser in from above takes {0:tape_up} of free height over the bung where "
       "there are {1:tape}: make {2:tape_up} more room, or put the riser in before the table stands over it."},
      {"pipe_wider_than_bung",
       "The lid is closed, and the riser's pipe, {0:thickness} outside, does not pass the bung's opening of "
       "{1:thickness}: use a bung that opens wider than the pipe, with a double-tapped bushing to suit."},
      {"pipe_never_passes_its_thread",
       "The lid is closed, and the riser's pipe, {0:thickness} outside, never passes its own size's female thread: use "
       "a larger bung that the pipe passes, with a double-tapped bushing, or weld the riser itself through the lid."},
      {"riser_through_a_wider_bung",
       "a {0} in full coupling in place of '{1}' and in it a {0} x {2} double-tapped bushing, which holds the riser "
       "below and takes the run above ('port: {2} FNPT', 'bung: double-tapped bushing'): the riser goes in from above "
       "through the coupling, with {3} of free height over it ('headroom')"},

      // How it goes in and comes out.
      {"riser_nearly_meets_nipple",
       "Riser and nipple leave only {0:tape} between their ends inside the {1}, less than the two threads' tolerance: "
       "stop if one of them goes solid before it is tight."},
      {"riser_goes_through_bung",
       "The riser passes the bung, so it goes in from above and can be drawn out again: keep {0:tape_up} of free "
       "height "
       "over the bung."},
      {"riser_goes_through_bung_given_headroom",
       "The riser passes the bung, so it goes in from above and can be drawn out again: keep {0:tape_up} of free "
       "height "
       "over the bung (headroom was not given)."},
      {"riser_goes_in_from_inside",
       "Screw the riser in from inside before the lid is welded shut: pipe never passes its own size's female thread, "
       "and it cannot be drawn out later."},
      {"riser_goes_in_from_inside_for_headroom",
       "Screw the riser in from inside before the lid is welded shut: it would pass the bung, but drawing it takes "
       "{0:tape_up} of free height over the bung and there are {1:tape}."},
      {"welded_riser_hangs_below_lid",
       "Of the welded riser {1:tape} hang below the lid's inside and {2:tape} stand over it: check the clearance of "
       "{0:tape} with a tape before welding."},

      // What it is cut from.
      {"welded_riser_is_plain_pipe",
       "Cut it from pipe ({0}) whose upper end has the thread of the riser's port; its lower end has none."},
      {"no_nipple_is_so_long",
       "No stock nipple is {0:tape} long: thread one end of a pipe, or have it cut and threaded."},
      {"riser_from_stock", "From the {0:tape} stock piece cut {1:tape}, measured from one threaded end."},
      {"riser_from_stock_offcut_keeps_thread",
       "From the {0:tape} stock piece cut {1:tape}, measured from one threaded end; the offcut of {2:tape} keeps the "
       "other thread."},
      {"stock_serves_as_it_is", "The {0:tape} stock piece serves as it is."},
      {"stock_makes_two_risers",
       "One {0:tape} stock piece cut in two makes two such risers, each with one threaded end."},
      {"stock_serves_uncut", "The {0:tape} stock piece serves uncut, with a clearance of {1:tape} and a heel of {2}."},

      // Its clearance, and good practice.
      {"clearance_may_throttle",
       "At the short end of the make-up band the clearance is {0:thickness}, under a quarter of the bore "
       "({1:thickness}): the gap then throttles the flow, so leave {2:tape_up} more."},
      {"clearance_may_draw_sediment",
       "At the short end of the make-up band the clearance is {0:thickness}, under the {1:tape} that is common "
       "practice: sediment may reach the riser."},
      {"cut_riser_end_at_an_angle",
       "Cut the end at 45 degrees or notch it if it may come to touch the floor, so that it cannot seal there (common "
       "practice)."},
      {"seal_joints_in_the_air_space",
       "Seal every threaded joint inside the reservoir as for air, and keep the riser in one piece: a joint in the air "
       "space that leaks feeds air into the water."},
      {"what_lies_under_counts_as_floor", "What lies under the bung stands {0:tape} high and counts as the floor."},
  };
  return kWords;
}

}  // namespace riserun::report
