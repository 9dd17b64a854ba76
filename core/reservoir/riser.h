// The riser: the pipe from the bung down to a little above the floor. Cut length, clearance, heel, inlet loss, and how
// it gets in and out.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "hydraulics/line.h"
#include "quantity/quantities.h"
#include "reservoir/box.h"

namespace riserun::reservoir {

enum class BungKind {
  half_coupling,   // threaded from one end only
  full_coupling,   // threaded from both ends
  welded_riser,    // the riser itself is welded through the lid
  double_tapped_bushing,  // a larger bung with a bushing threaded from both sides
};

/// What the riser is cut from, measures from the catalog. Lengths of thread as in catalog::JointSize.
struct RiserPipe {
  std::string name;                 // "1 in schedule 40 black iron"
  Length bore{};
  Length outside_diameter{};
  Length make_up{};                 // of the riser's thread in the bung, nominal
  Length make_up_tolerance{};
  Length upper_make_up{};           // of the nipple that comes from above (full coupling): they must not meet
  std::vector<Length> stock_nipples;  // lengths that can be bought or are in the bin, shortest first
};

struct RiserRequest {
  Box box;
  BungKind bung = BungKind::full_coupling;
  Length bung_length{};             // of the coupling body, end to end
  Length bung_projection{};         // how far the bung's lower face stands below the lid's inside
  Length bung_opening{};            // smallest bore through the bung or bushing
  RiserPipe pipe;
  std::optional<Length> wanted_clearance;  // none: the greater of 1/2 in and half the bore, to the next 1/16 in
  Length obstacle_height{};         // of what lies on the floor under the bung
  std::optional<Length> headroom;   // free height above the bung, to draw the riser out; none: not given
  bool lid_closed = false;          // the lid is welded already
};

enum class Insertion { from_inside_before_lid_closes, through_the_bung, welded_in, cannot_go_in };

struct Riser {
  Length make_up{};
  Length cut_length{};              // nominal, from the threaded end
  Length clearance{};               // above what counts as floor: low, nominal and high end of the make-up band
  Length clearance_low{};
  Length clearance_high{};
  Length end_height{};              // above the reservoir's inside floor
  double curtain_to_bore = 0.0;     // 4 c / D
  hydraulics::LineEnd inlet;        // entry and exit loss of that end, with scatter
  Volume heel{};                    // below the riser's end
  std::optional<Length> stock;      // stock nipple to cut it from; none: longer than any, thread a pipe
  Length offcut{};
  std::optional<Length> stock_uncut;  // longest stock nipple that serves as it is, if one does
  Length stock_uncut_clearance{};
  Insertion insertion = Insertion::from_inside_before_lid_closes;
  bool can_be_drawn_out = false;
  std::vector<std::string> refusals;  // why this riser cannot be made so; empty: it can
  std::vector<std::string> notes;     // full sentences for the plan
};

Riser plan_riser(const RiserRequest& request);

/// Entry loss of a square-cut pipe end near a floor: the free entry's K plus what the floor adds.
///
/// @param clearance_to_bore s/D, > 0
/// Source: Crane TP-410 A-29 (inward-projecting entry, 0.78) for the free end; Idelchik, Handbook of Hydraulic
/// Resistance, 3rd ed., section 3, inlet with a wall facing it (sigma1), from memory, plus or minus 30 %; below
/// s/D = 0.2 the gap itself governs: (D / (4 Cc s))^2.
hydraulics::LineEnd riser_inlet(double clearance_to_bore);

}  // namespace riserun::reservoir
