// Loss coefficients K of fittings and changes of bore: head = K V^2 / (2 g), V in the bore that is named.
#pragma once

#include "quantity/quantities.h"

namespace riserun::hydraulics {

/// Sudden widening (Borda-Carnot), on the velocity in the small bore: (1 - beta^2)^2, beta = small / large.
/// Source: Crane TP-410, page 2-9 and A-26.
double widening_coefficient(Length small_bore, Length large_bore);

/// Sudden narrowing, on the velocity in the small bore: 0.5 (1 - beta^2), beta = small / large.
/// Source: Crane TP-410, page 2-9 and A-26.
double narrowing_coefficient(Length small_bore, Length large_bore);

/// 2-K: K1/Re + Kinf (1 + 1/D), D the inside diameter in inches.
/// Source: W. B. Hooper, Chemical Engineering, Aug 24 1981, pp. 96-100.
double hooper_coefficient(double k1, double k_infinity, Length bore, double reynolds);

/// 3-K: K1/Re + Ki (1 + Kd / NPS^0.3), NPS the nominal pipe size in inches.
/// Source: R. Darby, Chemical Engineering Fluid Mechanics, 2nd ed., table 7-3.
double darby_coefficient(double k1, double ki, double kd, double nominal_inches, double reynolds);

/// K of a valve whose flow coefficient Cv is known, on the velocity in `bore`, and back. Cv is the flow of 60 degF
/// water in US gpm at 1 psi (ISA-75.01); so K = 2 A^2 (1 psi) / (rho (Cv gpm)^2), which Crane TP-410, page 2-10,
/// prints as 891 d^4 / Cv^2 with d in inches.
double coefficient_of_valve(double cv, Length bore);
double cv_of_coefficient(double k, Length bore);

/// Flow through a valve of that Cv: Cv sqrt(dp [psi] / specific gravity) in US gpm. Source: ISA-75.01.
VolumeFlow flow_through_valve(double cv, PressureDifference difference, Density density);

}  // namespace riserun::hydraulics
