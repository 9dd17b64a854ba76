#include "chain/build/branch_assemble.h"
#include "chain/build/build_texts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace riserun::chain {

using catalog::End;
using catalog::MatingRule;
using catalog::Part;
using catalog::Turning;
using What = PortFollower::What;

namespace {

/// The base, a part (a union is two halves), or a target.
struct Body {
  enum class What { base, part, half, target } what = What::base;
  std::size_t row = 0;
  bool held = false;
};

/// What joins two bodies: a joint, or a union's own nut.
struct Bond {
  std::size_t inner = 0;  // body nearer to the base
  std::size_t outer = 0;
  std::size_t joint = 0;  // row of Assembly::joints; their number for a nut
  bool closes = false;
  bool last = false;  // made when both its sides stand
};

class BranchBuildOrder {
 public:
  BranchBuildOrder(const Catalog& catalog, const AssemblyRequest& request, Assembly& assembly)
      : catalog_(catalog), request_(request), assembly_(assembly) {}

  void write();

 private:
  void lay_out();
  void choose_last_bonds();
  void add_plugs();
  void build_from(std::size_t root);
  void visit(std::size_t body, std::size_t came_by);
  std::vector<std::size_t> ways_on(std::size_t body, std::size_t came_by) const;
  bool swings(std::size_t body, std::size_t came_by) const;
  void make(const Bond& bond, std::size_t turned, std::size_t still);
  void make_still(const Bond& bond);
  void tighten_nut(const Bond& bond);
  std::string facing(std::size_t body, std::size_t joint) const;
  std::string hold(std::size_t body) const;
  bool is_ungripped(std::size_t body) const {
    return bodies_[body].what == Body::What::part && is_close_nipple(part(bodies_[body].row));
  }

  bool is_nut(const Bond& bond) const { return bond.joint == assembly_.joints.size(); }
  const MatingRule& rule(std::size_t joint) const {
    return catalog_.mating_rules()[assembly_.joints[joint].joint.rule];
  }
  const Part& part(std::size_t row) const { return catalog_.part(assembly_.parts[row].part); }
  bool is_union(std::size_t row) const { return part(row).closing && part(row).ports.size() == 2; }
  bool is_apart(std::size_t row) const;
  bool is_plastic(std::size_t body) const;
  std::string part_name(std::size_t row) const { return fmt::format("part {} ({})", row + 1, part(row).name); }
  std::string name(std::size_t body) const;
  std::string short_name(std::size_t body) const;
  void say(std::string text, std::size_t joint, bool closing) {
    assembly_.steps.push_back({std::move(text), joint, closing});
  }
  std::string sealing(const MatingRule& joint) { return seals_.sealing(catalog_, joint, assembly_.steps.size() + 1); }

