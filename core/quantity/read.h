// Reads quantities the way people write them: `5-1/2 in`, `1'1-11/16"`, `25 psi`, `10 ga steel`. A unit is asked
// for, but where the text comes with a system of units (`Written`): there a bare number is in that system's unit, `48`
// inches or millimetres. Where a system has two that a shop would mean, the mistake names both. Fractions, mixed
// numbers, prime marks, fraction signs and the usual spellings of a unit are read. Every reader takes the whole text,
// and answers with the quantity or with what was read, what is wrong with it and what is allowed. Nothing here throws
// on bad input, and no value that is not finite ever comes out.
#pragma once

#include "quantity/quantities.h"
#include "quantity/reading.h"

#include <string>
#include <string_view>

namespace riserun::quantity {

// A negative value is an error except where a reader says otherwise, and so is one beyond anything a shop could mean
// (longer than 10 km, hotter than 2000 degC ...).

Reading<Length> read_length(const Written& text);         // in, ft, `1'2"`, mm, cm, m
Reading<Length> read_signed_length(const Written& text);  // the same, and may be negative: a height below something
Reading<Length> read_altitude(const Written& text);       // the same above the sea: a bare number is feet, or metres
Reading<Area> read_area(const Written& text);             // in2, ft2, mm2, cm2, m2
Reading<Volume> read_volume(const Written& text);         // gal (US), qt, L, mL, in3, ft3, m3
/// Above the atmosphere; may be negative down to a full vacuum. psi, inH2O, ftH2O, kPa, bar, mbar, mmH2O, Pa ...
Reading<GaugePressure> read_pressure(const Written& text);
Reading<AbsolutePressure> read_absolute_pressure(const Written& text);      // psia, bar abs, kPa abs, inHg abs
Reading<PressureDifference> read_pressure_difference(const Written& text);  // units as read_pressure
Reading<Head> read_head(const Written& text);                               // a column of liquid: ft, in, m, mm
Reading<VolumeFlow> read_volume_flow(const Written& text);                  // of water: gpm, gph, L/min, L/s, m3/h
Reading<VolumeFlow> read_air_flow(const Written& text);                     // of free air: scfm, L/min, m3/h, L/s
Reading<Time> read_time(const Written& text);                               // s, min, h, `1 h 20 min`
Reading<Velocity> read_velocity(const Written& text);                       // ft/s, m/s
Reading<Mass> read_mass(const Written& text);                               // lb, oz, kg, g, t
Reading<Density> read_density(const Written& text);                         // kg/m3, lb/ft3
Reading<Force> read_force(const Written& text);                             // lbf, N, kN
Reading<Temperature> read_temperature(const Written& text);                 // degF, degC, K; may be negative
Reading<TemperatureDifference> read_temperature_difference(const Written& text);  // the same units, a difference
Reading<Power> read_power(const Written& text);                                   // W, kW, hp, BTU/h
Reading<Energy> read_energy(const Written& text);                                 // ft-lb, J, kJ, BTU, kWh
Reading<Stress> read_stress(const Written& text);                                 // psi, ksi, kPa, MPa, GPa
Reading<Price> read_price(std::string_view text);                                 // `$2.10`, `2.10 usd`, `45 cents`

/// A thickness: plain (`3/16 in`, `3 mm`), or a gauge number with its metal (`10 ga steel`), as gauges differ by metal.
Reading<Length> read_sheet(const Written& text);

/// A pure number without a unit: `0.6`, `3/4`, `60 %`; may be negative.
Reading<double> read_number(std::string_view text);
/// A whole number from 0 to 1000000: `3`.
Reading<int> read_count(std::string_view text);

/// A nominal size, to the one way in which it is written: `1 1/4`, `1.25`, `1¼"`, `DN 32` and dash size `-20` are all
/// `1-1/4`. A nominal size is a name, not a length.
Reading<std::string> read_size_name(std::string_view text);

/// What was read, if it lies in the range; otherwise an error that names the range, in the unit that `text` uses.
/// For every T above but std::string.
template <class T>
Reading<T> within(Reading<T> reading, Range<T> allowed, const Written& text);

}  // namespace riserun::quantity
