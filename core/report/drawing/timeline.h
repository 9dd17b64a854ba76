// The fill and the drain after it on one stretch of time, and where on it the section and the plots stand.
#pragma once

#include "plan/plan.h"

#include <string>
#include <vector>

namespace riserun::report {

enum class Phase : std::uint8_t { fill, drain };

/// Something that happens at a time, marked on the slider.
struct Mark {
  Time at{};
  std::string text;      // "riser uncovers"
  bool warning = false;  // the transfer ends there before its goal
};

struct Timeline {
  Time fill_shown{};  // the slower course included
  Time drain_shown{};
  std::vector<Mark> marks;
  Time whole() const { return fill_shown + drain_shown; }
};

Timeline timeline_of(const plan::Plan& plan);

/// What the plan's curves say at a time of the timeline: between two instants of a curve on the straight line, after
/// its end as at its end without flow. An empty curve is the charge at rest.
transfer::Instant instant_at(const plan::Plan& plan, const Timeline& timeline, Time at);
/// The same on one curve, time counted from its start.
transfer::Instant instant_on(const std::vector<transfer::Instant>& history, Time at);

Phase phase_at(const Timeline& timeline, Time at);

}  // namespace riserun::report
