// The riser: the pipe from the bung down to a little above the floor. Cut length, clearance, heel, inlet loss, and how
// it gets in and out.
#pragma once

#include "hydraulics/line.h"
#include "quantity/fact.h"
#include "quantity/quantities.h"
#include "reservoir/box.h"

#include <optional>
#include <string>
#include <vector>

namespace riserun::reservoir {

enum class BungKind {
  half_coupling,          // threaded from one end only
  full_coupling,          // threaded from both ends
  welded_riser,           // the riser itself is welded through the lid
  double_tapped_bushing,  // a larger bung with a bushing threaded from both sides
};

/// What the riser is cut from, measures from the catalog. Lengths of thread as in catalog::JointSize.
struct RiserPipe {
  std::string name;  // "1 in schedule 40 black iron"
  Length bore{};
  Length outside_diameter{};
  Length make_up{};  // of the riser's thread in the bung, nominal
  Length make_up_tolerance{};
  Length upper_make_up{};               // of the nipple that comes from above (full coupling): they must not meet
  std::vector<Length> stock_nipples;    // lengths that can be bought or are in the bin, in any order
  std::vector<Length> with_one_thread;  // of these: what was cut off such a nipple before
};

struct RiserRequest {
  Box box;
  BungKind bung = BungKind::full_coupling;
  Length bung_length{};      // of the body that riser and nipple screw into, end to end; zero: not known
  Length bung_projection{};  // how far the face that the riser screws into stands below the lid's inside
  Length above_lid{};        // of a welded riser: what of it stands over the lid's inside
  Length holder_make_up{};   // in the bung, of what holds a riser of another size there; zero: it holds itself
  Length bung_opening{};     // smallest bore that the pipe would pass: of the bung, a bushing taken out of it
  RiserPipe pipe;
  std::optional<Length> wanted_clearance;  // none: default_clearance
  Length obstacle_height{};                // of what lies on the floor under the bung
  std::optional<Length> headroom;          // free height above the bung, to draw the riser out; none: not given
  bool lid_closed = false;                 // the lid is welded already
};

enum class Insertion { from_inside_before_lid_closes, through_the_bung, welded_in, cannot_go_in };

struct Riser {
  Length make_up{};
  Length cut_length{};  // nominal, from the threaded end (welded riser: the whole pipe, end to end)
  Length clearance{};   // above what counts as floor: low, nominal and high end of the make-up band
  Length clearance_low{};
  Length clearance_high{};
  Length end_height{};                  // above the reservoir's inside floor
  double curtain_to_bore = 0.0;         // 4 c / D
  hydraulics::LineEnd inlet;            // entry and exit loss of that end, with scatter
  Volume heel{};                        // below the riser's end
  std::optional<Length> stock;          // to cut it from, one thread at least; none: longer than any, thread a pipe
  bool is_stock_uncut = false;          // it is that stock as it is
  Length offcut{};                      // what the saw leaves of it
  std::optional<Length> stock_for_two;  // shortest stock nipple that makes two such risers, each with one thread
  std::optional<Length> stock_uncut;    // longest stock nipple that serves as it is, if one does
  Length stock_uncut_clearance{};
  Insertion insertion = Insertion::from_inside_before_lid_closes;
  bool can_be_drawn_out = false;
  Length headroom_needed{};  // above the bung, to draw it out or put it in from above
  quantity::Facts refusals;  // why this riser cannot be made so; empty: it can
  quantity::Facts notes;
};

/// Clearance that is taken unless another is wanted: the greater of 1/2 in and half the bore, rounded up to the next
/// 1/16 in. Half the bore keeps the extra loss near 0.25 velocity heads (Idelchik, see riser_inlet); 1/2 to 1 in is
/// common practice.
Length default_clearance(Length bore);

/// A shorter piece is not sawn off a nipple (common practice): it is used as it is where that leaves clearance enough,
/// else a longer one is cut.
inline const Length kLeastTrim = inches(0.25);

/// Works the riser out.
///
///     cut length = inside height - bung projection - obstacle - clearance + make-up
///
/// of a welded riser with what stands over the lid's inside in place of projection and make-up.
///
/// Stock that misses that length by no more than a thread's make-up may, or is longer by less than `kLeastTrim`, takes
/// its place as it is, unless the clearance is the person's own and moves by more than the make-up does.
///
/// All sums are unrounded. What cannot be made is a refusal in the result, with the smallest change that lifts it.
/// @throws InputError if box, bore or outside diameter is not above zero, or another length is below zero
Riser plan_riser(const RiserRequest& request);

/// Loss of a square-cut pipe end near a floor, for water that enters and for water that leaves.
///
/// Entry: the free end's K plus what the floor adds, sigma1 of s/D, interpolated by a monotone cubic. Below s/D = 0.2
/// the gap governs, so sigma1 goes on as 1/s^2 from its value there, without a jump. Nominal is the design value for a
/// square-cut end; the range reaches down to K = 0.5, which is measured on thick-walled pipe, and up to the gap's own
/// velocity head, (D / (4 Cc s))^2 with Cc = 0.6.
/// Exit: the velocity head is lost, in the gap where that is tighter than the bore: the greater of 1 and the same.
///
/// @param clearance_to_bore s/D, > 0
/// Source: Crane TP-410 A-29 (inward-projecting entry, 0.78; exit, 1.0) for the free end; Idelchik, Handbook of
/// Hydraulic Resistance, 3rd ed., section 3, inlet with a wall facing it (sigma1), from memory, plus or minus 30 %; the
/// gap by the areas: curtain pi D s against bore pi D^2 / 4.
hydraulics::LineEnd riser_inlet(double clearance_to_bore);

}  // namespace riserun::reservoir
