#include "chain/refusal/why_no_assembly.h"

#include "chain/refusal/why_no_chain.h"
#include "chain/tree/best_tree.h"
#include "quantity/write.h"

#include <fmt/format.h>

#include <algorithm>
#include <bit>

namespace riserun::chain {

namespace {

/// One rule taken off, what to tell the person to do, and why there is none while it stands.
struct Relaxation {
  AssemblyRequest request;
  std::string mend;  // empty: it is not to be taken off
  std::string reason;
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
  std::string why_not_held(const BranchRules& rules, const Need& need, const std::string& target) const;
  std::string why_not_alone(std::size_t target) const;
  NoChain why_no_way(std::size_t target) const;
  void add_ends(std::vector<Relaxation>& all) const;
  void add_needs(std::vector<Relaxation>& all) const;
  void add_rules(std::vector<Relaxation>& all) const;
  std::string reason(const NoAssembly& answer, const std::vector<Relaxation>& mending) const;
  std::string name(std::size_t target) const {
    if (!request_.branch(target).devices.empty()) return name_of_target(request_, target);
    return fmt::format("{} ({})", name_of_target(request_, target), catalog_.written(request_.targets[target].type));
  }

  template <class Change>
  void add(std::vector<Relaxation>& all, Change change, std::string mend, std::string reason) const {
    Relaxation& made = all.emplace_back(Relaxation{request_, std::move(mend), std::move(reason)});
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
  const std::string reason = "two fixed ends have no union, swivel, hose or other closing joint between them";
  if (request_.rules.from.freedom == Freedom::fixed)
    add(
        all, [](AssemblyRequest& r) { r.rules.from.freedom = Freedom::loose; },
        fmt::format("let the base ({}) turn and move", catalog_.written(request_.rules.from.type)), reason);
  for (std::size_t row = 0; row < request_.targets.size(); ++row)
    if (request_.targets[row].freedom == Freedom::fixed)
      add(
          all, [&](AssemblyRequest& r) { r.targets[row].freedom = Freedom::loose; },
          fmt::format("let {} turn and move", name(row)), reason);
}

void WhyNoAssembly::add_needs(std::vector<Relaxation>& all) const {
  for (std::size_t row = 0; row < request_.rules.needs.size(); ++row) {
    const std::string& words = request_.rules.needs[row].words;
    add(
        all, [&](AssemblyRequest& r) { r.rules.needs.erase(r.rules.needs.begin() + static_cast<std::ptrdiff_t>(row)); },
        fmt::format("do without the {}", words), fmt::format("no assembly can hold a {}", words));
  }
}

void WhyNoAssembly::add_rules(std::vector<Relaxation>& all) const {
  const ChainRequest& rules = request_.rules;
  if (!rules.special_order)
    add(
        all, [](AssemblyRequest& r) { r.rules.special_order = true; }, "allow parts that a store must order",
        "the stocked parts do not lead there");
  if (rules.hottest) {
    const std::string heat = write_temperature(*rules.hottest, UnitSystem::inch);
    add(
        all, [](AssemblyRequest& r) { r.rules.hottest.reset(); }, fmt::format("keep it cooler than {}", heat),
        fmt::format("no assembly is proved for {}", heat));
  }
  if (rules.vacuum)
    add(
        all, [](AssemblyRequest& r) { r.rules.vacuum = false; }, "make sure that no vacuum can come about",
        "no assembly is proved for vacuum");
  if (rules.rating)
    add(
        all, [](AssemblyRequest& r) { r.rules.rating.reset(); },
        fmt::format("accept a rating below {:.4g} psi", in_psi(*rules.rating)),
        fmt::format("no assembly stands {:.4g} psi in every part", in_psi(*rules.rating)));
  if (rules.smallest_bore)
    add(
        all, [](AssemblyRequest& r) { r.rules.smallest_bore.reset(); },
        fmt::format("accept a bore below {:.3g} in", in_inches(*rules.smallest_bore)),
        fmt::format("every assembly narrows below {:.3g} in", in_inches(*rules.smallest_bore)));
  if (rules.room)
    add(
        all, [](AssemblyRequest& r) { r.rules.room.reset(); },
        fmt::format("make more room round the run than {:.3g} in", in_inches(*rules.room)),
        fmt::format("every assembly holds a body that cannot be turned within {:.3g} in of the run",
                    in_inches(*rules.room)));
  if (rules.most_bushings)
    add(
        all, [](AssemblyRequest& r) { r.rules.most_bushings.reset(); }, "allow more bushings",
        fmt::format("every assembly takes more than {} bushing{}", *rules.most_bushings,
                    *rules.most_bushings == 1 ? "" : "s"));
  if (rules.galvanic == Galvanic::avoid)
    add(
        all, [](AssemblyRequest& r) { r.rules.galvanic = Galvanic::warn; },
        "accept metals side by side that should be kept apart, and watch the joint",
        "every assembly brings metals together that should be kept apart");
  if (rules.service == Service::air)
    add(
        all, [](AssemblyRequest& r) { r.rules.service = Service::water; },
        "use the assembly for water only, never under compressed air",
        "every assembly holds a part that must not stand compressed air");
  if (std::find(rules.banned.begin(), rules.banned.end(), true) != rules.banned.end())
    add(
        all, [](AssemblyRequest& r) { r.rules.banned.clear(); }, "allow the parts that are ruled out",
        "every assembly takes a part that is ruled out");
}

std::string WhyNoAssembly::why_not_held(const BranchRules& rules, const Need& need, const std::string& target) const {
  const bool shuts = std::all_of(need.parts.begin(), need.parts.end(),
                                 [&](PartId part) { return catalog_.family(catalog_.part(part).family).can_shut; });
  if (rules.relief && shuts)
    return fmt::format("a {} can shut, and nothing that can may stand between a tank and its relief valve", need.words);
  return fmt::format("no way to {} can hold a {}", target, need.words);
}

// The rules of one branch.
void WhyNoAssembly::add_branch(std::vector<Relaxation>& all, std::size_t row) const {
  const BranchRules& rules = request_.branch(row);
  const std::string target = name(row);
  const auto relax = [&](auto change, std::string mend, std::string reason) {
    add(
        all, [&](AssemblyRequest& r) { change(r.branches[row]); }, std::move(mend), std::move(reason));
  };
  for (std::size_t need = 0; need < rules.needs.size(); ++need)
    relax([&](BranchRules& r) { r.needs.erase(r.needs.begin() + static_cast<std::ptrdiff_t>(need)); },
          fmt::format("do without the {} on the way to {}", rules.needs[need].words, target),
          why_not_held(rules, rules.needs[need], target));
  if (rules.needs_in_order && rules.needs.size() > 1)
    relax([](BranchRules& r) { r.needs_in_order = false; },
          fmt::format("let what is asked for on the way to {} come in any order", target),
          fmt::format("no way to {} holds what is asked for in the order given", target));
  if (rules.smallest_bore)
    relax([](BranchRules& r) { r.smallest_bore = Length{}; },
          fmt::format("accept a bore below {:.3g} in on the way to {}", in_inches(*rules.smallest_bore), target),
          fmt::format("every way to {} narrows below {:.3g} in", target, in_inches(*rules.smallest_bore)));
  if (!rules.banned.empty())
    relax([](BranchRules& r) { r.banned.clear(); },
          fmt::format("let the way to {} pass what it is to avoid: {}", target, fmt::join(rules.avoid, ", ")),
          fmt::format("every way to {} passes what it is to avoid: {}", target, fmt::join(rules.avoid, ", ")));
  if (rules.facing != Facing::any)
    relax([](BranchRules& r) { r.facing = Facing::any; }, fmt::format("let {} look anywhere", target),
          fmt::format("no way to {} lets it look {}", target,
                      rules.facing == Facing::straight_on ? "straight on" : "to a side"));
  add_relief(all, row);
}

// What keeps a relief valve sound, or air on its way, is named, but not offered up.
void WhyNoAssembly::add_relief(std::vector<Relaxation>& all, std::size_t row) const {
  const BranchRules& rules = request_.branch(row);
  const std::string target = name(row);
  const auto relax = [&](auto change, std::string reason) {
    add(
        all, [&](AssemblyRequest& r) { change(r.branches[row]); }, "", std::move(reason));
  };
  if (rules.relief && !rules.smallest_bore)
    relax([](BranchRules& r) { r.smallest_bore = Length{}; },
          fmt::format("every way to {} is smaller than the relief valve's own inlet; give it a port of its own size",
                      target));
  if (rules.relief)
    relax([](BranchRules& r) { r.relief = false; },
          fmt::format("every way to {} passes something that can shut, and nothing may between a tank and its relief "
                      "valve",
                      target));
  if (rules.flow == BranchFlow::to_base)
    relax([](BranchRules& r) { r.flow = BranchFlow::from_base; },
          fmt::format("every way to {} passes a one-way part that does not let it feed the base", target));
}

std::vector<Relaxation> WhyNoAssembly::relaxations() const {
  std::vector<Relaxation> all;
  for (std::size_t row = 0; row < request_.branches.size(); ++row) add_branch(all, row);
  add_ends(all);
  add_needs(all);
  add_rules(all);
  std::erase_if(all, [&](const Relaxation& r) { return !best_tree(folded_, r.request); });
  return all;
}

// By the rules of its own branch: the first that is in the way by itself; empty: they are not in the way.
std::string WhyNoAssembly::why_not_alone(std::size_t target) const {
  AssemblyRequest bare = only({target});
  BranchRules& rules = bare.branches.front();
  BranchRules free;
  free.devices = rules.devices;
  free.flow = rules.flow;
  rules = free;
  if (!best_tree(folded_, bare)) return "";
  std::vector<Relaxation> own;
  add_branch(own, target);
  for (const Relaxation& relaxation : own) {
    bare.branches.front() = relaxation.request.branch(target);
    if (best_tree(folded_, bare)) return relaxation.reason;
  }
  return fmt::format("no way to {} meets all that is asked of it", name(target));
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

std::string WhyNoAssembly::reason(const NoAssembly& answer, const std::vector<Relaxation>& mending) const {
  const std::string base = catalog_.written(request_.rules.from.type);
  if (answer.targets.size() == 1 && !answer.way)
    return fmt::format("{} cannot be reached from the base ({}) as asked: {}", name(answer.targets.front()), base,
                       why_not_alone(answer.targets.front()));
  if (answer.way)
    return fmt::format("{} cannot be reached from the base ({}): {}", name(answer.targets.front()), base,
                       answer.way->reason);
  const std::string because = mending.empty() ? "" : ": " + mending.front().reason;
  if (answer.targets.empty()) return "the targets can be joined, but not with all that is asked for" + because;
  std::string names;
  for (std::size_t i = 0; i < answer.targets.size(); ++i) {
    if (i > 0) names += i + 1 == answer.targets.size() ? " and " : ", ";
    names += name(answer.targets[i]);
  }
  if (because.empty())
    return fmt::format(
        "{} can each be reached from the base ({}), but no tee, cross or other part with ports enough "
        "leads to them together",
        names, base);
  return fmt::format("{} cannot be joined to the base ({}) together{}", names, base, because);
}

void add_mends(const std::vector<Relaxation>& mending, NoAssembly& answer) {
  for (const Relaxation& relaxation : mending)
    if (!relaxation.mend.empty()) answer.mends.push_back(relaxation.mend);
}

NoAssembly WhyNoAssembly::explain() {
  NoAssembly answer;
  if (const auto tree = best_tree(folded_, request_, true)) {
    std::vector<std::string> ports;
    add_open_ports(catalog_, *tree, ports);
    answer.reason = fmt::format("every assembly leaves a port open, and no plug or cap that the rules allow goes on {}",
                                fmt::join(ports, " or "));
    add_mends(relaxations(), answer);
    return answer;
  }
  answer.targets = least_set();
  const std::vector<Relaxation> mending = relaxations();
  if (answer.targets.size() == 1 && why_not_alone(answer.targets.front()).empty())
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
