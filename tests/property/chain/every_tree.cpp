#include "property/chain/every_tree.h"

#include "property/chain/judged_duty.h"
#include "property/chain/swept.h"

#include <algorithm>
#include <numeric>
#include <set>
#include <tuple>

namespace riserun::chain::testing {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)
using What = TreeItem::What;

bool better_tree(Order order, const TreeSums& a, const TreeSums& b) {
  const Tuple x = tuple_of(order, a);
  const Tuple y = tuple_of(order, b);
  return x != y ? x < y : a.tokens < b.tokens;
}

namespace {

bool named(const std::vector<PartId>& parts, PartId part) {
  return std::find(parts.begin(), parts.end(), part) != parts.end();
}

}  // namespace

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

bool TreeTrial::is_device(const Part& part) const {
  const Role role = catalog_.family(part.family).role;
  return role == Role::device || (role == Role::connector && !joins_unasked(catalog_, request_.rules, part));
}

bool TreeTrial::may_be_used(PartId id) const {
  const ChainRequest& rules = request_.rules;
  if (!rules.banned.empty() && rules.banned[id.row]) return false;
  if (!rules.special_order && !catalog_.part(id).stocked && rules.bin.count_of(id) == 0) return false;
  return stands(catalog_, rules, id);
}

bool TreeTrial::clash(std::optional<MaterialId> a, std::optional<MaterialId> b) const {
  if (request_.rules.galvanic != Galvanic::avoid || !a || !b) return false;
  return eats(catalog_, request_.rules.service == Service::water && !request_.rules.dry, *a, *b);
}

PortTypeId TreeTrial::type_at(const std::vector<TreeItem>& tree, Open open) const {
  if (open.host < 0) return request_.rules.from.type;
  return catalog_.part(tree[static_cast<std::size_t>(open.host)].part).ports[open.port].type;
}

PortTypeId TreeTrial::type_of(const TreeItem& item) const {
  if (item.what == What::target && !item.part.valid()) return request_.targets[item.kind].type;
  return catalog_.part(item.part).ports[item.enter].type;
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
  if (item.what == What::target)
    outer = item.part.valid() ? std::optional(catalog_.part(item.part).material_at(item.enter))
                              : request_.targets[item.kind].material;
  if (item.what == What::part) outer = facing(catalog_.part(item.part), item.enter);
  if (item.what == What::plug) outer = catalog_.part(item.part).material;
  const auto close_nipple = [&](bool is_part, PartId part) {
    return is_part && catalog_.part(part).name.find("close nipple") != std::string::npos;
  };
  const bool ungripped = close_nipple(item.what == What::part, item.part) ||
                         (item.host >= 0 && close_nipple(true, tree[static_cast<std::size_t>(item.host)].part));
  if (ungripped && item.what != What::plug &&
      catalog_.mating_rule(type_at(tree, {item.host, item.host_port}), type_of(item))->turning == Turning::neither)
    return "a close nipple that would have to be held";
  return clash(inner, outer) ? "metals that must not meet" : "";
}

// Ports that water or air goes through: the entered one, and those that lead on.
std::string TreeTrial::wrong_part(const std::vector<TreeItem>& tree, std::size_t row) const {
  const Part& part = catalog_.part(tree[row].part);
  if (!part_allowed(tree[row].part)) return "a part that is not allowed: " + part.id;
  if (tree[row].what == What::plug) {
    const bool plug = catalog_.family(part.family).role == Role::plug;
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
    const bool is_union = item.what == What::part && catalog_.part(item.part).ports.size() == 2 &&
                          (catalog_.part(item.part).closing || hose_closes(catalog_, catalog_.part(item.part), 0, 1));
    if (!is_union) join(row, outer_half(row));
    const std::size_t inner = item.host < 0 ? count : outer_half(static_cast<std::size_t>(item.host));
    const MatingRule& rule = *catalog_.mating_rule(type_at(tree, {item.host, item.host_port}), type_of(item));
    if (!rule.closing || rule.lengthwise) join(inner, row);
  }
  std::vector<std::size_t> fixed;
  if (request_.rules.from.freedom == Freedom::fixed) fixed.push_back(piece[count]);
  for (std::size_t row = 0; row < count; ++row)
    if (tree[row].what == What::target && request_.targets[tree[row].kind].freedom == Freedom::fixed)
      fixed.push_back(piece[row]);
  std::sort(fixed.begin(), fixed.end());
  return std::adjacent_find(fixed.begin(), fixed.end()) == fixed.end() ? "" : "two fixed ends with nothing that closes";
}

// From the target inwards to the base, part by part.
std::string TreeTrial::wrong_way(const std::vector<TreeItem>& tree, std::size_t target_row) const {
  const TreeItem& target = tree[target_row];
  const BranchRules& rules = request_.branch(target.kind);
  const auto nominal = [&](PortTypeId type) { return size_of_line(catalog_, catalog_.port_type(type)); };
  const bool minds_inlet = rules.relief && !rules.smallest_bore;
  const double inlet = nominal(type_of(target));
  if (minds_inlet && nominal(request_.rules.from.type) < inlet) return "the base is smaller than the inlet";
  int quarters = 0;
  std::uint8_t leave = target.host_port;
  for (int at = target.host; at >= 0; at = tree[static_cast<std::size_t>(at)].host) {
    const TreeItem& item = tree[static_cast<std::size_t>(at)];
    const Part& part = catalog_.part(item.part);
    const Length bore = std::min(part.ports[item.enter].bore, part.ports[leave].bore);
    if (!rules.banned.empty() && rules.banned[item.part.row]) return "a part that is kept off this way";
    if (rules.smallest_bore && bore < *rules.smallest_bore) return "too narrow for this target";
    if (rules.relief && catalog_.family(part.family).can_shut) return "something that shuts before a relief valve";
    if (minds_inlet && target.part.valid() && bore < catalog_.part(target.part).ports[target.enter].bore)
      return "narrower than the relief valve";
    if (minds_inlet && std::min(nominal(part.ports[item.enter].type), nominal(part.ports[leave].type)) < inlet)
      return "a smaller size than the inlet";
    if (part.arrow && (item.enter == 0) != (rules.flow == BranchFlow::from_base)) return "a one-way part wrong";
    const int degrees = static_cast<int>(part.ports[item.enter].heading_degrees - part.ports[leave].heading_degrees);
    const int apart = ((degrees % 360) + 360) % 360;
    const bool flexible = catalog_.family(part.family).flexible;
    if (rules.facing != Facing::any && (flexible || (apart != 180 && apart != 90 && apart != 270)))
      return "it looks in no direction that is known";
    quarters += apart == 180 ? 0 : 1;
    leave = item.host_port;
  }
  if (rules.facing == Facing::straight_on && quarters != 0) return "it does not look straight on";
  if (rules.facing == Facing::to_a_side && quarters != 1) return "it does not look to a side";
  return "";
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
  for (std::size_t row = 0; row < tree.size(); ++row) {
    const TreeItem& item = tree[row];
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
  count_materials(catalog_, parts, ends, request_.rules.galvanic, Shape::tree, sums);
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
    const bool device = is_device(part);
    const bool asked = std::any_of(need_groups_.begin(), need_groups_.end(),
                                   [&](const auto& group) { return named(group.parts, {row}); });
    if (device && !asked) continue;
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
