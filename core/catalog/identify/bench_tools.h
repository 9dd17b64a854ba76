// What a measurement at the bench is good for: how far off each tool and each look may be. The probabilities here are
// the model of core/catalog/identify.h; they are estimates of ours but where a source is named.
#pragma once

#include "catalog/joint.h"

namespace riserun::catalog {

enum class Tool : std::uint8_t { tape, rule, caliper, string };

/// How far a diameter read with that tool may be off: nineteen readings of twenty lie within it (common practice: a
/// tape sighted across a round end 1/16 in, a steel rule 1/32 in, a caliper over the crests 0.005 in; a string laid
/// round 1/8 in of its length, so 0.04 in across).
Length reading_error(Tool tool);

/// How far a count of threads may be off, in threads per inch: half a thread over the length counted, which is no
/// longer than the thread itself; the length itself may be 1/32 in off (common practice).
/// @param counted_over  the length against the rule; nothing: one inch
double count_error(double threads_per_inch, Length counted_over, Length thread_length);

/// How many turns by hand may be off: both threads within one turn of the basic plane (ASME B1.20.1, 3.2). Threads that
/// do not belong together bind where burrs and chamfers let them, so twice as much (an estimate).
inline constexpr double kTurnsError = 2.0;
inline constexpr double kForeignTurnsError = 4.0;
/// A male that is a little too large to start may be forced across the female's first thread (common practice).
inline constexpr double kCrossThreadTurns = 1.0;
/// Dirt, a burr or a crooked start spoils a trial this often; then it may stop anywhere up to kMostTurns (estimates).
inline constexpr double kTrialSpoiled = 0.15;
inline constexpr double kMostTurns = 16.0;

/// An error beyond this many times the tool's is taken for impossible.
inline constexpr double kImpossible = 2.0;

/// Probability density [1 per unit of the arguments] of reading `reading` where the truth lies evenly in low..high and
/// the reading is off by a normal error, 95 % of which lies within `error`; 0 where it is impossible.
double reading_density(double reading, double low, double high, double error);

// How sure a look is.
inline constexpr double kTaperSeen = 0.92;    // by a straight edge: 1 in 16 is 1/32 in over a short thread
inline constexpr double kFlankSeen = 0.95;    // a thread gauge against the light
inline constexpr double kConeSeen = 0.85;     // the cone's angle by a gauge or against a known part
inline constexpr double kWasherThere = 0.85;  // where it belongs; washers get lost
inline constexpr double kWasherElsewhere = 0.06;
inline constexpr double kSwivelSeen = 0.95;
inline constexpr double kMarkTrue = 0.96;
/// One certain other letter or size: what is misread or left from another part is one of ten or so (an estimate).
inline constexpr double kMarkOfAnother = (1.0 - kMarkTrue) / 10.0;
/// A letter that is misread could be any of the others: two wrong ones seldom make the mark of another thread (an
/// estimate).
inline constexpr double kLettersToMisread = 25.0;
inline constexpr double kHomeShelf = 0.85;  // a part in the hand comes from the shelf of its country

}  // namespace riserun::catalog
