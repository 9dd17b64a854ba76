// What a run is made up from: a tree of bodies (a union is two, where it is taken apart) and of what joins them.
#pragma once

#include "catalog/catalog.h"
#include "chain/ask/run.h"
#include "chain/part/move.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace riserun::chain {

/// Turned by a fitter's hand: not held by what it belongs to.
/// Gives along its axis.
bool slides(const PortEnd& end);

/// The base, a part (a union is two halves), or an end.
struct Body {
  enum class What { base, part, half, end } what = What::base;
  std::size_t row = 0;
  bool held = false;   // does not turn
  bool first = false;  // the run is made up from it
};

/// How well a bond serves as the last one, when both its sides stand.
enum class AsLast { never, pushed_together, lengthwise, without_turning, nut };

/// What joins two bodies: a joint, or a union's own nut.
struct Bond {
  std::size_t inner = 0;  // body nearer to the base
  std::size_t outer = 0;
  std::size_t joint = 0;  // row of Run::joints; their number for a nut
  AsLast as_last = AsLast::never;
  bool last = false;    // made when both its sides stand
  bool finish = false;  // made by turning an end, as the last joint of a run with one end
};

/// The bodies of a run; bodies and bonds name each other by their rows. It refers to the catalog and the run.
class BodyTree {
 public:
  BodyTree(const catalog::Catalog& catalog, const Run& run);

  std::vector<Body> bodies;
  std::vector<Bond> bonds;

  bool is_chain() const { return run_.ends.size() == 1; }
  bool is_nut(const Bond& bond) const { return bond.joint == run_.joints.size(); }
  bool is_part(std::size_t body) const {
    return bodies[body].what == Body::What::part || bodies[body].what == Body::What::half;
  }
  /// Of the base or an end.
  const PortEnd& end(std::size_t body) const {
    return bodies[body].what == Body::What::base ? run_.base : run_.ends[bodies[body].row].port;
  }
  const catalog::Part& part(std::size_t row) const { return catalog_.part(run_.parts[row].part); }
  const catalog::MatingRule& rule(std::size_t joint) const { return catalog_.mating_rules()[run_.joints[joint].rule]; }
  /// No wrench grips it.
  bool is_ungripped(std::size_t body) const;

  std::size_t row_of(const Bond& bond) const { return static_cast<std::size_t>(&bond - bonds.data()); }
  std::size_t across(std::size_t bond, std::size_t body) const {
    return bonds[bond].inner == body ? bonds[bond].outer : bonds[bond].inner;
  }
  /// The bonds that lead on from a body which was reached by one of them; those that come last lead nowhere.
  std::vector<std::size_t> ways_on(std::size_t body, std::size_t came_by) const;
  /// How far the ports that look to the side reach, and 0 of a second one that looks straight on; nullopt: nothing of
  /// it is off the axis of that joint.
  std::optional<quantity::Length> reach_to_the_side(std::size_t body, std::size_t joint) const;
  /// A part whose other ports, or those of what hangs on it, look to the side sweeps a circle while it is screwed up.
  bool swings(std::size_t body, std::size_t came_by) const;

 private:
  bool is_union(std::size_t row) const;
  Bow bow_of(std::size_t row) const;
  bool leads_on(std::size_t bond, std::size_t body, std::size_t came_by) const {
    return bond != came_by && !bonds[bond].last && (bonds[bond].inner == body || bonds[bond].outer == body);
  }

  const catalog::Catalog& catalog_;
  const Run& run_;
};

}  // namespace riserun::chain
