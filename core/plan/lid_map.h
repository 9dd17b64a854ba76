// Where the bungs stand in the reservoir's walls, the holes that they are set into, and how near they may come to what
// else is welded to the lid. Places are those of axes, from the inside of the left end and of the front side; the
// reservoir's length runs from left to right, its width from front to back.
#pragma once

#include "plan/job/job.h"
#include "quantity/fact.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace riserun::plan {

/// Of a bung in an upright side, along it; its height stands beside it.
struct SidePlace {
  bool in_front = false;  // else in the right end
  Length along{};         // in the front from the left, in the right end from the front
};

struct LidBung {
  std::string port;
  Place place = Place::lid;
  std::optional<LidSpot> at{};         // of one in the lid; none: neither known nor found
  std::optional<Length> over_floor{};  // of one in a side: its axis, over the inside floor; none: not known
  std::optional<SidePlace> on_side{};  // of one in a side that is not there yet; always proposed
  bool proposed = false;               // the job does not say where
  bool is_there = false;               // welded in already: it cannot be moved
  bool to_weld = false;                // the job says that it is still to be welded in
  Length outside{};                    // of the boss; zero: not known
  Length hole{};                       // that the boss is set into; zero: not known
  Length body{};                       // radius of what stands over the lid there: boss, or what is screwed into it
  Length turning{};                    // radius that must be free to screw that in
};

/// A baffle or a row of stays, whose weld runs along the lid's inside.
struct LidSeam {
  bool baffle = true;
  bool across = true;  // it runs from front to back, at that distance from the left; else from left to right, from
                       // the front
  Length at{};
};

/// Holes or slots of one kind in the lid, over what ends at it below and is welded to it through them.
struct LidOpenings {
  enum class Over : std::uint8_t { posts, lid_bars, uprights, baffles };
  Over over = Over::posts;
  std::string wall{};  // of uprights: as reservoir::StayBars names it
  int count = 0;
  Length width{};    // of a round hole its diameter
  Length length{};   // of a slot; zero: it is a round hole
  Length apart{};    // of slots in a row, from middle to middle at most; zero: each has its own place
  Length open_to{};  // how wide at the top its bevelled edges make it; zero: they are square
  quantity::Facts places{};
};

struct LidMap {
  Length length{};
  Length width{};
  Length wall{};   // thickness of the sheet
  Length plate{};  // thickness of what stands on a seam
  std::vector<LidBung> bungs;
  std::vector<LidSeam> seams;
  std::vector<LidSpot> ties;                 // single stays from lid to floor
  std::vector<LidOpenings> openings{};       // over stays and baffles; of a lid that is on already none
  bool stays_anywhere = false;               // the job does not say where its stays stand
  std::vector<std::string> without_place{};  // bungs that no place was found for, by their ports
};

/// Room all round between boss and hole (common practice; 1/16 in is the most).
inline const Length kBossGap = inches(1.0 / 32.0);
/// Of a boss to the wall that the lid is welded to: room for torch and cup over its fillet, of whatever size the boss
/// is (common practice: 1-1/2 to 2 in).
inline const Length kToSeam = inches(2.0);
/// Of a boss in a side to the seams of floor and lid: a fillet of 1/4 in on each of the two (common practice).
inline const Length kToFloorSeam = inches(0.5);
/// Of a boss to a baffle, a stay or a tie under the lid, so that both can be welded (common practice).
inline const Length kToStay = inches(1.0);

/// Room behind the jaw of the pipe wrench that pipe of this outside diameter takes, beside the pipe (common practice).
Length behind_jaw(Length outside);

/// The least that two axes must be apart, so that their welds do not run together (clear by half the sum of the two
/// bosses, common practice) and a wrench turns what is screwed into either.
Length least_apart(const LidBung& a, const LidBung& b);
/// The least from an axis to the inside of a wall, and to the face of a baffle, a stay or a tie.
Length least_to_wall(const LidBung& bung);
Length least_to_stay(const LidBung& bung);

Length distance(const LidSpot& a, const LidSpot& b);

/// What a bung at that spot is too near to, each as a fact; empty: it may stand there.
/// @param self  its row in the map, or any beyond the last for one that is none of them
quantity::Facts too_near(const LidMap& map, const LidBung& bung, const LidSpot& spot, std::size_t self);

/// The free spot nearest to where the bung in that row stands now.
std::optional<LidSpot> nearest_free_spot(const LidMap& map, std::size_t row);

/// Puts the bungs that have no place and are not there already where there is room: the riser's near the middle, the
/// others in a row along the front, where a hand reaches them.
/// @param riser  name of the riser's bung
void propose_places(LidMap& map, const std::string& riser);

}  // namespace riserun::plan
