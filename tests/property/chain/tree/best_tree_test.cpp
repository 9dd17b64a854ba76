// The best branched assembly of thousands of small random catalogs against every one there is.
#include "chain/tree/best_tree.h"

#include "chain/build/assemble.h"
#include "chain/finder.h"
#include "property/chain/assembly.h"
#include "property/chain/random_assembly.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>
#include <numeric>

namespace riserun::chain::testing::best_tree_test {
namespace {

constexpr std::uint32_t kWorlds = 6600;
constexpr std::size_t kBeginnings = 400;  // looked at for each depth of the exhaustive search

/// Carries the build order out: what is turned must be a body alone that nothing holds, or, where the step says so, one
/// with what was made up on it in line.
class BranchBench {
 public:
  BranchBench(const catalog::Catalog& catalog, const AssemblyRequest& request, const Assembly& assembly)
      : catalog_(catalog),
        request_(request),
        assembly_(assembly),
        cluster_(1 + assembly.parts.size() * 2 + request.targets.size()) {
    std::iota(cluster_.begin(), cluster_.end(), std::size_t{0});
  }

  std::string carry_out();

 private:
  std::size_t base() const { return 0; }
  std::size_t first_half(std::size_t part) const { return 1 + 2 * part; }
  std::size_t second_half(std::size_t part) const { return 2 + 2 * part; }
  std::size_t target(std::size_t row) const { return 1 + 2 * assembly_.parts.size() + row; }
  void join(std::size_t a, std::size_t b) {
    const std::size_t gone = cluster_[b];
    const std::size_t kept = cluster_[a];
    std::replace(cluster_.begin(), cluster_.end(), gone, kept);
  }
  std::size_t fixed_in(std::size_t cluster) const;
  bool is_in_line(std::size_t cluster) const;
  std::string make(const BuildStep& step);
  std::string check_turned(const BuildStep& step, std::size_t inner, std::size_t outer) const;

