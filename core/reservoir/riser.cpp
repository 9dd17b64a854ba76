#include "reservoir/riser.h"

#include "quantity/input_error.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace riserun::reservoir {
namespace {

const Length kLeastClearance = inches(0.375);      // common practice for small sizes; a quarter of the bore above that
const Length kTapeTolerance = inches(1.0 / 16.0);  // of a riser set by tape and welded: common practice
const Length kKerf = inches(1.0 / 16.0);           // of a band or abrasive saw: common practice
const Length kExact = millimetres(1.0e-6);         // lengths this close are the same: rounding of sums

/// Writes lengths into sentences: fraction and millimetres for a shop that measures in inches.
class Tape {
 public:
  explicit Tape(UnitSystem units) : units_(units) {}
  std::string operator()(Length v) const {
    const std::string text = write_length(v, units_);
    return units_ == UnitSystem::metric ? text : fmt::format("{} ({})", text, write_length(v, UnitSystem::metric));
  }
  /// Rounded up to the next mark, for what must be at least so long.
  std::string up(Length v) const {
    const auto next = [](double marks) { return std::ceil(marks - 1.0e-6); };
    const std::string metric = write_length(millimetres(next(in_millimetres(v))), UnitSystem::metric);
    if (units_ == UnitSystem::metric) return metric;
    return fmt::format("{} ({})", write_length(inches(next(in_inches(v) * 16.0) / 16.0), units_), metric);
  }
  std::string decimal(Length v) const { return write_thickness(v, units_); }

 private:
  UnitSystem units_;
};

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
  not_below_zero(r.bung_projection, "the bung's projection");
  not_below_zero(r.bung_opening, "the bung's opening");
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

void measure(const RiserRequest& r, Riser& riser) {
  const Length tolerance = threaded(r) ? r.pipe.make_up_tolerance : kTapeTolerance;
  riser.make_up = threaded(r) ? r.pipe.make_up : Length();
  riser.clearance = r.wanted_clearance.value_or(default_clearance(r.pipe.bore));
  riser.clearance_low = riser.clearance - tolerance;
  riser.clearance_high = riser.clearance + tolerance;
  riser.cut_length = free_height(r) - riser.clearance + riser.make_up;
  riser.end_height = r.obstacle_height + riser.clearance;
  riser.curtain_to_bore = 4.0 * in_metres(riser.clearance) / in_metres(r.pipe.bore);
  riser.inlet = riser_inlet(in_metres(riser.clearance) / in_metres(r.pipe.bore));
  riser.heel = r.box.volume_at(riser.end_height);
}

/// That a riser needs to draw freely, with the thread at the short end of its band.
Length least_clearance(const RiserRequest& r) { return std::max(kLeastClearance, r.pipe.bore / 4.0); }

void refuse_lengths(const RiserRequest& r, const Tape& tape, Riser& riser) {
  if (riser.cut_length <= riser.make_up) {
    const Length smaller = riser.clearance - (riser.make_up - riser.cut_length) - kTapeTolerance;
    riser.refusals.push_back(fmt::format(
        "From the bung down to what lies under it there are {}, which leaves no riser at a clearance of {}: {}.",
        tape(std::max(Length(), free_height(r))), tape(riser.clearance),
        smaller >= least_clearance(r) ? fmt::format("lower the clearance to {} or less", tape(smaller))
                                      : "place the bung where nothing lies under it, or make the reservoir higher"));
  }
  if (riser.clearance_low <= Length()) {
    riser.refusals.push_back(fmt::format(
        "With the thread made up at the short end of its band the riser would stand on the floor: a clearance of {} is "
        "within its {} of tolerance, so leave at least {}.",
        tape(riser.clearance), tape(riser.clearance - riser.clearance_low),
        tape.up(riser.clearance - riser.clearance_low + least_clearance(r))));
  }
}

void refuse_bung(const RiserRequest& r, const Tape& tape, Riser& riser) {
  if (r.bung == BungKind::half_coupling) {
    riser.refusals.emplace_back(
        "A half coupling is threaded from one end only, so it cannot take the riser from below and a nipple from "
        "above: "
        "weld in a full coupling, or weld the riser itself through the lid.");
    return;
  }
  if (r.bung == BungKind::welded_riser || r.bung_length <= Length()) return;
  const Length both = r.pipe.make_up + r.pipe.upper_make_up;
  // Both threads may go in by their whole tolerance more: a fitter turns until it is tight, not to a length.
  const Length tight = both + 2.0 * r.pipe.make_up_tolerance;
  const char* const body = r.bung == BungKind::full_coupling ? "bung" : "bushing";
  if (both > r.bung_length) {
    riser.refusals.push_back(fmt::format(
        "The riser goes {} in from below and the nipple {} from above, so their ends would meet inside the {} {}: use "
        "one at least {} long.",
        tape(r.pipe.make_up), tape(r.pipe.upper_make_up), tape(r.bung_length), body, tape.up(tight)));
  } else if (r.pipe.upper_make_up > Length() && tight > r.bung_length) {
    riser.notes.push_back(fmt::format(
        "Riser and nipple leave only {} between their ends inside the {}, less than the two threads' tolerance: stop "
        "if one of them goes solid before it is tight.",
        tape(r.bung_length - both), body));
  }
}

/// Pipe that is drawn up out of the bung has to clear it whole.
Length height_to_draw(const RiserRequest& r, const Riser& riser) {
  return riser.cut_length - riser.make_up + r.bung_length;
}

void refuse_insertion(const RiserRequest& r, const Tape& tape, Riser& riser) {
  riser.insertion = Insertion::cannot_go_in;
  const std::string pipe = fmt::format("the riser's pipe, {} outside,", tape.decimal(r.pipe.outside_diameter));
  if (r.bung_opening > r.pipe.outside_diameter) {
    riser.refusals.push_back(fmt::format(
        "The lid is closed, and putting the riser in from above takes {} of free height over the bung where there are "
        "{}: make {} more room, or put the riser in before the table stands over it.",
        tape.up(riser.headroom_needed), tape(*r.headroom), tape.up(riser.headroom_needed - *r.headroom)));
  } else if (r.bung == BungKind::double_tapped_bushing) {
    riser.refusals.push_back(fmt::format(
        "The lid is closed, and {} does not pass the bung's opening of {}: use a bung that opens wider than the pipe, "
        "with a double-tapped bushing to suit.",
        pipe, tape.decimal(r.bung_opening)));
  } else {
    riser.refusals.push_back(fmt::format(
        "The lid is closed, and {} never passes its own size's female thread: use a larger bung that the pipe passes, "
        "with a double-tapped bushing, or weld the riser itself through the lid.",
        pipe));
  }
}

void judge_insertion(const RiserRequest& r, const Tape& tape, Riser& riser) {
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
    refuse_insertion(r, tape, riser);
  }
}

