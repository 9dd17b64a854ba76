#include "plan/stage/lid_map.h"

#include "chain/finder.h"
#include "plan/job/weld_bung.h"
#include "plan/stage/bungs.h"
#include "plan/stage/riser_bushing.h"
#include "reservoir/stay_rows.h"

#include <algorithm>

namespace riserun::plan {

namespace {

using reservoir::BungKind;

constexpr double kBandToPipe = 1.4;  // of a female end: as in chain/part/swing.h

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

void add_stays(LidMap& map, const reservoir::SupportLayout& layout, bool length_is_longer) {
  const reservoir::WallBays& bays = *layout.lid;
  const auto middles = [&](bool from_left) {
    const bool along = from_left == length_is_longer;  // what the bays along the lid's longer measure make
    return reservoir::middles_of_stays(from_left ? map.length : map.width, map.plate,
                                       along ? layout.baffles_across : layout.baffles_along,
                                       along ? bays.along : bays.across);
  };
  const std::vector<Length> from_left = middles(true);
  const std::vector<Length> from_front = middles(false);
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
  if (layout.lid) add_stays(map, layout, length_is_longer);
  map.stays_anywhere = layout.bare.has_value();
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
  map.wall = map.plate = inputs.job.reservoir.sheet.thickness;
  if (const auto& layout = inputs.job.reservoir.supports.layout) add_supports(map, *layout);
  for (const JobPort& port : inputs.job.reservoir.ports)
    if (port.type.valid()) map.bungs.push_back(bung_of(inputs, port, connections, riser));
  propose_places(map, riser.bung);
  if (map.stays_anywhere && !map.bungs.empty()) remarks.note(Topic::walls, fact("stays_stand_anywhere", kToStay));
  return map;
}

}  // namespace riserun::plan
