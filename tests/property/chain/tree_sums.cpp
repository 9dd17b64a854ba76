// What a tree adds up to, and which of two is better.
#include "property/chain/every_tree.h"

#include <algorithm>
#include <tuple>

namespace riserun::chain::testing {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)
using What = TreeItem::What;

bool better_tree(Order order, const TreeSums& a, const TreeSums& b) {
  const Tuple x = tuple_of(order, a);
  const Tuple y = tuple_of(order, b);
  return x != y ? x < y : a.tokens < b.tokens;
}

void TreeTrial::count_port_on_way(PortTypeId port, const std::vector<std::size_t>& targets, bool is_plug,
                                  bool is_inner_joint, Sums& sums) const {
  const PortType& base = catalog_.port_type(request_.rules.from.type);
  double line = 0.0;
  std::vector<std::uint32_t> kinds{base.kind.row};
  for (const std::size_t target : targets) {
    std::vector<PortTypeId> ends;
    for (const PortUse& use : request_.branch(target).devices)
      ends.push_back(catalog_.part(use.part).ports[use.port].type);
    if (ends.empty()) ends.push_back(request_.targets[target].type);
    double smallest = 100.0;
    for (const PortTypeId end : ends) {
      kinds.push_back(catalog_.port_type(end).kind.row);
      smallest = std::min(smallest, size_of_line(catalog_, catalog_.port_type(end)));
    }
    line = std::max(line, std::min(size_of_line(catalog_, base), smallest));
  }
  count_port(catalog_, port, line, kinds, is_plug, clash(request_.rules.from.material, request_.rules.to.material),
             sums);
  if (is_inner_joint) count_inner_joint(catalog_, port, kinds, sums);
}

void TreeTrial::count_ports(const std::vector<TreeItem>& tree, std::size_t row, Sums& sums) const {
  const TreeItem& item = tree[row];
  const Part& part = catalog_.part(item.part);
  if (item.what == What::plug) return count_port_on_way(part.ports[0].type, kinds_, true, false, sums);
  // On a base that has such a thread, and beside a hose that has, the line is one of hose.
  bool on_hose = is_of_ends_alone(catalog_, catalog_.port_type(request_.rules.from.type).kind.row) ||
                 asks_for_such_a_hose(catalog_, request_.rules.needs);
  for (std::size_t target = 0; target < request_.targets.size(); ++target)
    on_hose = on_hose || asks_for_such_a_hose(catalog_, request_.branch(target).needs);
  count_port_on_way(part.ports[item.enter].type, beyond(tree, row, std::nullopt), false, item.host >= 0 && !on_hose,
                    sums);
  sums.other_kinds += count_body(catalog_, part, request_.rules);
  for (std::size_t port = 0; port < part.ports.size(); ++port) {
    const std::vector<std::size_t> targets = beyond(tree, row, static_cast<std::uint8_t>(port));
    if (port == item.enter || targets.empty()) continue;
    count_port_on_way(part.ports[port].type, targets, false, false, sums);
    const auto size = [&](std::size_t at) { return size_of_line(catalog_, catalog_.port_type(part.ports[at].type)); };
    sums.size_changes += size(port) != size(item.enter) ? 1 : 0;
  }
}

TreeSums TreeTrial::add_up(const std::vector<TreeItem>& tree) const {
  TreeSums sums;
  std::vector<int> uses(catalog_.parts().size(), 0);
  std::vector<PartId> parts;
  std::vector<std::optional<MaterialId>> ends{request_.rules.from.material};
  JudgedJoints joints;
  for (std::size_t row = 0; row < tree.size(); ++row) {
    const TreeItem& item = tree[row];
    const Shown host = item.host < 0
                           ? Shown{request_.rules.from.material, false}
                           : shown_at(catalog_, tree[static_cast<std::size_t>(item.host)].part, item.host_port);
    if (item.what != What::target)
      joints.emplace_back(host, shown_at(catalog_, item.part, item.enter));
    else if (request_.branch(item.kind).devices.empty())
      joints.emplace_back(host, Shown{request_.targets[item.kind].material, false});
    if (item.what == What::target) {
      if (request_.branch(item.kind).devices.empty()) ends.push_back(request_.targets[item.kind].material);
      sums.tokens.emplace_back("", item.kind);
      if (!item.part.valid()) continue;
      sums.tokens.emplace_back(catalog_.part(item.part).id, item.enter);
      ++uses[item.part.row];
      sums.parts += 1;
      sums.drawbacks += catalog_.family(catalog_.part(item.part).family).is_bushing ? 1 : 0;
      sums.drawbacks += catalog_.part(item.part).name.find("close nipple") != std::string::npos ? 1 : 0;
      continue;
    }
    const Part& part = catalog_.part(item.part);
    parts.push_back(item.part);
    count_ports(tree, row, sums);
    ++uses[item.part.row];
    sums.parts += 1;
    sums.tokens.emplace_back(part.id, item.what == What::part ? item.enter : 0u);
    if (item.what == What::plug) continue;
    sums.drawbacks += catalog_.family(part.family).is_bushing ? 1 : 0;
    sums.drawbacks += part.name.find("close nipple") != std::string::npos ? 1 : 0;
  }
  count_materials(catalog_, parts, ends, joints, request_.rules.galvanic, Shape::tree, sums);
  for (std::uint32_t row = 0; row < uses.size(); ++row) {
    const int bought = std::max(0, uses[row] - request_.rules.bin.count_of({row}));
    sums.buy += bought;
    sums.cents += bought * catalog_.part({row}).price.cents();
  }
  return sums;
}

}  // namespace riserun::chain::testing