  const Catalog& catalog_;
  const AssemblyRequest& request_;
  Assembly& assembly_;
  std::vector<Body> bodies_;
  std::vector<Bond> bonds_;
  std::vector<std::size_t> targets_last_;  // bonds that put a loose target on
  SealTexts seals_;
};

bool is_fixed(const PortEnd& end) { return end.freedom == Freedom::fixed; }

// A union's inner half stands right before its outer one.
void BranchBuildOrder::lay_out() {
  std::vector<std::size_t> inner_body(assembly_.parts.size());
  std::vector<std::size_t> outer_body(assembly_.parts.size());
  bodies_.push_back({Body::What::base, 0, is_fixed(request_.rules.from)});
  for (std::size_t row = 0; row < assembly_.parts.size(); ++row) {
    inner_body[row] = outer_body[row] = bodies_.size();
    bodies_.push_back({Body::What::part, row, false});
    if (!is_union(row)) continue;
    bonds_.push_back({bodies_.size() - 1, bodies_.size(), assembly_.joints.size(), true, false});
    outer_body[row] = bodies_.size();
    bodies_.push_back({Body::What::half, row, false});
  }
  for (std::size_t joint = 0; joint < assembly_.joints.size(); ++joint) {
    const AssemblyJoint& made = assembly_.joints[joint];
    const std::size_t inner = made.inner == kBase ? 0 : outer_body[made.inner];
    const std::size_t outer = made.to_target ? bodies_.size() : inner_body[made.outer];
    if (made.to_target) bodies_.push_back({Body::What::target, made.outer, is_fixed(request_.targets[made.outer])});
    bonds_.push_back({inner, outer, joint, rule(joint).closing, false});
  }
}

// A bond waits only where it would tie two held ends together: as many as there are held ends beyond the first.
void BranchBuildOrder::choose_last_bonds() {
  std::vector<std::size_t> group(bodies_.size());
  std::iota(group.begin(), group.end(), std::size_t{0});
  const auto holds = [&](std::size_t g) {
    for (std::size_t body = 0; body < bodies_.size(); ++body)
      if (group[body] == g && bodies_[body].held) return true;
    return false;
  };
  for (const bool closing : {false, true}) {
    for (Bond& bond : bonds_) {
      if (bond.closes != closing) continue;
      const std::size_t kept = group[bond.inner];
      const std::size_t gone = group[bond.outer];
      bond.last = holds(kept) && holds(gone);
      if (!bond.last) std::replace(group.begin(), group.end(), gone, kept);
    }
  }
}

bool BranchBuildOrder::is_apart(std::size_t row) const {
  return std::any_of(bonds_.begin(), bonds_.end(),
                     [&](const Bond& b) { return is_nut(b) && b.last && bodies_[b.inner].row == row; });
}

bool BranchBuildOrder::is_plastic(std::size_t body) const {
  const Body& b = bodies_[body];
  if (b.what == Body::What::part || b.what == Body::What::half) return !catalog_.material(part(b.row).material).metal;
  const PortEnd& end = b.what == Body::What::base ? request_.rules.from : request_.targets[b.row];
  return end.material && !catalog_.material(*end.material).metal;
}

std::string BranchBuildOrder::short_name(std::size_t body) const {
  const Body& b = bodies_[body];
  if (b.what == Body::What::base) return name_of_base(request_);
  if (b.what == Body::What::target) return name_of_target(request_, b.row);
  return is_apart(b.row) ? "that half" : fmt::format("part {}", b.row + 1);
}

std::string BranchBuildOrder::name(std::size_t body) const {
  const Body& b = bodies_[body];
  if (b.what == Body::What::base || b.what == Body::What::target) {
    const bool base = b.what == Body::What::base;
    return fmt::format("{} ({})", short_name(body),
                       catalog_.written(base ? request_.rules.from.type : request_.targets[b.row].type));
  }
  if (!is_apart(b.row)) return part_name(b.row);
  return fmt::format("the {} half of {}", b.what == Body::What::half ? "second" : "first", part_name(b.row));
}

void BranchBuildOrder::add_plugs() {
  for (std::size_t row = 0; row < assembly_.parts.size(); ++row) {
    for (std::size_t port = 0; port < part(row).ports.size(); ++port) {
      const PortFollower& follower = assembly_.parts[row].ports[port];
      if (follower.what != What::plug) continue;
      const Part& plug = catalog_.part(follower.plug);
      const catalog::PortTypeId spare = part(row).ports[port].type;
      const bool goes_in = catalog_.port_type(plug.ports[0].type).end == End::male;
      say(fmt::format("At the bench, screw the {} {} the spare {} port of {}, held in the vise. {}", plug.name,
                      goes_in ? "into" : "onto", catalog_.written(spare), part_name(row),
                      sealing(*catalog_.mating_rule(spare, plug.ports[0].type))),
          kNoJoint, false);
    }
  }
}

// A part whose other ports look to the side sweeps a circle while it is screwed up.
bool BranchBuildOrder::swings(std::size_t body, std::size_t came_by) const {
  const Body& b = bodies_[body];
  if (b.what == Body::What::base || b.what == Body::What::target) return false;
  if (!facing(body, bonds_[came_by].joint).empty()) return true;
  for (const std::size_t way : ways_on(body, came_by)) {
    const std::size_t next = bonds_[way].inner == body ? bonds_[way].outer : bonds_[way].inner;
    if (swings(next, way)) return true;
  }
  return false;
}

std::vector<std::size_t> BranchBuildOrder::ways_on(std::size_t body, std::size_t came_by) const {
  std::vector<std::size_t> ways;
  for (std::size_t row = 0; row < bonds_.size(); ++row)
    if (row != came_by && !bonds_[row].last && (bonds_[row].inner == body || bonds_[row].outer == body))
      ways.push_back(row);
  return ways;
}

void BranchBuildOrder::visit(std::size_t body, std::size_t came_by) {
  std::vector<std::size_t> ways = ways_on(body, came_by);
  const auto next = [&](std::size_t way) { return bonds_[way].inner == body ? bonds_[way].outer : bonds_[way].inner; };
  // What swings goes on while its neighbours are still off.
  std::stable_partition(ways.begin(), ways.end(), [&](std::size_t way) { return swings(next(way), way); });
  for (const std::size_t way : ways) {
    if (bodies_[next(way)].what == Body::What::target) {
      targets_last_.push_back(way);
      continue;
    }
    if (!is_nut(bonds_[way])) make(bonds_[way], next(way), body);
    visit(next(way), way);
  }
}

// From the body that is held outwards, so that whatever is added can still turn; gauges and valves at the very end.
void BranchBuildOrder::build_from(std::size_t root) {
  targets_last_.clear();
  visit(root, bonds_.size());
  for (const std::size_t way : targets_last_) make(bonds_[way], bonds_[way].outer, bonds_[way].inner);
}

std::string BranchBuildOrder::facing(std::size_t body, std::size_t joint) const {
  const Body& b = bodies_[body];
  if (b.what != Body::What::part && b.what != Body::What::half) return "";
  if (joint == assembly_.joints.size()) return "";
  const AssemblyJoint& made = assembly_.joints[joint];
  const bool entered = !made.to_target && made.outer == b.row;
  const std::size_t here = entered ? assembly_.parts[b.row].enter : made.inner_port;
  Length reach{};
  bool sideways = false;
  for (std::size_t port = 0; port < part(b.row).ports.size(); ++port) {
    if (port == here || assembly_.parts[b.row].ports[port].what == What::plug) continue;
    const double angle = std::abs(part(b.row).ports[port].heading_degrees - part(b.row).ports[here].heading_degrees);
    if (std::abs(std::fmod(angle, 360.0) - 180.0) < 1.0) continue;
    sideways = true;
    reach = std::max(reach, part(b.row).ports[port].reach);
  }
  if (!sideways) return "";
  const std::string room =
      reach > Length{} ? fmt::format(" it swings {:.1f} in clear of the joint's axis.", in_inches(reach)) : "";
  return " Stop within the last turn with its side port facing where it is wanted" + (room.empty() ? "." : ";" + room);
}

void BranchBuildOrder::make(const Bond& bond, std::size_t turned, std::size_t still) {
  if (rule(bond.joint).turning == Turning::neither) return make_still(bond);
  const ChainJoint& joint = assembly_.joints[bond.joint].joint;
  const char* way = catalog_.port_type(turned == bond.outer ? joint.b : joint.a).end == End::male ? "into" : "onto";
  const std::string turns = is_ungripped(turned) ? kCloseNippleTurns
                                                 : turns_past_hand(catalog_, joint.a, joint.b,
                                                                   is_plastic(bond.inner) || is_plastic(bond.outer));
  say(fmt::format("Screw {} {} {}: turn {} {}; {}.{} {}", name(turned), way, name(still), short_name(turned), turns,
                  hold(still), facing(turned, bond.joint), sealing(rule(bond.joint))),
      bond.joint, false);
}

std::string BranchBuildOrder::hold(std::size_t body) const {
  if (bodies_[body].held) return short_name(body) + " stays still by itself";
  if (is_ungripped(body)) return held_close_nipple(short_name(body));
  return fmt::format("hold {} with a second wrench", short_name(body));
}

void BranchBuildOrder::make_still(const Bond& bond) {
  const bool nut = catalog_.kind(catalog_.port_type(assembly_.joints[bond.joint].joint.a).kind).threaded;
  say(fmt::format("{}ring {} and {} together; {}. {}", bond.last ? "To close, b" : "B", name(bond.inner),
                  name(bond.outer), nut ? "turn the swivel nut only" : "neither side turns", sealing(rule(bond.joint))),
      bond.joint, bond.last);
}

void BranchBuildOrder::tighten_nut(const Bond& bond) {
  const std::string who = part_name(bodies_[bond.inner].row);
  if (bond.last)
    say(fmt::format("To close, bring the halves of {} together face to face, seat clean and without sealant; hold the "
                    "half beside the nut with one wrench and tighten the nut with another; nothing else turns.",
                    who),
        bond.joint, true);
  else
    say(fmt::format("Tighten the nut of {}, which is left together; hold the body with a second wrench.", who),
        bond.joint, false);
}

void BranchBuildOrder::write() {
  lay_out();
  choose_last_bonds();
  add_plugs();
  const bool any_held = std::any_of(bodies_.begin(), bodies_.end(), [](const Body& b) { return b.held; });
  for (std::size_t body = 0; body < bodies_.size(); ++body)
    if (any_held ? bodies_[body].held : body == 0) build_from(body);
  for (const bool last : {false, true})
    for (const Bond& bond : bonds_)
      if (is_nut(bond) && bond.last == last) tighten_nut(bond);
  for (const Bond& bond : bonds_)
    if (!is_nut(bond) && bond.last) make_still(bond);
}

}  // namespace

void add_branch_build_order(const Catalog& catalog, const AssemblyRequest& request, Assembly& assembly) {
  BranchBuildOrder(catalog, request, assembly).write();
}

}  // namespace riserun::chain
