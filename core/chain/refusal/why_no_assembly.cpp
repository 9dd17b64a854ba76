#include "chain/refusal/why_no_assembly.h"

#include "chain/refusal/request_rules.h"
#include "chain/refusal/why_no_chain.h"
#include "chain/tree/best_tree.h"

#include <algorithm>
#include <bit>

namespace riserun::chain {

namespace {

using quantity::fact;
using quantity::Value;

/// One rule taken off, what to tell the person to do, and why there is none while it stands.
struct Relaxation {
  AssemblyRequest request;
  std::optional<Fact> relief;  // nullopt: it is not to be taken off
  Fact reason;
};

class WhyNoAssembly {
 public:
  WhyNoAssembly(const FoldedCatalog& folded, const AssemblyRequest& request)
      : folded_(folded), catalog_(folded.catalog()), request_(request) {}

  NoAssembly explain();

 private:
  std::vector<std::size_t> least_set() const;
  AssemblyRequest only(const std::vector<std::size_t>& rows) const;
  std::vector<Relaxation> relaxations() const;
  void add_branch(std::vector<Relaxation>& all, std::size_t row) const;
  void add_relief(std::vector<Relaxation>& all, std::size_t row) const;
  std::optional<Fact> need_shuts(const BranchRules& rules, const Need& need) const;
  Fact way_to(std::size_t target) const { return fact("a_way_to", name(target)); }
  std::optional<Fact> why_not_alone(std::size_t target) const;
  NoChain why_no_way(std::size_t target) const;
  void add_ends(std::vector<Relaxation>& all) const;
  void add_rules(std::vector<Relaxation>& all) const;
  Fact reason(const NoAssembly& answer, const std::vector<Relaxation>& mending) const;
  Fact name(std::size_t target) const {
    if (!request_.branch(target).devices.empty()) return fact("end_named", name_of_target(request_, target));
    return fact("end_with_port", name_of_target(request_, target), catalog_.written(request_.targets[target].type));
  }
  std::string base_port() const { return catalog_.written(request_.rules.from.type); }

  template <class Change>
  void add(std::vector<Relaxation>& all, Change change, std::optional<Fact> relief, Fact reason) const {
    Relaxation& made = all.emplace_back(Relaxation{request_, std::move(relief), std::move(reason)});
    change(made.request);
  }

