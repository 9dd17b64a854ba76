// The catalog as a graph of open ends, folded once: parts that lead from one port type to the same other are one class,
// kept best first, so that a search meets distinct port pairs and not parts. O(parts * log(parts)) for each folding.
#pragma once

#include "chain/part/move.h"

#include <map>
#include <memory>
#include <mutex>
#include <span>
#include <tuple>
#include <vector>

namespace riserun::chain {

/// One direction through a plain connector, packed: part row and which of its two ports is entered.
struct Way {
  std::uint32_t packed = 0;
  PartId part() const { return {packed >> 1}; }
  std::size_t enter() const { return packed & 1u; }
  std::size_t leave() const { return 1 - enter(); }
};

/// What two moves must share to stand for each other, and what makes the better of them.
struct Folding {
  bool by_material = false;   // a galvanic rule looks at the facing metals
  bool by_make = false;       // what each is made of, and whether it bends
  Order order = Order::line;  // all but loss and length fold as parts
  double flow_m3_s = 0.0;     // for order loss only
  auto operator<=>(const Folding&) const = default;
};

/// The classes of one folding; within a class the ways stand best first.
struct WayClasses {
  std::vector<std::uint32_t> first;  // first row of each class in `ways`, and the end
  std::vector<Way> ways;
  std::size_t class_count() const { return first.empty() ? 0 : first.size() - 1; }
  std::span<const Way> ways_of(std::size_t row) const {
    return std::span(ways).subspan(first[row], first[row + 1] - first[row]);
  }
};

/// Folds a catalog, each folding once when first asked for. Safe to share between threads.
class FoldedCatalog {
 public:
  /// Keeps a reference: the catalog must outlive the folded.
  explicit FoldedCatalog(const Catalog& catalog);

  const Catalog& catalog() const { return *catalog_; }
  /// Place of the part among all parts sorted by their ids: what breaks the last ties.
  std::uint32_t rank(PartId part) const { return part.valid() ? ranks_[part.row] : UINT32_MAX; }
  std::int64_t insertion_micrometres(PortTypeId type) const { return insertion_micrometres_[type.row]; }
  /// Make-up of the joint of an end with one of its mates.
  /// @pre mate is an element of catalog().mates(type)
  std::int64_t make_up_micrometres(PortTypeId type, const catalog::Mate& mate) const {
    return make_ups_[type.row][static_cast<std::size_t>(&mate - catalog_->mates(type).data())];
  }

  std::shared_ptr<const WayClasses> classes(Folding folding) const;

 private:
  WayClasses fold(const Folding& folding) const;

  const Catalog* catalog_;
  std::vector<std::uint32_t> ranks_;
  std::vector<std::int64_t> insertion_micrometres_;
  std::vector<std::vector<std::int64_t>> make_ups_;  // by port type and place among its mates
  mutable std::mutex mutex_;
  mutable std::map<Folding, std::shared_ptr<const WayClasses>> foldings_;
};

}  // namespace riserun::chain
