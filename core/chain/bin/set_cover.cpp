#include "chain/bin/set_cover.h"

#include <algorithm>
#include <cassert>
#include <compare>
#include <optional>
#include <set>

namespace riserun::chain {

namespace {

struct Worth {
  int count = 0;
  std::int64_t cents = 0;
  std::vector<std::uint32_t> ranks;  // sorted
  auto operator<=>(const Worth&) const = default;
};

Worth worth_of(const Pieces& set, const std::vector<CoverPiece>& pieces) {
  Worth worth;
  for (const auto& [row, count] : set) {
    worth.count += count;
    worth.cents += count * pieces[row].cents;
    worth.ranks.insert(worth.ranks.end(), static_cast<std::size_t>(count), pieces[row].rank);
  }
  std::sort(worth.ranks.begin(), worth.ranks.end());
  return worth;
}

/// The least set that holds both.
Pieces joined(const Pieces& a, const Pieces& b) {
  return merged(a, b, [](int one, int other) { return std::max(one, other); });
}

bool holds(const Pieces& set, std::uint32_t row) {
  return std::any_of(set.begin(), set.end(), [&](const auto& piece) { return piece.first == row; });
}

/// One piece of `out` gone, one of `in` more.
Pieces exchanged(const Pieces& set, std::uint32_t out, std::uint32_t in) {
  Pieces changed;
  bool there = false;
  for (auto [row, count] : set) {
    count += row == in ? 1 : row == out ? -1 : 0;
    there = there || row == in;
    if (count > 0) changed.emplace_back(row, count);
  }
  if (!there) changed.insert(std::upper_bound(changed.begin(), changed.end(), std::pair(in, 0)), {in, 1});
  return changed;
}

class LeastCover {
 public:
  LeastCover(std::vector<std::vector<Pieces>> wants, const std::vector<CoverPiece>& pieces)
      : wants_(std::move(wants)), pieces_(pieces) {}

  Pieces find();

 private:
  void leave_out_replaceable();
  bool replaces(std::uint32_t in, std::uint32_t out) const;
  int at_least_more(const Pieces& cover) const;
  void branch(const Pieces& cover);
  bool meets(const Pieces& cover, const std::vector<Pieces>& sets) const {
    return std::any_of(sets.begin(), sets.end(), [&](const Pieces& set) { return is_within(set, cover); });
  }

  std::vector<std::vector<Pieces>> wants_;
  const std::vector<CoverPiece>& pieces_;
  std::optional<Pieces> best_;
  Worth best_worth_;
};

// Wherever `out` is of use, `in` in its place is of the same use.
bool LeastCover::replaces(std::uint32_t in, std::uint32_t out) const {
  for (const std::vector<Pieces>& sets : wants_)
    for (const Pieces& set : sets)
      if (holds(set, out) && !meets(exchanged(set, out, in), sets)) return false;
  return true;
}

void LeastCover::leave_out_replaceable() {
  std::set<std::uint32_t> rows;
  for (const auto& sets : wants_)
    for (const Pieces& set : sets)
      for (const auto& [row, count] : set) rows.insert(row);
  std::vector<std::uint32_t> dearest_first(rows.begin(), rows.end());
  const auto worth = [&](std::uint32_t row) { return std::pair(pieces_[row].cents, pieces_[row].rank); };
  std::sort(dearest_first.begin(), dearest_first.end(), [&](auto a, auto b) { return worth(a) > worth(b); });
  for (std::size_t i = 0; i < dearest_first.size(); ++i) {
    const std::uint32_t out = dearest_first[i];
    const bool replaceable = std::any_of(dearest_first.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                                         dearest_first.end(), [&](std::uint32_t in) { return replaces(in, out); });
    if (!replaceable) continue;
    for (auto& sets : wants_) std::erase_if(sets, [&](const Pieces& set) { return holds(set, out); });
  }
}

// Wants that have no piece in common with each other need one each.
int LeastCover::at_least_more(const Pieces& cover) const {
  std::set<std::uint32_t> touched;
  int more = 0;
  for (const auto& sets : wants_) {
    if (meets(cover, sets)) continue;
    std::set<std::uint32_t> own;
    for (const Pieces& set : sets)
      for (const auto& [row, count] : set) own.insert(row);
    if (std::any_of(own.begin(), own.end(), [&](std::uint32_t row) { return touched.count(row) > 0; })) continue;
    touched.insert(own.begin(), own.end());
    ++more;
  }
  return more;
}

void LeastCover::branch(const Pieces& cover) {
  const Worth worth = worth_of(cover, pieces_);
  if (best_) {
    const int least = worth.count + at_least_more(cover);
    if (least > best_worth_.count || (least == best_worth_.count && worth.cents > best_worth_.cents)) return;
  }
  const std::vector<Pieces>* next = nullptr;
  for (const auto& sets : wants_)
    if (!meets(cover, sets) && (next == nullptr || sets.size() < next->size())) next = &sets;
  if (next == nullptr) {
    if (!best_ || worth < best_worth_) {
      best_ = cover;
      best_worth_ = worth;
    }
    return;
  }
  for (const Pieces& set : *next) branch(joined(cover, set));
}

Pieces LeastCover::find() {
  leave_out_replaceable();
  for (auto& sets : wants_)
    std::sort(sets.begin(), sets.end(),
              [&](const Pieces& a, const Pieces& b) { return worth_of(a, pieces_) < worth_of(b, pieces_); });
  branch({});
  return *best_;
}

}  // namespace

Pieces least_cover(std::vector<std::vector<Pieces>> wants, const std::vector<CoverPiece>& pieces) {
  return LeastCover(std::move(wants), pieces).find();
}

Pieces first_covering(const std::vector<Pieces>& sets, const Pieces& cover, const std::vector<CoverPiece>& pieces) {
  const Pieces* first = nullptr;
  for (const Pieces& set : sets)
    if (is_within(set, cover) && (first == nullptr || worth_of(set, pieces) < worth_of(*first, pieces))) first = &set;
  assert(first != nullptr);
  return *first;
}

}  // namespace riserun::chain
