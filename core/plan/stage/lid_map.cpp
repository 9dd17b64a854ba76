#include "plan/stage/lid_map.h"

#include "chain/finder.h"
#include "plan/job/weld_bung.h"
#include "plan/stage/bungs.h"
#include "plan/stage/riser_bushing.h"
#include "quantity/nearly.h"
#include "reservoir/stay_rows.h"

#include <algorithm>
#include <cmath>

namespace riserun::plan {

namespace {

using reservoir::BungKind;

constexpr double kNearTheMiddle = 0.01;  // of a side, in inches off a bay's middle: decides between equal bays
constexpr double kBandToPipe = 1.4;      // of a female end: as in chain/part/swing.h

/// What is screwed into the port first; nullopt: nothing is known of it.
struct FirstPart {
  PartId part;
  std::size_t port = 0;
};

std::optional<FirstPart> first_in(const chain::Run& run, const std::string& port) {
  for (const chain::RunJoint& joint : run.joints) {
    if (joint.inner != chain::kBase || run.base.called != "the " + port) continue;
    if (!joint.to_end) return FirstPart{run.parts[joint.outer].part, run.parts[joint.outer].enter};
    const chain::RunEnd& end = run.ends[joint.outer];
    if (end.device) return FirstPart{*end.device, end.device_port};
  }
  for (const chain::RunJoint& joint : run.joints)
    if (joint.to_end && joint.inner != chain::kBase && run.ends[joint.outer].port.called == "the " + port)
      return FirstPart{run.parts[joint.inner].part, joint.inner_port};
  return std::nullopt;
}

std::optional<FirstPart> first_in(const std::vector<ConnectionPlan>& connections, const std::string& port) {
  for (const ConnectionPlan& connection : connections)
    if (const chain::Run* run = connection.run())
      if (const auto first = first_in(*run, port)) return first;
  return std::nullopt;
}

Length boss_of(const Inputs& inputs, const JobPort& port, const RiserPlan& riser) {
  if (port.bung == BungKind::double_tapped_bushing) {
    const auto bushing = riser_bushing(inputs.catalog, port.type, riser.request.pipe.outside_diameter, port.bung_part,
                                       metal_of_tank(inputs.settled));
    return bushing && bushing->coupling ? inputs.catalog.part(*bushing->coupling).outside_diameter : Length{};
  }
  if (port.bung == BungKind::welded_riser) return riser.request.pipe.outside_diameter;
  const catalog::Part* part = weld_bung(inputs.catalog, port, port.bung.value_or(BungKind::half_coupling));
  return part != nullptr ? part->outside_diameter : Length{};
}

LidBung bung_of(const Inputs& inputs, const JobPort& port, const std::vector<ConnectionPlan>& connections,
                const RiserPlan& riser) {
  LidBung bung;
  bung.port = port.name;
  bung.place = port.place.value_or(Place::lid);
  bung.at = port.at;
  if (bung.place == Place::side) bung.over_floor = port.face_height;
  // A lid seldom has the wider coupling of a bushing: as on the list, it is there only where the job says so.
  const bool in_bushing = port.bung == BungKind::double_tapped_bushing;
  bung.is_there = port.welded_in.value_or(inputs.settled.lid_closed && !in_bushing);
  bung.to_weld = !port.welded_in.value_or(!in_bushing);
  const catalog::JointSize* size = inputs.catalog.joint_size(inputs.catalog.port_type(port.type));
  const Length pipe = size != nullptr ? size->outside_diameter : Length{};
  bung.outside = boss_of(inputs, port, riser);
  if (bung.outside > Length{}) bung.hole = bung.outside + 2.0 * kBossGap;
  bung.body = std::max(bung.outside / 2.0, pipe * (kBandToPipe / 2.0));
  bung.turning = bung.body + behind_jaw(pipe);
  if (const auto first = first_in(connections, port.name))
    bung.turning =
        std::max(bung.turning, chain::room_to_turn(inputs.catalog, inputs.catalog.part(first->part), first->port));
  return bung;
}

void add_baffles(LidMap& map, bool across, int count) {
  for (const Length& middle : reservoir::middles_of_baffles(across ? map.length : map.width, map.plate, count))
    map.seams.push_back({true, across, middle});
}

/// Where rows of stays that make those bays of lid or floor stand.
std::vector<Length> rows_of_stays(const LidMap& map, const reservoir::SupportLayout& layout,
                                  const reservoir::WallBays& bays, bool from_left) {
  const bool along = from_left == (map.length >= map.width);  // what the bays along the longer measure make
  return reservoir::middles_of_stays(from_left ? map.length : map.width, map.plate,
                                     along ? layout.baffles_across : layout.baffles_along,
                                     along ? bays.along : bays.across);
}

void add_stays(LidMap& map, const reservoir::SupportLayout& layout) {
  const reservoir::WallBays& bays = *layout.lid;
  const std::vector<Length> from_left = rows_of_stays(map, layout, bays, true);
  const std::vector<Length> from_front = rows_of_stays(map, layout, bays, false);
  if (layout.lid_stays_are_posts && bays.along > 1 && bays.across > 1) {
    for (const Length& x : from_left)
      for (const Length& y : from_front) map.ties.push_back({x, y});
    return;
  }
  for (const Length& x : from_left) map.seams.push_back({false, true, x});
  for (const Length& y : from_front) map.seams.push_back({false, false, y});
}

void add_supports(LidMap& map, const reservoir::SupportLayout& layout) {
  const bool length_is_longer = map.length >= map.width;
  add_baffles(map, length_is_longer, layout.baffles_across);
  add_baffles(map, !length_is_longer, layout.baffles_along);
  if (layout.lid) add_stays(map, layout);
  map.stays_anywhere = layout.bare.has_value();
}

/// An upright side that bungs are set into, and what is welded to its inside or outside.
struct Side {
  bool in_front = false;
  Length along{};
  std::vector<Length> upright;  // middles, from where its places are measured
  std::vector<Length> level;    // middles, over the floor
};

Side side_of(const Inputs& inputs, const LidMap& map, bool in_front) {
  Side side{in_front, in_front ? map.length : map.width, {}, {}};
  for (const LidSeam& seam : map.seams)
    if (seam.across == in_front) side.upright.push_back(seam.at);
  const auto& layout = inputs.job.reservoir.supports.layout;
  if (!layout) return side;
  const auto add = [&](const std::vector<Length>& rows) {
    side.upright.insert(side.upright.end(), rows.begin(), rows.end());
  };
  if (layout->floor) add(rows_of_stays(map, *layout, *layout->floor, in_front));
  const bool is_long = in_front == (map.length >= map.width);
  if (const auto& bays = is_long ? layout->long_side : layout->short_side) {
    add(reservoir::middles_of_stays(side.along, map.plate, is_long ? layout->baffles_across : layout->baffles_along,
                                    bays->along));
    side.level = reservoir::middles_of_stays(inputs.settled.box.height, map.plate, 0, bays->across);
  }
  return side;
}

Length off(Length a, Length b) { return a < b ? b - a : a - b; }

bool is_clear(const Length& place, const std::vector<Length>& middles, Length least) {
  return std::none_of(middles.begin(), middles.end(), [&](const Length& middle) { return off(place, middle) < least; });
}

/// On that side at that height: as near to the middle of a bay as other bungs leave room, of equal bays in the one
/// nearest to the side's middle.
std::optional<SidePlace> place_on(const Side& side, const LidMap& map, const LidBung& bung, Length height) {
  const Length to_stay = least_to_stay(bung) + map.plate / 2.0;
  if (!is_clear(height, side.level, to_stay)) return std::nullopt;
  std::vector<Length> walls = side.upright;
  walls.insert(walls.end(), {Length{}, side.along});
  std::sort(walls.begin(), walls.end());
  const Length grid = inches(0.5);
  std::optional<SidePlace> best;
  double least = 0.0;
  for (Length along = grid; along < side.along; along += grid) {
    if (along < least_to_wall(bung) || side.along - along < least_to_wall(bung)) continue;
    if (!is_clear(along, side.upright, to_stay)) continue;
    const bool free = std::none_of(map.bungs.begin(), map.bungs.end(), [&](const LidBung& other) {
      return other.port != bung.port && other.on_side && other.on_side->in_front == side.in_front &&
             distance({along, height}, {other.on_side->along, *other.over_floor}) < least_apart(bung, other);
    });
    if (!free) continue;
    const auto right = std::upper_bound(walls.begin(), walls.end(), along);
    const double cost =
        in_inches(off(along, (*right + *(right - 1)) / 2.0)) + kNearTheMiddle * in_inches(off(along, side.along / 2.0));
    if (best && cost >= least - 1e-9) continue;
    best = SidePlace{side.in_front, along};
    least = cost;
  }
  return best;
}

/// Water is drawn off low, air stands over it. In the right end, which the drawing shows, else in the front; at the
/// height that the job gives, else as low or as high as the seams let it.
void place_in_side(const Inputs& inputs, bool for_air, LidMap& map, LidBung& bung) {
  const Length tape = inches(1.0 / 8.0);
  const Length box = inputs.settled.box.height;
  const Length least = tape * std::ceil(((bung.outside / 2.0 + kToFloorSeam) / tape).value() - quantity::kSameShare);
  std::vector<Length> heights;
  if (bung.over_floor) {
    heights.push_back(*bung.over_floor);
  } else {
    for (Length height = least; quantity::at_most(height, box - least); height += inches(0.5))
      heights.push_back(for_air ? box - height : height);
  }
  for (const Length& height : heights)
    for (const bool in_front : {false, true})
      if (const auto place = place_on(side_of(inputs, map, in_front), map, bung, height)) {
        bung.on_side = place;
        bung.over_floor = height;
        bung.proposed = true;
        return;
      }
  map.without_place.push_back(bung.port);
}

void propose_in_sides(const Inputs& inputs, const std::vector<ConnectionPlan>& connections, const std::string& riser,
                      LidMap& map) {
  for (LidBung& bung : map.bungs) {
    if (bung.place != Place::side || bung.is_there || !(bung.outside > Length{}) || bung.port == riser) continue;
    const bool for_air = std::any_of(connections.begin(), connections.end(), [&](const ConnectionPlan& each) {
      const bool ends_there = std::find(each.ends.begin(), each.ends.end(), bung.port) != each.ends.end();
      return each.service == Service::air && (each.from == bung.port || ends_there);
    });
    place_in_side(inputs, for_air, map, bung);
  }
}

}  // namespace

Fact places_of_baffles(const std::vector<Length>& middles, bool from_left) {
  quantity::Facts places;
  for (const Length& middle : middles) places.push_back(fact("the_length", middle));
  return fact(from_left ? "middles_from_left" : "middles_from_front", std::move(places));
}

LidMap plan_lid_map(const Inputs& inputs, const std::vector<ConnectionPlan>& connections, const RiserPlan& riser,
                    Remarks& remarks) {
  LidMap map;
  map.length = inputs.settled.box.length;
  map.width = inputs.settled.box.width;
  map.wall = inputs.job.reservoir.sheet.thickness;
  map.plate = thickness_of_baffles(inputs.job, inputs.settled);
  if (const auto& layout = inputs.job.reservoir.supports.layout) add_supports(map, *layout);
  for (const JobPort& port : inputs.job.reservoir.ports)
    if (port.type.valid()) map.bungs.push_back(bung_of(inputs, port, connections, riser));
  propose_places(map, riser.bung);
  propose_in_sides(inputs, connections, riser.bung, map);
  if (map.stays_anywhere && !map.bungs.empty()) remarks.note(Topic::walls, fact("stays_stand_anywhere", kToStay));
  return map;
}

}  // namespace riserun::plan
