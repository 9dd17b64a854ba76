#include "chain/build/build_order.h"

#include "chain/build/seals.h"
#include "chain/part/move.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <utility>

namespace riserun::chain {

using catalog::End;
using catalog::MatingRule;
using catalog::Part;
using catalog::Turning;
using quantity::Fact;
using quantity::fact;
using quantity::Facts;
using What = Follower::What;

namespace {

bool turns(const PortEnd& end) { return end.freedom == Freedom::spinning || end.freedom == Freedom::loose; }
bool slides(const PortEnd& end) { return end.freedom == Freedom::sliding || end.freedom == Freedom::loose; }

/// The base, a part (a union is two halves), or an end.
struct Body {
  enum class What { base, part, half, end } what = What::base;
  std::size_t row = 0;
  bool held = false;   // does not turn
  bool first = false;  // the run is made up from it
};

/// One sentence behind the other, without a comma.
Facts in_turn(const Facts& first, const Facts& then) {
  if (first.empty() || then.empty()) return first.empty() ? then : first;
  return {fact("in_turn", first.front(), then.front())};
}

/// How well a bond serves as the last one, when both its sides stand.
enum class AsLast { never, pushed_together, lengthwise, without_turning, nut };
constexpr AsLast kAllAsLast[] = {AsLast::never, AsLast::pushed_together, AsLast::lengthwise, AsLast::without_turning,
                                 AsLast::nut};

/// What joins two bodies: a joint, or a union's own nut.
struct Bond {
  std::size_t inner = 0;  // body nearer to the base
  std::size_t outer = 0;
  std::size_t joint = 0;  // row of Run::joints; their number for a nut
  AsLast as_last = AsLast::never;
  bool last = false;    // made when both its sides stand
  bool finish = false;  // made by turning an end, as the last joint of a run with one end
};

class BuildOrder {
 public:
  BuildOrder(const Catalog& catalog, Run& run) : catalog_(catalog), run_(run) {}

  void write();

 private:
  void lay_out();
  void choose_where_to_begin();
  void choose_last_bonds();
  void choose_finish();
  bool can_close() const;
  void cut_pieces();
  void add_plugs();
  void build_from(std::size_t root);
  void visit(std::size_t body, std::size_t came_by);
  bool leads_on(std::size_t bond, std::size_t body, std::size_t came_by) const {
    return bond != came_by && !bonds_[bond].last && (bonds_[bond].inner == body || bonds_[bond].outer == body);
  }
  std::vector<std::size_t> ways_on(std::size_t body, std::size_t came_by) const;
  bool swings(std::size_t body, std::size_t came_by) const;
  void make(const Bond& bond, std::size_t turned, std::size_t still);
  void make_still(const Bond& bond, const Facts& placed = {});
  void tighten_nut(const Bond& bond);
  void warn_of_no_play(Fact what);

  bool is_chain() const { return run_.ends.size() == 1; }
  bool is_nut(const Bond& bond) const { return bond.joint == run_.joints.size(); }
  std::size_t across(std::size_t bond, std::size_t body) const {
    return bonds_[bond].inner == body ? bonds_[bond].outer : bonds_[bond].inner;
  }
  const MatingRule& rule(std::size_t joint) const { return catalog_.mating_rules()[run_.joints[joint].rule]; }
  const Part& part(std::size_t row) const { return catalog_.part(run_.parts[row].part); }
  bool is_union(std::size_t row) const;
  bool is_part(std::size_t body) const {
    return bodies_[body].what == Body::What::part || bodies_[body].what == Body::What::half;
  }
  const PortEnd& end(std::size_t body) const {
    return bodies_[body].what == Body::What::base ? run_.base : run_.ends[bodies_[body].row].port;
  }
  bool is_apart(std::size_t row) const;
  bool is_plastic(std::size_t body) const;
  bool is_ungripped(std::size_t body) const {
    return bodies_[body].what == Body::What::part && is_close_nipple(part(bodies_[body].row));
  }
  std::optional<Length> reach_to_the_side(std::size_t body, std::size_t joint) const;
  Facts facing(std::size_t body, std::size_t joint) const;
  Facts way_round(std::size_t body) const;
  Fact hold(std::size_t body) const;
  Fact part_name(std::size_t row) const { return fact("part_and_name", row + 1, part(row).name); }
  Fact name(std::size_t body) const;
  Fact short_name(std::size_t body) const;
  Fact sealing(const MatingRule& joint) { return seals_.sealing(catalog_, joint, run_.steps.size() + 1); }

