#include "chain/build/soldered_first.h"

#include <algorithm>
#include <numeric>

namespace riserun::chain {

namespace {

using catalog::Catalog;
using catalog::Turning;

class Pieces {
 public:
  Pieces(const Catalog& catalog, const BodyTree& tree) : catalog_(catalog), tree_(tree), piece_(tree.bodies.size()) {
    std::iota(piece_.begin(), piece_.end(), std::size_t{0});
    for (const Bond& bond : tree_.bonds)
      if (joins(bond)) std::replace(piece_.begin(), piece_.end(), piece_[bond.outer], piece_[bond.inner]);
  }

  SolderedFirst taken() {
    SolderedFirst first;
    for (std::size_t piece = 0; piece < piece_.size(); ++piece) take(piece, first);
    return first;
  }

 private:
  bool joins(const Bond& bond) const { return !bond.last && is_hot(catalog_, tree_, bond); }

  template <typename Is>
  bool any_body(std::size_t piece, Is is) const {
    for (std::size_t body = 0; body < piece_.size(); ++body)
      if (piece_[body] == piece && is(body)) return true;
    return false;
  }

  /// What is screwed up by one of its joints sweeps no circle.
  bool is_straight(std::size_t piece) const {
    return !any_body(piece, [&](std::size_t body) {
      return std::any_of(tree_.bonds.begin(), tree_.bonds.end(), [&](const Bond& bond) {
        return (bond.inner == body || bond.outer == body) && tree_.reach_to_the_side(body, bond.joint);
      });
    });
  }

  /// The one bond by which a piece at the end of a chain joins what is inside of it.
  std::optional<std::size_t> inward(std::size_t piece) const {
    for (std::size_t bond = 0; bond < tree_.bonds.size(); ++bond) {
      const Bond& b = tree_.bonds[bond];
      if (piece_[b.outer] != piece || piece_[b.inner] == piece) continue;
      const bool is_screwed = !tree_.is_nut(b) && !b.last && tree_.rule(b.joint).turning == Turning::either;
      return is_screwed ? std::optional(bond) : std::nullopt;
    }
    return std::nullopt;
  }

  void take(std::size_t piece, SolderedFirst& first) const {
    std::vector<std::size_t> bonds;
    for (std::size_t bond = 0; bond < tree_.bonds.size(); ++bond)
      if (joins(tree_.bonds[bond]) && piece_[tree_.bonds[bond].inner] == piece) bonds.push_back(bond);
    if (bonds.empty()) return;
    const bool stands = any_body(piece, [&](std::size_t body) { return tree_.bodies[body].first; });
    const bool has_loose_end = any_body(piece, [&](std::size_t body) {
      return tree_.bodies[body].what == Body::What::end && !tree_.bodies[body].first;
    });
    if (!stands && !is_straight(piece)) return;
    if (has_loose_end) {
      if (stands || !tree_.is_chain()) return;
      first.finish = inward(piece);
      if (!first.finish) return;
    }
    first.bonds.insert(first.bonds.end(), bonds.begin(), bonds.end());
  }

  const Catalog& catalog_;
  const BodyTree& tree_;
  std::vector<std::size_t> piece_;  // of each body
};

}  // namespace

bool is_hot(const Catalog& catalog, const BodyTree& tree, const Bond& bond) {
  if (tree.is_nut(bond)) return false;
  const catalog::Seal* seal = catalog.seal(tree.rule(bond.joint).seal);
  return seal && seal->hot;
}

SolderedFirst soldered_first(const Catalog& catalog, const BodyTree& tree) { return Pieces(catalog, tree).taken(); }

std::vector<std::size_t> bonds_made_at_the_bench(const Catalog& catalog, const BodyTree& tree) {
  std::vector<std::size_t> made;
  for (std::size_t row = 0; row < tree.bonds.size(); ++row) {
    const Bond& bond = tree.bonds[row];
    if (tree.is_nut(bond) || bond.last || !tree.is_part(bond.inner) || !tree.is_part(bond.outer)) continue;
    const catalog::Seal* seal = catalog.seal(tree.rule(bond.joint).seal);
    if (seal && seal->at_bench) made.push_back(row);
  }
  return made;
}

}  // namespace riserun::chain
