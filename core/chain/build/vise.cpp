#include "chain/build/vise.h"

#include "chain/part/move.h"

#include <algorithm>

namespace riserun::chain {

namespace {

using catalog::Catalog;
using catalog::Turning;

class Vise {
 public:
  Vise(const Catalog& catalog, const BodyTree& tree, std::optional<std::size_t> kept_out)
      : catalog_(catalog), tree_(tree), kept_out_(kept_out) {}

  void go_on_from(std::size_t body, std::size_t came_by) {
    for (const std::size_t way : tree_.ways_on(body, came_by)) {
      make_up_from(tree_.across(way, body), way);
      go_on_from(tree_.across(way, body), way);
    }
  }
  std::vector<ViseBond> taken() && { return std::move(made_); }

 private:
  bool is_made(std::size_t bond) const {
    return std::any_of(made_.begin(), made_.end(), [&](const ViseBond& made) { return made.bond == bond; });
  }
  bool is_turned_on(std::size_t bond) const {
    return !tree_.is_nut(tree_.bonds[bond]) && tree_.rule(tree_.bonds[bond].joint).turning != Turning::neither;
  }
  /// Nothing of it looks to the side; of a union that stays together the other half might.
  bool is_straight(std::size_t body, std::size_t came_by) const {
    const bool together = std::any_of(tree_.bonds.begin(), tree_.bonds.end(), [&](const Bond& bond) {
      return tree_.is_nut(bond) && !bond.last && (bond.inner == body || bond.outer == body);
    });
    return !together && !tree_.reach_to_the_side(body, tree_.bonds[came_by].joint);
  }
  /// To a group that it would be the outermost of.
  bool belongs(std::size_t body, std::size_t came_by) const {
    return tree_.is_part(body) && came_by != kept_out_ && is_turned_on(came_by) && !is_made(came_by) &&
           is_straight(body, came_by);
  }
  /// A wrench on it screws the whole of what it carries into its port.
  bool can_lead(std::size_t body) const {
    return tree_.is_part(body) && !tree_.is_ungripped(body) &&
           !is_bushing(catalog_, tree_.part(tree_.bodies[body].row));
  }

  /// The group that begins with this body, if it is one.
  void make_up_from(std::size_t body, std::size_t came_by) {
    if (!can_lead(body) || !is_straight(body, came_by)) return;
    std::vector<ViseBond> group;
    for (std::size_t last = body, by = came_by;;) {
      const std::vector<std::size_t> ways = tree_.ways_on(last, by);
      if (ways.size() != 1 || !belongs(tree_.across(ways.front(), last), ways.front())) {
        if (!group.empty() && tree_.is_ungripped(last)) group.pop_back();
        break;
      }
      by = ways.front();
      group.push_back({by, last});
      last = tree_.across(by, last);
    }
    made_.insert(made_.end(), group.begin(), group.end());
  }

  const Catalog& catalog_;
  const BodyTree& tree_;
  const std::optional<std::size_t> kept_out_;
  std::vector<ViseBond> made_;
};

}  // namespace

std::vector<ViseBond> bonds_made_in_the_vise(const Catalog& catalog, const BodyTree& tree,
                                             std::optional<std::size_t> kept_out) {
  Vise vise(catalog, tree, kept_out);
  for (std::size_t body = 0; body < tree.bodies.size(); ++body)
    if (tree.bodies[body].held) vise.go_on_from(body, tree.bonds.size());
  return std::move(vise).taken();
}

}  // namespace riserun::chain
