#include "property/chain/every_tree.h"

#include <algorithm>
#include <numeric>
#include <set>

namespace riserun::chain::testing {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)
using What = TreeItem::What;

// A relief valve asks other things of its way when its inlet is another.
bool TreeTrial::told_apart(std::size_t target) const {
  const BranchRules& rules = request_.branch(target);
  if (!rules.needs.empty() || rules.facing == Facing::to_a_side) return true;
  if (!rules.relief || rules.smallest_bore) return false;
  std::set<std::pair<std::string, Length>> inlets;
  for (const PortUse& use : rules.devices) {
    const Port& port = catalog_.part(use.part).ports[use.port];
    inlets.insert({catalog_.size_name(catalog_.port_type(port.type).size), port.bore});
  }
  return inlets.size() > 1;
}

bool TreeTrial::alike(std::size_t a, std::size_t b) const {
  const BranchRules& one = request_.branch(a);
  const BranchRules& other = request_.branch(b);
  const PortEnd& first = request_.targets[a];
  const PortEnd& second = request_.targets[b];
  const auto rows = [](const std::vector<PortUse>& uses) {
    std::vector<std::pair<std::uint32_t, int>> list;
    list.reserve(uses.size());
    for (const PortUse& use : uses) list.emplace_back(use.part.row, use.port);
    return list;
  };
  if (rows(one.devices) != rows(other.devices) || first.freedom != second.freedom) return false;
  if (one.devices.empty() && (first.type != second.type || first.material != second.material)) return false;
  return one.flow == other.flow && one.facing == other.facing && one.relief == other.relief &&
         one.banned == other.banned && one.smallest_bore == other.smallest_bore;
}

TreeTrial::TreeTrial(const Catalog& catalog, const AssemblyRequest& request) : catalog_(catalog), request_(request) {
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) allowed_.push_back(may_be_used({row}));
  add_needs(request.rules.needs, -1, false);
  for (std::size_t row = 0; row < request.targets.size(); ++row) {
    std::size_t first = 0;
    const auto like = [&] { return !told_apart(row) && !told_apart(first) && alike(first, row); };
    while (first < row && (kinds_[first] != first || !like())) ++first;
    kinds_.push_back(first);
    add_needs(request.branch(row).needs, static_cast<int>(row), request.branch(row).needs_in_order);
  }
}

std::optional<TreeSums> TreeTrial::judge(const std::vector<TreeItem>& tree, std::string& why) const {
  std::vector<int> wanted(kinds_.size(), 0);
  for (const std::size_t kind : kinds_) ++wanted[kind];
  std::vector<int> uses(catalog_.parts().size(), 0);
  for (std::size_t row = 0; row < tree.size(); ++row) {
    if (why = wrong_joint(tree, tree[row]); !why.empty()) return std::nullopt;
    if (tree[row].what == What::target) {
      --wanted[tree[row].kind];
      if (why = wrong_way(tree, row); !why.empty()) return std::nullopt;
      continue;
    }
    if (why = wrong_part(tree, row); !why.empty()) return std::nullopt;
    const bool buyable = request_.rules.special_order || catalog_.part(tree[row].part).stocked;
    if (++uses[tree[row].part.row] > request_.rules.bin.count_of(tree[row].part) && !buyable) {
      why = "more of a part than there is";
      return std::nullopt;
    }
  }
  if (std::any_of(wanted.begin(), wanted.end(), [](int left) { return left != 0; })) why = "a target is not reached";
  if (why.empty()) why = wrong_ends(tree);
  const auto bushings = std::count_if(tree.begin(), tree.end(), [&](const TreeItem& item) {
    return item.what == What::part && catalog_.family(catalog_.part(item.part).family).is_bushing;
  });
  if (why.empty() && request_.rules.most_bushings && bushings > *request_.rules.most_bushings)
    why = "more bushings than allowed";
  if (why.empty() && !needs_met(tree)) why = "needs not met, or a device that none asks for";
  if (!why.empty()) return std::nullopt;
  return add_up(tree);
}

void TreeTrial::put_part(std::vector<TreeItem>& tree, const std::vector<Open>& open, TreeItem item, int parts,
                         int depth, EveryTree& found) {
  const Part& part = catalog_.part(item.part);
  std::vector<Open> next = open;
  if (item.what == What::part)
    for (std::size_t port = part.ports.size(); port-- > 0;)
      if (port != item.enter) next.push_back({static_cast<int>(tree.size()), static_cast<std::uint8_t>(port)});
  tree.push_back(item);
  explore(tree, std::move(next), parts + 1, depth, found);
  tree.pop_back();
}

void TreeTrial::end_here(std::vector<TreeItem>& tree, const std::vector<Open>& open, TreeItem item, int parts,
                         int depth, EveryTree& found) {
  if (!wrong_joint(tree, item).empty()) return;
  tree.push_back(item);
  explore(tree, open, parts, depth, found);
  tree.pop_back();
}

// The first open port gets each thing that goes onto it in turn.
void TreeTrial::explore(std::vector<TreeItem>& tree, std::vector<Open> open, int parts, int depth, EveryTree& found) {
  if (++looked_at_ > budget_) return;
  std::vector<int> left(kinds_.size(), 0);
  for (const std::size_t kind : kinds_) ++left[kind];
  for (const TreeItem& item : tree)
    if (item.what == What::target) --left[item.kind];
  const int targets = std::accumulate(left.begin(), left.end(), 0);
  if (open.empty()) {
    std::string why;
    const auto sums = targets == 0 ? judge(tree, why) : std::nullopt;
    for (const Order order : {Order::line, Order::parts, Order::price, Order::bin}) {
      std::optional<TreeSums>& best = found.best[static_cast<std::size_t>(order)];
      if (sums && (!best || better_tree(order, *sums, *best))) best = sums;
    }
    return;
  }
  if (targets == 0 && tree.empty()) return;
  if (static_cast<int>(open.size()) > targets + (depth - parts)) return;
  const Open here = open.back();
  open.pop_back();
  for (std::size_t kind = 0; kind < left.size(); ++kind) {
    if (left[kind] == 0) continue;
    const std::vector<PortUse>& devices = request_.branch(kind).devices;
    if (devices.empty()) end_here(tree, open, {What::target, {}, kind, 0, here.host, here.port}, parts, depth, found);
    for (const PortUse& use : devices)
      end_here(tree, open, {What::target, use.part, kind, use.port, here.host, here.port}, parts, depth, found);
  }
  if (parts == depth) return;
  for (std::uint32_t row = 0; row < catalog_.parts().size(); ++row) {
    if (!part_allowed({row})) continue;
    const Part& part = catalog_.part({row});
    const bool plug = part.ports.size() == 1;
    if (plug ? here.host < 0 : targets == 0) continue;
    if (is_device(part) && !is_asked({row})) continue;
    for (std::size_t enter = 0; enter < part.ports.size(); ++enter) {
      const TreeItem item{plug ? What::plug : What::part,   {row},     0,
                          static_cast<std::uint8_t>(enter), here.host, here.port};
      if (wrong_joint(tree, item).empty()) put_part(tree, open, item, parts, depth, found);
    }
  }
}

EveryTree TreeTrial::run(std::size_t budget) {
  budget_ = budget;
  EveryTree complete;
  for (int depth = 0; depth <= 8; ++depth) {
    looked_at_ = 0;
    EveryTree found;
    found.depth = depth;
    std::vector<TreeItem> tree;
    explore(tree, {{-1, 0}}, 0, depth, found);
    if (looked_at_ > budget_) break;
    complete = found;
  }
  return complete;
}

}  // namespace riserun::chain::testing