  const catalog::Catalog& catalog_;
  const AssemblyRequest& request_;
  const Assembly& assembly_;
  std::vector<std::size_t> cluster_;
};

std::size_t BranchBench::fixed_in(std::size_t cluster) const {
  std::size_t count = cluster_[base()] == cluster && request_.rules.from.freedom == Freedom::fixed ? 1 : 0;
  for (std::size_t row = 0; row < request_.targets.size(); ++row)
    count += cluster_[target(row)] == cluster && request_.targets[row].freedom == Freedom::fixed ? 1 : 0;
  return count;
}

/// Parts alone, whose ways on lie on one axis.
bool BranchBench::is_in_line(std::size_t cluster) const {
  for (std::size_t row = 0; row < request_.targets.size(); ++row)
    if (cluster_[target(row)] == cluster) return false;
  for (std::size_t row = 0; row < assembly_.parts.size(); ++row) {
    if (cluster_[first_half(row)] != cluster && cluster_[second_half(row)] != cluster) continue;
    const std::vector<catalog::Port>& ports = catalog_.part(assembly_.parts[row].part).ports;
    std::vector<double> headings;
    for (std::size_t port = 0; port < ports.size(); ++port)
      if (assembly_.parts[row].ports[port].what != Follower::What::plug)
        headings.push_back(ports[port].heading_degrees);
    if (headings.size() != 2 || std::abs(std::remainder(headings[0] - headings[1] - 180.0, 360.0)) > 1.0) return false;
  }
  return cluster_[base()] != cluster;
}

std::string BranchBench::check_turned(const BuildStep& step, std::size_t inner, std::size_t outer) const {
  const std::size_t at = text_of(step).find(": turn ");
  if (at == std::string::npos) return "nothing is said to turn: " + text_of(step);
  const std::string what = text_of(step).substr(at + 7);
  std::vector<std::size_t> bodies;
  if (what.starts_with("the base")) bodies = {base()};
  if (what.starts_with("target ")) bodies = {target(static_cast<std::size_t>(std::stoi(what.substr(7))) - 1)};
  if (what.starts_with("part ")) {
    const auto part = static_cast<std::size_t>(std::stoi(what.substr(5))) - 1;
    bodies = {first_half(part), second_half(part)};
  }
  if (what.starts_with("that half"))
    bodies = {text_of(step).find("half of") > text_of(step).find(" into ") ||
                      text_of(step).find("half of") > text_of(step).find(" onto ")
                  ? base()
                  : (text_of(step).find("first half") != std::string::npos ? outer : inner)};
  for (const std::size_t body : bodies) {
    if (body != inner && body != outer) continue;
    if (fixed_in(cluster_[body]) > 0) return "what is turned is fixed: " + text_of(step);
    const auto size = static_cast<std::size_t>(std::count(cluster_.begin(), cluster_.end(), cluster_[body]));
    if (size <= bodies.size()) return "";
    if (text_of(step).find(", with what is made up on it, ") == std::string::npos)
      return "what is turned carries something already: " + text_of(step);
    return is_in_line(cluster_[body]) ? "" : "what is turned carries something that swings: " + text_of(step);
  }
  return "what is turned is not at that joint: " + text_of(step);
}

std::string BranchBench::make(const BuildStep& step) {
  const RunJoint& made = assembly_.joints[step.joint];
  const std::size_t inner = made.inner == kBase ? base() : second_half(made.inner);
  const std::size_t outer = made.to_end ? target(made.outer) : first_half(made.outer);
  if (cluster_[inner] == cluster_[outer]) return "made twice: " + text_of(step);
  const catalog::MatingRule& rule = catalog_.mating_rules()[made.rule];
  if (step.closing && !rule.closing) return "does not close: " + text_of(step);
  if (rule.turning == catalog::Turning::either)
    if (const std::string wrong = check_turned(step, inner, outer); !wrong.empty()) return wrong;
  if (fixed_in(cluster_[inner]) + fixed_in(cluster_[outer]) > 1 && !step.closing) return "not free: " + text_of(step);
  join(inner, outer);
  return "";
}

std::string BranchBench::carry_out() {
  std::vector<bool> apart(assembly_.parts.size(), false);
  for (const BuildStep& step : assembly_.steps)
    if (step.closing && step.joint == assembly_.joints.size())
      apart[static_cast<std::size_t>(std::stoi(text_of(step).substr(text_of(step).find("part ") + 5))) - 1] = true;
  for (std::size_t row = 0; row < apart.size(); ++row) {
    if (apart[row] && !catalog_.part(assembly_.parts[row].part).closing) return "taken apart, but no union";
    if (!apart[row]) join(first_half(row), second_half(row));
  }
  bool closing = false;
  for (const BuildStep& step : assembly_.steps) {
    if (closing && !step.closing) return "a joint is made after one that closes: " + text_of(step);
    closing = step.closing;
    if (step.joint < assembly_.joints.size()) {
      if (const std::string wrong = make(step); !wrong.empty()) return wrong;
    } else if (closing) {
      const auto part = static_cast<std::size_t>(std::stoi(text_of(step).substr(text_of(step).find("part ") + 5))) - 1;
      join(first_half(part), second_half(part));
    }
  }
  const bool whole = std::all_of(cluster_.begin(), cluster_.end(), [&](auto c) { return c == cluster_[0]; });
  return whole ? "" : "not whole at the end";
}

struct MixedRadix {
  int assemblies = 0, compared = 0, nones = 0, closed = 0, with_needs = 0;
  int facing = 0, devices = 0, reliefs = 0, own_needs = 0, inward = 0, in_order = 0, few_bushings = 0, rooms = 0,
      beyond = 0, not_beyond = 0;
};

class BestAssembly : public ::testing::Test {
 protected:
  void check_world(std::uint32_t seed);
  void keep_targets_beyond(const FoldedCatalog& folded, AssemblyRequest& request);
  void check_order(const FoldedCatalog& folded, const AssemblyRequest& request, const EveryTree& every,
                   const TreeTrial& trial);
  void check_fields(const catalog::Catalog& catalog, const AssemblyRequest& request, const Assembly& assembly,
                    const TreeSums& sums);
  MixedRadix tally_;
};

void BestAssembly::check_fields(const catalog::Catalog& catalog, const AssemblyRequest& request,
                                const Assembly& assembly, const TreeSums& sums) {
  EXPECT_EQ(assembly.part_count, sums.parts);
  EXPECT_EQ(assembly.buy_count, sums.buy);
  EXPECT_EQ(assembly.price.cents(), sums.cents);
  std::vector<int> taken(catalog.parts().size(), 0);
  std::vector<int> reached(request.targets.size(), 0);
  std::size_t plugs = 0;
  for (const RunPart& part : assembly.parts) {
    taken[part.part.row] += part.from_bin ? 1 : 0;
    for (const Follower& follower : part.ports) {
      if (follower.what == Follower::What::plug) taken[follower.plug.row] += follower.from_bin ? 1 : 0;
      if (follower.what == Follower::What::plug) ++plugs;
      if (follower.what == Follower::What::end) ++reached[follower.row];
    }
  }
  for (const RunEnd& end : assembly.ends) {
    if (!end.device) continue;
    taken[end.device->row] += end.from_bin ? 1 : 0;
    EXPECT_EQ(end.port.type, catalog.part(*end.device).ports[end.device_port].type);
    EXPECT_EQ(end.port.material, catalog.part(*end.device).material_at(end.device_port));
  }
  for (std::uint32_t row = 0; row < taken.size(); ++row) EXPECT_LE(taken[row], request.rules.bin.count_of({row}));
  for (const int times : reached) EXPECT_EQ(times, 1);
  EXPECT_EQ(assembly.joints.size(), assembly.parts.size() + request.targets.size());
  for (const RunJoint& joint : assembly.joints) {
    const PortTypeId inner = joint.inner == kBase
                                 ? request.rules.from.type
                                 : catalog.part(assembly.parts[joint.inner].part).ports[joint.inner_port].type;
    EXPECT_EQ(joint.a, inner);
    EXPECT_EQ(catalog.mating_rule(joint.a, joint.b), &catalog.mating_rules()[joint.rule]);
  }
  const auto plug_steps = std::count_if(assembly.steps.begin(), assembly.steps.end(),
                                        [](const BuildStep& step) { return step.joint == kNoJoint; });
  EXPECT_EQ(static_cast<std::size_t>(plug_steps), plugs);
  EXPECT_EQ(BranchBench(catalog, request, assembly).carry_out(), "");
}

void BestAssembly::check_order(const FoldedCatalog& folded, const AssemblyRequest& request, const EveryTree& every,
                               const TreeTrial& trial) {
  const catalog::Catalog& catalog = folded.catalog();
  const std::optional<TreeSums>& best = every.best[static_cast<std::size_t>(request.rules.order)];
  const auto tree = best_tree(folded, request);
  if (!tree) {
    ASSERT_FALSE(best.has_value()) << "there is an assembly of " << best->parts << " parts";
    // To say why takes many searches: some are enough.
    if (++tally_.nones % 60 != 0) return;
    const AssemblyAnswer answer = find_assembly(catalog, request);
    ASSERT_TRUE(std::holds_alternative<NoAssembly>(answer));
    EXPECT_FALSE(std::get<NoAssembly>(answer).reason.code.empty());
    return;
  }
  ++tally_.assemblies;
  const Assembly assembly = assemble(catalog, request, tree->tree);
  std::string why;
  const auto sums = trial.judge(as_list(assembly, trial), why);
  ASSERT_TRUE(sums.has_value()) << why;
  check_fields(catalog, request, assembly, *sums);
  for (std::size_t row = 0; row < request.targets.size(); ++row) {
    const BranchRules& rules = request.branch(row);
    tally_.facing += rules.facing != Facing::any ? 1 : 0;
    tally_.devices += rules.devices.empty() ? 0 : 1;
    tally_.reliefs += rules.relief ? 1 : 0;
    tally_.own_needs += rules.needs.empty() ? 0 : 1;
    tally_.in_order += rules.needs_in_order && rules.needs.size() > 1 ? 1 : 0;
    tally_.inward += rules.flow == BranchFlow::to_base ? 1 : 0;
  }
  tally_.with_needs += request.rules.needs.empty() ? 0 : 1;
  tally_.few_bushings += request.rules.most_bushings ? 1 : 0;
  tally_.rooms += request.rules.room ? 1 : 0;
  tally_.closed += !assembly.steps.empty() && assembly.steps.back().closing ? 1 : 0;
  if (sums->parts <= every.depth) {
    ASSERT_TRUE(best.has_value());
    EXPECT_EQ(*sums, *best);
    ++tally_.compared;
  } else {
    EXPECT_FALSE(best && better_tree(request.rules.order, *best, *sums));
  }
}

// What is needed is to stand before all targets; where none of all trees has it so, the search leaves that out.
void BestAssembly::keep_targets_beyond(const FoldedCatalog& folded, AssemblyRequest& request) {
  for (Need& need : request.rules.needs) need.before_all = true;
  const auto tree = best_tree(folded, request);
  if (request.rules.needs.empty() || !tree) return;
  TreeTrial strict(folded.catalog(), request);
  std::string why;
  if (strict.judge(as_list(assemble(folded.catalog(), request, tree->tree), strict), why)) {
    ++tally_.beyond;
    return;
  }
  for (const std::optional<TreeSums>& best : strict.run(kBeginnings).best) EXPECT_FALSE(best.has_value());
  for (Need& need : request.rules.needs) need.before_all = false;
  ++tally_.not_beyond;
}

// Few worlds have a need of the whole assembly by themselves.
void add_need(Dice& dice, const catalog::Catalog& catalog, AssemblyRequest& request) {
  std::size_t needs = request.rules.needs.size();
  for (const BranchRules& branch : request.branches) needs += branch.needs.size();
  if (needs > 1) return;
  Need need{"need", {}};
  for (int count = 3; count > 0; --count)
    need.parts.push_back({static_cast<std::uint32_t>(dice.below(static_cast<int>(catalog.parts().size())))});
  request.rules.needs.push_back(std::move(need));
}

void BestAssembly::check_world(std::uint32_t seed) {
  SCOPED_TRACE("seed " + std::to_string(seed));
  Dice dice(seed);
  const catalog::Catalog catalog = with_branching_parts(random_catalog(dice), dice);
  AssemblyRequest request = random_assembly(dice, catalog);
  const FoldedCatalog folded(catalog);
  if (seed % 4 == 2) add_need(dice, catalog, request);
  if (seed % 2 == 0) keep_targets_beyond(folded, request);
  TreeTrial trial(catalog, request);
  const EveryTree every = trial.run(kBeginnings);
  for (const Order order : {Order::price, Order::parts, Order::line, Order::bin}) {
    SCOPED_TRACE("order " + std::to_string(static_cast<int>(order)));
    request.rules.order = order;
    const int nones = tally_.nones;
    check_order(folded, request, every, trial);
    if (tally_.nones != nones) break;  // whether there is one at all is the same under each order
  }
}

// In 53340 a plug that bends, as hose does, is dearer than one of its material that does not, and of no metal that
// counts.
TEST_F(BestAssembly, TakesThePlugThatIsNotOfAnotherMetal) {
  check_world(53340);
  EXPECT_GT(tally_.compared, 0);
}

TEST_F(BestAssembly, IsTheBestOfAllTreesUnderEveryOrderAndBreaksTiesAsStated) {
  for (std::uint32_t seed = first_world(); seed < first_world() + kWorlds && !HasFailure(); ++seed) check_world(seed);
  std::cout << tally_.assemblies << " assemblies (" << tally_.compared << " compared whole, " << tally_.with_needs
            << " with needs, " << tally_.closed << " with a closing joint between fixed ends), " << tally_.nones
            << " refusals; targets met that face a way " << tally_.facing << ", end in a device " << tally_.devices
            << ", in a relief valve " << tally_.reliefs << ", have needs of their own " << tally_.own_needs
            << " (in order " << tally_.in_order << "), feed the base " << tally_.inward << "; with a limit on bushings "
            << tally_.few_bushings << ", on room " << tally_.rooms << "; " << tally_.beyond
            << " with what is needed before all targets, " << tally_.not_beyond << " where that cannot be\n";
  EXPECT_GT(tally_.beyond, 10);
  EXPECT_GT(tally_.not_beyond, 10);
  for (const int count : {tally_.facing, tally_.devices, tally_.reliefs, tally_.own_needs, tally_.inward,
                          tally_.few_bushings, tally_.rooms})
    EXPECT_GT(count, 100);
  EXPECT_GT(tally_.in_order, 80);
  EXPECT_GT(tally_.compared, 1000);
  EXPECT_GT(tally_.nones, 1000);
  EXPECT_GT(tally_.closed, 50);
}

}  // namespace
}  // namespace riserun::chain::testing::best_tree_test
