// Random lines of one to twelve elements, from the smallest bores and slowest flows to the largest that a shop has.
#pragma once

#include "hydraulics/line.h"

#include <cmath>
#include <random>
#include <string>
#include <vector>

namespace riserun::hydraulics {

class RandomLines {
 public:
  explicit RandomLines(unsigned seed) : random_(seed) {}

  double uniform(double low, double high) { return std::uniform_real_distribution<double>(low, high)(random_); }
  double log_uniform(double low, double high) { return std::exp(uniform(std::log(low), std::log(high))); }
  bool chance(double share) { return uniform(0.0, 1.0) < share; }

  LineElement element() {
    LineElement made;
    made.name = "element " + std::to_string(++count_);
    made.bore = chance(0.5) ? last_bore_ : metres(log_uniform(0.003, 0.15));
    last_bore_ = made.bore;
    if (chance(0.7)) made.length = metres(log_uniform(0.01, 20.0));
    if (chance(0.8)) made.roughness = log_uniform(1.0e-6, 0.05) * made.bore;
    if (chance(0.5)) made.crane_n = uniform(2.0, 400.0);
    if (chance(0.4)) {
      made.darby_k1 = uniform(100.0, 2000.0);
      made.darby_ki = chance(0.9) ? uniform(0.01, 2.0) : 0.0;
      made.darby_kd = uniform(3.5, 4.9);
      made.nominal_inches = chance(0.8) ? in_inches(made.bore) : 0.0;
    }
    if (chance(0.3)) made.fixed_k = log_uniform(0.01, 20.0);
    made.scatter = uniform(0.0, 1.0);
    return made;
  }

  std::vector<LineElement> elements() {
    std::vector<LineElement> made;
    const int count = std::uniform_int_distribution<int>(1, 12)(random_);
    for (int i = 0; i < count; ++i) made.push_back(element());
    return made;
  }

  LineEnd end() { return {uniform(0.04, 3.0), uniform(0.5, 1.5), uniform(0.0, 0.5), "common practice"}; }

  Line line() { return Line(elements(), end(), end()); }

  Water water() { return *water_at(degrees_celsius(uniform(0.0, 80.0))); }

  Direction direction() { return chance(0.5) ? Direction::forward : Direction::backward; }

 private:
  std::mt19937_64 random_;
  Length last_bore_ = metres(0.02);
  int count_ = 0;
};

}  // namespace riserun::hydraulics
