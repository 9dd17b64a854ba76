// Every branched assembly that a request allows, tried one after the other: no graph, no subsets, no bound but a number
// of parts.
#pragma once

#include "chain/ask/assembly.h"
#include "property/chain/exhaustive.h"

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace riserun::chain::testing {

/// One thing of a tree; a tree is its things from the base outwards, port by port.
struct TreeItem {
  enum class What { part, target, plug } what = What::part;
  PartId part;           // of a part or plug; of a target that a device stands at
  std::size_t kind = 0;  // of a target: row of the first target like it
  std::uint8_t enter = 0;
  int host = -1;  // row of the part that it is on; -1: the base
  std::uint8_t host_port = 0;
};

/// Of the sums those that a tree has: no length, no head, no ids but the tokens.
struct TreeSums : Sums {
  std::vector<std::pair<std::string, std::size_t>> tokens;  // a target has no text and so sorts first
  bool operator==(const TreeSums&) const = default;
};

/// Smaller is better: the order's own measures, then the drawbacks, then the tokens. Orders: line, parts, price, bin.
bool better_tree(Order order, const TreeSums& a, const TreeSums& b);

struct EveryTree {
  std::array<std::optional<TreeSums>, 6> best;  // by order
  int depth = -1;                               // all trees of up to that many parts were tried
};

class TreeTrial {
 public:
  TreeTrial(const Catalog& catalog, const AssemblyRequest& request);
  /// Deepens part by part until that many beginnings of trees have been looked at.
  EveryTree run(std::size_t budget);
  /// What the tree adds up to; nullopt where it breaks a rule, and `why` says which.
  std::optional<TreeSums> judge(const std::vector<TreeItem>& tree, std::string& why) const;
  std::size_t kind_of(std::size_t target) const { return kinds_[target]; }

 private:
  struct Open {
    int host = -1;
    std::uint8_t port = 0;
  };
  void explore(std::vector<TreeItem>& tree, std::vector<Open> open, int parts, int depth, EveryTree& found);
  void put_part(std::vector<TreeItem>& tree, const std::vector<Open>& open, TreeItem item, int parts, int depth,
                EveryTree& found);
  PortTypeId type_at(const std::vector<TreeItem>& tree, Open open) const;
  PortTypeId type_of(const TreeItem& item) const;
  bool is_device(const catalog::Part& part) const;
  bool is_asked(PartId part) const;
  bool may_be_used(PartId part) const;
  bool part_allowed(PartId part) const { return allowed_[part.row]; }
  bool clash(std::optional<MaterialId> a, std::optional<MaterialId> b) const;
  std::string wrong_joint(const std::vector<TreeItem>& tree, const TreeItem& item) const;
  std::string wrong_part(const std::vector<TreeItem>& tree, std::size_t row) const;
  std::string wrong_ends(const std::vector<TreeItem>& tree) const;
  std::string wrong_way(const std::vector<TreeItem>& tree, std::size_t target_row) const;
  bool needs_met(const std::vector<TreeItem>& tree) const;
  bool meet(const std::vector<TreeItem>& tree, std::size_t row, std::vector<int> open) const;
  void end_here(std::vector<TreeItem>& tree, const std::vector<Open>& open, TreeItem item, int parts, int depth,
                EveryTree& found);
  TreeSums add_up(const std::vector<TreeItem>& tree) const;
  std::vector<std::size_t> beyond(const std::vector<TreeItem>& tree, std::size_t row,
                                  std::optional<std::uint8_t> port) const;
  void count_ports(const std::vector<TreeItem>& tree, std::size_t row, Sums& sums) const;
  void count_port_on_way(PortTypeId port, const std::vector<std::size_t>& targets, bool is_plug, bool is_inner_joint,
                         Sums& sums) const;

  const Catalog& catalog_;
  const AssemblyRequest& request_;
  std::vector<bool> allowed_;       // by part row
  std::vector<std::size_t> kinds_;  // by target
  struct NeedGroup {
    std::vector<PartId> parts;
    int count = 0;
    int kind = -1;         // only on the way to that target; -1: anywhere
    bool ordered = false;  // after those of its target before it
    bool before_all = false;
    bool operator==(const NeedGroup&) const = default;
  };
  void add_needs(const std::vector<Need>& needs, int kind, bool ordered);
  bool in_order(std::size_t group, unsigned choice, const std::vector<int>& left) const;
  bool alike(std::size_t a, std::size_t b) const;
  bool told_apart(std::size_t target) const;
  std::vector<NeedGroup>
      need_groups_;  // needs in no order that name the same parts, for the same target, are one group
  std::size_t looked_at_ = 0;
  std::size_t budget_ = 0;
};

}  // namespace riserun::chain::testing
