// The stays that a layout asks for as bars to be cut: flat bars on edge along a wall, and single ties from lid to
// floor.
#pragma once

#include "quantity/quantities.h"
#include "reservoir/box_panels.h"
#include "reservoir/metals.h"

#include <string>
#include <vector>

namespace riserun::reservoir {

/// The wall of single stays that tie the lid to the floor.
inline constexpr const char* kTies = "lid to floor";

/// Bars of one kind. A wall's bars stand on edge from one edge of the wall to the other and are taken as beams whose
/// ends turn freely; what the sheet helps is not counted. Pieces of one row that differ in length are of several kinds.
struct StayBars {
  std::string wall;  // "lid", "floor", "long sides", "short sides", or kTies
  int count = 0;
  Length length{};          // that each spans, clear between what it ends at: wall, baffle or crossing bar
  Force load{};             // on each, spread over its length; of a tie along it
  Length thickness{};       // of the flat bar; of a tie both its measures
  Length height{};          // on edge: the smallest in quarter inches that does; zero: no flat bar up to 12 in does
  bool between = false;     // along the wall's longer measure, in pieces between the bars that run through
  std::vector<int> bays{};  // that its pieces fill, counted from 1 along their row; empty: all of it
};

struct StayLoad {
  GaugePressure air;
  Length water_depth{};  // stands on floor and sides as well
  Density water{};
};

/// What posts are welded to from outside.
struct LidSheet {
  Length thickness{};
  WeldMetal metal = WeldMetal::steel;
};

/// Longest bulge of a bar over its length that still holds the sheet's edge (common practice for floors, from memory).
inline constexpr double kBulgeOfBar = 1.0 / 360.0;
/// Height of a bar on edge over its thickness, at most: beyond it its free edge may buckle (0.56 sqrt(E/yield) of AISC
/// 360 Table B4.1a is 15.9 for 36 ksi; 12 leaves room; from memory).
inline constexpr double kHeightOfBar = 12.0;
/// Least side of a tie, so that it can be welded on both sides (common practice); for a bar see plug_welds.h.
inline const Length kThinnestTie = inches(0.5);

/// The bars of every wall that has bays of its own, and of lid stays that are posts. What baffles divide, and the bars
/// of a widest bare panel, whose number nobody knows, are not among them. No bar and no post stands where a baffle does
/// (see stay_rows.h), and none runs through one: it is in pieces between them. Of bars that cross those along the
/// wall's shorter measure run through and carry all of their strip, and those along its longer measure are in pieces
/// between them (common practice: nothing is notched).
///
///     M = F L / 8 <= S t h^2 / 6,    5 F L^3 / (384 E t h^3 / 12) <= L / 360
///
/// Source: a beam with a spread load, its ends free to turn, in any handbook (Roark's Formulas for Stress and Strain,
/// table of beams, from memory). A tie: F <= S t^2, and no less than the plug hole over it is wide (see plug_welds.h).
/// @param plate thickness of the baffles
/// @pre 0 < allowed
std::vector<StayBars> stay_bars(const Box& box, Length plate, const SupportLayout& supports, const StayLoad& load,
                                Stress allowed, Stress elastic_modulus, const LidSheet& lid);

}  // namespace riserun::reservoir
