// Of all best chains of a search, the one whose part ids sort first: the tie is broken by ids, then by the ports used;
// what is then still the same is taken from the bin rather than bought.
//
// How it works: all best chains are walked at once, part by part, and after each part only those are kept whose part
// sorts first. O(arcs on best chains * log), whatever the number of chains.
#pragma once

#include "chain/graph/folded_catalog.h"
#include "chain/part/move.h"

#include <algorithm>
#include <cstdint>
#include <tuple>
#include <utility>
#include <vector>

namespace riserun::chain {

/// Walks all best chains at once, part by part, and keeps those whose next part sorts first. States that the same parts
/// lead to stay together, in the order of the ports used, and of the same ports of what is to buy, so that both choices
/// are settled too.
///
/// @param onward  onward(state, emit) calls emit(move, next state) for each move that leads on along a best chain, and
///                emit(kEnds, 0) where the chain may end at that state
template <class Onward>
class FirstByIds {
 public:
  static constexpr std::uint32_t kEnds = UINT32_MAX;

  FirstByIds(const FoldedCatalog& folded, const std::vector<Move>& moves, Onward onward)
      : folded_(folded), moves_(moves), onward_(std::move(onward)) {}

  std::vector<Move> from(std::uint32_t start) {
    steps_.reserve(16);  // most chains are short
    steps_.push_back({start, kEnds, kEnds, 0, 0});
    std::vector<std::uint32_t> front{0};
    std::vector<Step> next;
    while (true) {
      next.clear();
      for (const std::uint32_t at : front)
        if (look_on(at, next)) return moves_to(at);
      put_in_order(next);
      front.clear();
      for (const Step& step : next) {
        front.push_back(static_cast<std::uint32_t>(steps_.size()));
        steps_.push_back(step);
      }
    }
  }

 private:
  struct Step {
    std::uint32_t state = 0;
    std::uint32_t move = kEnds;
    std::uint32_t before = kEnds;
    std::uint32_t place = 0;  // by the ports used so far, among the steps of one length
    std::int64_t bought = 0;  // parts so far
  };

  // Puts into `next` what is as good as the best there or better. True: the chain may end here, and no ending sorts
  // before none.
  bool look_on(std::uint32_t at, std::vector<Step>& next) {
    bool ends = false;
    here_.clear();
    onward_(steps_[at].state, [&](std::uint32_t move, std::uint32_t state) {
      if (move == kEnds) {
        ends = true;
        return;
      }
      const std::uint32_t best = !here_.empty() ? here_.front().move : !next.empty() ? next.front().move : move;
      const int order = compare(move, best);
      if (order > 0) return;
      if (order < 0) here_.clear();
      here_.push_back({state, move, at, steps_[at].place, steps_[at].bought + moves_[move].own.buy});
    });
    if (ends || here_.empty()) return ends;
    if (!next.empty() && compare(here_.front().move, next.front().move) < 0) next.clear();
    next.insert(next.end(), here_.begin(), here_.end());
    return false;
  }

  // The first to each state stays.
  void put_in_order(std::vector<Step>& next) {
    if (next.size() < 2) return;
    const auto key = [&](const Step& step) { return std::tuple(ways(step), step.bought, step.state); };
    std::sort(next.begin(), next.end(), [&](const Step& a, const Step& b) { return key(a) < key(b); });
    here_.clear();
    std::uint32_t place = 0;
    for (std::size_t row = 0; row < next.size(); ++row) {
      if (row > 0 && ways(next[row - 1]) != ways(next[row])) ++place;
      if (std::any_of(here_.begin(), here_.end(), [&](const Step& s) { return s.state == next[row].state; })) continue;
      here_.push_back(next[row]);
      here_.back().place = place;
    }
    next.swap(here_);
  }

  // By the ids of the part and of its plugs.
  int compare(std::uint32_t a, std::uint32_t b) const {
    const Move& x = moves_[a];
    const Move& y = moves_[b];
    if (x.part != y.part) return folded_.rank(x.part) < folded_.rank(y.part) ? -1 : 1;
    for (std::size_t i = 0; i < x.plugs.size(); ++i)
      if (x.plugs[i] != y.plugs[i]) return folded_.rank(x.plugs[i]) < folded_.rank(y.plugs[i]) ? -1 : 1;
    return 0;
  }

  auto ways(const Step& step) const {
    const Move& move = moves_[step.move];
    return std::tuple(step.place, move.enter, move.leave, !move.cut, move.stub);
  }

  std::vector<Move> moves_to(std::uint32_t row) const {
    std::vector<Move> moves;
    for (; steps_[row].move != kEnds; row = steps_[row].before) moves.push_back(moves_[steps_[row].move]);
    std::reverse(moves.begin(), moves.end());
    return moves;
  }

  const FoldedCatalog& folded_;
  const std::vector<Move>& moves_;
  Onward onward_;
  std::vector<Step> steps_;
  std::vector<Step> here_;
};

}  // namespace riserun::chain
