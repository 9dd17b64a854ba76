#include "property/chain/judged_joint.h"

#include "property/chain/exhaustive.h"

#include <algorithm>
#include <cmath>

namespace riserun::chain::testing {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)

namespace {

std::int64_t in_of(const JointSize& size) { return micro(size.hand_tight_engagement + size.wrench_engagement); }

/// What a fitting's body lets in at one of its ends.
std::int64_t room_in_body(const Catalog& catalog, const Part& part, std::size_t at) {
  std::int64_t room = INT64_MAX;
  for (std::size_t other = 0; other < part.ports.size(); ++other) {
    if (other == at) continue;
    const std::int64_t body = micro(part.ports[at].reach + part.ports[other].reach);
    const std::int64_t across = own_depth(catalog, part.ports[other].type);
    room = std::min(room, across > 0 ? std::min(body - across, body / 2) : body);
  }
  return room;
}

}  // namespace

std::int64_t own_depth(const Catalog& catalog, PortTypeId type) {
  const PortType& port = catalog.port_type(type);
  const JointSize* size = port.end == End::female ? nullptr : catalog.joint_size(port);
  return size ? in_of(*size) : 0;
}

std::int64_t depth_of_joint(const Catalog& catalog, PortTypeId a, PortTypeId b) {
  const std::int64_t own = std::max(own_depth(catalog, a), own_depth(catalog, b));
  const MatingRule& rule = *catalog.mating_rule(a, b);
  const PortType& first = catalog.port_type(a).kind == rule.kind_a ? catalog.port_type(a) : catalog.port_type(b);
  const JointSize* size = rule.kind_a == rule.kind_b ? nullptr : catalog.joint_size(first);
  if (size == nullptr) return own;
  std::int64_t depth = in_of(*size);
  if (depth <= own) return depth;
  const PortTypeId goes_in = catalog.port_type(a).end == End::female ? b : a;
  for (const Part& part : catalog.parts())
    for (std::size_t at = 0; at < part.ports.size(); ++at)
      if (part.ports[at].type == goes_in && !part.cut_to_length)
        depth = std::min(depth, room_in_body(catalog, part, at));
  return std::max(depth, own);
}

std::int64_t deepest_of(const Catalog& catalog, PortTypeId type) {
  if (catalog.port_type(type).end == End::female) return 0;
  std::int64_t deepest = own_depth(catalog, type);
  for (const Mate& mate : catalog.mates(type)) deepest = std::max(deepest, depth_of_joint(catalog, type, mate.other));
  return deepest;
}

std::pair<std::int64_t, std::int64_t> depth_and_band(const Catalog& catalog, PortTypeId a, PortTypeId b) {
  const MatingRule& rule = *catalog.mating_rule(a, b);
  const PortTypeId deeper = own_depth(catalog, a) < own_depth(catalog, b) ? b : a;
  const JointSize* size = catalog.joint_size(catalog.port_type(deeper));
  const JointSize* first = catalog.joint_size(catalog.port_type(catalog.port_type(a).kind == rule.kind_a ? a : b));
  const JointSize* rules = rule.kind_a != rule.kind_b && first != nullptr ? first : size;
  return {depth_of_joint(catalog, a, b), rules ? micro(rules->make_up_tolerance) : 0};
}

double turn_of(const Part& part, std::size_t enter, std::size_t leave) {
  double turn = std::fmod(part.ports[leave].heading_degrees - part.ports[enter].heading_degrees + 180.0, 360.0);
  if (turn > 180.0) turn -= 360.0;
  if (turn < -180.0) turn += 360.0;
  return std::abs(turn);
}

}  // namespace riserun::chain::testing
