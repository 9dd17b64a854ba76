// Reads lines of `long_over_short poisson_ratio` and writes the coefficients of the held and the free plate, a line
// each.
#include "reservoir/plates.h"

#include <fmt/core.h>

#include <iostream>

namespace {

void print(const riserun::reservoir::PlateCoefficients& plate) {
  fmt::print("{} {} {} {} {} {} {}\n", plate.alpha_centre, plate.beta_short_span_centre, plate.beta_long_span_centre,
             plate.beta_long_edge, plate.beta_short_edge, plate.beta_corner_twist, plate.beta_greatest());
}

}  // namespace

int main() {
  double ratio = 0.0;
  double poisson = 0.0;
  while (std::cin >> ratio >> poisson) {
    print(riserun::reservoir::held_plate(ratio, poisson));
    print(riserun::reservoir::free_plate(ratio, poisson));
  }
}
