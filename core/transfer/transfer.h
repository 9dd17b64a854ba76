// A transfer: air pushes the water from the reservoir up into the table (fill), or is let out so that it runs back
// (drain). One set of differential equations both ways; see equations.h for them and for their sources.
#pragma once

#include "hydraulics/line.h"
#include "transfer/stop.h"
#include "transfer/system.h"

#include <optional>
#include <string>
#include <vector>

namespace riserun::transfer {

/// One instant of a transfer, for plots and for the section.
struct Instant {
  Time time{};
  Length reservoir_depth{};
  Length table_depth{};
  GaugePressure ullage_pressure;
  VolumeFlow flow{};      // into the table is positive
  VolumeFlow free_air{};  // into the ullage is positive, out of it negative
};

/// One resistance on the way of the air or the water, and how long the transfer would take without it: the compressor
/// replaced by a main at the receiver's pressure, the regulator ten times as large, the bores before it, behind it or
/// of the vents ten times as wide, riser (with its end) or the rest of the line without its share of the head lost at
/// the mean flow.
struct Limit {
  std::string name;     // "compressor", "regulator", "feed line", "air line", "riser", "line", "vent"
  Time time_without{};  // infinite if the goal is not reached even then
};

struct Transfer {
  Stop stop = Stop::goal_reached;
  Time time{};
  Time time_low{};   // all coefficients at the low end of their ranges, supply and vent a tenth up, the setting up by
                     // the regulator's repeatability
  Time time_high{};  // ... at the high end, a tenth down; the walls as rough as used pipe; infinite if the goal is then
                     // not reached
  Volume volume{};   // moved
  VolumeFlow mean_flow{};
  VolumeFlow peak_flow{};
  Volume free_air{};         // used (fill) or let out (drain), at the atmosphere's pressure
  Length reservoir_depth{};  // at the end
  Length table_depth{};
  GaugePressure highest_ullage_pressure;
  std::vector<hydraulics::ElementLoss> losses_at_mean;
  std::vector<hydraulics::ElementLoss> losses_at_peak;
  std::vector<Limit> limits;  // the one whose removal helps most comes first
  /// Name of the first of `limits` if it would save a hundredth of the time or more, or reach the goal that is not
  /// reached. Otherwise "set pressure" (fill) or "levels" (drain); "charge" if the riser uncovers, "rim" if it
  /// overflows.
  std::string limited_by;
  std::vector<Instant> history;
  std::vector<Instant> history_fast;  // the courses that time_low and time_high end: what lies between is the range
  std::vector<Instant> history_slow;
};

/// What happens if nobody shuts the air off.
enum class WalkAway { water_stops_below_rim, table_overflows, air_blows_through };

struct Fill : Transfer {
  GaugePressure pressure_to_start;    // lifts water to the table's inlet from the starting level
  GaugePressure hold_pressure;        // holds the table at its wanted depth without flow
  GaugePressure pressure_to_finish;   // least regulator setting that reaches the wanted depth, what opens the way
                                      // behind the regulator included
  Length coast_up{};                  // rise of the table after the air is shut at the wanted depth
  Length shut_off_depth{};            // shut the air here and the coast-up ends at the wanted depth
  Length margin_over_riser_end{};     // water over the riser's end at the wanted depth; negative: that much short
  GaugePressure pressure_left_alone;  // most that the supply brings the reservoir to: the regulator locked up
  WalkAway walk_away = WalkAway::water_stops_below_rim;
  Volume walk_away_spill{};  // over the rim by the time nothing more happens or the riser uncovers
  /// Setting at which the water stops by itself 1/2 in below the rim; none if the riser would uncover first.
  std::optional<GaugePressure> self_limiting_pressure;
  Length rise_per_tenth_psi{};  // of the table at rest, for 0.1 psi more in the reservoir
  /// Change of the time for 0.1 psi more at the regulator; none: the depth is not reached with one of the two.
  std::optional<Time> time_per_tenth_psi;
  VolumeFlow arrival_flow{};  // when the water first reached the inlet; zero: it stood there already
  VolumeFlow last_flow{};     // at the end
};

/// Its time is that to the film of the system's mouth.
struct Drain : Transfer {
  Volume left_in_table{};
};

/// How much of a transfer is worked out.
enum class Detail {
  course,  // without the range and its histories, what limits, and what 0.1 psi more does: one run instead of eight
  all,
};

/// Fills the table to `wanted_depth` from `start`. Throws InputError for a system that is not one: a measure that is
/// negative or not a number, no line, a line
/// that takes no head.
Fill fill(const System& system, const Start& start, Length wanted_depth, Detail detail = Detail::all);
/// Fill::pressure_to_finish, which depends on no course; throws as fill does.
GaugePressure pressure_to_finish(const System& system, const Start& start, Length wanted_depth);
/// Vents the reservoir and lets the table run back.
Drain drain(const System& system, const Start& start, Detail detail = Detail::all);
/// The regulator setting that fills in the wanted time; nullopt if no setting up to `highest` does.
std::optional<GaugePressure> setting_for_time(System system, const Start& start, Length wanted_depth, Time wanted,
                                              GaugePressure highest);

}  // namespace riserun::transfer
