#include "chain/build/build_order.h"

#include "chain/build/body_tree.h"
#include "chain/build/last_bonds.h"
#include "chain/build/seals.h"
#include "chain/build/soldered_first.h"
#include "chain/build/vise.h"
#include "chain/part/move.h"

#include <algorithm>
#include <cmath>
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

/// One sentence behind the other, without a comma.
Facts in_turn(const Facts& first, const Facts& then) {
  if (first.empty() || then.empty()) return first.empty() ? then : first;
  return {fact("in_turn", first.front(), then.front())};
}

class BuildOrder {
 public:
  BuildOrder(const Catalog& catalog, Run& run) : catalog_(catalog), run_(run), tree_(catalog, run) {}

  void write();

 private:
  void choose_what_is_soldered_first();
  void choose_what_the_vise_holds();
  void choose_finish();
  bool can_close() const;
  void cut_pieces();
  void add_plugs();
  void build_from(std::size_t root);
  void visit(std::size_t body, std::size_t came_by);
  void solder_first();
  void make_up_in_the_vise();
  void make(const Bond& bond, std::size_t turned, std::size_t still);
  void make_still(const Bond& bond, const Facts& placed = {});
  void tighten_nut(const Bond& bond);
  void warn_of_no_play(Fact what);

  bool is_apart(std::size_t row) const;
  bool is_plastic(std::size_t body) const;
  Facts facing(std::size_t body, std::size_t joint) const;
  Facts way_round(std::size_t body) const;
  Facts about_the_heat(const Bond& bond) const;
  bool is_near(const Bond& bond, const Bond& other) const;
  bool is_screwed(const Bond& bond) const;
  Fact behind_the_nut(const Bond& bond, Fact step) const;
  std::optional<std::size_t> half_with_the_nut(std::size_t row) const;
  Fact hold(std::size_t body, const Bond& made) const;
  Fact part_name(std::size_t row) const { return fact("part_and_name", row + 1, tree_.part(row).name); }
  Fact name(std::size_t body) const;
  Fact short_name(std::size_t body) const;
  Fact sealing(const MatingRule& joint) { return seals_.sealing(catalog_, joint, run_.steps.size() + 1); }

  const Catalog& catalog_;
  Run& run_;
  BodyTree tree_;
  SolderedFirst soldered_;
  std::vector<ViseBond> vise_;
  std::vector<bool> made_;              // of each bond: soldered before all else, or in the vise
  std::vector<bool> done_;              // of each bond: its step is written
  std::vector<bool> carries_;           // of each body: what was made up so hangs on it
  bool in_the_vise_ = false;            // what is being made
  std::vector<std::size_t> ends_last_;  // bonds that put a loose end on
  Seals seals_;
};

// Between two ports that do not turn one must at least move along its axis, or the joint be a closing one.
bool BuildOrder::can_close() const {
  const AsLast least = tree_.is_chain() && (slides(run_.base) || slides(run_.ends.front().port))
                           ? AsLast::pushed_together
                           : AsLast::lengthwise;
  return std::all_of(tree_.bonds.begin(), tree_.bonds.end(),
                     [&](const Bond& bond) { return !bond.last || bond.as_last >= least; });
}

void BuildOrder::choose_what_is_soldered_first() {
  made_.assign(tree_.bonds.size(), false);
  done_.assign(tree_.bonds.size(), false);
  carries_.assign(tree_.bodies.size(), false);
  soldered_ = soldered_first(catalog_, tree_);
  const std::vector<std::size_t> bench = bonds_made_at_the_bench(catalog_, tree_);
  soldered_.bonds.insert(soldered_.bonds.begin(), bench.begin(), bench.end());
  for (const std::size_t bond : soldered_.bonds) made_[bond] = true;
}

void BuildOrder::choose_what_the_vise_holds() {
  // What a loose end is soldered into is screwed up last of all, so no group of the vise may hold that joint.
  vise_ = bonds_made_in_the_vise(catalog_, tree_, soldered_.finish);
  for (const ViseBond& at_the_bench : vise_) made_[at_the_bench.bond] = true;
}

void BuildOrder::choose_finish() {
  const bool closes = std::any_of(tree_.bonds.begin(), tree_.bonds.end(), [](const Bond& bond) { return bond.last; });
  if (!tree_.is_chain() || closes) return;
  if (soldered_.finish)
    tree_.bonds[*soldered_.finish].finish = true;
  else
    (can_turn(run_.ends.front().port.freedom) ? tree_.bonds.back() : tree_.bonds.front()).finish = true;
}

