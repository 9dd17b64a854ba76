#include "chain/span/span_bounds.h"

#include "chain/search/potentials.h"

#include <algorithm>
#include <bit>

namespace riserun::chain {

namespace {

constexpr std::int64_t kMostBins = 2048;
constexpr std::int64_t kFinestBin = 100;  // micrometres
constexpr std::size_t kWord = 64;

/// First and last set bit; nothing when there is none.
std::optional<std::pair<std::size_t, std::size_t>> hull(const std::uint64_t* bits, std::size_t words) {
  std::size_t first = 0;
  while (first < words && bits[first] == 0) ++first;
  if (first == words) return std::nullopt;
  std::size_t last = words - 1;
  while (bits[last] == 0) --last;
  return std::pair(first * kWord + static_cast<std::size_t>(std::countr_zero(bits[first])),
                   last * kWord + kWord - 1 - static_cast<std::size_t>(std::countl_zero(bits[last])));
}

}  // namespace

SpanBounds::SpanBounds(const SpanStates& steps, const PortGraph& graph, std::int64_t longest)
    : steps_(steps), most_parts_(steps.most_parts()), bin_(std::max(kFinestBin, longest / kMostBins + 1)) {
  words_ = static_cast<std::size_t>(std::max<std::int64_t>(longest, 0) / bin_) / kWord + 1;
  find_costs();
  find_lengths(graph);
}

void SpanBounds::find_costs() {
  const auto count = static_cast<std::uint32_t>(steps_.size());
  const RowGraph<CostEdge> back(count, [&](auto emit) {
    for (std::uint32_t row = 0; row < count; ++row)
      for (const SpanStep& step : steps_.steps(row)) emit(step.to, CostEdge{row, step.cost});
  });
  std::vector<DistanceSource> ends;
  for (std::uint32_t row = 0; row < count; ++row)
    if (steps_.end(row)) ends.push_back({row, steps_.end(row)->cost});
  costs_ = least_costs(back, ends);
}

// A step's length is rounded down to whole bins: each step can lose up to one, which may_add makes good.
void SpanBounds::add_shifted(std::size_t from, std::size_t to, std::int64_t micrometres, std::int64_t stretch) {
  const auto shift = static_cast<std::size_t>(micrometres / bin_);
  if (stretch > 0) {
    const auto ends = hull(&lengths_[from], words_);
    if (!ends) return;
    const std::size_t last =
        std::min(words_ * kWord - 1, ends->second + shift + static_cast<std::size_t>(stretch / bin_) + 1);
    for (std::size_t bit = ends->first + shift; bit <= last; ++bit) lengths_[to + bit / kWord] |= 1ull << bit % kWord;
    return;
  }
  const std::size_t whole = shift / kWord;
  const std::size_t rest = shift % kWord;
  for (std::size_t word = whole; word < words_; ++word) {
    const std::uint64_t low = lengths_[from + word - whole] << rest;
    const std::uint64_t carried = rest > 0 && word > whole ? lengths_[from + word - whole - 1] >> (kWord - rest) : 0;
    lengths_[to + word] |= low | carried;
  }
}

void SpanBounds::find_lengths(const PortGraph& graph) {
  const auto count = static_cast<std::uint32_t>(steps_.size());
  std::size_t rows = 0;
  for (std::uint32_t row = 0; row < count; ++row) {
    rows_.push_back(rows);
    rows += static_cast<std::size_t>(span_of_parts(row));
  }
  lengths_.assign(rows * 2 * words_, 0);
  for (int parts = 0; parts <= most_parts_; ++parts) {
    for (std::uint32_t row = 0; row < count; ++row) {
      if (steps_.parts_from_start(row) + parts > most_parts_ || steps_.parts_to_end(row) > parts) continue;
      const std::size_t along = place(row, parts, 0);
      const std::size_t travel = place(row, parts, 1);
      if (const std::optional<SpanEnd>& end = steps_.end(row)) {
        const auto bit = static_cast<std::size_t>(end->along / bin_);
        if (bit < words_ * kWord) lengths_[along + bit / kWord] |= 1ull << bit % kWord;
        lengths_[travel] |= 1;
      }
      for (const SpanStep& step : steps_.steps(row)) {
        if (step.parts > parts || steps_.parts_to_end(step.to) > parts - step.parts) continue;
        const Move& move = graph.moves()[step.move];
        const bool travels = steps_.stage(row).leg % 2 == 1;
        const std::int64_t stretch = move.cut ? move.stretch + bin_ : 0;
        add_shifted(place(step.to, parts - step.parts, 0), along, step.along, travels ? 0 : stretch);
        add_shifted(place(step.to, parts - step.parts, 1), travel, step.travel, travels ? stretch : 0);
      }
    }
  }
}

bool SpanBounds::may_add(std::uint32_t stage, int parts, std::size_t leg, std::int64_t least, std::int64_t most) const {
  if (most < 0 || parts < steps_.parts_to_end(stage)) return false;
  const std::int64_t lost = parts + 1;  // bins by rounding down
  const std::int64_t last_bin = static_cast<std::int64_t>(words_ * kWord) - 1;
  const std::int64_t first = std::max<std::int64_t>(0, least / bin_ - lost - 1);
  const std::int64_t last = std::min(last_bin, most / bin_);
  const std::size_t at = place(stage, parts, leg);
  for (std::int64_t bit = first; bit <= last;) {
    const auto word = static_cast<std::size_t>(bit) / kWord;
    const std::uint64_t rest = lengths_[at + word] >> static_cast<std::size_t>(bit) % kWord;
    if (rest != 0 && bit + std::countr_zero(rest) <= last) return true;
    bit = static_cast<std::int64_t>((word + 1) * kWord);
  }
  return false;
}

}  // namespace riserun::chain