  const Catalog& catalog_;
  Run& run_;
  std::vector<Body> bodies_;
  std::vector<Bond> bonds_;
  std::vector<std::size_t> ends_last_;  // bonds that put a loose end on
  Seals seals_;
};

bool BuildOrder::is_union(std::size_t row) const {
  const std::vector<Follower>& ports = run_.parts[row].ports;
  return part(row).closing &&
         std::count_if(ports.begin(), ports.end(), [](const Follower& port) { return port.leads_on(); }) == 1;
}

// A union's inner half stands right before its outer one.
void BuildOrder::lay_out() {
  std::vector<std::size_t> inner_body(run_.parts.size());
  std::vector<std::size_t> outer_body(run_.parts.size());
  bodies_.push_back({Body::What::base, 0, !turns(run_.base), false});
  for (std::size_t row = 0; row < run_.parts.size(); ++row) {
    inner_body[row] = outer_body[row] = bodies_.size();
    bodies_.push_back({Body::What::part, row, false, false});
    if (!is_union(row)) continue;
    bonds_.push_back({bodies_.size() - 1, bodies_.size(), run_.joints.size(), AsLast::nut});
    outer_body[row] = bodies_.size();
    bodies_.push_back({Body::What::half, row, false, false});
  }
  for (std::size_t joint = 0; joint < run_.joints.size(); ++joint) {
    const RunJoint& made = run_.joints[joint];
    const std::size_t inner = made.inner == kBase ? 0 : outer_body[made.inner];
    const std::size_t outer = made.to_end ? bodies_.size() : inner_body[made.outer];
    if (made.to_end) bodies_.push_back({Body::What::end, made.outer, !turns(run_.ends[made.outer].port), false});
    AsLast as_last = rule(joint).turning == Turning::neither ? AsLast::pushed_together : AsLast::never;
    if (rule(joint).closing) as_last = rule(joint).lengthwise ? AsLast::lengthwise : AsLast::without_turning;
    bonds_.push_back({inner, outer, joint, as_last});
  }
}

// At what is held, or else at the base. Where something in a chain closes without turning, it is made up from both its
// ports, loose or not, and closed there.
void BuildOrder::choose_where_to_begin() {
  const bool both = is_chain() && std::any_of(bonds_.begin(), bonds_.end(),
                                              [](const Bond& bond) { return bond.as_last >= AsLast::lengthwise; });
  bool any = false;
  for (std::size_t body = 0; body < bodies_.size(); ++body)
    any |= bodies_[body].first = bodies_[body].held || (both && !is_part(body));
  if (!any) bodies_.front().first = true;
}

// A bond waits only where it would tie two bodies together that the run is made up from: as many as there are such
// bodies beyond the first.
void BuildOrder::choose_last_bonds() {
  std::vector<std::size_t> group(bodies_.size());
  std::iota(group.begin(), group.end(), std::size_t{0});
  const auto begins = [&](std::size_t g) {
    for (std::size_t body = 0; body < bodies_.size(); ++body)
      if (group[body] == g && bodies_[body].first) return true;
    return false;
  };
  for (const AsLast as_last : kAllAsLast) {
    for (Bond& bond : bonds_) {
      if (bond.as_last != as_last) continue;
      const std::size_t kept = group[bond.inner];
      const std::size_t gone = group[bond.outer];
      bond.last = begins(kept) && begins(gone);
      if (!bond.last) std::replace(group.begin(), group.end(), gone, kept);
    }
  }
}

// Between two ports that do not turn one must at least move along its axis, or the joint be a closing one.
bool BuildOrder::can_close() const {
  const AsLast least = is_chain() && (slides(run_.base) || slides(run_.ends.front().port)) ? AsLast::pushed_together
                                                                                           : AsLast::lengthwise;
  return std::all_of(bonds_.begin(), bonds_.end(),
                     [&](const Bond& bond) { return !bond.last || bond.as_last >= least; });
}

void BuildOrder::choose_finish() {
  const bool closes = std::any_of(bonds_.begin(), bonds_.end(), [](const Bond& bond) { return bond.last; });
  if (is_chain() && !closes) (turns(run_.ends.front().port) ? bonds_.back() : bonds_.front()).finish = true;
}

bool BuildOrder::is_apart(std::size_t row) const {
  return std::any_of(bonds_.begin(), bonds_.end(),
                     [&](const Bond& b) { return is_nut(b) && b.last && bodies_[b.inner].row == row; });
}

bool BuildOrder::is_plastic(std::size_t body) const {
  if (is_part(body)) return !catalog_.material(part(bodies_[body].row).material).metal;
  const std::optional<MaterialId>& material = end(body).material;
  return material && !catalog_.material(*material).metal;
}

Fact BuildOrder::short_name(std::size_t body) const {
  if (!is_part(body)) return fact("end", end(body).called);
  return is_apart(bodies_[body].row) ? fact("that_half") : fact("part", bodies_[body].row + 1);
}

Fact BuildOrder::name(std::size_t body) const {
  const Body& b = bodies_[body];
  if (!is_part(body)) return fact("end_and_port", end(body).called, catalog_.written(end(body).type));
  if (!is_apart(b.row)) return part_name(b.row);
  return fact(b.what == Body::What::half ? "second_half" : "first_half", part_name(b.row));
}

void BuildOrder::cut_pieces() {
  for (std::size_t row = 0; row < run_.parts.size(); ++row) {
    const RunPart& link = run_.parts[row];
    if (!link.cut_length) continue;
    const bool hose = part(row).flexible;
    run_.steps.push_back({fact(part(row).threaded_when_cut ? "cut_and_thread"
                               : hose                      ? "cut_hose"
                                                           : "cut_tube",
                               part_name(row), *link.cut_length),
                          kNoJoint, row});
  }
}

void BuildOrder::add_plugs() {
  for (std::size_t row = 0; row < run_.parts.size(); ++row) {
    for (std::size_t port = 0; port < run_.parts[row].ports.size(); ++port) {
      const Follower& follower = run_.parts[row].ports[port];
      if (follower.what != What::plug) continue;
      const Part& plug = catalog_.part(follower.plug);
      const PortTypeId spare = part(row).ports[port].type;
      const PortTypeId plugging = plug.ports[0].type;
      run_.steps.push_back(
          {fact(catalog_.port_type(plugging).end == End::male ? "plug_into" : "plug_onto", plug.name,
                catalog_.written(spare), part_name(row), sealing(*catalog_.mating_rule(spare, plugging))),
           kNoJoint, row});
    }
  }
}

std::vector<std::size_t> BuildOrder::ways_on(std::size_t body, std::size_t came_by) const {
  std::vector<std::size_t> ways;
  for (std::size_t row = 0; row < bonds_.size(); ++row)
    if (leads_on(row, body, came_by)) ways.push_back(row);
  return ways;
}

// A part whose other ports look to the side sweeps a circle while it is screwed up.
bool BuildOrder::swings(std::size_t body, std::size_t came_by) const {
  if (!is_part(body)) return false;
  if (reach_to_the_side(body, bonds_[came_by].joint)) return true;
  for (std::size_t way = 0; way < bonds_.size(); ++way)
    if (leads_on(way, body, came_by) && swings(across(way, body), way)) return true;
  return false;
}

void BuildOrder::visit(std::size_t body, std::size_t came_by) {
  std::vector<std::size_t> ways = ways_on(body, came_by);
  // What swings goes on while its neighbours are still off.
  if (ways.size() > 1)
    std::stable_partition(ways.begin(), ways.end(), [&](std::size_t way) { return swings(across(way, body), way); });
  for (const std::size_t way : ways) {
    const std::size_t next = across(way, body);
    if (bodies_[next].what == Body::What::end) {
      ends_last_.push_back(way);
      continue;
    }
    if (!is_nut(bonds_[way])) make(bonds_[way], next, body);
    visit(next, way);
  }
}

// From the body that is held outwards, so that whatever is added can still turn; gauges and valves at the very end.
void BuildOrder::build_from(std::size_t root) {
  ends_last_.clear();
  visit(root, bonds_.size());
  for (const std::size_t way : ends_last_) make(bonds_[way], bonds_[way].outer, bonds_[way].inner);
}

/// How far the ports that look to the side reach; nullopt: none does, seen from that joint.
std::optional<Length> BuildOrder::reach_to_the_side(std::size_t body, std::size_t joint) const {
  if (!is_part(body) || joint == run_.joints.size()) return std::nullopt;
  const RunPart& link = run_.parts[bodies_[body].row];
  const std::vector<catalog::Port>& ports = part(bodies_[body].row).ports;
  const RunJoint& made = run_.joints[joint];
  const std::size_t here = !made.to_end && made.outer == bodies_[body].row ? link.enter : made.inner_port;
  std::optional<Length> reach;
  for (std::size_t port = 0; port < ports.size(); ++port) {
    if (port == here || link.ports[port].what == What::plug) continue;
    const double angle = std::abs(ports[port].heading_degrees - ports[here].heading_degrees);
    if (std::abs(std::fmod(angle, 360.0) - 180.0) < 1.0) continue;
    reach = std::max(reach.value_or(Length{}), ports[port].reach);
  }
  return reach;
}

// A taper joint is never turned back to face a bend: it would leak (common practice).
Facts BuildOrder::facing(std::size_t body, std::size_t joint) const {
  if (is_chain()) {
    if (is_part(body) && is_bent(part(bodies_[body].row))) return {fact("other_end_faces_right")};
    return {};
  }
  const std::optional<Length> reach = reach_to_the_side(body, joint);
  if (!reach) return {};
  if (*reach > Length{}) return {fact("side_port_faces_and_swings", *reach)};
  return {fact("side_port_faces")};
}

/// Of a part that is marked: where its arrow points; of a swing check, how its flap must lie.
Facts BuildOrder::way_round(std::size_t body) const {
  if (!is_part(body) || !part(bodies_[body].row).arrow) return {};
  const RunPart& link = run_.parts[bodies_[body].row];
  const bool outwards = link.enter == 0;
  const Fact points = is_chain() || !outwards
                          ? fact("arrow_points_to", outwards ? run_.ends.front().port.called : run_.base.called)
                          : fact("arrow_points_away_from", run_.base.called);
  const bool flap = catalog_.family(part(bodies_[body].row).family).check == catalog::CheckKind::swing;
  return in_turn({points}, flap ? Facts{fact("flap_lies_flat_or_flow_runs_up")} : Facts{});
}

Fact BuildOrder::hold(std::size_t body) const {
  if (bodies_[body].held) return fact("stays_still", short_name(body));
  if (is_ungripped(body)) return fact("close_nipple_draws_up", short_name(body));
  return fact("hold_with_a_wrench", short_name(body));
}

void BuildOrder::make(const Bond& bond, std::size_t turned, std::size_t still) {
  if (rule(bond.joint).turning == Turning::neither) return make_still(bond, way_round(turned));
  const Facts placed = in_turn(facing(turned, bond.joint), way_round(turned));
  const RunJoint& joint = run_.joints[bond.joint];
  const bool into = catalog_.port_type(turned == bond.outer ? joint.b : joint.a).end == End::male;
  const Fact past_hand = is_ungripped(turned) ? fact("hand_tight_and_no_more")
                                              : turns_past_hand(catalog_, joint.a, joint.b,
                                                                is_plastic(bond.inner) || is_plastic(bond.outer));
  run_.steps.push_back(
      {fact(bond.finish ? into ? "last_screw_into" : "last_screw_onto"
            : into      ? "screw_into"
                        : "screw_onto",
            name(turned), name(still), short_name(turned), past_hand, hold(still), placed, sealing(rule(bond.joint))),
       bond.joint, 0, bond.finish, turned == bond.outer ? BuildStep::Turns::outer : BuildStep::Turns::inner});
  if (bond.finish) warn_of_no_play(fact("no_play_to_draw_in", joint.make_up));
}

void BuildOrder::make_still(const Bond& bond, const Facts& placed) {
  const bool closes = bond.last || bond.finish;
  Facts play;
  if (is_chain() && closes)
    for (const PortEnd* end : {&run_.ends.front().port, &run_.base})
      if (play.empty() && slides(*end)) play = {fact("moves_up_to_it", end->called)};
  const bool nut = catalog_.kind(catalog_.port_type(run_.joints[bond.joint].a).kind).threaded;
  run_.steps.push_back(
      {fact(!closes      ? "bring_together"
            : is_chain() ? "last_bring_together"
                         : "to_close_bring_together",
            name(bond.inner), name(bond.outer), play, fact(nut ? "turn_the_swivel_nut" : "neither_side_turns"),
            sealing(rule(bond.joint)), placed),
       bond.joint, 0, closes});
  if (closes && rule(bond.joint).lengthwise) warn_of_no_play(fact("no_play_to_slide", run_.joints[bond.joint].make_up));
}

void BuildOrder::tighten_nut(const Bond& bond) {
  const std::size_t row = bodies_[bond.inner].row;
  run_.steps.push_back({fact(!bond.last   ? "tighten_the_nut"
                             : is_chain() ? "last_close_union"
                                          : "to_close_union",
                             part_name(row)),
                        bond.joint, row, bond.last});
}

void BuildOrder::warn_of_no_play(Fact what) {
  if (is_chain() && !slides(run_.base) && !slides(run_.ends.front().port)) run_.cautions.push_back(std::move(what));
}

void BuildOrder::write() {
  lay_out();
  choose_where_to_begin();
  choose_last_bonds();
  choose_finish();
  run_.steps.reserve(bonds_.size());
  cut_pieces();
  if (!can_close()) {
    run_.buildable = false;
    return;
  }
  add_plugs();
  for (std::size_t body = 0; body < bodies_.size(); ++body)
    if (bodies_[body].first) build_from(body);
  for (const bool last : {false, true})
    for (const Bond& bond : bonds_)
      if (is_nut(bond) && bond.last == last) tighten_nut(bond);
  for (const Bond& bond : bonds_)
    if (!is_nut(bond) && bond.last) make_still(bond);
}

}  // namespace

void add_build_order(const Catalog& catalog, Run& run) { BuildOrder(catalog, run).write(); }

}  // namespace riserun::chain