  const FoldedCatalog& folded_;
  const Catalog& catalog_;
  const AssemblyRequest& request_;
};

// Spare ports of the best assembly that there would be if each could be closed.
void add_open_ports(const Catalog& catalog, const BranchTree& tree, std::vector<std::string>& ports) {
  if (tree.target_kind) return;
  const catalog::Part& part = catalog.part(tree.move.part);
  std::size_t next_plug = 0;
  for (std::size_t port = 0; port < part.ports.size(); ++port) {
    if (port == tree.move.enter || tree.move.leads_on(port) || tree.move.plugs[next_plug++].valid()) continue;
    const std::string name = catalog.written(part.ports[port].type);
    if (std::find(ports.begin(), ports.end(), name) == ports.end()) ports.push_back(name);
  }
  for (const BranchTree& next : tree.follows) add_open_ports(catalog, next, ports);
}

/// The same request for some of the targets, needs of the whole left out.
AssemblyRequest WhyNoAssembly::only(const std::vector<std::size_t>& rows) const {
  AssemblyRequest part = request_;
  part.rules.needs.clear();
  part.targets.clear();
  part.branches.clear();
  for (const std::size_t row : rows) {
    part.targets.push_back(request_.targets[row]);
    part.branches.push_back(request_.branch(row));
  }
  return part;
}

// Of the sets that cannot be joined, needs of the whole aside, the smallest; empty: only those needs are in the way.
std::vector<std::size_t> WhyNoAssembly::least_set() const {
  const std::size_t count = request_.targets.size();
  for (int size = 1; size <= static_cast<int>(count); ++size) {
    for (std::uint32_t set = 1; set < 1u << count; ++set) {
      if (std::popcount(set) != size) continue;
      std::vector<std::size_t> rows;
      for (std::size_t row = 0; row < count; ++row)
        if (set >> row & 1u) rows.push_back(row);
      if (!best_tree(folded_, only(rows))) return rows;
    }
  }
  return {};
}

void WhyNoAssembly::add_ends(std::vector<Relaxation>& all) const {
  const Askable& row = askable("held_end");
  if (request_.rules.from.freedom == Freedom::fixed)
    add(
        all, [](AssemblyRequest& r) { r.rules.from.freedom = Freedom::loose; },
        relief_of(row, {quantity::value_of(fact("end_with_port", "the base", base_port()))}), alone_of(row, {}));
  for (std::size_t target = 0; target < request_.targets.size(); ++target)
    if (request_.targets[target].freedom == Freedom::fixed)
      add(
          all, [&](AssemblyRequest& r) { r.targets[target].freedom = Freedom::loose; },
          relief_of(row, {quantity::value_of(name(target))}), alone_of(row, {}));
}

// What is asked of the whole, as of a chain; how its ends are held is said end by end.
void WhyNoAssembly::add_rules(std::vector<Relaxation>& all) const {
  const std::vector<RequestRule> rules = rules_of(catalog_, request_.rules, asked_assembly());
  for (std::size_t row = 0; row < rules.size(); ++row) {
    if (rules[row].is_freedom()) continue;
    add(
        all, [&](AssemblyRequest& r) { r.rules = without(request_.rules, rules, RuleSet{1} << row); },
        rules[row].reliefs.front(), rules[row].alone);
  }
}

std::optional<Fact> WhyNoAssembly::need_shuts(const BranchRules& rules, const Need& need) const {
  const bool shuts = std::all_of(need.parts.begin(), need.parts.end(),
                                 [&](PartId part) { return catalog_.family(catalog_.part(part).family).can_shut; });
  return rules.relief && shuts ? std::optional(fact("need_shuts_before_relief", need.words)) : std::nullopt;
}

// The rules of one branch. Words that say the same of a whole run are the run's.
void WhyNoAssembly::add_branch(std::vector<Relaxation>& all, std::size_t target) const {
  const BranchRules& rules = request_.branch(target);
  const auto relax = [&](const Askable& row, Value value, auto change, std::optional<Fact> reason = {}) {
    const Askable& words = row.like.empty() ? row : askable(row.like);
    std::vector<Value> alone{value, quantity::value_of(way_to(target))};
    std::vector<Value> relief{value, quantity::value_of(fact("on_the_way_to", name(target))),
                              quantity::value_of(name(target))};
    add(
        all, [&](AssemblyRequest& r) { change(r.branches[target]); }, relief_of(words, std::move(relief)),
        reason ? std::move(*reason) : alone_of(words, std::move(alone)));
  };
  for (const Askable& row : askables()) {
    if (row.of != AskedOf::branch || row.relief == Relief::none) continue;
    if (row.code == "branch_need") {
      for (std::size_t need = 0; need < rules.needs.size(); ++need)
        relax(
            row, rules.needs[need].words,
            [&](BranchRules& r) { r.needs.erase(r.needs.begin() + static_cast<std::ptrdiff_t>(need)); },
            need_shuts(rules, rules.needs[need]));
    } else if (row.code == "branch_avoid") {
      if (!rules.banned.empty()) relax(row, rules.avoid, [](BranchRules& r) { r.banned.clear(); });
    } else if (is_asked(rules, row) && (row.code != "branch_order_of_needs" || rules.needs.size() > 1)) {
      // Any bore will do, the relief valve's own inlet notwithstanding.
      relax(row, value_said(rules, row), [&](BranchRules& r) {
        give_up(r, row);
        if (row.code == "branch_bore") r.smallest_bore = Length{};
      });
    }
  }
  add_relief(all, target);
}

// What keeps a relief valve sound, or air on its way, is named, but not offered up.
void WhyNoAssembly::add_relief(std::vector<Relaxation>& all, std::size_t target) const {
  const BranchRules& rules = request_.branch(target);
  const auto relax = [&](auto change, Fact reason) {
    add(
        all, [&](AssemblyRequest& r) { change(r.branches[target]); }, std::nullopt, std::move(reason));
  };
  if (rules.relief && !rules.smallest_bore)
    relax([](BranchRules& r) { r.smallest_bore = Length{}; }, fact("way_smaller_than_inlet", way_to(target)));
  if (rules.relief) relax([](BranchRules& r) { r.relief = false; }, fact("way_can_be_shut", way_to(target)));
  if (rules.flow == BranchFlow::to_base)
    relax([](BranchRules& r) { r.flow = BranchFlow::from_base; }, fact("way_against_flow", way_to(target)));
}

std::vector<Relaxation> WhyNoAssembly::relaxations() const {
  std::vector<Relaxation> all;
  for (std::size_t row = 0; row < request_.branches.size(); ++row) add_branch(all, row);
  add_ends(all);
  add_rules(all);
  std::erase_if(all, [&](const Relaxation& r) { return !best_tree(folded_, r.request); });
  return all;
}

// By the rules of its own branch: the first that is in the way by itself; nullopt: they are not in the way.
std::optional<Fact> WhyNoAssembly::why_not_alone(std::size_t target) const {
  AssemblyRequest bare = only({target});
  BranchRules& rules = bare.branches.front();
  BranchRules free;
  free.devices = rules.devices;
  free.flow = rules.flow;
  rules = free;
  if (!best_tree(folded_, bare)) return std::nullopt;
  std::vector<Relaxation> own;
  add_branch(own, target);
  for (const Relaxation& relaxation : own) {
    bare.branches.front() = relaxation.request.branch(target);
    if (best_tree(folded_, bare)) return relaxation.reason;
  }
  return fact("way_meets_not_all", way_to(target));
}

// To a device: to the first of those that can stand there.
NoChain WhyNoAssembly::why_no_way(std::size_t target) const {
  ChainRequest way = request_.rules;
  way.from.called = name_of_base(request_);
  way.to = request_.targets[target];
  if (const auto& devices = request_.branch(target).devices; !devices.empty())
    way.to.type = catalog_.part(devices.front().part).ports[devices.front().port].type;
  way.to.called = name_of_target(request_, target);
  way.needs.clear();
  way.most_parts.reset();
  return why_no_chain(folded_, way);
}

Fact WhyNoAssembly::reason(const NoAssembly& answer, const std::vector<Relaxation>& mending) const {
  if (answer.targets.size() == 1)
    return answer.way ? fact("end_out_of_reach", name(answer.targets.front()), base_port(), answer.way->reason)
                      : fact("end_out_of_reach_as_asked", name(answer.targets.front()), base_port(),
                             why_not_alone(answer.targets.front()).value());
  Facts because;
  if (!mending.empty()) because.push_back(fact("because", mending.front().reason));
  if (answer.targets.empty()) return fact("ends_can_be_joined_but", std::move(because));
  Facts names;
  for (const std::size_t target : answer.targets) names.push_back(name(target));
  return because.empty() ? fact("no_part_joins_ends", std::move(names), base_port())
                         : fact("ends_cannot_be_joined", std::move(names), base_port(), std::move(because));
}

void add_mends(const std::vector<Relaxation>& mending, NoAssembly& answer) {
  for (const Relaxation& relaxation : mending)
    if (relaxation.relief) answer.mends.push_back(*relaxation.relief);
}

NoAssembly WhyNoAssembly::explain() {
  NoAssembly answer;
  if (const auto tree = best_tree(folded_, request_, true)) {
    std::vector<std::string> ports;
    add_open_ports(catalog_, tree->tree, ports);
    answer.reason = fact("ports_stay_open", std::move(ports));
    add_mends(relaxations(), answer);
    return answer;
  }
  answer.targets = least_set();
  const std::vector<Relaxation> mending = relaxations();
  if (answer.targets.size() == 1 && !why_not_alone(answer.targets.front()))
    answer.way = why_no_way(answer.targets.front());
  answer.reason = reason(answer, mending);
  add_mends(mending, answer);
  return answer;
}

}  // namespace

NoAssembly why_no_assembly(const FoldedCatalog& folded, const AssemblyRequest& request) {
  return WhyNoAssembly(folded, request).explain();
}

}  // namespace riserun::chain
