#include "plan/stage/stay_places.h"

#include "plan/stage/lid_map.h"
#include "reservoir/stay_rows.h"

#include <algorithm>
#include <optional>

namespace riserun::plan {

namespace {

using quantity::fact;
using quantity::Fact;
using quantity::Facts;
using reservoir::kTies;
using reservoir::StayBars;

/// A wall's rows across its first measure and across its second.
struct Rows {
  std::vector<Length> first;
  std::vector<Length> second;
  bool of_length = true;      // the first are measured along the box's longer side, else along its shorter
  bool second_level = false;  // the second are bars at a height
};

std::optional<Rows> rows_of(const Inputs& inputs, const std::string& wall) {
  const auto& layout = inputs.job.reservoir.supports.layout;
  if (!layout) return std::nullopt;
  const reservoir::Box& box = inputs.settled.box;
  const Length longer = std::max(box.length, box.width);
  const Length shorter = std::min(box.length, box.width);
  const Length plate = inputs.settled.baffle_plate;
  const auto rows = [&](Length inside, int baffles, int bays) {
    return reservoir::middles_of_stays(inside, plate, baffles, bays);
  };
  const bool of_lid = wall == kTies || wall == "lid";
  if (const auto& bays = of_lid ? layout->lid : layout->floor; bays && (of_lid || wall == "floor"))
    return Rows{rows(longer, layout->baffles_across, bays->along), rows(shorter, layout->baffles_along, bays->across),
                true, false};
  if (wall == "long sides" && layout->long_side)
    return Rows{rows(longer, layout->baffles_across, layout->long_side->along),
                rows(box.height, 0, layout->long_side->across), true, true};
  if (wall == "short sides" && layout->short_side)
    return Rows{rows(shorter, layout->baffles_along, layout->short_side->along),
                rows(box.height, 0, layout->short_side->across), false, true};
  return std::nullopt;
}

Fact over_floor(const std::vector<Length>& middles) {
  Facts places;
  for (const Length& middle : middles) places.push_back(fact("the_length", middle));
  return fact("middles_over_floor", std::move(places));
}

bool is_from_left(const Inputs& inputs, bool of_length) {
  return of_length == (inputs.settled.box.length >= inputs.settled.box.width);
}

const StayBars* bars_of(const std::vector<StayBars>& bars, const std::string& wall) {
  const auto found = std::find_if(bars.begin(), bars.end(), [&](const StayBars& each) { return each.wall == wall; });
  return found == bars.end() ? nullptr : &*found;
}

constexpr const char* kWalls[] = {kTies, "lid", "floor", "long sides", "short sides"};

}  // namespace

Facts places_of_stays(const Inputs& inputs, const std::string& wall) {
  Facts places;
  const auto rows = rows_of(inputs, wall);
  if (!rows) return places;
  const bool from_left = is_from_left(inputs, rows->of_length);
  if (!rows->first.empty()) places.push_back(places_of_baffles(rows->first, from_left));
  if (!rows->second.empty())
    places.push_back(rows->second_level ? over_floor(rows->second) : places_of_baffles(rows->second, !from_left));
  return places;
}

Facts places_of_all_stays(const Inputs& inputs, const std::vector<StayBars>& bars) {
  Facts all;
  for (const char* wall : kWalls)
    if (bars_of(bars, wall) != nullptr)
      all.push_back(wall == std::string(kTies) ? fact("posts_stand_at", places_of_stays(inputs, wall))
                                               : fact("bars_stand_at", wall, places_of_stays(inputs, wall)));
  return all;
}

Facts places_of(const Inputs& inputs, const StayBars& bars) {
  if (bars.wall == kTies) return places_of_stays(inputs, bars.wall);
  Facts places;
  const auto rows = rows_of(inputs, bars.wall);
  if (!rows) return places;
  const bool first_from_left = is_from_left(inputs, rows->of_length);
  if (!bars.between)
    places.push_back(places_of_baffles(rows->first, first_from_left));
  else
    places.push_back(rows->second_level ? over_floor(rows->second) : places_of_baffles(rows->second, !first_from_left));
  if (bars.bays.empty()) return places;
  Facts bays;
  for (const int bay : bars.bays) bays.push_back(fact("the_number", bay));
  // A row between runs along the measure on which those that run through have their places.
  const bool from_left = bars.between ? first_from_left : !first_from_left;
  places.push_back(fact(from_left ? "bays_from_left" : "bays_from_front", std::move(bays)));
  return places;
}

}  // namespace riserun::plan
