#include "report/words/reason.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace riserun::report {

namespace {

// Metres: half of the mark that lengths are written to.
constexpr double kShown = 0.0254 / 32.0;
// Metres: below it two sums of the same lengths, or of the same heads, may differ by their rounding.
constexpr double kEqualLength = 1.0e-6;
constexpr double kEqualHead = 1.0e-7;

struct Difference {
  std::string text;
  bool better = false;
  bool shows = true;
};

void add_counts(const chain::Chain& best, const chain::Chain& other, std::vector<Difference>& all) {
  const int parts = other.part_count - best.part_count;
  const int buy = other.buy_count - best.buy_count;
  const auto sense = [](int difference) { return difference < 0 ? "fewer" : "more"; };
  if (parts != 0)
    all.push_back(
        {fmt::format("{} part{} {}", std::abs(parts), std::abs(parts) == 1 ? "" : "s", sense(parts)), parts < 0});
  // Where each part more is bought, and nothing else, one of the two figures says it all.
  if (buy != 0 && buy != parts) all.push_back({fmt::format("{} {} to buy", std::abs(buy), sense(buy)), buy < 0});
}

void add_price(const chain::Chain& best, const chain::Chain& other, std::vector<Difference>& all) {
  if (other.price.without_price() != best.price.without_price()) {
    const bool fewer = other.price < best.price;
    all.push_back({fewer ? "fewer parts without price" : "parts without price", fewer});
    return;
  }
  const std::int64_t difference = other.price.cents() - best.price.cents();
  if (difference == 0) return;
  const bool cheaper = difference < 0;
  all.push_back(
      {fmt::format("{} {}", write_price(cents(std::abs(difference))), cheaper ? "cheaper" : "dearer"), cheaper});
}

void add_length(const chain::Chain& best, const chain::Chain& other, UnitSystem units, std::vector<Difference>& all) {
  const double difference = in_metres(other.length) - in_metres(best.length);
  const double size = std::abs(difference);
  if (size <= kEqualLength) return;
  all.push_back(
      {fmt::format("{} {}",
                   size >= kShown ? write_length(metres(size), units) : write_thickness(metres(size), units, 2),
                   difference < 0.0 ? "shorter" : "longer"),
       difference < 0.0, size >= kShown});
}

void add_head(const chain::Chain& best, const chain::Chain& other, UnitSystem units, std::vector<Difference>& all) {
  const double difference = in_metres(other.head) - in_metres(best.head);
  const double size = std::abs(difference);
  if (size <= kEqualHead) return;
  all.push_back(
      {fmt::format("{} {} head lost", write_head(metres_of_head(size), units, 2), difference < 0.0 ? "less" : "more"),
       difference < 0.0, size >= kShown});
}

}  // namespace

std::string reason(const chain::Chain& best, const chain::Chain& other, UnitSystem units) {
  std::vector<Difference> all;
  add_counts(best, other, all);
  add_price(best, other, all);
  add_length(best, other, units, all);
  add_head(best, other, units, all);
  const bool any_shows = std::any_of(all.begin(), all.end(), [](const Difference& d) { return d.shows; });
  std::stable_partition(all.begin(), all.end(), [](const Difference& d) { return d.better; });
  std::string text;
  for (const Difference& difference : all)
    if (difference.shows || !any_shows) text += (text.empty() ? "" : ", ") + difference.text;
  return text.empty() ? "the same figures" : text;
}

}  // namespace riserun::report
