// Flat walls of the reservoir under inside pressure: each bare panel between supports as a rectangular plate, with its
// edges held and with its edges free to turn, which bound the truth.
#pragma once

#include "quantity/fact.h"
#include "quantity/quantities.h"
#include "reservoir/metals.h"
#include "reservoir/plates.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace riserun::reservoir {

/// A bare rectangle of sheet between supports or edges.
struct Panel {
  std::string name;  // "lid panel", "long side panel" ...
  Length length{};   // the longer side
  Length width{};
  Length thickness{};
  PressureDifference water{};  // standing on the panel besides the air, at its worst place
};

/// What a panel does at a pressure, and the pressure it may see.
struct PanelResult {
  Panel panel;
  Stress stress_held;  // greatest stress, edges held (at the middle of the long edge)
  Stress stress_free;  // greatest stress, edges free to turn (in the middle)
  Length bulge_held{};
  Length bulge_free{};
  GaugePressure limit_held;  // air pressure at which the stress reaches the design stress; zero: the water alone does
  GaugePressure limit_free;
  GaugePressure limit;           // the lower of the two
  GaugePressure vacuum_limit;    // how far below the atmosphere the empty reservoir may come, as a positive number
  bool small_deflection = true;  // false: the bulge passes half the thickness, so the linear theory over-states it
  bool small_deflection_at_limit = true;
  double factor_on_yield = 0.0;  // yield / stress at the pressure; infinite without load
  double factor_on_ultimate = 0.0;

  Stress stress() const { return stress_held > stress_free ? stress_held : stress_free; }
  Length bulge() const { return bulge_held > bulge_free ? bulge_held : bulge_free; }
};

struct WallCheck {
  GaugePressure pressure;  // that the panels were checked at
  Stress design_stress;
  quantity::Fact design_stress_basis;  // "0.6 of yield"
  std::vector<PanelResult> panels;
  std::size_t weakest = 0;       // row of panels
  GaugePressure limit;           // of the weakest panel: the design pressure
  GaugePressure vacuum_limit;    // of the panel that is weakest with no water on it
  double factor_on_yield = 0.0;  // the least of all panels, at the pressure
  double factor_on_ultimate = 0.0;
};

/// Checks every panel at a pressure. Stress and bulge are those of air and water together; the limits are air pressure
/// with that water standing on the panel (a stopped riser puts the full air pressure on the full charge).
///
///     stress = 6 beta q (a/t)^2,   bulge = alpha q a^4 / D,   q = air + water
///
/// Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. Small deflections: a bulge over half
/// the thickness is carried partly by stretching, so these figures over-state stress and bulge there.
/// @pre panels not empty, each with 0 < width and 0 < thickness; 0 < design_stress
WallCheck check_walls(const std::vector<Panel>& panels, const SheetMetal& metal, Stress design_stress,
                      quantity::Fact design_stress_basis, GaugePressure pressure);

/// A plate that single stays hold at the corners of a grid.
struct StayedSurface {
  Length thickness{};
  Length pitch{};              // the greater of the grid's two
  PressureDifference water{};  // that stands on one of the two plates besides the air
};

/// Stayed surface: p = t^2 S C / pitch^2, for stays in a grid. C from the National Board inspection code supplement on
/// stayed surfaces: 2.1 for welded stays and plates not over 7/16 in thick, from memory.
PressureDifference stayed_plate_limit(Length thickness, Length pitch, Stress design_stress, double c = 2.1);

/// The pitch at which that limit is so much. @pre 0 < pressure
Length stayed_plate_pitch(Length thickness, PressureDifference pressure, Stress design_stress, double c = 2.1);

}  // namespace riserun::reservoir
