// Parts that may stand for each other in every place of every chain of some requests. Made in O(parts * ports^2 *
// requests * log(parts)); prices are cents.
#pragma once

#include "chain/graph/folded_catalog.h"
#include "chain/rules/rules.h"

#include <cstdint>
#include <map>
#include <vector>

namespace riserun::chain {

/// Parts by class: two parts of a class have the same ports, are admitted, had for money, met by needs, closed, held
/// and set against other metals alike under each of the rules. Length, price and loss are not looked at.
class PartClasses {
 public:
  PartClasses(const FoldedCatalog& folded, const std::vector<Rules>& rules);

  std::uint32_t of(PartId part) const { return class_of_[part.row]; }
  std::size_t count() const { return cheapest_.size(); }
  /// The cheapest of the class, then the one whose id sorts first.
  PartId cheapest(std::uint32_t row) const { return cheapest_[row]; }
  std::size_t size(std::uint32_t row) const { return sizes_[row]; }

 private:
  std::vector<std::uint32_t> class_of_;
  std::vector<PartId> cheapest_;
  std::vector<std::size_t> sizes_;
};

}  // namespace riserun::chain
