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
  // What only the orders line and bin look at, as Order states it.
  std::int64_t narrowing = 0;  // tenths of a velocity head in the line
  std::int64_t foreign_threads = 0;
  std::int64_t other_kinds = 0;  // ports of neither end's kind, parts that bend or part metals
  std::int64_t size_changes = 0;

  Measures& operator+=(const Measures& other) {
    wishes += other.wishes;
    parts += other.parts;
    cents += other.cents;
    micrometres += other.micrometres;
    nanometres += other.nanometres;
    buy += other.buy;
    drawbacks += other.drawbacks;
    narrowing += other.narrowing;
    foreign_threads += other.foreign_threads;
    other_kinds += other.other_kinds;
    size_changes += other.size_changes;
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

/// Two counts in one number, the first before the second; sums hold while each is less than 2^31.
constexpr std::int64_t before_and_after(std::int64_t first, std::int64_t second) { return (first << 32) + second; }

/// Ports of other kinds and size changes together, then these: one bushing in pipe thread comes before a train of
/// reducers in the ends' own kind.
inline std::int64_t strays_of(const Measures& m) {
  return before_and_after(m.other_kinds + m.size_changes, m.size_changes);
}
/// The ports of other kinds of it.
constexpr std::int64_t other_kinds_in(std::int64_t strays) { return (strays >> 32) - (strays & 0xFFFFFFFF); }

/// What an order weighs; of the orders line and bin the keys up to the number of parts. Their other keys depend on the
/// run's commonest material and are looked at among runs that these keys find equal, see Rest.
inline Cost cost_of(Order order, const Measures& m) {
  switch (order) {
    case Order::line:
      return {{m.wishes, m.narrowing, m.foreign_threads, strays_of(m), m.parts}};
    case Order::parts:
      return {{m.wishes, m.parts, m.cents, m.drawbacks, 0}};
    case Order::price:
      return {{m.wishes, m.cents, m.parts, m.drawbacks, 0}};
    case Order::loss:
      return {{m.wishes, m.nanometres, m.parts, m.cents, m.drawbacks}};
    case Order::length:
      return {{m.wishes, m.micrometres, m.parts, m.cents, m.drawbacks}};
    case Order::bin:
      return {{m.wishes, m.narrowing, before_and_after(m.foreign_threads, m.buy), strays_of(m), m.parts}};
  }
  return {};
}

/// Narrowing, of a cost under an order that looks at the line; nothing under the others.
constexpr std::int64_t narrowing_of(Order order, const Cost& cost) { return keeps_the_line(order) ? cost.tuple[1] : 0; }

/// Of a cost under the order line: nothing narrows the line, and no port is of a kind that its ends have not.
constexpr bool keeps_size_and_kind(const Cost& cost) {
  return cost.tuple[1] == 0 && cost.tuple[2] == 0 && other_kinds_in(cost.tuple[3]) == 0;
}

/// What decides between runs that cost the same: under the orders line and bin parts of a metal that an end's must be
/// kept apart from and parts that are not of an end's own and how far
/// these are from it, price to pay with what parts that are not of the run's commonest material weigh beside it and, of
/// a run that makes a distance, how far it lands off, the price alone, bushings and close nipples, and of a run that
/// makes a distance how far it lands off. Nothing under the other orders, whose cost holds all.
using Rest = Cost;
/// Cents that a part weighs which is not of the run's commonest material: a fitter pays so much more for one metal all
/// the way, and not any price (common practice; the figure is ours).
inline constexpr std::int64_t kWorthOfOneMaterial = 800;
inline constexpr std::size_t kWorthPlace = 1;
inline constexpr std::size_t kOffPlace = 4;

/// Of something that has no material to speak of: what stands at an end.
inline Rest rest_of(Order order, const Measures& m) {
  return keeps_the_line(order) ? Rest{{0, m.cents, m.cents, m.drawbacks, 0}} : Rest{};
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
