#include "chain/tree/best_tree.h"

#include "chain/part/head.h"

#include <algorithm>
#include <bit>
#include <tuple>

namespace riserun::chain {

namespace {

/// One inlet that the end of a branch can have, as far as its way must mind it.
struct Inlet {
  double least_size = 0.0;  // nominal, inches
  Length least_bore{};
  std::vector<catalog::PortUse> devices;
};

bool minds_inlet(const BranchRules& rules) { return rules.relief && !rules.smallest_bore; }

std::vector<Inlet> inlets_of(const Catalog& catalog, const AssemblyRequest& request, std::size_t target) {
  const BranchRules& rules = request.branch(target);
  if (!minds_inlet(rules)) return {{0.0, rules.smallest_bore.value_or(Length{}), rules.devices}};
  if (rules.devices.empty()) return {{nominal_inches(catalog, request.targets[target].type), Length{}, {}}};
  std::vector<Inlet> inlets;
  for (const catalog::PortUse& use : rules.devices) {
    const catalog::Part& part = catalog.part(use.part);
    const double size = nominal_inches(catalog, part.ports[use.port].type);
    const Length bore = port_bore(catalog, part, use.port);
    auto same = std::find_if(inlets.begin(), inlets.end(),
                             [&](const Inlet& i) { return i.least_size == size && i.least_bore == bore; });
    if (same == inlets.end()) same = inlets.insert(inlets.end(), {size, bore, {}});
    same->devices.push_back(use);
  }
  return inlets;
}

bool told_apart(const Catalog& catalog, const AssemblyRequest& request, std::size_t target) {
  const BranchRules& rules = request.branch(target);
  return !rules.needs.empty() || rules.facing == Facing::to_a_side || inlets_of(catalog, request, target).size() > 1;
}

bool same_devices(const std::vector<catalog::PortUse>& a, const std::vector<catalog::PortUse>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const auto& x, const auto& y) { return x.part == y.part && x.port == y.port; });
}

bool same(const AssemblyRequest& request, std::size_t a, std::size_t b) {
  const BranchRules& first = request.branch(a);
  const BranchRules& second = request.branch(b);
  const PortEnd& one = request.targets[a];
  const PortEnd& other = request.targets[b];
  if (one.freedom != other.freedom || !same_devices(first.devices, second.devices)) return false;
  if (first.devices.empty() && (one.type != other.type || one.material != other.material)) return false;
  return first.flow == second.flow && first.facing == second.facing && first.relief == second.relief &&
         first.smallest_bore == second.smallest_bore && first.banned == second.banned;
}

