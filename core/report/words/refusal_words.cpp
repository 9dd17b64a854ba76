// Why there is no run, and the least change that makes one. Each rule of what can be asked (chain/ask/askable.h) has
// one wording, whoever is refused: what it asks, `_alone` why nothing keeps it, `_relief` what to do about it. The
// values of the rule come first; then, of why, what keeps it (a_chain, an_assembly, a_way_to), and of what to do, on
// which way.
#include "report/words/say.h"

namespace riserun::report {

namespace {

constexpr Words kWords[] = {
    // What is asked of what.
    {"a_chain", "chain"},
    {"a_chain_between_ends", "chain between the two ends"},
    {"an_assembly", "assembly"},
    {"a_way_to", "way to {0}"},
    {"on_the_way_to", " on the way to {0}"},
    {"from_to", "from {0} to {1}"},
    {"there", "there"},
    {"of_air", " of air"},
    {"nor_moves", ", or none that turns moves up"},
    {"end_named", "{0}"},
    {"end_with_port", "{0} ({1})"},

    // The rules of a run.
    {"held_ends", "both ends held, so that neither turns{0}"},
    {"held_ends_alone",
     "neither end turns{0}, and no {1} has a union, a swivel, a hose or another joint that closes without turning"},
    {"held_ends_relief", "let {0} ({1}) turn and move"},
    {"need", "the {0} asked for"},
    {"need_alone", "no {1} can hold the {0} asked for"},
    {"need_relief", "do without the {0}{1}"},
    {"order_of_needs", "the needs in the order given"},
    {"order_of_needs_alone", "no {0} holds the needs in the order given"},
    {"order_of_needs_relief", "let the needs come in any order"},
    {"most_parts", "{0:no part|no more than one part|no more than # parts}"},
    {"most_parts_alone", "every {1} takes more than {0:#part|parts}"},
    {"most_parts_relief", "allow more parts"},
    {"most_bushings", "{0:no bushing|no more than one bushing|no more than # bushings}"},
    {"most_bushings_alone", "every {1} takes more than {0:#bushing|bushings}"},
    {"most_bushings_relief", "allow more bushings"},
    {"rating", "{0:alone4}{1} in every part"},
    {"rating_alone", "no {2} stands {0:alone4}{1} in every part"},
    {"rating_relief", "accept a rating below {0:alone4}"},
    {"hottest", "every part proved for {0}"},
    {"hottest_alone", "no {1} is proved for {0}"},
    {"hottest_relief", "keep it cooler than {0}"},
    {"vacuum", "every part proved for vacuum"},
    {"vacuum_alone", "no {0} is proved for vacuum"},
    {"vacuum_relief", "make sure that no vacuum can come about"},
    {"smallest_bore", "{0} bore everywhere"},
    {"smallest_bore_alone", "every {1} narrows below {0:decimal3}"},
    {"smallest_bore_relief", "accept a bore below {0:decimal3}{1}"},
    {"room", "{0:decimal3} of room round the run"},
    {"room_alone", "every {1} holds a body that cannot be turned within {0:decimal3} of the run"},
    {"room_relief", "make more room round the run than {0:decimal3}{1}"},
    {"room_that_is_enough", ", at least {0:decimal5}"},
    {"bore_that_is_kept", ", down to {0:decimal5}"},
    {"galvanic", "no metals side by side that should be kept apart"},
    {"galvanic_alone", "every {0} brings metals together that should be kept apart"},
    {"galvanic_relief", "accept metals side by side that should be kept apart, and watch the joint"},
    {"air", "parts proved for compressed air alone"},
    {"air_alone", "every {0} holds a part that is not proved for compressed air"},
    {"air_relief", "use the {1} for water only, never under compressed air"},
    {"avoid", "no {0}"},
    {"avoid_alone", "every {1} takes {0}"},
    {"avoid_relief", "allow {0}"},
    {"ruled_out", "none of the parts that are ruled out"},
    {"ruled_out_alone", "every {0} takes a part that is ruled out"},
    {"ruled_out_relief", "allow the parts that are ruled out"},
    {"bin_only", "only what is in the bin"},
    {"bin_only_alone", "no run of what is in the bin does it"},
    {"bin_only_relief", "buy what the bin lacks"},
    {"stocked_only", "only what stores stock"},
    {"stocked_only_alone", "no run of stocked parts leads {0}"},
    {"stocked_only_relief", "take parts that a store must order"},

    // The rules of one branch that a whole run has not.
    {"branch_order_of_needs_alone", "no {1} holds what is asked for in the order given"},
    {"branch_order_of_needs_relief", "let what is asked for{1} come in any order"},
    {"branch_avoid_alone", "every {1} passes what it is to avoid: {0}"},
    {"branch_avoid_relief", "let the way to {2} pass what it is to avoid: {0}"},
    {"facing_alone", "no {1} lets it look {0}"},
    {"facing_relief", "let {2} look anywhere"},
    {"held_end_alone", "two fixed ends have no union, swivel, hose or other closing joint between them"},
    {"held_end_relief", "let {0} turn and move"},
    {"need_shuts_before_relief", "a {0} can shut, and nothing that can may stand between a tank and its relief valve"},
    {"way_smaller_than_inlet",
     "every {0} is smaller than the relief valve's own inlet; give it a port of its own size"},
    {"way_can_be_shut",
     "every {0} passes something that can shut, and nothing may between a tank and its relief valve"},
    {"way_against_flow", "every {0} passes a one-way part that does not let it feed the base"},
    {"way_meets_not_all", "no {0} meets all that is asked of it"},

    // Why there is no chain.
    {"cannot_both_be_kept", "these two cannot both be kept: {0:; }"},
    {"cannot_all_be_kept", "these {0:spelled} cannot all be kept: {1:; }"},
    {"need_has_one_port", "a {0} has one port only and cannot stand in a chain{1}"},
    {"goes_over_a_hose", ": it goes over the end of a hose, and a run with a hose lists and prices its clamps unasked"},
    {"ends_a_suction",
     ": it ends a suction line under water, so ask for the run from its own port, {0}, with the foot valve behind it"},
    {"as_a_third_end", ": ask for the port that it goes into, {0}, as a third end, and a tee takes it in"},
    {"need_not_proved_for_heat", "no {0} that may be had is proved for {1}"},
    {"need_not_proved_for_vacuum", "no {0} that may be had is proved for vacuum, which water draws as it cools"},
    {"need_not_proved_for_heat_and_vacuum",
     "no {0} that may be had is proved for {1} and for the vacuum that such water draws as it cools"},
    {"need_not_proved_for_air", "no {0} that may be had is proved for compressed air"},
    {"need_is_for_air_alone", "every {0} that may be had is made for air alone, and this run carries water"},
    {"every_need_is_avoided", "every {0} that may be had is avoided by the word {1:and}"},
    {"need_faces_the_other_way",
     "{0:and} can be passed one way only: no run leads so from {1} to {2}, but one does from {2} to {1}"},
    {"no_need_stocked", "no {0} is stocked that the other rules allow"},
    {"no_need_in_the_bin", "no {0} is in the bin that the other rules allow"},
    {"no_need_to_be_had", "no {0} can be had that the other rules allow"},
    {"no_run", "no run of parts leads {0}"},
    {"no_run_of_the_bin", "no run of parts in the bin leads {0}"},
    {"would_go_straight_but", "{0} and {1} would go straight together, but {2}"},
    {"never_join", "never join {0} and {1}: {2}"},
    {"adapter_between", "{0} x {1} adapter"},
    {"union_between", "{0} x {1} union"},
    {"part_to_ask_for", "'{0}' in 'need', the mating part, which is in a run only where it is asked for"},
    {"order_the_part", "order the {0}"},
    {"the_part_of", "the {0} ({1})"},
    {"buy_parts", "buy {0: and }, {1:about}"},
    {"all_of_these", "{0:, and }"},
    {"valve_is_not_left", "no chain has the {0} beyond the valve, seen from the {1} port"},
    {"leave_valve_stays_out", "leave --valve-stays out: the valve then comes off with the run when it is opened"},

    // Why no run makes a distance.
    {"distance", "a distance of {0:both}{1}"},
    {"with_axes_apart", " with their axes {0:both} apart"},
    {"not_at_that_distance",
     "the two ports can be joined, but not by stock pieces, cut pipe or a hose at {0:both}{1}{2}{3}"},
    {"no_room_to_bow",
     ": {0} is longer than the gap that it fills, and there is no room to bow it onto its second end"},
    {"nearest_distances", "; the nearest that can be made are {0:both} and {1:both}"},
    {"nearest_distance", "; the nearest that can be made is {0:both}"},
    {"move_ports_apart", "move the ports {0:both} farther apart, to {1:both}"},
    {"move_ports_together", "move the ports {0:both} closer together, to {1:both}"},
    {"let_end_slide", "let {0} slide along its axis"},
    {"let_it_narrow", "let it narrow the line, as the order 'parts' does"},
    {"offset_relief", "bring the two ports into line"},

    // Why there is no assembly.
    {"ports_stay_open", "every assembly leaves a port open, and no plug or cap that the rules allow goes on {0: or }"},
    {"end_out_of_reach", "{0} cannot be reached from the base ({1}): {2}"},
    {"end_out_of_reach_as_asked", "{0} cannot be reached from the base ({1}) as asked: {2}"},
    {"because", ": {0}"},
    {"ends_can_be_joined_but", "the targets can be joined, but not with all that is asked for{0}"},
    {"no_part_joins_ends",
     "{0:and} can each be reached from the base ({1}), but no tee, cross or other part with ports enough leads to them "
     "together"},
    {"ends_cannot_be_joined", "{0:and} cannot be joined to the base ({1}) together{2}"},
};

}  // namespace

std::span<const Words> refusal_words() { return kWords; }

std::string words_of(const chain::Lift& lift, UnitSystem units) {
  return say(lift.what.size() == 1 ? lift.what.front() : quantity::fact("all_of_these", lift.what), units);
}

}  // namespace riserun::report
