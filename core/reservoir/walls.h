// Flat walls of the reservoir under inside pressure: each bare panel between supports as a rectangular plate, with its
// edges held and with its edges free to turn, which bound the truth.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "quantity/quantities.h"

namespace riserun::reservoir {

struct SheetMetal {
  std::string name;                 // "mild steel"
  Stress yield;                     // as-welded where welding softens it (aluminium)
  Stress ultimate;
  Stress elastic_modulus;
  double poisson_ratio = 0.3;
  Density density;
  std::string source;
};

/// A bare rectangle of sheet between supports or edges.
struct Panel {
  std::string name;                 // "lid panel", "long side" ...
  Length length{};                  // the longer side
  Length width{};
  Length thickness{};
  PressureDifference water;         // standing on the panel besides the air, at its worst place
};

/// What a panel does at a pressure, and the pressure it may see.
struct PanelResult {
  Panel panel;
  Stress stress_held;               // greatest stress, edges held (at the middle of the long edge)
  Stress stress_free;               // greatest stress, edges free to turn (in the middle)
  Length bulge_held{};
  Length bulge_free{};
  GaugePressure limit_held;         // air pressure at which the stress reaches the design stress
  GaugePressure limit_free;
  GaugePressure limit;              // the lower of the two
  bool small_deflection = true;     // false: the bulge passes half the thickness, so the linear theory over-states it
  double factor_on_yield = 0.0;     // yield / stress at the pressure
  double factor_on_ultimate = 0.0;
};

struct WallCheck {
  GaugePressure pressure;           // that the panels were checked at
  Stress design_stress;
  std::string design_stress_basis;  // "0.6 of yield"
  std::vector<PanelResult> panels;
  std::size_t weakest = 0;          // row of panels
  GaugePressure limit;              // of the weakest panel: the design pressure
};

/// Deflection and bending coefficients of a rectangular plate under uniform pressure, by series (not from a table).
///
///     w = alpha q a^4 / D,   M = beta q a^2 per unit width,   a = short side, D = E t^3 / (12 (1 - nu^2))
struct PlateCoefficients {
  double alpha_centre = 0.0;
  double beta_short_span_centre = 0.0;   // bending across the short side, in the middle
  double beta_long_span_centre = 0.0;
  double beta_long_edge = 0.0;           // at the middle of the long edge (held edges; otherwise 0)
  double beta_short_edge = 0.0;
};
/// @param long_over_short >= 1; above 8 the strip values are reached to the digits that matter
/// @param poisson_ratio 0 to 0.5
PlateCoefficients held_plate(double long_over_short, double poisson_ratio);
PlateCoefficients free_plate(double long_over_short, double poisson_ratio);

/// Checks every panel at a pressure.
/// @pre panels not empty, 0 < design_stress
WallCheck check_walls(const std::vector<Panel>& panels, const SheetMetal& metal, Stress design_stress,
                      std::string design_stress_basis, GaugePressure pressure);

/// Stayed surface: p = t^2 S C / pitch^2, for stays in a grid. C from the National Board inspection code supplement on
/// stayed surfaces: 2.1 for welded stays and plates not over 7/16 in thick, from memory.
PressureDifference stayed_plate_limit(Length thickness, Length pitch, Stress design_stress, double c = 2.1);

}  // namespace riserun::reservoir