void count_uses(const catalog::Bin& bin, const BranchTree& tree, std::vector<int>& uses) {
  const auto use = [&](PartId part) {
    for (std::size_t item = 0; item < uses.size(); ++item) uses[item] += bin.items[item].part == part ? 1 : 0;
  };
  if (tree.target_kind) return use(tree.end.device);
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

int bushings_in(const Catalog& catalog, const BranchTree& tree) {
  if (tree.target_kind) return 0;
  int count = is_bushing(catalog, catalog.part(tree.move.part)) ? 1 : 0;
  for (const BranchTree& next : tree.follows) count += bushings_in(catalog, next);
  return count;
}

/// Needs in order as one digit that counts how many of the last ones are met.
NeedDigit needs_in_order(const std::vector<Need>& needs, std::uint32_t digit, std::size_t kind) {
  NeedDigit made{{}, digit, kind, {}, false};
  for (const Need& need : needs) {
    std::vector<PartId>& parts = made.in_order.emplace_back(need.parts);
    std::sort(parts.begin(), parts.end());
    parts.erase(std::unique(parts.begin(), parts.end()), parts.end());
    made.parts.insert(made.parts.end(), parts.begin(), parts.end());
  }
  std::sort(made.parts.begin(), made.parts.end());
  return made;
}

/// The search for one request with one inlet chosen for each kind of target.
class BranchQuestion {
 public:
  BranchQuestion(const FoldedCatalog& folded, const AssemblyRequest& request, bool wish_plugs)
      : folded_(folded),
        request_(request),
        rules_(folded.catalog(), request.rules),
        kinds_(kinds_of_targets(folded.catalog(), request)),
        wish_plugs_(wish_plugs) {
    for (const auto& rows : kinds_) inlets_.push_back(inlets_of(folded.catalog(), request, rows.front()));
  }

  std::optional<BestTree> answer();

 private:
  std::optional<FoundTree> answer_with(const std::vector<std::size_t>& chosen) const;
  bool has_too_many_bushings(const BranchTree& tree) const {
    const std::optional<int>& most = request_.rules.most_bushings;
    return most && bushings_in(folded_.catalog(), tree) > *most;
  }
  BranchGates gates_with(const std::vector<std::size_t>& chosen) const;
  BranchEnds ends_with(const std::vector<std::size_t>& chosen, const BranchDigits& digits) const;
  RunEnds ends_to(std::size_t kind) const;
  RunEnds ends_of_all() const;
  RunEnds with_needs(RunEnds ends) const;
  void count(const std::vector<bool>& counted, bool bushings, BranchCounts& counts, BranchDigits& digits) const;

  const FoldedCatalog& folded_;
  const AssemblyRequest& request_;
  Rules rules_;
  std::vector<std::vector<std::size_t>> kinds_;
  std::vector<std::vector<Inlet>> inlets_;  // by kind
  bool wish_plugs_;
};

BranchGates BranchQuestion::gates_with(const std::vector<std::size_t>& chosen) const {
  std::vector<KindRules> rules;
  for (std::size_t kind = 0; kind < kinds_.size(); ++kind) {
    const Inlet& inlet = inlets_[kind][chosen[kind]];
    rules.push_back({&request_.branch(kinds_[kind].front()), inlet.least_size, inlet.least_bore});
  }
  return {folded_.catalog(), std::move(rules)};
}

BranchEnds BranchQuestion::ends_with(const std::vector<std::size_t>& chosen, const BranchDigits& digits) const {
  const bool by_material = request_.rules.galvanic == Galvanic::avoid;
  const auto face = [&](const PortEnd& end) {
    return Face{end.type, by_material ? end.material.value_or(MaterialId{}) : MaterialId{}, false};
  };
  const auto fixed = [](const PortEnd& end) { return end.freedom == Freedom::fixed; };
  const std::ptrdiff_t held =
      std::count_if(request_.targets.begin(), request_.targets.end(), fixed) + (fixed(request_.rules.from) ? 1 : 0);
  BranchEnds ends{face(request_.rules.from), {{}, by_material}, held > 1 && fixed(request_.rules.from), {}};
  ends.metals.add(request_.rules.from);
  const bool by_make = keeps_the_line(request_.rules.order);
  if (by_make) ends.metals.first = shown_metal(request_.rules.from);
  for (std::size_t kind = 0; kind < kinds_.size(); ++kind) {
    const PortEnd& target = request_.targets[kinds_[kind].front()];
    const std::vector<catalog::PortUse>& devices = inlets_[kind][chosen[kind]].devices;
    TargetKind& made = ends.targets.emplace_back();
    made.held = held > 1 && fixed(target);
    made.count = static_cast<int>(kinds_[kind].size());
    made.ends = ends_to(kind);
    if (request_.branch(kinds_[kind].front()).devices.empty()) ends.metals.add(target);
    if (devices.empty() && by_make) made.faces = shown_metal(target);
    if (devices.empty())
      made.ways.push_back({face(target), PartId{}, 0, {}, {}, {}});
    else
      made.ways = device_ways(folded_, rules_, digits, devices);
  }
  return ends;
}

/// Of a target that one of several devices may stand at, the smallest and all kinds.
RunEnds BranchQuestion::ends_to(std::size_t kind) const {
  const Catalog& catalog = folded_.catalog();
  const PortTypeId base = request_.rules.from.type;
  const std::vector<catalog::PortUse>& devices = request_.branch(kinds_[kind].front()).devices;
  if (devices.empty())
    return with_needs(run_ends(catalog, request_.rules, base, request_.targets[kinds_[kind].front()].type));
  RunEnds ends;
  for (const catalog::PortUse& use : devices) {
    const RunEnds one = run_ends(catalog, request_.rules, base, catalog.part(use.part).ports[use.port].type);
    ends.line_inches = &use == devices.data() ? one.line_inches : std::min(ends.line_inches, one.line_inches);
    ends.kinds.insert(ends.kinds.end(), one.kinds.begin(), one.kinds.end());
    ends.keeps_metals_apart = one.keeps_metals_apart;
  }
  return with_needs(std::move(ends));
}

/// A hose with ends of such a thread may be asked for on any way, and a base that has it feeds a line of it.
RunEnds BranchQuestion::with_needs(RunEnds ends) const {
  const Catalog& catalog = folded_.catalog();
  ends.runs_on_hose = asks_for_hose_of_its_thread(catalog, request_.rules.needs) ||
                      only_at_end(catalog, catalog.port_type(request_.rules.from.type).kind);
  for (const auto& rows : kinds_)
    ends.runs_on_hose = ends.runs_on_hose || asks_for_hose_of_its_thread(catalog, request_.branch(rows.front()).needs);
  return ends;
}

RunEnds BranchQuestion::ends_of_all() const {
  RunEnds all;
  for (std::size_t kind = 0; kind < kinds_.size(); ++kind) {
    const RunEnds way = ends_to(kind);
    all.kinds.insert(all.kinds.end(), way.kinds.begin(), way.kinds.end());
    all.keeps_metals_apart = way.keeps_metals_apart;
  }
  return all;
}

void BranchQuestion::count(const std::vector<bool>& counted, bool bushings, BranchCounts& counts,
                           BranchDigits& digits) const {
  digits.wish_plugs = wish_plugs_;
  auto digit = static_cast<std::uint32_t>(kinds_.size());
  const auto want = [&](const NeedGroup& group, std::optional<std::size_t> kind) {
    counts.wanted.push_back({std::popcount(group.bits), kind, false});
    digits.needs.push_back({group.parts, digit++, kind, {}, group.before_all && !kind});
  };
  for (const NeedGroup& group : rules_.need_groups()) want(group, std::nullopt);
  for (std::size_t kind = 0; kind < kinds_.size(); ++kind) {
    const BranchRules& branch = request_.branch(kinds_[kind].front());
    if (branch.needs_in_order && !branch.needs.empty()) {
      counts.wanted.push_back({static_cast<int>(branch.needs.size()), kind, false});
      digits.needs.push_back(needs_in_order(branch.needs, digit++, kind));
    } else {
      ChainRequest alone;
      alone.needs = branch.needs;
      const Rules own(folded_.catalog(), alone);
      for (const NeedGroup& group : own.need_groups()) want(group, kind);
    }
    if (branch.facing != Facing::to_a_side) continue;
    counts.wanted.push_back({1, kind, true});
    ++digit;
  }
  for (std::size_t item = 0; item < counted.size(); ++item) {
    digits.of_bin_item.push_back(counted[item] ? digit++ : UINT32_MAX);
    if (counted[item]) counts.scarce.push_back(request_.rules.bin.items[item].count);
  }
  if (!bushings) return;
  digits.bushings = digit;
  counts.scarce.push_back(*request_.rules.most_bushings);
}

std::optional<FoundTree> BranchQuestion::answer_with(const std::vector<std::size_t>& chosen) const {
  const BranchGates gates = gates_with(chosen);
  if (!gates.base_fits(request_.rules.from.type)) return std::nullopt;
  std::vector<bool> counted(request_.rules.bin.items.size(), false);
  bool bushings = false;
  while (true) {
    BranchCounts counts;
    BranchDigits digits;
    count(counted, bushings, counts, digits);
    auto found = steiner_search(folded_, rules_, ends_with(chosen, digits), counts,
                                branch_moves(folded_, rules_, gates, digits, ends_of_all()));
    if (!found) return found;
    if (const auto item = overdrawn(request_.rules.bin, found->tree, counted))
      counted[*item] = true;
    else if (!bushings && has_too_many_bushings(found->tree))
      bushings = true;
    else
      return found;
  }
}

std::optional<BestTree> BranchQuestion::answer() {
  std::optional<FoundTree> best;
  std::vector<std::size_t> chosen(kinds_.size(), 0);
  while (true) {
    auto found = answer_with(chosen);
    const auto key = [](const FoundTree& tree) { return std::tie(tree.sum, tree.rest, tree.tokens); };
    if (found && (!best || key(*found) < key(*best))) best = std::move(found);
    std::size_t kind = 0;
    while (kind < kinds_.size() && ++chosen[kind] == inlets_[kind].size()) chosen[kind++] = 0;
    if (kind == kinds_.size()) break;
  }
  if (!best) return std::nullopt;
  return BestTree{std::move(best->tree), unpacked(request_.rules.order, best->sum), best->rest};
}

}  // namespace

std::vector<std::vector<std::size_t>> kinds_of_targets(const Catalog& catalog, const AssemblyRequest& request) {
  std::vector<std::vector<std::size_t>> kinds;
  for (std::size_t row = 0; row < request.targets.size(); ++row) {
    const bool alone = told_apart(catalog, request, row);
    const auto kind = std::find_if(kinds.begin(), kinds.end(), [&](const auto& rows) {
      return !alone && !told_apart(catalog, request, rows.front()) && same(request, rows.front(), row);
    });
    if (kind == kinds.end())
      kinds.push_back({row});
    else
      kind->push_back(row);
  }
  return kinds;
}

std::optional<BestTree> best_tree(const FoldedCatalog& folded, const AssemblyRequest& request, bool wish_plugs) {
  std::optional<BestTree> best = BranchQuestion(folded, request, wish_plugs).answer();
  const std::vector<Need>& needs = request.rules.needs;
  if (best || std::none_of(needs.begin(), needs.end(), [](const Need& need) { return need.before_all; })) return best;
  AssemblyRequest anywhere = request;
  for (Need& need : anywhere.rules.needs) need.before_all = false;
  return BranchQuestion(folded, anywhere, wish_plugs).answer();
}

}  // namespace riserun::chain
