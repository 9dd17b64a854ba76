#include "property/chain/every_tree.h"

#include "property/chain/judged_duty.h"
#include "property/chain/swept.h"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace riserun::chain::testing {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)
using What = TreeItem::What;

bool better_tree(Order order, const TreeSums& a, const TreeSums& b) {
  const auto key = [order](const TreeSums& s) {
    if (order == Order::price) return std::tuple(s.cents, s.parts, s.drawbacks, std::int64_t{0});
    if (order == Order::bin) return std::tuple(s.buy, s.cents, s.parts, s.drawbacks);
    return std::tuple(s.parts, s.cents, s.drawbacks, std::int64_t{0});
  };
  return key(a) != key(b) ? key(a) < key(b) : a.tokens < b.tokens;
}

namespace {

bool named(const std::vector<PartId>& parts, PartId part) {
  return std::find(parts.begin(), parts.end(), part) != parts.end();
}

}  // namespace

TreeTrial::TreeTrial(const Catalog& catalog, const AssemblyRequest& request) : catalog_(catalog), request_(request) {
  for (std::size_t row = 0; row < request.targets.size(); ++row) {
    std::size_t first = 0;
    const PortEnd& own = request.targets[row];
    while (request.targets[first].type != own.type || request.targets[first].material != own.material ||
           request.targets[first].freedom != own.freedom)
      ++first;
    kinds_.push_back(first);
  }
  for (const Need& need : request.rules.needs) {
    std::vector<PartId> parts = need.parts;
    std::sort(parts.begin(), parts.end());
    parts.erase(std::unique(parts.begin(), parts.end()), parts.end());
    const auto same = std::find(need_groups_.begin(), need_groups_.end(), parts);
    if (same == need_groups_.end()) {
      need_groups_.push_back(parts);
      need_counts_.push_back(1);
    } else {
      ++need_counts_[static_cast<std::size_t>(same - need_groups_.begin())];
    }
  }
}

bool TreeTrial::part_allowed(PartId id) const {
  const ChainRequest& rules = request_.rules;
  if (!rules.banned.empty() && rules.banned[id.row]) return false;
  if (!rules.special_order && !catalog_.part(id).stocked && rules.bin.count_of(id) == 0) return false;
  return stands(catalog_, rules, id);
}

bool TreeTrial::clash(std::optional<MaterialId> a, std::optional<MaterialId> b) const {
  return request_.rules.galvanic == Galvanic::avoid && a && b &&
         catalog_.galvanic(*a, *b) == GalvanicVerdict::keep_apart;
}

PortTypeId TreeTrial::type_at(const std::vector<TreeItem>& tree, Open open) const {
  if (open.host < 0) return request_.rules.from.type;
  return catalog_.part(tree[static_cast<std::size_t>(open.host)].part).ports[open.port].type;
}

PortTypeId TreeTrial::type_of(const TreeItem& item) const {
  return item.what == What::target ? request_.targets[item.kind].type : catalog_.part(item.part).ports[item.enter].type;
}

std::string TreeTrial::wrong_joint(const std::vector<TreeItem>& tree, const TreeItem& item) const {
  if (!catalog_.mating_rule(type_at(tree, {item.host, item.host_port}), type_of(item))) return "ends that do not mate";
  const auto facing = [](const Part& part, std::size_t port) -> std::optional<MaterialId> {
    if (part.dielectric && !part.far_material) return std::nullopt;
    return part.material_at(port);
  };
  std::optional<MaterialId> inner = request_.rules.from.material;
  if (item.host >= 0) {
    const Part& host = catalog_.part(tree[static_cast<std::size_t>(item.host)].part);
    inner = item.what == What::plug ? host.material_at(item.host_port) : facing(host, item.host_port);
  }
  std::optional<MaterialId> outer;
  if (item.what == What::target) outer = request_.targets[item.kind].material;
  if (item.what == What::part) outer = facing(catalog_.part(item.part), item.enter);
  if (item.what == What::plug) outer = catalog_.part(item.part).material;
  return clash(inner, outer) ? "metals that must not meet" : "";
}

// Ports that water or air goes through: the entered one, and those that lead on.
std::string TreeTrial::wrong_part(const std::vector<TreeItem>& tree, std::size_t row) const {
  const Part& part = catalog_.part(tree[row].part);
  if (!part_allowed(tree[row].part)) return "a part that is not allowed: " + part.id;
  if (tree[row].what == What::plug) {
    const bool plug = part.ports.size() == 1 && catalog_.family(part.family).role == Role::connector;
    return plug ? "" : "no plug: " + part.id;
  }
  std::vector<std::size_t> used{tree[row].enter};
  std::size_t followed = 0;
  for (const TreeItem& item : tree) {
    if (item.host != static_cast<int>(row)) continue;
    ++followed;
    if (item.what != What::plug) used.push_back(item.host_port);
  }
  if (followed + 1 != part.ports.size()) return "a port is left open or used twice: " + part.id;
  if (used.size() < 2) return "a part that leads nowhere: " + part.id;
  if (part.one_way && !(used.size() == 2 && used[0] == 0 && used[1] == 1)) return "a one-way part the wrong way round";
  for (const std::size_t a : used) {
    if (request_.rules.room && swept(catalog_, part, a) > in_metres(*request_.rules.room)) return "no room to turn";
    if (request_.rules.smallest_bore && part.ports[a].bore < *request_.rules.smallest_bore) return "too narrow";
    for (const std::size_t b : used)
      if (!part.dielectric && clash(part.material_at(a), part.material_at(b))) return "metals of one part";
  }
  return "";
}

