#include "catalog/identify/bench_tools.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::catalog {

namespace {

double normal_share_below(double z) { return 0.5 * std::erfc(-z / std::numbers::sqrt2); }

}  // namespace

Length reading_error(Tool tool) {
  switch (tool) {
    case Tool::tape:
      return inches(1.0 / 16);
    case Tool::rule:
      return inches(1.0 / 32);
    case Tool::caliper:
      return inches(0.005);
    case Tool::string:
      break;
  }
  return inches(1.0 / 8) / std::numbers::pi;
}

double count_error(double threads_per_inch, Length counted_over, Length thread_length) {
  const double asked = counted_over > Length{} ? in_inches(counted_over) : 1.0;
  const double there = thread_length > Length{} ? std::min(asked, in_inches(thread_length)) : asked;
  return 0.5 / there + (counted_over > Length{} ? threads_per_inch / 32.0 / asked : 0.0);
}

double reading_density(double reading, double low, double high, double error) {
  const double outside = std::max({low - reading, reading - high, 0.0});
  if (outside > kImpossible * error) return 0.0;
  const double spread = 0.5 * error;  // two standard deviations hold 95 %
  if (high - low < 1e-3 * spread) {
    const double z = (reading - 0.5 * (low + high)) / spread;
    return std::exp(-0.5 * z * z) / (spread * std::sqrt(2.0 * std::numbers::pi));
  }
  return (normal_share_below((reading - low) / spread) - normal_share_below((reading - high) / spread)) / (high - low);
}

}  // namespace riserun::catalog
