#include "reservoir/riser.h"

#include "quantity/input_error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace riserun::reservoir {
namespace {

using quantity::fact;

const Length kLeastClearance = inches(0.375);      // common practice for small sizes; a quarter of the bore above that
const Length kTapeTolerance = inches(1.0 / 16.0);  // of a riser set by tape and welded: common practice
const Length kKerf = inches(1.0 / 16.0);           // of a band or abrasive saw: common practice
const Length kExact = millimetres(1.0e-6);         // lengths this close are the same: rounding of sums

Problem problem(std::string message) {
  Problem p;
  p.message = std::move(message);
  return p;
}

void check_input(const RiserRequest& r) {
  std::vector<Problem> problems;
  const auto above_zero = [&](Length v, const char* what) {
    if (!(v > Length())) problems.push_back(problem(fmt::format("{} must be above zero", what)));
  };
  const auto not_below_zero = [&](Length v, const char* what) {
    if (!(v >= Length())) problems.push_back(problem(fmt::format("{} must not be below zero", what)));
  };
  above_zero(r.box.length, "the reservoir's length");
  above_zero(r.box.width, "the reservoir's width");
  above_zero(r.box.height, "the reservoir's height");
  above_zero(r.pipe.bore, "the riser's bore");
  above_zero(r.pipe.outside_diameter, "the riser's outside diameter");
  not_below_zero(r.pipe.make_up, "the riser's make-up");
  not_below_zero(r.pipe.make_up_tolerance, "the tolerance of the riser's make-up");
  not_below_zero(r.pipe.upper_make_up, "the upper nipple's make-up");
  not_below_zero(r.bung_length, "the bung's length");
  // In a wider coupling a bushing's lower end may stand over the lid's inside.
  if (r.bung != BungKind::double_tapped_bushing) not_below_zero(r.bung_projection, "the bung's projection");
  not_below_zero(r.holder_make_up, "the make-up of what holds the riser");
  not_below_zero(r.bung_opening, "the bung's opening");
  not_below_zero(r.above_lid, "what stands over the lid of a welded riser");
  not_below_zero(r.obstacle_height, "the height of what lies under the bung");
  if (r.wanted_clearance) above_zero(*r.wanted_clearance, "the riser's clearance");
  if (r.headroom) not_below_zero(*r.headroom, "the headroom");
  if (!problems.empty()) throw InputError(std::move(problems));
}

bool threaded(const RiserRequest& r) { return r.bung != BungKind::welded_riser; }

/// From what counts as floor up to the face that the riser screws into (welded: the lid's inside).
Length free_height(const RiserRequest& r) {
  const Length below_lid = threaded(r) ? r.bung_projection : Length();
  return r.box.height - below_lid - r.obstacle_height;
}

void measure(const RiserRequest& r, Length clearance, Riser& riser) {
  const Length tolerance = threaded(r) ? r.pipe.make_up_tolerance : kTapeTolerance;
  riser.make_up = threaded(r) ? r.pipe.make_up : Length();
  riser.clearance = clearance;
  riser.clearance_low = riser.clearance - tolerance;
  riser.clearance_high = riser.clearance + tolerance;
  riser.cut_length = free_height(r) - riser.clearance + riser.make_up + (threaded(r) ? Length() : r.above_lid);
  riser.end_height = r.obstacle_height + riser.clearance;
  riser.curtain_to_bore = 4.0 * in_metres(riser.clearance) / in_metres(r.pipe.bore);
  riser.inlet = riser_inlet(in_metres(riser.clearance) / in_metres(r.pipe.bore));
  riser.heel = r.box.volume_at(riser.end_height);
}

/// That a riser needs to draw freely, with the thread at the short end of its band.
Length least_clearance(const RiserRequest& r) { return std::max(kLeastClearance, r.pipe.bore / 4.0); }

/// Stock that serves uncut in place of the length that was worked out.
void take_stock_uncut(const RiserRequest& r, Riser& riser) {
  if (!threaded(r) || riser.cut_length <= riser.make_up) return;
  const Length cut = riser.cut_length;
  const Length tolerance = riser.clearance - riser.clearance_low;
  std::optional<Length> nearest;
  for (const Length& length : r.pipe.stock_nipples) {
    const Length longer = length - cut;
    const Length off = std::max(longer, -longer);
    const bool within_make_up = off <= tolerance + kExact;
    const bool clears = riser.clearance_low - longer + kExact >= least_clearance(r);
    const bool serves = within_make_up || (!r.wanted_clearance && longer > Length() && longer < kLeastTrim);
    if (!serves || (longer > Length() && !clears)) continue;
    if (!nearest || off < std::max(*nearest - cut, cut - *nearest)) nearest = length;
  }
  if (nearest) measure(r, riser.clearance - (*nearest - cut), riser);
}

void refuse_lengths(const RiserRequest& r, Riser& riser) {
  if (riser.cut_length <= riser.make_up) {
    const Length smaller = riser.clearance - (riser.make_up - riser.cut_length) - kTapeTolerance;
    riser.refusals.push_back(fact("no_room_for_riser", std::max(Length(), free_height(r)), riser.clearance,
                                  smaller >= least_clearance(r) ? fact("lower_the_clearance", smaller)
                                                                : fact("bung_elsewhere_or_higher_reservoir")));
  }
  if (riser.clearance_low <= Length()) {
    const Length tolerance = riser.clearance - riser.clearance_low;
    riser.refusals.push_back(
        fact("riser_may_stand_on_the_floor", riser.clearance, tolerance, tolerance + least_clearance(r)));
  }
}

void refuse_bung(const RiserRequest& r, Riser& riser) {
  if (r.bung == BungKind::half_coupling) {
    riser.refusals.push_back(fact("half_coupling_takes_no_riser"));
    return;
  }
  if (r.bung == BungKind::welded_riser || r.bung_length <= Length()) return;
  const Length lower = r.holder_make_up > Length() ? r.holder_make_up : r.pipe.make_up;
  const Length both = lower + r.pipe.upper_make_up;
  // Both threads may go in by their whole tolerance more: a fitter turns until it is tight, not to a length.
  const Length tight = both + 2.0 * r.pipe.make_up_tolerance;
  const char* const body = r.bung == BungKind::full_coupling ? "bung" : "bushing";
  if (both > r.bung_length) {
    riser.refusals.push_back(fact("riser_meets_nipple", lower, r.pipe.upper_make_up, r.bung_length, body, tight));
  } else if (r.pipe.upper_make_up > Length() && tight > r.bung_length) {
    riser.notes.push_back(fact("riser_nearly_meets_nipple", r.bung_length - both, body));
  }
}

/// Pipe that is drawn up out of the bung has to clear it whole.
Length height_to_draw(const RiserRequest& r, const Riser& riser) {
  return riser.cut_length - riser.make_up + r.bung_length;
}

void refuse_insertion(const RiserRequest& r, Riser& riser) {
  riser.insertion = Insertion::cannot_go_in;
  if (r.bung_opening > r.pipe.outside_diameter) {
    riser.refusals.push_back(
        fact("no_headroom_for_riser", riser.headroom_needed, *r.headroom, riser.headroom_needed - *r.headroom));
  } else if (r.bung == BungKind::double_tapped_bushing) {
    riser.refusals.push_back(fact("pipe_wider_than_bung", r.pipe.outside_diameter, r.bung_opening));
  } else {
    riser.refusals.push_back(fact("pipe_never_passes_its_thread", r.pipe.outside_diameter));
  }
}

void judge_insertion(const RiserRequest& r, Riser& riser) {
  riser.headroom_needed = height_to_draw(r, riser);
  const bool passes = threaded(r) && r.bung != BungKind::half_coupling && r.bung_opening > r.pipe.outside_diameter;
  const bool has_room = !r.headroom || *r.headroom >= riser.headroom_needed;
  riser.can_be_drawn_out = passes && has_room;
  if (r.bung == BungKind::welded_riser) {
    riser.insertion = Insertion::welded_in;
  } else if (riser.can_be_drawn_out) {
    riser.insertion = Insertion::through_the_bung;
  } else if (!r.lid_closed) {
    riser.insertion = Insertion::from_inside_before_lid_closes;
  } else if (r.bung == BungKind::half_coupling) {
    riser.insertion = Insertion::cannot_go_in;  // refused already
  } else {
    refuse_insertion(r, riser);
  }
}

void note_insertion(const RiserRequest& r, Riser& riser) {
  switch (riser.insertion) {
    case Insertion::through_the_bung:
      riser.notes.push_back(fact(r.headroom ? "riser_goes_through_bung" : "riser_goes_through_bung_given_headroom",
                                 riser.headroom_needed));
      break;
    case Insertion::from_inside_before_lid_closes:
      if (threaded(r) && r.bung_opening > r.pipe.outside_diameter && r.headroom) {
        riser.notes.push_back(fact("riser_goes_in_from_inside_for_headroom", riser.headroom_needed, *r.headroom));
      } else {
        riser.notes.push_back(fact("riser_goes_in_from_inside"));
      }
      break;
    case Insertion::welded_in:
      riser.notes.push_back(
          fact("welded_riser_hangs_below_lid", riser.clearance, riser.cut_length - r.above_lid, r.above_lid));
      break;
    case Insertion::cannot_go_in:
      break;
  }
}

bool has_one_thread(const RiserRequest& r, Length stock) {
  const std::vector<Length>& pieces = r.pipe.with_one_thread;
  return std::find(pieces.begin(), pieces.end(), stock) != pieces.end();
}

void choose_stock(const RiserRequest& r, Riser& riser) {
  if (riser.cut_length <= riser.make_up) return;
  std::vector<Length> lengths = r.pipe.stock_nipples;
  std::sort(lengths.begin(), lengths.end());
  // From the shortest on: the first that is long enough wastes least, and the last that serves uncut leaves the least
  // heel.
  const Length two = 2.0 * riser.cut_length + kKerf;
  for (const Length& length : lengths) {
    const Length trim = length - riser.cut_length;
    const bool as_it_is = trim + kExact >= Length() && trim <= kExact;
    if (!riser.stock && (as_it_is || trim + kExact >= kLeastTrim)) riser.stock = length;
    if (!riser.stock_for_two && length + kExact >= two && !has_one_thread(r, length)) riser.stock_for_two = length;
    if (!threaded(r)) continue;  // welded where the tape says, no other length serves
    const Length clearance = free_height(r) + riser.make_up - length;
    const Length tolerance = riser.clearance - riser.clearance_low;
    if (length > riser.make_up && clearance - tolerance + kExact >= least_clearance(r)) {
      riser.stock_uncut = length;
      riser.stock_uncut_clearance = clearance;
    }
  }
  riser.is_stock_uncut = riser.stock && *riser.stock <= riser.cut_length + kExact;
  if (riser.stock) riser.offcut = std::max(Length(), *riser.stock - riser.cut_length - kKerf);
}

void note_stock(const RiserRequest& r, Riser& riser) {
  if (!threaded(r) && !riser.stock) {
    riser.notes.push_back(fact("welded_riser_is_plain_pipe", r.pipe.name));
  } else if (!riser.stock && riser.cut_length > riser.make_up) {
    riser.notes.push_back(fact("no_nipple_is_so_long", riser.cut_length));
  } else if (riser.stock && riser.offcut > r.pipe.make_up && !has_one_thread(r, *riser.stock)) {
    riser.notes.push_back(fact("riser_from_stock_offcut_keeps_thread", *riser.stock, riser.cut_length, riser.offcut));
  } else if (riser.stock && riser.offcut > Length()) {
    riser.notes.push_back(fact("riser_from_stock", *riser.stock, riser.cut_length));
  } else if (riser.stock) {
    riser.notes.push_back(fact("stock_serves_as_it_is", *riser.stock));
  }
  if (riser.stock_for_two) riser.notes.push_back(fact("stock_makes_two_risers", *riser.stock_for_two));
  if (riser.stock_uncut && !riser.is_stock_uncut) {
    riser.notes.push_back(fact("stock_serves_uncut", *riser.stock_uncut, riser.stock_uncut_clearance,
                               r.box.volume_at(r.obstacle_height + riser.stock_uncut_clearance)));
  }
}

void note_clearance(const RiserRequest& r, Riser& riser) {
  const Length quarter = r.pipe.bore / 4.0;
  if (riser.clearance_low <= Length()) return;  // refused already
  // At a quarter of the bore the ring under the riser's end is as wide as the bore: pi D s = pi D^2 / 4.
  if (riser.clearance_low < quarter) {
    riser.notes.push_back(fact("clearance_may_throttle", riser.clearance_low, quarter, quarter - riser.clearance_low));
  } else if (riser.clearance_low < kLeastClearance) {
    riser.notes.push_back(fact("clearance_may_draw_sediment", riser.clearance_low, kLeastClearance));
  }
}

void note_practice(const RiserRequest& r, Riser& riser) {
  riser.notes.push_back(fact("cut_riser_end_at_an_angle"));
  riser.notes.push_back(fact("seal_joints_in_the_air_space"));
  if (r.obstacle_height > Length()) riser.notes.push_back(fact("what_lies_under_counts_as_floor", r.obstacle_height));
}

}  // namespace

Length default_clearance(Length bore) {
  const double sixteenths = std::max(8.0, in_inches(bore) / 2.0 * 16.0);
  return inches(std::ceil(sixteenths - 1.0e-9) / 16.0);  // the last digit of a bore adds no sixteenth
}

Riser plan_riser(const RiserRequest& request) {
  check_input(request);
  Riser riser;
  measure(request, request.wanted_clearance.value_or(default_clearance(request.pipe.bore)), riser);
  take_stock_uncut(request, riser);
  refuse_lengths(request, riser);
  refuse_bung(request, riser);
  judge_insertion(request, riser);
  choose_stock(request, riser);
  note_insertion(request, riser);
  note_stock(request, riser);
  note_clearance(request, riser);
  note_practice(request, riser);
  return riser;
}

}  // namespace riserun::reservoir
