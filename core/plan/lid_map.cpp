#include "plan/lid_map.h"

#include "quantity/nearly.h"

#include <algorithm>
#include <cmath>

namespace riserun::plan {

using quantity::at_most;
using quantity::fact;

namespace {

const Length kGrid = inches(0.5);
constexpr double kMostSteps = 96.0;        // of the grid along the lid's longer side
constexpr std::size_t kMostProposed = 40;  // bungs: more of them are laid out by hand
constexpr double kNearTheFront = 2.0;      // an inch further from the front costs as much as so many beside the place

Length away(Length a, Length b) { return a < b ? b - a : a - b; }

/// What is measured to the face of something that it stands over is none.
Length none_under_it(Length length) { return std::max(metres(0.0), length); }

Length step_of(const LidMap& map) {
  const double halves = std::ceil((std::max(map.length, map.width) / (kGrid * kMostSteps)).value());
  return kGrid * std::max(1.0, halves);
}

/// The free spot of the grid that is cheapest; of equal ones the first from the front, then from the left.
template <class Cost>
std::optional<LidSpot> best_spot(const LidMap& map, const LidBung& bung, std::size_t self, Cost cost) {
  const Length step = step_of(map);
  const Length wall = least_to_wall(bung);
  std::optional<LidSpot> best;
  double least = 0.0;
  const auto first = std::ceil((wall / step).value() - quantity::kSameShare);
  for (LidSpot spot{step * first, step * first}; at_most(spot.from_front + wall, map.width); spot.from_front += step)
    for (spot.from_left = step * first; at_most(spot.from_left + wall, map.length); spot.from_left += step) {
      const double costs = cost(spot);
      if (best && costs >= least - 1e-9) continue;
      if (!too_near(map, bung, spot, self).empty()) continue;
      best = spot;
      least = costs;
    }
  return best;
}

bool wants_place(const LidBung& bung) { return bung.place == Place::lid && !bung.at && !bung.is_there; }

}  // namespace

Length behind_jaw(Length outside) {
  // By the pipe's outside diameter: sizes to 1/4, 3/8, 3/4, 1-1/4, 2 and 3.
  static constexpr std::pair<double, double> kInches[] = {{0.56, 0.8}, {0.7, 0.9}, {1.1, 1.1},
                                                          {1.7, 1.4},  {2.4, 1.7}, {3.55, 2.1}};
  for (const auto& [pipe, jaw] : kInches)
    if (in_inches(outside) <= pipe) return inches(jaw);
  return inches(2.6);
}

Length least_apart(const LidBung& a, const LidBung& b) {
  return std::max({a.outside + b.outside, a.turning + b.body, b.turning + a.body});
}

Length least_to_wall(const LidBung& bung) { return bung.outside / 2.0 + kToSeam; }

Length least_to_stay(const LidBung& bung) { return bung.outside / 2.0 + kToStay; }

Length distance(const LidSpot& a, const LidSpot& b) {
  return metres(std::hypot(in_metres(a.from_left - b.from_left), in_metres(a.from_front - b.from_front)));
}

quantity::Facts too_near(const LidMap& map, const LidBung& bung, const LidSpot& spot, std::size_t self) {
  quantity::Facts facts;
  const Length to_wall =
      std::min({spot.from_left, map.length - spot.from_left, spot.from_front, map.width - spot.from_front});
  if (!at_most(least_to_wall(bung), to_wall))
    facts.push_back(fact("bung_near_wall", bung.port, to_wall, least_to_wall(bung)));
  const Length least_off = least_to_stay(bung);
  for (const LidSeam& seam : map.seams) {
    const Length off = none_under_it(away(seam.across ? spot.from_left : spot.from_front, seam.at) - map.plate / 2.0);
    if (!at_most(least_off, off))
      facts.push_back(fact(seam.baffle ? "bung_near_baffle" : "bung_near_stay", bung.port, off, least_off));
  }
  for (const LidSpot& tie : map.ties) {
    const Length off = none_under_it(distance(spot, tie) - map.plate / 2.0);
    if (!at_most(least_off, off)) facts.push_back(fact("bung_near_tie", bung.port, off, least_off));
  }
  for (std::size_t row = 0; row < map.bungs.size(); ++row) {
    const LidBung& other = map.bungs[row];
    if (row == self || !other.at) continue;
    const Length is = distance(spot, *other.at);
    const Length least = least_apart(bung, other);
    if (!at_most(least, is)) facts.push_back(fact("bungs_too_near", bung.port, other.port, is, least));
  }
  return facts;
}

std::optional<LidSpot> nearest_free_spot(const LidMap& map, std::size_t row) {
  const LidBung& bung = map.bungs[row];
  return best_spot(map, bung, row, [&](const LidSpot& spot) { return in_inches(distance(spot, *bung.at)); });
}

void propose_places(LidMap& map, const std::string& riser) {
  std::vector<std::size_t> rows;
  for (std::size_t row = 0; row < map.bungs.size(); ++row)
    if (wants_place(map.bungs[row])) rows.push_back(row);
  std::stable_partition(rows.begin(), rows.end(), [&](std::size_t row) { return map.bungs[row].port == riser; });
  const LidSpot middle{map.length / 2.0, map.width / 2.0};
  const auto in_row = static_cast<double>(
      std::count_if(rows.begin(), rows.end(), [&](std::size_t row) { return map.bungs[row].port != riser; }));
  double next = 0.5;
  for (const std::size_t row : rows) {
    LidBung& bung = map.bungs[row];
    const bool is_riser = bung.port == riser;
    const Length along = map.length * (next / std::max(1.0, in_row));
    if (!is_riser) next += 1.0;
    if (rows.size() <= kMostProposed)
      bung.at = best_spot(map, bung, row, [&](const LidSpot& spot) {
        if (is_riser) return in_inches(distance(spot, middle));
        return in_inches(away(spot.from_left, along)) + kNearTheFront * in_inches(spot.from_front);
      });
    bung.proposed = bung.at.has_value();
    if (!bung.at) map.without_place.push_back(bung.port);
  }
}

}  // namespace riserun::plan
