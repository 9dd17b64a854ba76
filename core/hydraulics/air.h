// Air through an opening: regulator seat, restrictor, vent, leak; and "free air", the volume that a mass of air has at
// the atmosphere.
#pragma once

#include "hydraulics/fluid.h"
#include "quantity/quantities.h"

namespace riserun::hydraulics {

/// Downstream over upstream pressure at which the flow chokes: (2/(g+1))^(g/(g-1)) with g = kAirHeatRatio.
double critical_pressure_ratio();

/// Within this share of the higher pressure the square root of the pressure difference, whose slope is infinite at
/// zero, gives way to the odd cubic that meets it in value and slope, so that a solver of differential equations can
/// pass through zero. At one atmosphere that is 1 Pa, a tenth of a millimetre of water.
inline constexpr double kSmoothPressureShare = 1.0e-5;

/// Mass flow [kg/s] through an opening, positive from `from` to `to`; isentropic to the throat, subsonic or choked.
/// Continuous with its slope everywhere. For inner loops: raw SI doubles.
///
///     m = Cd A p0 sqrt( 2 g/((g-1) R T0) (r^(2/g) - r^((g+1)/g)) ),  r = max(p2/p0, critical ratio)
///
/// @param effective_area  discharge coefficient times area of the opening [m^2], >= 0
/// @param from, to        absolute pressures [Pa], >= 0
/// @param temperature_from, temperature_to  [K]; that of the side with the higher pressure counts
/// Source: A. H. Shapiro, The Dynamics and Thermodynamics of Compressible Fluid Flow, vol. 1, 1953, chapter 4 (from
/// memory).
double orifice_air_flow(double effective_area, double from, double to, double temperature_from, double temperature_to);

/// The same between two tanks of air at one temperature.
MassFlow orifice_air_flow(Area effective_area, AbsolutePressure from, AbsolutePressure to, Temperature temperature);

/// Discharge coefficient times area of a round opening.
Area effective_area(Length bore, double discharge_coefficient);

/// The bore of a round opening that passes that flow between two pressures; zero for no flow.
/// @pre from above to, discharge_coefficient > 0, flow >= 0
Length bore_for_air_flow(MassFlow flow, double discharge_coefficient, AbsolutePressure from, AbsolutePressure to,
                         Temperature temperature);

/// Free air is counted at the atmosphere's pressure and the air's temperature.
MassFlow mass_flow_of_free_air(VolumeFlow free_air, AbsolutePressure atmosphere, Temperature temperature);
VolumeFlow free_air_of_mass_flow(MassFlow flow, AbsolutePressure atmosphere, Temperature temperature);
Volume free_air_of_mass(Mass mass, AbsolutePressure atmosphere, Temperature temperature);

}  // namespace riserun::hydraulics