void note_insertion(const RiserRequest& r, const Tape& tape, Riser& riser) {
  switch (riser.insertion) {
    case Insertion::through_the_bung:
      riser.notes.push_back(fmt::format(
          "The riser passes the bung, so it goes in from above and can be drawn out again: keep {} of free height over "
          "the bung{}.",
          tape.up(riser.headroom_needed), r.headroom ? "" : " (headroom was not given)"));
      break;
    case Insertion::from_inside_before_lid_closes:
      riser.notes.emplace_back(
          "Screw the riser in from inside before the lid is welded shut: pipe never passes its own size's female "
          "thread, "
          "and it cannot be drawn out later.");
      if (threaded(r) && r.bung_opening > r.pipe.outside_diameter && r.headroom) {
        riser.notes.back() = fmt::format(
            "Screw the riser in from inside before the lid is welded shut: it would pass the bung, but drawing it "
            "takes "
            "{} of free height over the bung and there are {}.",
            tape.up(riser.headroom_needed), tape(*r.headroom));
      }
      break;
    case Insertion::welded_in:
      riser.notes.push_back(fmt::format(
          "The cut length of a welded riser is what hangs below the lid's inside: add what stands above the lid, and "
          "check the clearance of {} with a tape before welding.",
          tape(riser.clearance)));
      break;
    case Insertion::cannot_go_in:
      break;
  }
}

void choose_stock(const RiserRequest& r, Riser& riser) {
  if (!threaded(r) || riser.cut_length <= riser.make_up) return;
  std::vector<Length> lengths = r.pipe.stock_nipples;
  std::sort(lengths.begin(), lengths.end());
  // From the shortest on: the first that is long enough wastes least, and the last that serves uncut leaves the least
  // heel.
  const Length two = 2.0 * riser.cut_length + kKerf;
  for (const Length& length : lengths) {
    if (!riser.stock && length + kExact >= riser.cut_length) riser.stock = length;
    if (!riser.stock_for_two && length + kExact >= two) riser.stock_for_two = length;
    const Length clearance = free_height(r) + riser.make_up - length;
    const Length tolerance = riser.clearance - riser.clearance_low;
    if (length > riser.make_up && clearance - tolerance + kExact >= least_clearance(r)) {
      riser.stock_uncut = length;
      riser.stock_uncut_clearance = clearance;
    }
  }
  if (riser.stock) riser.offcut = std::max(Length(), *riser.stock - riser.cut_length - kKerf);
}

