// Of all chains that the keys up to the number of parts find equal, the best by the last keys of the orders line and
// bin: of one material where that is worth it, then cheapest, then nearest, and of those that still tie the first by
// its ids.
//
// How it works: those chains are the ways through the arcs on shortest paths, which form a small graph without cycles.
// For each material that occurs there (and each known one of the two ends) the parts that are not of it add up along a
// chain, so that the least is worked out from the goal back to the start; the run's commonest material is the one that
// comes to least. What meets what in a joint counts, too: a place is a state with the metal that is left
// there. O(arcs * materials^2). Where a part keeps the two ends' metals apart, a state counts before it and
// behind it as two.
#pragma once

#include "chain/search/first_by_ids.h"
#include "chain/search/tie_key.h"
#include "chain/search/yardstick.h"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <vector>

namespace riserun::chain {

/// A chain with its rest.
struct BestOfEqual {
  std::vector<Move> moves;
  Rest rest;
};

/// Gathers the arcs and reads the best chain off them.
class EqualChains {
 public:
  EqualChains(const FoldedCatalog& folded, const std::vector<Move>& moves, EndMetals ends)
      : folded_(folded), moves_(moves), ends_(std::move(ends)) {}

  /// @param onward  onward(state, arc, end): calls arc(move, state) for each move that leads on along a chain, and
  ///                end(rest of the landing) where a chain may end at that state
  template <class Onward>
  void gather(std::uint32_t start, Onward onward) {
    using State = std::pair<std::uint32_t, ShownMetal>;
    std::map<State, std::uint32_t> known{{{start, ends_.first}, 0}};
    std::vector<State> states{{start, ends_.first}};
    for (std::uint32_t at = 0; at < states.size(); ++at) {
      Place place;
      place.left = states[at].second;
      const auto arc = [&](std::uint32_t row, std::uint32_t to) {
        const Move& move = moves_[row];
        const State next{to, shown_metal(folded_.catalog(), move.part, move.leave)};
        const auto [found, is_new] = known.try_emplace(next, static_cast<std::uint32_t>(states.size()));
        if (is_new) states.push_back(next);
        place.arcs.push_back({row, found->second});
      };
      onward(states[at].first, arc, [&](const Rest& rest) { place.end = std::min(rest, place.end.value_or(rest)); });
      places_.push_back(std::move(place));
    }
    put_in_order();
  }

  /// @pre a chain leads from the start to an end
  BestOfEqual best() {
    std::optional<BestOfEqual> best;
    TieKey best_key;
    for (const Yardstick& yardstick : yardsticks(folded_.catalog(), ends_, makes())) {
      const Rest rest = measure(yardstick);
      if (best && best->rest < rest) continue;
      std::vector<Move> moves = first_by_ids(yardstick);
      TieKey key = tie_key(folded_, moves);
      if (best && best->rest == rest && best_key <= key) continue;
      best = BestOfEqual{std::move(moves), rest};
      best_key = std::move(key);
    }
    return std::move(*best);
  }

 private:
  struct Link {
    std::uint32_t move = 0;
    std::uint32_t to = 0;  // place of the state
  };
  struct Place {
    std::vector<Link> arcs;
    ShownMetal left;            // what the part before shows
    std::optional<Rest> end;    // of the chain that ends here: how it lands
    std::array<Rest, 2> least;  // by the yardstick now, from here to an end, before and behind what parts two sides
  };

  /// Depth first: a place comes behind all that it leads to.
  void put_in_order() {
    struct Visit {
      std::uint32_t at = 0;
      std::size_t next = 0;
    };
    std::vector<bool> seen(places_.size(), false);
    std::vector<Visit> open{{}};
    while (!open.empty()) {
      Visit& visit = open.back();
      if (visit.next == places_[visit.at].arcs.size()) {
        order_.push_back(visit.at);
        open.pop_back();
        continue;
      }
      const std::uint32_t to = places_[visit.at].arcs[visit.next++].to;
      if (!seen[to]) open.push_back({to, 0});
      seen[to] = true;
    }
  }

  std::vector<Make> makes() const {
    std::vector<Make> found;
    for (const Place& place : places_)
      for (const Link& link : place.arcs)
        for (const Make& make : makes_of(folded_.catalog(), moves_[link.move])) found.push_back(make);
    return found;
  }

  /// On that side of the yardstick a chain may end.
  static bool may_end(const Yardstick& yardstick, bool is_behind) { return is_behind || !yardstick.has_two_sides(); }
  /// The side behind the move.
  bool side_after(const Yardstick& yardstick, const Link& link, bool is_behind) const {
    return yardstick.has_two_sides() && (is_behind || parts_metals(folded_.catalog(), moves_[link.move]));
  }
  /// What it weighs that a chain ends at that place. @pre it may
  Rest rest_at_end(const Yardstick& yardstick, const Place& place) const {
    return *place.end + yardstick.of_joint(folded_.catalog(), place.left, ends_.last);
  }
  Rest rest_from(const Yardstick& yardstick, const Place& place, const Link& link, bool is_behind) const {
    const Move& move = moves_[link.move];
    return yardstick.of_joint(folded_.catalog(), place.left, shown_metal(folded_.catalog(), move.part, move.enter)) +
           yardstick.rest_of(folded_.catalog(), move, is_behind) +
           places_[link.to].least[side_after(yardstick, link, is_behind) ? 1 : 0];
  }

  Rest measure(const Yardstick& yardstick) {
    for (const std::uint32_t at : order_) {
      Place& place = places_[at];
      for (const bool is_behind : {false, true}) {
        if (is_behind && !yardstick.has_two_sides()) continue;
        Rest& least = place.least[is_behind ? 1 : 0];
        least = place.end && may_end(yardstick, is_behind) ? rest_at_end(yardstick, place) : kNone;
        for (const Link& link : place.arcs) least = std::min(least, rest_from(yardstick, place, link, is_behind));
      }
    }
    return places_.front().least[0];
  }

  // States are places before what parts the sides, and twice as many where one does.
  std::vector<Move> first_by_ids(const Yardstick& yardstick) const {
    FirstByIds walk(folded_, moves_, [&](std::uint32_t state, auto emit) {
      const bool is_behind = state % 2 == 1;
      const Place& place = places_[state / 2];
      const Rest& least = place.least[is_behind ? 1 : 0];
      for (const Link& link : place.arcs)
        if (rest_from(yardstick, place, link, is_behind) == least)
          emit(link.move, 2 * link.to + (side_after(yardstick, link, is_behind) ? 1 : 0));
      if (place.end && may_end(yardstick, is_behind) && least == rest_at_end(yardstick, place)) emit(UINT32_MAX, 0u);
    });
    return walk.from(0);
  }

  // Beyond any rest, and twice as much is still a number.
  static constexpr Rest kNone{{INT64_MAX / 4, 0, 0, 0, 0}};

  const FoldedCatalog& folded_;
  const std::vector<Move>& moves_;
  const EndMetals ends_;
  std::vector<Place> places_;
  std::vector<std::uint32_t> order_;  // places, each behind all that it leads to
};

}  // namespace riserun::chain