bool BuildOrder::is_apart(std::size_t row) const {
  return std::any_of(tree_.bonds.begin(), tree_.bonds.end(),
                     [&](const Bond& b) { return tree_.is_nut(b) && b.last && tree_.bodies[b.inner].row == row; });
}

bool BuildOrder::is_plastic(std::size_t body) const {
  if (tree_.is_part(body)) return !catalog_.material(tree_.part(tree_.bodies[body].row).material).metal;
  const std::optional<MaterialId>& material = tree_.end(body).material;
  return material && !catalog_.material(*material).metal;
}

Fact BuildOrder::short_name(std::size_t body) const {
  if (!tree_.is_part(body)) return fact("end", tree_.end(body).called);
  return is_apart(tree_.bodies[body].row) ? fact("that_half") : fact("part", tree_.bodies[body].row + 1);
}

Fact BuildOrder::name(std::size_t body) const {
  const Body& b = tree_.bodies[body];
  if (!tree_.is_part(body)) return fact("end_and_port", tree_.end(body).called, catalog_.written(tree_.end(body).type));
  if (!is_apart(b.row)) return part_name(b.row);
  return fact(b.what == Body::What::half ? "second_half" : "first_half", part_name(b.row));
}

void BuildOrder::cut_pieces() {
  for (std::size_t row = 0; row < run_.parts.size(); ++row) {
    const RunPart& link = run_.parts[row];
    if (!link.cut_length) continue;
    const bool hose = tree_.part(row).flexible;
    const int threads = threads_to_cut(tree_.part(row));
    run_.steps.push_back({fact(threads == 2   ? "cut_and_thread_both"
                               : threads == 1 ? "cut_and_thread"
                               : hose         ? "cut_hose"
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
      const PortTypeId spare = tree_.part(row).ports[port].type;
      const PortTypeId plugging = plug.ports[0].type;
      run_.steps.push_back(
          {fact(catalog_.port_type(plugging).end == End::male ? "plug_into" : "plug_onto", plug.name,
                catalog_.written(spare), part_name(row), sealing(*catalog_.mating_rule(spare, plugging))),
           kNoJoint, row});
    }
  }
}

void BuildOrder::visit(std::size_t body, std::size_t came_by) {
  std::vector<std::size_t> ways = tree_.ways_on(body, came_by);
  // What swings goes on while its neighbours are still off.
  if (ways.size() > 1)
    std::stable_partition(ways.begin(), ways.end(),
                          [&](std::size_t way) { return tree_.swings(tree_.across(way, body), way); });
  for (const std::size_t way : ways) {
    const std::size_t next = tree_.across(way, body);
    if (tree_.bodies[next].what == Body::What::end) {
      if (!made_[way]) ends_last_.push_back(way);
      continue;
    }
    if (!made_[way] && !tree_.is_nut(tree_.bonds[way])) make(tree_.bonds[way], next, body);
    visit(next, way);
  }
}

void BuildOrder::solder_first() {
  for (const std::size_t row : soldered_.bonds) {
    const Bond& bond = tree_.bonds[row];
    make_still(bond);
    carries_[bond.inner] = carries_[bond.outer] = true;
  }
}

void BuildOrder::make_up_in_the_vise() {
  in_the_vise_ = true;
  for (const ViseBond& at_the_bench : vise_) {
    const Bond& bond = tree_.bonds[at_the_bench.bond];
    const std::size_t far = tree_.across(at_the_bench.bond, at_the_bench.near);
    make(bond, far, at_the_bench.near);
    carries_[at_the_bench.near] = carries_[far] = true;
  }
  in_the_vise_ = false;
}

// From the body that is held outwards, so that whatever is added can still turn; gauges and valves at the very end.
void BuildOrder::build_from(std::size_t root) {
  ends_last_.clear();
  visit(root, tree_.bonds.size());
  for (const std::size_t way : ends_last_) make(tree_.bonds[way], tree_.bonds[way].outer, tree_.bonds[way].inner);
}

// A taper joint is never turned back to face a bend: it would leak (common practice).
Facts BuildOrder::facing(std::size_t body, std::size_t joint) const {
  if (tree_.is_chain()) {
    if (tree_.is_part(body) && is_bent(tree_.part(tree_.bodies[body].row))) return {fact("other_end_faces_right")};
    return {};
  }
  const std::optional<Length> reach = tree_.reach_to_the_side(body, joint);
  if (!reach) return {};
  if (*reach > Length{}) return {fact("side_port_faces_and_swings", *reach)};
  return {fact("side_port_faces")};
}

/// Of a part that is marked: where its arrow points; of a swing check, how its flap must lie.
Facts BuildOrder::way_round(std::size_t body) const {
  if (!tree_.is_part(body) || !tree_.part(tree_.bodies[body].row).arrow) return {};
  const RunPart& link = run_.parts[tree_.bodies[body].row];
  const bool outwards = link.enter == 0;
  const Fact points = tree_.is_chain() || !outwards
                          ? fact("arrow_points_to", outwards ? run_.ends.front().port.called : run_.base.called)
                          : fact("arrow_points_away_from", run_.base.called);
  const bool flap = catalog_.family(tree_.part(tree_.bodies[body].row).family).check == catalog::CheckKind::swing;
  return in_turn({points}, flap ? Facts{fact("flap_lies_flat_or_flow_runs_up")} : Facts{});
}

// A close nipple takes what it stands in along: that is held back instead, or its own joint goes on turning (common
// practice).
Fact BuildOrder::hold(std::size_t body, const Bond& made) const {
  if (in_the_vise_ && !tree_.is_ungripped(body)) return fact("held_in_the_vise", short_name(body));
  if (tree_.bodies[body].held) return fact("stays_still", short_name(body));
  if (!tree_.is_ungripped(body)) return fact("hold_with_a_wrench", short_name(body));
  for (std::size_t row = 0; row < tree_.bonds.size(); ++row) {
    const Bond& other = tree_.bonds[row];
    if (&other == &made || !done_[row] || (other.inner != body && other.outer != body)) continue;
    return fact("close_nipple_draws_up_held", short_name(body), hold(tree_.across(row, body), other));
  }
  return fact("close_nipple_draws_up", short_name(body));
}

bool BuildOrder::is_screwed(const Bond& bond) const {
  return !tree_.is_nut(bond) && tree_.rule(bond.joint).turning == Turning::either;
}

/// At one of its two bodies.
bool BuildOrder::is_near(const Bond& bond, const Bond& other) const {
  return bond.inner == other.inner || bond.inner == other.outer || bond.outer == other.inner ||
         bond.outer == other.outer;
}

/// Of a joint made with heat: the heat stays off tape that is already beside it, or the joint cools before there is
/// any (common practice).
Facts BuildOrder::about_the_heat(const Bond& bond) const {
  if (!is_hot(catalog_, tree_, bond)) return {};
  const auto has_seats = [&](std::size_t body) {
    return tree_.is_part(body) &&
           catalog::only_if_asked(catalog_.family(tree_.part(tree_.bodies[body].row).family).role);
  };
  bool taped = has_seats(bond.inner) || has_seats(bond.outer);
  bool to_be_taped = false;
  for (std::size_t row = 0; row < tree_.bonds.size(); ++row) {
    if (!is_screwed(tree_.bonds[row])) continue;
    taped = taped || (done_[row] && is_near(bond, tree_.bonds[row]));
    to_be_taped = to_be_taped || !done_[row];
  }
  if (taped) return {fact("keep_the_heat_off")};
  return to_be_taped ? Facts{fact("let_it_cool")} : Facts{};
}

/// The half of a union that its nut goes behind, where that half is soldered or glued on: the second, where both are.
std::optional<std::size_t> BuildOrder::half_with_the_nut(std::size_t row) const {
  if (!is_apart(row)) return std::nullopt;
  std::optional<std::size_t> half;
  for (const Bond& bond : tree_.bonds) {
    if (tree_.is_nut(bond) || tree_.rule(bond.joint).comes_apart) continue;
    for (const std::size_t body : {bond.inner, bond.outer})
      if (tree_.is_part(body) && tree_.bodies[body].row == row) half = body;
  }
  return half;
}

Fact BuildOrder::behind_the_nut(const Bond& bond, Fact step) const {
  for (const std::size_t body : {bond.inner, bond.outer}) {
    if (!tree_.is_part(body) || half_with_the_nut(tree_.bodies[body].row) != body) continue;
    const std::size_t other = bond.inner == body ? bond.outer : bond.inner;
    return fact("after_the_nut", fact("part", tree_.bodies[body].row + 1), short_name(other), std::move(step));
  }
  return step;
}

void BuildOrder::make(const Bond& bond, std::size_t turned, std::size_t still) {
  if (tree_.rule(bond.joint).turning == Turning::neither) return make_still(bond, way_round(turned));
  done_[tree_.row_of(bond)] = true;
  const Facts placed = in_turn(facing(turned, bond.joint), way_round(turned));
  const RunJoint& joint = run_.joints[bond.joint];
  const bool into = catalog_.port_type(turned == bond.outer ? joint.b : joint.a).end == End::male;
  const Fact past_hand = tree_.is_ungripped(turned) ? fact("hand_tight_and_no_more")
                                                    : turns_past_hand(catalog_, joint.a, joint.b,
                                                                      is_plastic(bond.inner) || is_plastic(bond.outer));
  run_.steps.push_back(
      {fact(bond.finish ? into ? "last_screw_into" : "last_screw_onto"
            : into      ? "screw_into"
                        : "screw_onto",
            carries_[turned] && !in_the_vise_ ? fact("with_what_hangs_on_it", name(turned)) : name(turned), name(still),
            short_name(turned), past_hand, hold(still, bond), placed, sealing(tree_.rule(bond.joint))),
       bond.joint, 0, bond.finish, turned == bond.outer ? BuildStep::Turns::outer : BuildStep::Turns::inner});
}

void BuildOrder::make_still(const Bond& bond, const Facts& placed) {
  const bool closes = bond.last || bond.finish;
  Facts play;
  if (tree_.is_chain() && closes)
    for (const PortEnd* end : {&run_.ends.front().port, &run_.base})
      if (play.empty() && slides(*end)) play = {fact("moves_up_to_it", end->called)};
  const bool nut = catalog_.kind(catalog_.port_type(run_.joints[bond.joint].a).kind).threaded;
  Fact step = fact(!closes            ? "bring_together"
                   : tree_.is_chain() ? "last_bring_together"
                                      : "to_close_bring_together",
                   name(bond.inner), name(bond.outer), play, fact(nut ? "turn_the_swivel_nut" : "neither_side_turns"),
                   sealing(tree_.rule(bond.joint)), in_turn(about_the_heat(bond), placed));
  run_.steps.push_back({behind_the_nut(bond, std::move(step)), bond.joint, 0, closes});
  done_[tree_.row_of(bond)] = true;
  const auto is_hose = [&](std::size_t body) {
    return tree_.is_part(body) && bends(catalog_, tree_.part(tree_.bodies[body].row));
  };
  if (closes && tree_.rule(bond.joint).lengthwise && !is_hose(bond.inner) && !is_hose(bond.outer))
    warn_of_no_play(fact("no_play_to_slide", run_.joints[bond.joint].make_up));
}

void BuildOrder::tighten_nut(const Bond& bond) {
  const std::size_t row = tree_.bodies[bond.inner].row;
  run_.steps.push_back({fact(!bond.last         ? "tighten_the_nut"
                             : tree_.is_chain() ? "last_close_union"
                                                : "to_close_union",
                             part_name(row)),
                        bond.joint, row, bond.last});
}

void BuildOrder::warn_of_no_play(Fact what) {
  if (tree_.is_chain() && !slides(run_.base) && !slides(run_.ends.front().port))
    run_.cautions.push_back(std::move(what));
}

void BuildOrder::write() {
  choose_where_to_begin(tree_);
  choose_last_bonds(tree_);
  choose_what_is_soldered_first();
  choose_what_the_vise_holds();
  choose_finish();
  run_.steps.reserve(tree_.bonds.size());
  cut_pieces();
  if (!can_close()) {
    run_.buildable = false;
    return;
  }
  add_plugs();
  solder_first();
  make_up_in_the_vise();
  for (std::size_t body = 0; body < tree_.bodies.size(); ++body)
    if (tree_.bodies[body].first) build_from(body);
  for (const bool last : {false, true})
    for (const Bond& bond : tree_.bonds)
      if (tree_.is_nut(bond) && bond.last == last) tighten_nut(bond);
  for (const Bond& bond : tree_.bonds)
    if (!tree_.is_nut(bond) && bond.last) make_still(bond);
}

}  // namespace

void add_build_order(const Catalog& catalog, Run& run) { BuildOrder(catalog, run).write(); }

}  // namespace riserun::chain
