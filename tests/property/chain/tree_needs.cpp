// Whether a tree has what is asked for, each where and in what order it is asked for.
#include "property/chain/every_tree.h"
#include "property/chain/judged_duty.h"

#include <algorithm>

namespace riserun::chain::testing {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)
using What = TreeItem::What;

namespace {

bool named(const std::vector<PartId>& parts, PartId part) {
  return std::find(parts.begin(), parts.end(), part) != parts.end();
}

}  // namespace

void TreeTrial::add_needs(const std::vector<Need>& needs, int kind, bool ordered) {
  for (const Need& need : needs) {
    NeedGroup group{need.parts, 0, kind, ordered, kind < 0 && need.before_all};
    std::sort(group.parts.begin(), group.parts.end());
    group.parts.erase(std::unique(group.parts.begin(), group.parts.end()), group.parts.end());
    auto same = std::find_if(need_groups_.begin(), need_groups_.end(),
                             [&](const NeedGroup& g) { return !ordered && g.parts == group.parts && g.kind == kind; });
    if (same == need_groups_.end()) same = need_groups_.insert(need_groups_.end(), group);
    ++same->count;
  }
}

bool TreeTrial::is_asked(PartId part) const {
  return std::any_of(need_groups_.begin(), need_groups_.end(),
                     [&](const auto& group) { return named(group.parts, part); });
}

bool TreeTrial::is_device(const Part& part) const {
  const Role role = catalog_.family(part.family).role;
  return role == Role::device || (role == Role::connector && !joins_unasked(catalog_, request_.rules, part));
}

namespace {

bool are_nested(const std::vector<PartId>& a, const std::vector<PartId>& b) {
  return std::includes(a.begin(), a.end(), b.begin(), b.end()) || std::includes(b.begin(), b.end(), a.begin(), a.end());
}

}  // namespace

// Tree rows run from the base outwards, so what is met already stands nearer to it; a part meets several only where it
// meets all between them, and of needs of which one is within the other one.
bool TreeTrial::in_order(std::size_t group, unsigned choice, const std::vector<int>& left) const {
  const NeedGroup& need = need_groups_[group];
  for (std::size_t before = 0; before < group; ++before) {
    const NeedGroup& other = need_groups_[before];
    if (!need.ordered || !other.ordered || other.kind != need.kind) continue;
    if (left[before] > 0 || ((choice >> before & 1u) && are_nested(other.parts, need.parts))) return false;
  }
  return true;
}

bool TreeTrial::meet(const std::vector<TreeItem>& tree, std::size_t row, std::vector<int> open) const {
  if (row == tree.size()) return std::all_of(open.begin(), open.end(), [](int left) { return left == 0; });
  if (tree[row].what != What::part) return meet(tree, row + 1, open);
  const bool device = is_device(catalog_.part(tree[row].part));
  for (unsigned choice = device ? 1 : 0; choice < 1u << need_groups_.size(); ++choice) {
    std::vector<int> left = open;
    bool possible = true;
    for (std::size_t group = 0; group < left.size() && possible; ++group) {
      if (!(choice >> group & 1u)) continue;
      const NeedGroup& need = need_groups_[group];
      possible = --left[group] >= 0 && named(need.parts, tree[row].part) && in_order(group, choice, left) &&
                 (!need.before_all || beyond(tree, row, std::nullopt).size() == request_.targets.size()) &&
                 (need.kind < 0 || beyond(tree, row, std::nullopt) == std::vector{static_cast<std::size_t>(need.kind)});
    }
    if (possible && meet(tree, row + 1, left)) return true;
  }
  return false;
}

bool TreeTrial::needs_met(const std::vector<TreeItem>& tree) const {
  std::vector<int> open;
  for (const NeedGroup& group : need_groups_) open.push_back(group.count);
  return meet(tree, 0, open);
}

/// Kinds of the targets that hang on a part, on all its ports or on one.
std::vector<std::size_t> TreeTrial::beyond(const std::vector<TreeItem>& tree, std::size_t row,
                                           std::optional<std::uint8_t> port) const {
  std::vector<std::size_t> kinds;
  for (const TreeItem& target : tree) {
    if (target.what != What::target) continue;
    for (const TreeItem* at = &target; at->host >= 0; at = &tree[static_cast<std::size_t>(at->host)])
      if (static_cast<std::size_t>(at->host) == row && at->host_port == port.value_or(at->host_port))
        kinds.push_back(target.kind);
  }
  return kinds;
}

}  // namespace riserun::chain::testing
