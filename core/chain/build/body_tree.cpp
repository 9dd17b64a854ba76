#include "chain/build/body_tree.h"

#include <algorithm>
#include <cmath>

namespace riserun::chain {

using catalog::Catalog;
using catalog::Turning;
using quantity::Length;
using What = Follower::What;

bool slides(const PortEnd& end) { return moves_along(end.freedom); }

namespace {

/// It can be turned to make a joint: what a chain screws up draws in, so that an end of it must move along.
bool turns(const Run& run, const PortEnd& end) {
  const bool draws_in = run.ends.size() > 1 || slides(run.base) || slides(run.ends.front().port);
  return draws_in && can_turn(end.freedom);
}

}  // namespace

bool BodyTree::is_ungripped(std::size_t body) const {
  return bodies[body].what == Body::What::part && is_close_nipple(part(bodies[body].row));
}

bool BodyTree::is_union(std::size_t row) const {
  const std::vector<Follower>& ports = run_.parts[row].ports;
  return part(row).closing &&
         std::count_if(ports.begin(), ports.end(), [](const Follower& port) { return port.leads_on(); }) == 1;
}

// A hose with its ends on it gives way wherever it is.
Bow BodyTree::bow_of(std::size_t row) const {
  if (!part(row).cut_to_length) return chain::bends(catalog_, part(row)) ? Bow::has_room : Bow::none;
  return run_.parts[row].short_to_bow ? Bow::too_short : Bow::has_room;
}

// A union's inner half stands right before its outer one.
BodyTree::BodyTree(const Catalog& catalog, const Run& run) : catalog_(catalog), run_(run) {
  std::vector<std::size_t> inner_body(run_.parts.size());
  std::vector<std::size_t> outer_body(run_.parts.size());
  bodies.push_back({Body::What::base, 0, !turns(run_, run_.base), false});
  for (std::size_t row = 0; row < run_.parts.size(); ++row) {
    inner_body[row] = outer_body[row] = bodies.size();
    bodies.push_back({Body::What::part, row, false, false});
    if (!is_union(row)) continue;
    bonds.push_back({bodies.size() - 1, bodies.size(), run_.joints.size(), AsLast::nut});
    outer_body[row] = bodies.size();
    bodies.push_back({Body::What::half, row, false, false});
  }
  for (std::size_t joint = 0; joint < run_.joints.size(); ++joint) {
    const RunJoint& made = run_.joints[joint];
    const std::size_t inner = made.inner == kBase ? 0 : outer_body[made.inner];
    const std::size_t outer = made.to_end ? bodies.size() : inner_body[made.outer];
    if (made.to_end) bodies.push_back({Body::What::end, made.outer, !turns(run_, run_.ends[made.outer].port), false});
    AsLast as_last = rule(joint).turning == Turning::neither ? AsLast::pushed_together : AsLast::never;
    if (rule(joint).closing && rule(joint).lengthwise) as_last = AsLast::lengthwise;
    const Bow beyond = made.to_end ? Bow::none : bow_of(made.outer);
    if (closes_in_place(rule(joint), made.inner == kBase ? Bow::none : bow_of(made.inner), beyond))
      as_last = AsLast::without_turning;
    bonds.push_back({inner, outer, joint, as_last});
  }
}

std::vector<std::size_t> BodyTree::ways_on(std::size_t body, std::size_t came_by) const {
  std::vector<std::size_t> ways;
  for (std::size_t row = 0; row < bonds.size(); ++row)
    if (leads_on(row, body, came_by)) ways.push_back(row);
  return ways;
}

bool BodyTree::swings(std::size_t body, std::size_t came_by) const {
  if (!is_part(body)) return false;
  if (reach_to_the_side(body, bonds[came_by].joint)) return true;
  for (std::size_t way = 0; way < bonds.size(); ++way)
    if (leads_on(way, body, came_by) && swings(across(way, body), way)) return true;
  return false;
}

std::optional<Length> BodyTree::reach_to_the_side(std::size_t body, std::size_t joint) const {
  if (!is_part(body) || joint == run_.joints.size()) return std::nullopt;
  const RunPart& link = run_.parts[bodies[body].row];
  const std::vector<catalog::Port>& ports = part(bodies[body].row).ports;
  const RunJoint& made = run_.joints[joint];
  const std::size_t here = !made.to_end && made.outer == bodies[body].row ? link.enter : made.inner_port;
  std::optional<Length> reach;
  int ahead = 0;
  for (std::size_t port = 0; port < ports.size(); ++port) {
    if (port == here || link.ports[port].what == What::plug) continue;
    const double angle = std::abs(ports[port].heading_degrees - ports[here].heading_degrees);
    const bool is_ahead = std::abs(std::fmod(angle, 360.0) - 180.0) < 1.0;
    if (is_ahead && ++ahead == 1) continue;
    // Of two that look the same way one at least is off the axis; by how much no catalog says.
    reach = std::max(reach.value_or(Length{}), is_ahead ? Length{} : ports[port].reach);
  }
  return reach;
}

}  // namespace riserun::chain
