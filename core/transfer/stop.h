// What ends a transfer.
#pragma once

namespace riserun::transfer {

enum class Stop {
  goal_reached,
  riser_uncovered,    // the reservoir is down to the riser's end: air would blow through
  pressures_balance,  // the water comes to rest before the goal
  table_overflows,    // the rim is reached before the goal
  reservoir_full,     // the water runs back until the reservoir is full
  time_limit,         // a day has passed, or the numbers are too extreme to be solved
};

}  // namespace riserun::transfer
