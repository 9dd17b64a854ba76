// Air through a row of resistances: holes, fittings, hose, a check valve's spring. Each passes the flow as an
// isentropic opening whose jet is lost behind it, so that the pressure falls from place to place as it really does; two
// equal holes pass 0.81 of what one passes when both are choked.
#pragma once

#include "hydraulics/line.h"
#include "quantity/quantities.h"

#include <cstddef>
#include <string>
#include <vector>

namespace riserun::hydraulics {

/// One place on the way of the air.
struct AirElement {
  std::string name;               // as printed: "1/4 FNPT x 1/4 MNPT restrictor, 1/16 in hole"
  Length bore{};                  // as printed; zero: several, or not known
  Area effective_area{};          // discharge coefficient times area, >= 0; zero: shut
  PressureDifference opens_at{};  // that must stand over it before anything flows: a check valve's spring; >= 0
  bool one_way = false;           // nothing flows back through it
  std::string source{};
};

/// A plain round opening.
AirElement air_opening(std::string name, Length bore, double discharge_coefficient);

/// A hole drilled through a plug or a fitting: entry 0.5 and exit 1.0 on the velocity in it, which is a discharge
/// coefficient of 0.82; measured 0.81 to 0.84 for a short cylinder (Weisbach, in Encyclopaedia Britannica, 11th ed.,
/// Hydraulics, section 63).
AirElement drilled_hole(std::string name, Length bore);

/// Fittings and hose as the air meets them. Each has its own loss, its wall friction and the changes of bore at which
/// it is the narrower side; the row begins with an entry (0.5) and ends with an exit (1.0). A loss coefficient K on a
/// bore's velocity head passes what an opening of A / sqrt(K) does: exact at small differences of pressure, and
/// isentropic above (ISO 6358-3 adds up rows in the same way, step by step).
/// Losses: Crane TP-410, which holds for gases too. Friction at a Reynolds number of 3e4; between 1e4 and 1e5 that is
/// within a fifth.
/// @pre every bore positive
/// @return one for each element, in their order
std::vector<AirElement> air_elements(const std::vector<LineElement>& elements);

/// What a flow asks for before a row of resistances, and how that changes.
struct Upstream {
  double pressure = 0.0;  // Pa absolute
  double by_flow = 0.0;   // its derivative by the flow, Pa s/kg
  double by_to = 0.0;     // ... by the pressure behind the row
};

/// What flows between two pressures, and how that changes.
struct AirFlow {
  double flow = 0.0;     // kg/s
  double by_from = 0.0;  // its derivative by the pressure before the row, kg/(s Pa)
  double by_to = 0.0;    // ... by the pressure behind it
};

/// A row of resistances in the order in which the air meets them; without any it takes no pressure at all.
class AirLine {
 public:
  AirLine() = default;
  explicit AirLine(std::vector<AirElement> elements);

  const std::vector<AirElement>& elements() const { return elements_; }
  bool empty() const { return elements_.empty(); }
  /// Something on the way is shut.
  bool shut() const { return shut_; }
  /// All that must stand over the row before anything flows.
  PressureDifference opens_at() const;

  /// Pressure before the row for a flow [kg/s, >= 0] against a pressure behind it [Pa absolute]. In closed form, from
  /// the last resistance back to the first: with x = (m/A)^2 R T / (g p^2),
  ///
  ///     M^2 = (sqrt(1 + 2 (g-1) x) - 1) / (g-1),   p0 = p (1 + (g-1)/2 M^2)^(g/(g-1)),
  ///
  /// and past M = 1 the flow alone says p0. Rising and convex in the flow. Below kSmoothPressureShare the difference
  /// goes linearly to zero with the flow, as in orifice_air_flow. For inner loops: raw SI doubles.
  /// @param gas R T of the air [J/kg]
  /// @pre not shut
  /// Source: A. H. Shapiro, The Dynamics and Thermodynamics of Compressible Fluid Flow, vol. 1, 1953, chapter 4 (from
  /// memory).
  Upstream upstream(double flow, double to, double gas) const;

  /// Flow [kg/s] from one absolute pressure to a lower one, to the last bits; 0 where the difference opens nothing, and
  /// for a row that is shut. Infinite for an empty row with a difference. Raw SI.
  double flow(double from, double to, double gas) const { return flow_between(from, to, gas, 0.0).flow; }
  /// @param near  a flow near the answer, from which it is found sooner; 0: none is known
  AirFlow flow_between(double from, double to, double gas, double near) const;
  MassFlow flow(AbsolutePressure from, AbsolutePressure to, Temperature temperature) const;

  /// Pressure before each resistance at a flow, and behind the last.
  std::vector<AbsolutePressure> pressures(MassFlow flow, AbsolutePressure to, Temperature temperature) const;

  /// The same row with every area times that factor (>= 0).
  AirLine widened(double factor) const;
  /// As what flows the other way meets it; what is one-way is shut then.
  AirLine turned_round() const;
  /// This row and then that one.
  AirLine followed_by(const AirLine& next) const;

 private:
  struct Step {
    double area;      // m2
    double opens_at;  // Pa
  };
  std::vector<AirElement> elements_;
  std::vector<Step> steps_;  // the same, the last first
  bool shut_ = false;
  double opens_at_ = 0.0;    // Pa, all together
  double first_area_ = 0.0;  // m2; of one opening that passes about as much
};

}  // namespace riserun::hydraulics