void note_stock(const RiserRequest& r, const Tape& tape, Riser& riser) {
  if (!threaded(r)) {
    riser.notes.push_back(fmt::format("Cut it from plain pipe ({}); it needs no thread below the lid.", r.pipe.name));
    return;
  }
  if (!riser.stock && riser.cut_length > riser.make_up) {
    riser.notes.push_back(fmt::format(
        "No stock nipple is {} long: thread one end of a pipe, or have it cut and threaded.", tape(riser.cut_length)));
  } else if (riser.stock && riser.offcut > Length()) {
    const std::string offcut = riser.offcut > r.pipe.make_up
                                   ? fmt::format("; the offcut of {} keeps the other thread", tape(riser.offcut))
                                   : "";
    riser.notes.push_back(fmt::format("From the {} stock piece cut {}, measured from one threaded end{}.",
                                      tape(*riser.stock), tape(riser.cut_length), offcut));
  } else if (riser.stock) {
    riser.notes.push_back(fmt::format("The {} stock piece serves as it is.", tape(*riser.stock)));
  }
  if (riser.stock_for_two) {
    riser.notes.push_back(
        fmt::format("One {} stock piece cut in two makes two such risers, each with one threaded end.",
                    tape(*riser.stock_for_two)));
  }
  if (riser.stock_uncut) {
    riser.notes.push_back(
        fmt::format("The {} stock piece serves uncut, with a clearance of {} and a heel of {}.",
                    tape(*riser.stock_uncut), tape(riser.stock_uncut_clearance),
                    write_volume(r.box.volume_at(r.obstacle_height + riser.stock_uncut_clearance), r.units)));
  }
}

void note_clearance(const RiserRequest& r, const Tape& tape, Riser& riser) {
  const Length quarter = r.pipe.bore / 4.0;
  if (riser.clearance_low <= Length()) return;  // refused already
  // At a quarter of the bore the ring under the riser's end is as wide as the bore: pi D s = pi D^2 / 4.
  if (riser.clearance_low < quarter) {
    riser.notes.push_back(fmt::format(
        "At the short end of the make-up band the clearance is {}, under a quarter of the bore ({}): the gap then "
        "throttles the flow, so leave {} more.",
        tape.decimal(riser.clearance_low), tape.decimal(quarter), tape.up(quarter - riser.clearance_low)));
  } else if (riser.clearance_low < kLeastClearance) {
    riser.notes.push_back(fmt::format(
        "At the short end of the make-up band the clearance is {}, under the {} that is common practice: sediment may "
        "reach the riser.",
        tape.decimal(riser.clearance_low), tape(kLeastClearance)));
  }
}

void note_practice(const RiserRequest& r, const Tape& tape, Riser& riser) {
  riser.notes.emplace_back(
      "Cut the end at 45 degrees or notch it if it may come to touch the floor, so that it cannot seal there "
      "(common practice).");
  riser.notes.emplace_back(
      "Seal every threaded joint inside the reservoir as for air, and keep the riser in one piece: a joint in the air "
      "space that leaks feeds air into the water.");
  if (r.obstacle_height > Length()) {
    riser.notes.push_back(
        fmt::format("What lies under the bung stands {} high and counts as the floor.", tape(r.obstacle_height)));
  }
}

}  // namespace

Length default_clearance(Length bore) {
  const double sixteenths = std::max(8.0, in_inches(bore) / 2.0 * 16.0);
  return inches(std::ceil(sixteenths - 1.0e-9) / 16.0);  // the last digit of a bore adds no sixteenth
}

Riser plan_riser(const RiserRequest& request) {
  check_input(request);
  const Tape tape(request.units);
  Riser riser;
  measure(request, riser);
  refuse_lengths(request, tape, riser);
  refuse_bung(request, tape, riser);
  judge_insertion(request, tape, riser);
  choose_stock(request, riser);
  note_insertion(request, tape, riser);
  note_stock(request, tape, riser);
  note_clearance(request, tape, riser);
  note_practice(request, tape, riser);
  return riser;
}

}  // namespace riserun::reservoir
