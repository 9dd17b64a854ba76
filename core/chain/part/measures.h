// What a part adds to a chain, in whole numbers, so that sums are exact and ties are ties; and how an order weighs it.
#pragma once

#include "chain/ask/request.h"

#include <array>
#include <compare>
#include <cstdint>

namespace riserun::chain {

/// Additive over the parts of a chain.
struct Measures {
  std::int64_t wishes = 0;       // weight of what is not to be had off the shelf; 0 in an ordinary search
  std::int64_t parts = 0;        // plugs included
  std::int64_t cents = 0;        // to pay
  std::int64_t micrometres = 0;  // end to end
  std::int64_t nanometres = 0;   // of head
  std::int64_t buy = 0;          // parts to buy
  std::int64_t drawbacks = 0;    // bushings and close nipples: they lose a tie (reference: common practice)

  Measures& operator+=(const Measures& other) {
    wishes += other.wishes;
    parts += other.parts;
    cents += other.cents;
    micrometres += other.micrometres;
    nanometres += other.nanometres;
    buy += other.buy;
    drawbacks += other.drawbacks;
    return *this;
  }
  friend Measures operator+(Measures a, const Measures& b) { return a += b; }
  bool operator==(const Measures&) const = default;
};

/// A sum of measures as an order compares it: first difference decides.
struct Cost {
  std::array<std::int64_t, 5> tuple{};

  auto operator<=>(const Cost&) const = default;
  // Place by place and in line: the compiler would call a function for it, and searches compare all the time.
  friend bool operator==(const Cost& a, const Cost& b) {
    for (std::size_t i = 0; i < a.tuple.size(); ++i)
      if (a.tuple[i] != b.tuple[i]) return false;
    return true;
  }
  friend Cost operator+(Cost a, const Cost& b) {
    for (std::size_t i = 0; i < a.tuple.size(); ++i) a.tuple[i] += b.tuple[i];
    return a;
  }
};

inline Cost cost_of(Order order, const Measures& m) {
  switch (order) {
    case Order::parts:
      return {{m.wishes, m.parts, m.cents, m.drawbacks, 0}};
    case Order::price:
      return {{m.wishes, m.cents, m.parts, m.drawbacks, 0}};
    case Order::loss:
      return {{m.wishes, m.nanometres, m.parts, m.cents, m.drawbacks}};
    case Order::length:
      return {{m.wishes, m.micrometres, m.parts, m.cents, m.drawbacks}};
    case Order::bin:
      return {{m.wishes, m.buy, m.cents, m.parts, m.drawbacks}};
  }
  return {};
}

/// The measures that alternatives are weighed by, side by side instead of first to last.
inline Cost side_by_side(const Measures& m) { return {{m.parts, m.cents, m.micrometres, m.nanometres, m.buy}}; }

/// The place of the head in it.
inline constexpr std::size_t kHeadPlace = 3;

/// No more in any place.
inline bool no_worse(const Cost& a, const Cost& b) {
  for (std::size_t i = 0; i < a.tuple.size(); ++i)
    if (a.tuple[i] > b.tuple[i]) return false;
  return true;
}

}  // namespace riserun::chain
