#include "chain/best_branches.h"

#include <algorithm>
#include <bit>

namespace riserun::chain {

namespace {

bool same(const PortEnd& a, const PortEnd& b) {
  return a.type == b.type && a.material == b.material && a.freedom == b.freedom;
}

BranchEnds ends_of(const AssemblyRequest& request) {
  const bool by_material = request.rules.galvanic == Galvanic::avoid;
  const auto face = [&](const PortEnd& end) {
    return Face{end.type, by_material ? end.material.value_or(MaterialId{}) : MaterialId{}};
  };
  const auto fixed = [](const PortEnd& end) { return end.freedom == Freedom::fixed; };
  const std::ptrdiff_t held =
      std::count_if(request.targets.begin(), request.targets.end(), fixed) + (fixed(request.rules.from) ? 1 : 0);
  BranchEnds ends{face(request.rules.from), held > 1 && fixed(request.rules.from), {}};
  for (const std::vector<std::size_t>& kind : kinds_of_targets(request)) {
    const PortEnd& target = request.targets[kind.front()];
    ends.targets.push_back({face(target), held > 1 && fixed(target), static_cast<int>(kind.size())});
  }
  return ends;
}

void count_uses(const catalog::Bin& bin, const BranchTree& tree, std::vector<int>& uses) {
  if (tree.target_kind) return;
  const auto use = [&](PartId part) {
    for (std::size_t item = 0; item < uses.size(); ++item) uses[item] += bin.items[item].part == part ? 1 : 0;
  };
  use(tree.move.part);
  for (const PartId plug : tree.move.plugs) use(plug);
  for (const BranchTree& next : tree.follows) count_uses(bin, next, uses);
}

// The first bin part that the tree takes too often and that is not counted yet; nullopt: it breaks no count.
std::optional<std::size_t> overdrawn(const catalog::Bin& bin, const BranchTree& tree,
                                     const std::vector<bool>& counted) {
  std::vector<int> uses(bin.items.size(), 0);
  count_uses(bin, tree, uses);
  for (std::size_t item = 0; item < uses.size(); ++item)
    if (!counted[item] && uses[item] > bin.items[item].count && bin.items[item].count > 0) return item;
  return std::nullopt;
}

}  // namespace

std::vector<std::vector<std::size_t>> kinds_of_targets(const AssemblyRequest& request) {
  std::vector<std::vector<std::size_t>> kinds;
  for (std::size_t row = 0; row < request.targets.size(); ++row) {
    const auto kind = std::find_if(kinds.begin(), kinds.end(), [&](const auto& rows) {
      return same(request.targets[rows.front()], request.targets[row]);
    });
    if (kind == kinds.end())
      kinds.push_back({row});
    else
      kind->push_back(row);
  }
  return kinds;
}

std::optional<BranchTree> best_branches(const Network& network, const AssemblyRequest& request, bool wish_plugs) {
  const Rules rules(network.catalog(), request.rules);
  const BranchEnds ends = ends_of(request);
  const catalog::Bin& bin = request.rules.bin;
  std::vector<bool> counted(bin.items.size(), false);
  while (true) {
    BranchCounts counts;
    BranchDigits digits;
    digits.wish_plugs = wish_plugs;
    auto digit = static_cast<std::uint32_t>(ends.targets.size());
    for (const NeedGroup& group : rules.need_groups()) {
      counts.needs.push_back(std::popcount(group.bits));
      digits.of_need_group.push_back(digit++);
    }
    for (std::size_t item = 0; item < bin.items.size(); ++item) {
      digits.of_bin_item.push_back(counted[item] ? digit++ : UINT32_MAX);
      if (counted[item]) counts.bin.push_back(bin.items[item].count);
    }
    const auto tree = search_branches(network, rules, ends, counts, branch_moves(network, rules, digits));
    const auto item = tree ? overdrawn(bin, *tree, counted) : std::nullopt;
    if (!item) return tree;
    counted[*item] = true;
  }
}

}  // namespace riserun::chain
