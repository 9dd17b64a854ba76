#include "chain/why_no_assembly.h"

#include "chain/best_branches.h"
#include "chain/why_none.h"
#include "quantity/write.h"

#include <fmt/format.h>

#include <algorithm>
#include <bit>

namespace riserun::chain {

namespace {

/// One rule taken off, what to tell the person to do, and why there is none while it stands.
struct Relaxation {
  AssemblyRequest request;
  std::string mend;
  std::string reason;
};

class WhyNoAssembly {
 public:
  WhyNoAssembly(const Network& network, const AssemblyRequest& request)
      : network_(network), catalog_(network.catalog()), request_(request) {}

  NoAssembly explain();

 private:
  std::vector<std::size_t> least_set() const;
  std::vector<Relaxation> relaxations() const;
  void add_ends(std::vector<Relaxation>& all) const;
  void add_needs(std::vector<Relaxation>& all) const;
  void add_rules(std::vector<Relaxation>& all) const;
  std::string reason(const NoAssembly& answer, const std::vector<Relaxation>& mending) const;
  std::string name(std::size_t target) const {
    return fmt::format("{} ({})", name_of_target(request_, target), catalog_.written(request_.targets[target].type));
  }

  template <class Change>
  void add(std::vector<Relaxation>& all, Change change, std::string mend, std::string reason) const {
    Relaxation& made = all.emplace_back(Relaxation{request_, std::move(mend), std::move(reason)});
    change(made.request);
  }

  const Network& network_;
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

// Of the sets that cannot be joined, needs aside, the smallest; empty: only the needs are in the way.
std::vector<std::size_t> WhyNoAssembly::least_set() const {
  AssemblyRequest part = request_;
  part.rules.needs.clear();
  const std::size_t count = request_.targets.size();
  for (int size = 1; size <= static_cast<int>(count); ++size) {
    for (std::uint32_t set = 1; set < 1u << count; ++set) {
      if (std::popcount(set) != size) continue;
      part.targets.clear();
      std::vector<std::size_t> rows;
      for (std::size_t row = 0; row < count; ++row)
        if (set >> row & 1u) rows.push_back(row);
      for (const std::size_t row : rows) part.targets.push_back(request_.targets[row]);
      if (!best_branches(network_, part)) return rows;
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

std::vector<Relaxation> WhyNoAssembly::relaxations() const {
  std::vector<Relaxation> all;
  add_ends(all);
  add_needs(all);
  add_rules(all);
  std::erase_if(all, [&](const Relaxation& r) { return !best_branches(network_, r.request); });
  return all;
}

std::string WhyNoAssembly::reason(const NoAssembly& answer, const std::vector<Relaxation>& mending) const {
  const std::string base = catalog_.written(request_.rules.from.type);
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

NoAssembly WhyNoAssembly::explain() {
  NoAssembly answer;
  if (const auto tree = best_branches(network_, request_, true)) {
    std::vector<std::string> ports;
    add_open_ports(catalog_, *tree, ports);
    answer.reason = fmt::format("every assembly leaves a port open, and no plug or cap that the rules allow goes on {}",
                                fmt::join(ports, " or "));
    for (const Relaxation& relaxation : relaxations()) answer.mends.push_back(relaxation.mend);
    return answer;
  }
  answer.targets = least_set();
  const std::vector<Relaxation> mending = relaxations();
  if (answer.targets.size() == 1) {
    ChainRequest way = request_.rules;
    way.from.called = name_of_base(request_);
    way.to = request_.targets[answer.targets.front()];
    way.to.called = name_of_target(request_, answer.targets.front());
    way.needs.clear();
    way.most_parts.reset();
    answer.way = why_none(network_, way);
  }
  answer.reason = reason(answer, mending);
  for (const Relaxation& relaxation : mending) answer.mends.push_back(relaxation.mend);
  return answer;
}

}  // namespace

NoAssembly why_no_assembly(const Network& network, const AssemblyRequest& request) {
  return WhyNoAssembly(network, request).explain();
}

}  // namespace riserun::chain