// Taken apart at everything that closes, no piece may hold two fixed ends.
std::string TreeTrial::wrong_ends(const std::vector<TreeItem>& tree) const {
  const std::size_t count = tree.size();
  const auto outer_half = [&](std::size_t row) { return count + 1 + row; };
  std::vector<std::size_t> piece(2 * count + 1);
  std::iota(piece.begin(), piece.end(), std::size_t{0});
  const auto join = [&](std::size_t a, std::size_t b) {
    const std::size_t gone = piece[b];
    const std::size_t kept = piece[a];
    std::replace(piece.begin(), piece.end(), gone, kept);
  };
  for (std::size_t row = 0; row < count; ++row) {
    const TreeItem& item = tree[row];
    const bool is_union =
        item.what == What::part && catalog_.part(item.part).closing && catalog_.part(item.part).ports.size() == 2;
    if (!is_union) join(row, outer_half(row));
    const std::size_t inner = item.host < 0 ? count : outer_half(static_cast<std::size_t>(item.host));
    if (!catalog_.mating_rule(type_at(tree, {item.host, item.host_port}), type_of(item))->closing) join(inner, row);
  }
  std::vector<std::size_t> fixed;
  if (request_.rules.from.freedom == Freedom::fixed) fixed.push_back(piece[count]);
  for (std::size_t row = 0; row < count; ++row)
    if (tree[row].what == What::target && request_.targets[tree[row].kind].freedom == Freedom::fixed)
      fixed.push_back(piece[row]);
  std::sort(fixed.begin(), fixed.end());
  return std::adjacent_find(fixed.begin(), fixed.end()) == fixed.end() ? "" : "two fixed ends with nothing that closes";
}

bool TreeTrial::meet(const std::vector<TreeItem>& tree, std::size_t row, std::vector<int> open) const {
  if (row == tree.size()) return std::all_of(open.begin(), open.end(), [](int left) { return left == 0; });
  if (tree[row].what != What::part) return meet(tree, row + 1, open);
  const bool device = catalog_.family(catalog_.part(tree[row].part).family).role == Role::device;
  for (unsigned choice = device ? 1 : 0; choice < 1u << need_groups_.size(); ++choice) {
    std::vector<int> left = open;
    bool possible = true;
    for (std::size_t group = 0; group < left.size(); ++group) {
      if (!(choice >> group & 1u)) continue;
      possible = possible && --left[group] >= 0 && named(need_groups_[group], tree[row].part);
    }
    if (possible && meet(tree, row + 1, left)) return true;
  }
  return false;
}

bool TreeTrial::needs_met(const std::vector<TreeItem>& tree) const { return meet(tree, 0, need_counts_); }

TreeSums TreeTrial::add_up(const std::vector<TreeItem>& tree) const {
  TreeSums sums;
  std::vector<int> uses(catalog_.parts().size(), 0);
  for (const TreeItem& item : tree) {
    if (item.what == What::target) {
      sums.tokens.emplace_back("", item.kind);
      continue;
    }
    const Part& part = catalog_.part(item.part);
    ++uses[item.part.row];
    sums.parts += 1;
    sums.tokens.emplace_back(part.id, item.what == What::part ? item.enter : 0u);
    if (item.what == What::plug) continue;
    sums.drawbacks += catalog_.family(part.family).is_bushing ? 1 : 0;
    sums.drawbacks += part.name.find("close nipple") != std::string::npos ? 1 : 0;
  }
  for (std::uint32_t row = 0; row < uses.size(); ++row) {
    const int bought = std::max(0, uses[row] - request_.rules.bin.count_of({row}));
    sums.buy += bought;
    sums.cents += bought * catalog_.part({row}).price.cents();
  }
  return sums;
}

std::optional<TreeSums> TreeTrial::judge(const std::vector<TreeItem>& tree, std::string& why) const {
  std::vector<int> wanted(kinds_.size(), 0);
  for (const std::size_t kind : kinds_) ++wanted[kind];
  std::vector<int> uses(catalog_.parts().size(), 0);
  for (std::size_t row = 0; row < tree.size(); ++row) {
    if (why = wrong_joint(tree, tree[row]); !why.empty()) return std::nullopt;
    if (tree[row].what == What::target) {
      --wanted[tree[row].kind];
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
    for (const Order order : {Order::parts, Order::price, Order::bin}) {
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
    const TreeItem item{What::target, {}, kind, 0, here.host, here.port};
    if (left[kind] == 0 || !wrong_joint(tree, item).empty()) continue;
    tree.push_back(item);
    explore(tree, open, parts, depth, found);
    tree.pop_back();
  }
  if (parts == depth) return;
  for (std::uint32_t row = 0; row < catalog_.parts().size(); ++row) {
    if (!part_allowed({row})) continue;
    const Part& part = catalog_.part({row});
    const bool plug = part.ports.size() == 1;
    if (plug ? here.host < 0 : targets == 0) continue;
    const bool device = catalog_.family(part.family).role == Role::device;
    const bool asked =
        std::any_of(need_groups_.begin(), need_groups_.end(), [&](const auto& group) { return named(group, {row}); });
    if (device && !asked) continue;
    for (std::uint8_t enter = 0; enter < part.ports.size(); ++enter) {
      const TreeItem item{plug ? What::plug : What::part, {row}, 0, enter, here.host, here.port};
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
