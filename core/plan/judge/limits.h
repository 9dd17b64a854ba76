// Every limit that decides a verdict, with its source. A trade fact without one is common practice.
#pragma once

#include "quantity/quantities.h"

#include <cmath>

namespace riserun::plan {

/// From here on a vessel is in the scope of the pressure-vessel code: ASME BPVC Section VIII Div. 1, U-1(c)(2)(h);
/// California Labor Code 7624(e) draws the same line for air tanks.
inline const GaugePressure kCodePressure = psig(15.0);

/// A regulator's range over its setting: the middle third of the range is best, and below a tenth of it the setting
/// drifts (common practice).
inline constexpr double kWidestRange = 10.0;

/// The range of a first stage over the setting of the regulator behind it, at least: that one holds its setting only
/// with so much before it (common practice).
inline constexpr double kFirstStage = 2.0;

/// A regulator's repeatability as a share of what decides between short, right and too much (common practice).
inline constexpr double kLargeShare = 0.5;

/// A regulator's rise over its setting when nothing is drawn, of the best (common practice).
inline const GaugePressure kLeastLockUp = psig(0.1);

/// What no device does better, as shares of its range or of the pressure at which it opens (common practice): a figure
/// below them was never on a maker's sheet. Precision regulators are sold with a quarter to a half per cent of the
/// range.
inline const PressureDifference kFinestLockUp = psi(0.01);
inline constexpr double kFinestRepeatability = 0.0025;
inline constexpr double kFinestTolerance = 0.01;

/// A shop's receiver stands between some 80 and 175 psi; what is far below that is another pressure (common practice).
inline const GaugePressure kLowestReceiver = psig(20.0);

/// Free air that a compressor gives, at least: an airbrush's gives some 0.5 cfm (common practice, taken low).
inline const VolumeFlow kLeastDelivery = cubic_feet_per_minute(0.3);

/// Its receiver over its delivery, at least: a gallon tank of 2.5 cfm, the smallest on the largest that is sold, holds
/// the free air of 3 s (common practice, taken low).
inline const Time kFastestReceiver = seconds(1.5);

/// What is read off a rule (common practice).
inline const Length kRuleMark = inches(1.0 / 16.0);

/// The next mark from there up that is no less as it is printed either, in sixteenths or in whole millimetres.
inline Length on_the_rule(Length least) { return kRuleMark * std::ceil((least + millimetres(0.5)) / kRuleMark); }

/// What is typed as it was printed, with three digits, may be half a per cent less.
inline constexpr double kAsPrinted = 0.995;

/// A dial's full scale over the pressure that it must show: ASME BPVC Section VIII UG-102, as reported.
inline constexpr double kLeastOfScale = 1.5;
inline constexpr double kMostOfScale = 4.0;

/// The finest step that a low-pressure regulator is set to by a dial with marks of 0.1 psi: half a mark (common
/// practice). Such dials have marks in psi, whatever the units of the job.
inline const GaugePressure kDialStep = psig(0.05);

/// The most on the dial that stays under the limit, also as it was printed.
inline GaugePressure within_limit(GaugePressure limit) {
  const double step = in_pascals(kDialStep);
  return gauge_pascals(std::floor(in_pascals(limit) * kAsPrinted / step + 1e-9) * step);
}

/// What may stay in the table after draining, as a share of what went up (common practice: a table of which more stays
/// is not drained).
inline constexpr double kMostLeftInTable = 0.5;

/// More than that is worth a word to who wants the table dry (common practice).
inline constexpr double kMuchLeftInTable = 0.1;

/// Times longer that a table may take to drain than with nothing in the air's way out: beyond that the vent is a
/// throttle, and it is the one way in which a hand lets the pressure off (common practice).
inline constexpr double kSlowestVent = 1.5;

/// That a table may drain by its own drain, the reservoir over night, and the reservoir in an evening with frost coming
/// (common practice).
inline const Time kLongestTableDrain = seconds(3600.0);
inline const Time kNight = seconds(8.0 * 3600.0);
inline const Time kEvening = seconds(2.0 * 3600.0);

/// What a relief valve passes by its inlet's bore, over what the supply gives: the code takes a tenth off what is
/// measured (ASME BPVC Section VIII UG-131, from memory), and the hole of a drilled restrictor may be 5 % wide, so a
/// tenth more flows (common practice).
inline constexpr double kReliefMargin = 1.25;

/// Along the fittings from its bung to a relief valve: "as close as practicable" (ASME BPVC Section VIII UG-135, from
/// memory), said with a number (common practice: a foot).
inline const Length kFarthestRelief = inches(12.0);

/// From its bung to the valve of a vent: a hand that stands at the tank reaches it (common practice: an arm and a
/// step).
inline const Length kFarthestVent = inches(72.0);

/// That a table is put higher for a run, at most: on longer legs, or blocks under them. For more another run is taken
/// (common practice: a foot).
inline const Length kMostHigherTable = inches(12.0);

/// Height of a drain's middle over the charge's depth: what stands under it does not come out (common practice: low).
inline constexpr double kHighestDrain = 1.0 / 3.0;
/// Of the middle of a bung over the floor, beside half its thread: its wall and the fillet round it (common practice).
/// None stands lower, however little water there is.
inline const Length kBungOverFloor = inches(1.25);

/// Air space of the reservoir when charged, as a share of it: less is soon full of water, which then stands at gauge,
/// vent and relief valve (common practice).
inline constexpr double kLeastAirSpace = 0.05;

/// A leak test over what may come in use, at most: tests with air are made at 1.1 to 1.33 times (ASME BPVC Section VIII
/// UG-100, ASME B31.3 345.5.4, from memory); more stores energy for nothing. What is usual for flat-sided tanks may be
/// tested at in any case.
inline constexpr double kMostTestOverUse = 1.5;

/// No end of a shop's air line is narrower than this: the bore of the smallest quick-connect plugs (common practice).
/// What is narrower is a restrictor, and somebody must build it in.
inline const Length kNarrowestFeed = inches(1.0 / 8.0);

/// More bars than that nobody fits and welds into one tank: thicker sheet is the answer (common practice).
inline constexpr int kMostBars = 30;

/// Yield that a sheet for a tank may have, beside its welds: ASTM A572 grade 60, duplex 2205, and 5083 as welded
/// (Aluminum Design Manual), all from memory. More is a slip of the pen, a steel that welding softens, or aluminium
/// as it was before it was welded.
inline const Stress kMostYieldOfSteel = stress_pascals(60.0e3 * kPascalsPerPsi);
inline const Stress kMostYieldOfStainless = stress_pascals(65.0e3 * kPascalsPerPsi);
inline const Stress kMostYieldOfAluminium = stress_pascals(24.0e3 * kPascalsPerPsi);

/// Water that scalds within 5 s: 60 degC (Moritz and Henriques 1947, as reprinted).
inline const Temperature kScalding = degrees_celsius(60.0);

/// Water up to this any part for water stands that says nothing of heat: a summer's (common practice).
inline const Temperature kWarm = degrees_fahrenheit(100.0);

/// With 10 % of propylene glycol by volume, the most that is worked out as water, it freezes at -3 degC (ASHRAE
/// Handbook, Fundamentals, from memory).
inline constexpr double kShareOfAntifreeze = 0.1;
inline const Temperature kFreezesWithAntifreeze = degrees_celsius(-3.0);
/// With a share up to that; between there and none it goes evenly.
inline Temperature freezes_with(double share) {
  return degrees_celsius(in_degrees_celsius(kFreezesWithAntifreeze) * share / kShareOfAntifreeze);
}

/// Below this a cold night freezes it: 0 to 3 degC (common practice).
inline const Temperature kFreezing = degrees_celsius(3.0);

/// Of a table's rim over the water that is wanted in it, for waves and splash (common practice).
inline const Length kLeastFreeboard = inches(0.5);

/// Of a bung's mouth over the water of the charge: waves and the foam of a drain come to it (common practice).
inline const Length kClearOfWater = inches(1.0);

/// Times longer or shorter than worked out that a measured fill may be: twice is beyond all roughness and tolerance
/// (common practice).
inline constexpr double kFarOff = 2.0;

/// Lower flammable limit of hydrogen in air, by volume (gas safety tables, from memory).
inline constexpr double kHydrogenLimit = 0.04;
/// Hydrogen that a gram of fines makes of water, in litres at 20 degC: 2 Al + 3 H2O -> Al2O3 + 3 H2, and
/// Mg + 2 H2O -> Mg(OH)2 + H2 (stoichiometry).
inline constexpr double kHydrogenOfAluminium = 1.34;
inline constexpr double kHydrogenOfMagnesium = 0.99;

}  // namespace riserun::plan
