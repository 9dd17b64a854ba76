#include "chain/span/span_bounds.h"

#include "chain/search/potentials.h"

#include <algorithm>
#include <bit>
#include <cmath>

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

/// Bits set in `from` are set so many places higher in `to` too; those may be the same words.
void or_shifted_up(const std::uint64_t* from, std::uint64_t* to, std::size_t words, std::size_t places) {
  const std::size_t whole = places / kWord;
  const std::size_t rest = places % kWord;
  for (std::size_t word = words; word-- > whole;) {
    const std::uint64_t low = from[word - whole] << rest;
    const std::uint64_t carried = rest > 0 && word > whole ? from[word - whole - 1] >> (kWord - rest) : 0;
    to[word] |= low | carried;
  }
}

void or_shifted_down(const std::uint64_t* from, std::uint64_t* to, std::size_t words, std::size_t places) {
  const std::size_t whole = places / kWord;
  const std::size_t rest = places % kWord;
  for (std::size_t word = 0; word + whole < words; ++word) {
    const std::uint64_t high = from[word + whole] >> rest;
    const std::uint64_t carried = rest > 0 && word + whole + 1 < words ? from[word + whole + 1] << (kWord - rest) : 0;
    to[word] |= high | carried;
  }
}

}  // namespace

SpanBounds::SpanBounds(const SpanStates& steps, const PortGraph& graph, const SpanTask& task, std::int64_t longest)
    : steps_(steps),
      task_(task),
      most_parts_(steps.most_parts()),
      bin_(std::max(kFinestBin, longest / kMostBins + 1)),
      shift_((most_parts_ + 1) * (room_along(0, steps.greatest_tolerance()) + bin_)) {
  // What a widening adds above what is asked about comes down again.
  words_ = static_cast<std::size_t>((std::max<std::int64_t>(longest, 0) + 2 * shift_) / bin_) / kWord + 1;
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

SpanBounds::Bits& SpanBounds::sum_of(std::vector<Sum>& sums, std::int64_t room) {
  auto sum = std::find_if(sums.begin(), sums.end(), [&](const Sum& known) { return known.room == room; });
  if (sum == sums.end()) sum = sums.insert(sum, Sum{room, false, Bits(words_, 0)});
  sum->is_used = true;
  return sum->bits;
}

// A step's length is rounded down to whole bins: each step can lose up to one, which may_add makes good.
void SpanBounds::add_shifted(std::size_t from, Bits& to, std::int64_t micrometres, std::int64_t stretch) const {
  const auto shift = static_cast<std::size_t>(micrometres / bin_);
  if (stretch > 0) {
    const auto ends = hull(&lengths_[from], words_);
    if (!ends) return;
    const std::size_t last =
        std::min(words_ * kWord - 1, ends->second + shift + static_cast<std::size_t>(stretch / bin_) + 1);
    for (std::size_t bit = ends->first + shift; bit <= last; ++bit) to[bit / kWord] |= 1ull << bit % kWord;
    return;
  }
  or_shifted_up(&lengths_[from], to.data(), words_, shift);
}

// What has the same room is widened together.
void SpanBounds::add_widened(std::vector<Sum>& sums, std::size_t to) {
  for (Sum& sum : sums) {
    if (!sum.is_used) continue;
    const auto bins = static_cast<std::size_t>((sum.room + bin_ - 1) / bin_);
    for (std::size_t wide = 0; wide < 2 * bins;) {  // up, twice as wide each time
      const std::size_t more = std::min(wide + 1, 2 * bins - wide);
      or_shifted_up(sum.bits.data(), sum.bits.data(), words_, more);
      wide += more;
    }
    or_shifted_down(sum.bits.data(), &lengths_[to], words_, bins);
    sum.is_used = false;
    std::fill(sum.bits.begin(), sum.bits.end(), 0);
  }
}

void SpanBounds::add_one(Bits& to, std::int64_t micrometres) const {
  const auto bit = static_cast<std::size_t>((micrometres + shift_) / bin_);
  if (bit < words_ * kWord) to[bit / kWord] |= 1ull << bit % kWord;
}

/// Whether a second bend may come at the offset after this first one; true of any other step.
bool SpanBounds::may_bend(const Stage& from, const SpanStep& step, int parts) const {
  const std::uint8_t leg = steps_.stage(step.to).leg;
  if (!task_.bends() || from.leg != 0 || leg == 0) return true;
  const double sine = std::sin(steps_.bend(leg));
  const auto rest = static_cast<std::int64_t>(static_cast<double>(task_.aside) / sine) - step.travel;
  const std::int64_t room = room_of_travel(step.travel_tolerance) + static_cast<std::int64_t>(1.0 / sine) + 2;
  return may_add_travel(step.to, parts - step.parts, rest - room, rest + room);
}

void SpanBounds::add_steps(std::uint32_t row, int parts, const PortGraph& graph) {
  const Stage& from = steps_.stage(row);
  const bool travels = from.leg % 2 == 1;
  for (const SpanStep& step : steps_.steps(row)) {
    if (step.parts > parts || steps_.parts_to_end(step.to) > parts - step.parts) continue;
    if (!may_bend(from, step, parts)) continue;
    const Move& move = graph.moves()[step.move];
    const std::int64_t stretch = move.cut ? move.stretch + bin_ : 0;
    add_shifted(place(step.to, parts - step.parts, 0),
                sum_of(along_sums_, room_along(step.along_tolerance, step.travel_tolerance)), step.along,
                travels ? 0 : stretch);
    add_shifted(place(step.to, parts - step.parts, 1), sum_of(travel_sums_, room_of_travel(step.travel_tolerance)),
                step.travel, travels ? stretch : 0);
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
      if (const std::optional<SpanEnd>& end = steps_.end(row)) {
        add_one(sum_of(along_sums_, room_along(end->along_tolerance, 0)), end->along);
        add_one(sum_of(travel_sums_, 0), 0);
      }
      add_steps(row, parts, graph);
      add_widened(along_sums_, place(row, parts, 0));
      add_widened(travel_sums_, place(row, parts, 1));
    }
  }
}

bool SpanBounds::may_add(std::uint32_t stage, int parts, std::size_t leg, std::int64_t least, std::int64_t most) const {
  least += shift_;
  most += shift_;
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
