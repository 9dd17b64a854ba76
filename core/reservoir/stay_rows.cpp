#include "reservoir/stay_rows.h"

#include <algorithm>

namespace riserun::reservoir {
namespace {

Length clear_bay(Length inside, Length plate, int baffles) {
  return (inside - plate * static_cast<double>(baffles)) / static_cast<double>(baffles + 1);
}

}  // namespace

std::vector<Length> middles_of_baffles(Length inside, Length plate, int baffles) {
  const Length bay = clear_bay(inside, plate, baffles);
  std::vector<Length> middles;
  for (int row = 1; row <= baffles; ++row) middles.push_back(bay * static_cast<double>(row) + plate * (row - 0.5));
  return middles;
}

std::vector<Length> middles_of_stays(Length inside, Length plate, int baffles, int bays) {
  const Length bay = clear_bay(inside, plate, baffles);
  std::vector<Length> middles;
  for (int row = 1; row < bays; ++row) {
    const int in_bays = row * (baffles + 1);  // in shares of a baffle's bay, times the bays
    const int whole = in_bays / bays;
    const int rest = in_bays % bays;
    if (rest == 0) continue;
    middles.push_back((bay + plate) * static_cast<double>(whole) + bay * (static_cast<double>(rest) / bays));
  }
  return middles;
}

std::vector<Length> clear_lengths(Length inside, std::vector<Crossing> crossings) {
  std::sort(crossings.begin(), crossings.end(),
            [](const Crossing& a, const Crossing& b) { return a.middle < b.middle; });
  std::vector<Length> lengths;
  Length from{};
  for (const Crossing& crossing : crossings) {
    lengths.push_back(crossing.middle - crossing.thickness / 2.0 - from);
    from = crossing.middle + crossing.thickness / 2.0;
  }
  lengths.push_back(inside - from);
  return lengths;
}

}  // namespace riserun::reservoir
