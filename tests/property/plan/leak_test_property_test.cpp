// The leak test's sheet, over the shipped examples and random jobs: every port of the reservoir once, every part on the
// list, nothing where no test is possible.
#include "plan/advice/change.h"
#include "property/plan/random_job.h"
#include "unit/plan/shipped.h"

#include <algorithm>
#include <map>

namespace riserun::plan {
namespace {

using Counts = std::map<std::string, int>;

Counts on_list(const Plan& plan, bool for_test) {
  Counts counts;
  for (const auto* list : {&plan.list.buy, &plan.list.from_bin})
    for (const ListItem& item : *list) {
      const bool tests = std::find(item.used_for.begin(), item.used_for.end(), "leak test") != item.used_for.end();
      if (tests || !for_test) counts[item.id] += item.quantity;
    }
  return counts;
}

Counts on_sheet(const Plan& plan) {
  Counts counts;
  const auto count = [&](PartId part) { ++counts[plan.catalog->part(part).id]; };
  for (const TestPlug& plug : plan.leak_test.plugs)
    if (plug.part && !plug.of_job) count(*plug.part);
  if (plan.leak_test.rig)
    for (const RigPart& part : plan.leak_test.rig->parts) count(part.part);
  return counts;
}

/// Of the run itself, not of what the plan says of it.
Counts in_rig(const Plan& plan, const chain::Run& run) {
  Counts counts;
  const auto count = [&](PartId part) { ++counts[plan.catalog->part(part).id]; };
  for (const chain::RunPart& link : run.parts) {
    count(link.part);
    for (const chain::Follower& plug : link.plugs()) count(plug.plug);
  }
  for (const chain::RunEnd& end : run.ends)
    if (end.device) count(*end.device);
  return counts;
}

void expect_each_port_once(const Plan& plan) {
  Counts ports;
  for (const TestPlug& plug : plan.leak_test.plugs) ++ports[plug.port];
  if (!plan.leak_test.air_port.empty()) ++ports[plan.leak_test.air_port];
  EXPECT_EQ(ports.size(), plan.job.reservoir.ports.size());
  for (const JobPort& port : plan.job.reservoir.ports) EXPECT_EQ(ports[port.name], 1) << port.name;
}

void expect_all_listed(const Plan& plan) {
  const Counts all = on_list(plan, false);
  const Counts tests = on_list(plan, true);
  for (const TestPlug& plug : plan.leak_test.plugs)  // a plug that stays is its connection's
    EXPECT_TRUE(!plug.of_job || all.count(plan.catalog->part(*plug.part).id) > 0) << plug.port;
  for (const auto& [part, count] : on_sheet(plan)) {
    EXPECT_GE(all.count(part) ? all.at(part) : 0, count) << part;
    EXPECT_TRUE(tests.count(part)) << part;
  }
}

/// What guards the test opens between the test pressure and the walls' limit; the dial shows it.
void expect_a_rig_that_serves(const Plan& plan) {
  const LeakTestPlan& test = plan.leak_test;
  ASSERT_TRUE(test.rig);
  const chain::Run* run = test.rig->run();
  if (run == nullptr) return;
  EXPECT_TRUE(run->buildable);
  Counts parts;
  for (const RigPart& part : test.rig->parts) ++parts[plan.catalog->part(part.part).id];
  EXPECT_EQ(parts, in_rig(plan, *run));
  ASSERT_EQ(run->ends.size(), 3u);
  if (const auto& gauge = run->ends[0].device) {
    const double share = in_pascals(*plan.catalog->part(*gauge).full_scale) / in_pascals(test.pressure);
    EXPECT_GE(share, 1.5);
    EXPECT_LE(share, 4.0);
  }
  if (const auto& relief = run->ends[1].device) {
    EXPECT_GT(*plan.catalog->part(*relief).opens_at, test.pressure);
    EXPECT_LE(*plan.catalog->part(*relief).opens_at, plan.walls.limit);
  }
}

void expect_a_sheet(const Plan& plan) {
  const LeakTestPlan& test = plan.leak_test;
  expect_each_port_once(plan);
  expect_all_listed(plan);
  // Where no relief valve is sold for its rig no air goes in: that is open, and the sheet has no steps.
  const bool unguarded = test.possible && !test.relief_opens && !plan.job.reservoir.ports.empty();
  EXPECT_EQ(test.possible && !unguarded, !test.steps.empty());
  EXPECT_EQ(test.possible && !unguarded, !test.welds.empty());
  EXPECT_EQ(unguarded, std::any_of(plan.findings.begin(), plan.findings.end(), [](const Finding& finding) {
              return finding.reason.code == "no_relief_sold_for_the_test";
            }));
  if (!test.possible) {
    EXPECT_FALSE(test.rig);
    EXPECT_TRUE(test.rungs.empty());
    return;
  }
  EXPECT_EQ(test.rungs.back().pressure, test.pressure);
  EXPECT_GT(test.least_leak, VolumeFlow{});
  if (unguarded)
    EXPECT_FALSE(test.rig);
  else if (!plan.job.reservoir.ports.empty())
    expect_a_rig_that_serves(plan);
}

TEST(LeakTestSheet, OfEveryExample) {
  for (const char* name : {"bevel-bench", "one-air-bung", "one-part-short", "air-too-weak", "walls-too-thin"}) {
    SCOPED_TRACE(name);
    expect_a_sheet(plan_of_example(name));
  }
}

/// The same job with the mends of its findings that change nothing but the test, until it has a rig or none is left.
Plan with_a_test_that_serves(Plan plan) {
  constexpr int kMostMends = 3;
  for (int mend = 0; mend < kMostMends && plan.leak_test.possible && !plan.leak_test.relief_opens; ++mend) {
    const auto open = std::find_if(plan.findings.begin(), plan.findings.end(), [](const Finding& finding) {
      return finding.reason.code == "no_relief_sold_for_the_test" &&
             finding.ways_to_mend.size() + finding.ways_to_try.size() > 0;
    });
    if (open == plan.findings.end()) break;
    const Changes& way = open->ways_to_mend.empty() ? open->ways_to_try.front() : open->ways_to_mend.front();
    plan = make_plan(plan.catalog, changed(*plan.catalog, plan.job, way));
  }
  return plan;
}

TEST(LeakTestSheet, OfRandomJobs) {
  const int count = static_cast<int>(count_of_jobs(20));
  int rigs = 0;
  int impossible = 0;
  int lent = 0;
  for (std::uint32_t seed = 1; seed <= static_cast<std::uint32_t>(count); ++seed) {
    const std::string text = random_job(seed);
    SCOPED_TRACE(text);
    const Plan first = plan_of_text(text);
    expect_a_sheet(first);
    const Plan plan = with_a_test_that_serves(first);
    expect_a_sheet(plan);
    const auto& rig = plan.leak_test.rig;
    impossible += plan.leak_test.possible ? 0 : 1;
    rigs += rig && rig->run() != nullptr ? 1 : 0;
    lent += rig && std::any_of(rig->parts.begin(), rig->parts.end(),
                               [](const RigPart& part) { return part.whose == RigPart::Whose::job; });
    if (HasFailure()) return;
  }
  EXPECT_GT(rigs, count / 3);  // or the jobs try nothing; some have walls that no relief valve is sold for
  EXPECT_GT(lent, count / 4);
  EXPECT_GT(impossible, 0);
}

}  // namespace
}  // namespace riserun::plan
