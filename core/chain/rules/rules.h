// What a request allows: which parts may be used at all, which may be bought, which needs a part meets, and which ends
// may be closed by which joints.
#pragma once

#include "chain/part/move.h"

#include <vector>

namespace riserun::chain {

/// What it takes to make the last joint between the two ends.
enum class Closing {
  none,           // an end turns and one moves along: any joint can be the last
  nothing_turns,  // an end slides and none turns: a joint made without turning either side
  stays_still,    // none moves along: a closing joint
};

/// Needs with the same parts ask for that many of them: one group with a number of bits in the mask of what is met.
struct NeedGroup {
  std::uint8_t bits = 0;
  std::vector<PartId> parts;
  bool before_all = false;  // as Need has it
  std::uint8_t apart =
      0;  // groups, itself among them, that the same part does not meet as well where needs are in order
};

class Rules {
 public:
  Rules(const Catalog& catalog, const ChainRequest& request);

  /// May be in the chain, bought or from the bin, whichever ports are used.
  bool admits(PartId part) const;
  /// The same of what a piece is cut from and threaded again: an end that has lost its thread does no harm there.
  bool admits_cut(PartId part) const;
  /// admits() said yes: may these two ports be the way through?
  bool admits_way(const catalog::Part& part, std::size_t enter, std::size_t leave) const;
  /// Can be had for money.
  bool buyable(PartId part) const;
  /// The two facing metals may meet (always so unless the request avoids bad pairs). Invalid ids: not known, so yes.
  bool may_meet(MaterialId a, MaterialId b) const;

  /// Bits of the need groups that the part meets; 0: none.
  std::uint8_t groups_of(PartId part) const;
  std::uint8_t advance(std::uint8_t met, std::uint8_t groups) const;
  /// Every required need is met.
  bool satisfied(std::uint8_t met) const { return (met & all_met_) == all_met_; }
  const std::vector<NeedGroup>& need_groups() const { return groups_; }
  /// Parts that some need names, each once, in catalog order.
  const std::vector<PartId>& needed_parts() const { return needed_; }

  Closing closing() const { return closing_; }
  /// A joint by that rule can be the last one.
  /// @param a,b  of the pieces that meet (closes_in_place)
  bool joint_closes(const catalog::MatingRule& rule, Bow a, Bow b) const;

  const Catalog& catalog() const { return *catalog_; }
  const ChainRequest& request() const { return *request_; }

 private:
  void group_needs();
  std::uint8_t advance_in_order(std::uint8_t met, std::uint8_t groups) const;

  const Catalog* catalog_;
  const ChainRequest* request_;
  std::vector<NeedGroup> groups_;
  std::vector<PartId> needed_;
  std::vector<std::uint8_t> needed_groups_;  // beside needed_
  std::vector<std::uint8_t> group_of_need_;
  std::uint8_t all_met_ = 0;
  Closing closing_ = Closing::none;
};

}  // namespace riserun::chain
