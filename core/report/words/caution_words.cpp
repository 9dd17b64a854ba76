// Sentences of what a fitter must be told beside a run.
#include "report/words/say.h"

namespace riserun::report {

std::span<const Words> caution_words() {
  static constexpr Words kWords[] = {
      {"much_stays_in_table",
       "{0} of the {1} stay in the table when it drains: what it drains by ends {2} over its floor."},
      {"no_play_to_slide",
       "neither end moves along its axis: the last joint slides together by {0:fixed2}, so the run must be sprung by "
       "that much"},
      {"never_screw_together", "never screw {0} and {1} straight together: {2}"},
      {"air_can_burst_the_port",
       "if {0} ({1}) is {2: or }, compressed air can burst it and throw splinters: keep the air off it, or change it "
       "for metal"},
      {"bushing_in_bushing", "a bushing sits in another bushing: a reducing coupling is the sounder way"},
      {"plastic_takes_metal_taper",
       "{0} is plastic and takes a metal taper thread from {1}: it may split; start by hand, turn little"},

      // Metals that meet.
      {"keep_metals_apart",
       "{0} ({1}) and {2} ({3}) should be kept apart: in water the {4} corrodes{5}; put a dielectric joint or plastic "
       "between them"},
      {"keep_metals_apart_in_air",
       "{0} ({1}) and {2} ({3}) should be kept apart: wherever the air leaves its water the {4} corrodes{5}; take "
       "one metal, or a dielectric joint that is proved for air"},
      {"watch_metals", "{0} against {1}: the {0} corrodes{2}; watch it where {3}"},
      {"fast_for_it_is_small", ", and fast, for it is small beside the {0}"},
      {"slowly_for_it_is_large", ", but slowly, for it is large beside the {0}"},
      {"meets", "{0} meets {1}"},
      {"threads_gall", "{0} threads gall on {1}: use an anti-gall sealing paste and turn slowly"},

      // Parts, each with the others of which the same is to be said.
      {"air_passes_one_way", "air passes one way only, towards {0}, through {1}"},
      {"water_passes_one_way", "water passes one way only, towards {0}, so it does not drain back, through {1}"},
      {"check_opens_at", "opens at {0} and stays shut below, so that much less pressure is left behind it: {1}"},
      {"flap_closes_by_weight",
       "a flap closes by its weight, so mount it flat with the cap up, or upright with the flow upward, never with the "
       "flow downward: {0}"},
      {"bursts_under_air", "can burst under compressed air, so keep them out of an air test: {0}"},
      {"not_made_for_air", "not made for compressed air, so keep them out of an air test: {0}"},
      {"plastic_threads", "plastic, rated at room temperature, so no heat and few turns of the wrench: {0}"},
      {"may_be_tapped_straight", "may be tapped straight, so that it seals on fewer threads and is no weld bung: {0}"},
      {"no_pipe_to_grip", "no bare pipe to grip, so use a nipple chuck, or a longer nipple where there is room: {0}"},

      // The whole way.
      {"bushing_leaves_a_ledge",
       "a bushing leaves a ledge that holds water, and its wall is thin between near sizes: a reducing coupling is "
       "kinder where there is room"},
      {"bushings_in_one_chain", "{0} bushings in one chain: more than one is poor practice"},
      {"much_narrower_than_the_ports",
       "much narrower inside than both ports: the {0}, {1:decimal2}; ask for a smallest bore to avoid it"},
      {"targets_not_behind", "not behind the {0}: {1:and}; what each branch alone is to have is asked for there"},
      {"way_narrows",
       "the way narrows to {0:, to }: a gauge does not mind, but a relief valve must never be fed through less than "
       "the "
       "size of its own inlet, nor through a valve"},
      {"way_to_end", "{0} to {1} ({2})"},
  };
  return kWords;
}

}  // namespace riserun::report
