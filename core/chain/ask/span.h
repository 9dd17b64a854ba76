// How a chain makes the distance between two ports that stand still.
#pragma once

#include "quantity/quantities.h"

#include <cstddef>
#include <vector>

namespace riserun::chain {

/// The distance between the faces of two ports that look at each other along parallel axes.
struct Span {
  Length along{};   // along the axes
  Length offset{};  // between the axes: the set
  Length roll{};    // a second offset at right angles to the first

  /// Between the two axes: the root of the sum of the squares, for a rolling offset.
  Length aside() const;
  bool operator==(const Span&) const = default;
};

/// What makes the distance, best first.
enum class SpanMake {
  stock_near,  // stock pieces that land within half of the band: they go together without trying out
  stock,       // stock pieces that land within the band
  cut_pipe,    // with a piece of pipe or tube cut to measure
  hose,        // with a hose, which takes up what is left over, and the offset
  moving_end,  // an end moves along its axis and takes up what is left over
};

/// One part of the run, in its order.
struct SpanPiece {
  std::size_t part = 0;  // row of Chain::parts
  Length length{};       // end to end, as catalogued or cut; of a bend: from end to corner to end
  bool cut = false;
  int threads = 0;  // to be cut on it anew or kept, for a piece that is cut: 2, or 0 for tube and hose
};

struct SpanFit {
  Span wanted;
  SpanMake make = SpanMake::stock;
  std::vector<SpanPiece> pieces;
  int joints = 0;
  Length lands{};  // along the axes, every joint at its nominal make-up
  Length lands_aside{};
  Length band{};  // plus or minus, along: the joints' tolerances added up, as if all fell the same way
  Length band_aside{};
  Length likely_band{};       // plus or minus, along: the root of the sum of their squares
  double bend_degrees = 0.0;  // of each of the two elbows; 0: no elbows
  Length travel{};            // centre to centre of the two elbows
  /// Of the two bends in which a hose takes the offset; 0: it lies straight. Of one that comes with its ends on the
  /// least that a bend of it may have.
  Length hose_radius{};

  /// Positive: too long.
  Length miss() const { return lands - wanted.along; }
  Length miss_aside() const { return lands_aside - wanted.aside(); }
};

/// A hose between two barbs that stand that far apart and out of line: see span/cut_pieces.h for its two bends.
struct HoseFit {
  Length taut{};        // the least that reaches, end to end
  Length cut{};         // with slack for what it draws in under pressure
  Length least_room{};  // that the offset takes, with its ends on the barbs
  Length most_aside{};  // that the room takes; 0: it lies straight at best
  Length radius{};      // least, of its bends
};

}  // namespace riserun::chain
