// Connections with several far ends: the example with an air manifold on one bung, and what the job may ask of it.
#include "chain/finder.h"
#include "plan/job/read_job.h"
#include "report/words/remark_words.h"
#include "unit/plan/bench_job.h"
#include "unit/plan/shipped.h"
#include "unit/report/words/said.h"

#include <gmock/gmock.h>

#include <algorithm>

namespace riserun::plan {
namespace {

using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::Field;
using testing::HasSubstr;
using testing::Not;

std::vector<report::SaidAssumption> assumed(const Plan& plan) {
  std::vector<report::SaidAssumption> all;
  for (const Assumption& assumption : plan.assumptions) all.push_back(report::say(assumption, UnitSystem::inch));
  return all;
}

const Plan& trough() {
  static const Plan plan = plan_of_example("one-air-bung");
  return plan;
}

std::vector<std::string> families_to(const Plan& plan, std::size_t branch) {
  std::vector<std::string> names;
  for (const chain::RunPart& link : chain::way_to(*plan.connections.back().assembly(), branch).parts)
    names.push_back(plan.catalog->family(plan.catalog->part(link.part).family).name);
  return names;
}

TEST(AirManifold, OfTheExampleGoesTogether) {
  EXPECT_TRUE(refusals_of(trough()).empty()) << report::said(refusals_of(trough()).front().reason);
  ASSERT_TRUE(trough().connections.back().branched);
  const ConnectionPlan& manifold = trough().connections.back();
  EXPECT_EQ(manifold.service, Service::air);
  EXPECT_THAT(manifold.ends, ElementsAre("shop air", "gauge", "relief valve", "exhaust"));
  ASSERT_NE(manifold.assembly(), nullptr);
  EXPECT_TRUE(manifold.assembly()->air);
  EXPECT_FALSE(manifold.assembly()->steps.empty());
}

TEST(AirManifold, HasRegulatorRestrictorAndCheckValveOnTheSupplyAlone) {
  for (const char* device : {"air regulator", "restrictor", "light spring check valve"}) {
    EXPECT_THAT(families_to(trough(), 0), Contains(device));
    for (const std::size_t branch : {1u, 2u, 3u}) EXPECT_THAT(families_to(trough(), branch), Not(Contains(device)));
  }
}

TEST(AirManifold, HasTheCheckValveNextToTheBungAndTheRestrictorNextToTheSupply) {
  std::vector<std::string> devices = families_to(trough(), 0);
  std::erase_if(devices, [](const std::string& name) {
    return name != "air regulator" && name != "restrictor" && name != "light spring check valve";
  });
  EXPECT_THAT(devices, ElementsAre("light spring check valve", "air regulator", "restrictor"));
}

TEST(AirManifold, FeedsTheReliefValveInItsOwnSizeWithNothingThatShuts) {
  const ConnectionPlan& manifold = trough().connections.back();
  const chain::RunEnd& end = manifold.assembly()->ends[2];
  ASSERT_TRUE(end.device.has_value());
  const catalog::Part& valve = trough().catalog->part(*end.device);
  for (const chain::RunPart& link : chain::way_to(*manifold.assembly(), 2).parts) {
    const catalog::Part& part = trough().catalog->part(link.part);
    EXPECT_FALSE(trough().catalog->family(part.family).can_shut) << part.id;
    EXPECT_GE(part.ports[link.enter].bore, valve.ports[0].bore) << part.id;
    EXPECT_GE(part.ports[link.leave()].bore, valve.ports[0].bore) << part.id;
  }
  EXPECT_TRUE(trough().relief.given);
}

TEST(AirManifold, ItsRestrictorCapsTheFeed) {
  EXPECT_NEAR(in_inches(trough().transfer.system.air.feed_bore), 0.0625, 1e-9);
  EXPECT_THAT(report::said(trough().notes), Contains(HasSubstr("The feed through 'shop air' is 0.0625 in")));
}

TEST(AirManifold, SaysWhyTheWayToTheReliefValveIsKeptOpen) {
  EXPECT_THAT(assumed(trough()),
              Contains(AllOf(Field(&report::SaidAssumption::what, "way from 'air bung' to 'relief valve'"),
                             Field(&report::SaidAssumption::value, "nothing on it that can shut"),
                             Field(&report::SaidAssumption::why, HasSubstr("UG-135")))));
}

TEST(AirManifold, IsOnTheListWithItsDevicesAndFromTheBin) {
  const auto has = [](const std::vector<ListItem>& items, const std::string& family) {
    return std::any_of(items.begin(), items.end(), [&](const ListItem& item) { return item.id.starts_with(family); });
  };
  for (const char* family :
       {"pressure-gauge/", "relief-valve/", "restrictor/", "light-spring-check-valve/", "ball-valve/"})
    EXPECT_TRUE(has(trough().list.buy, family)) << family;
  EXPECT_TRUE(has(trough().list.from_bin, "air-regulator/"));
  EXPECT_FALSE(has(trough().list.buy, "air-regulator/"));
}

std::string with_branches(const std::string& branches) {
  return with(kBench, "{name: air in, from: regulator, to: air bung, carries: air}",
              "{name: manifold, from: air bung, carries: air, branches: [" + branches + "]}");
}

TEST(BranchesOfAJob, AReliefValveOnATooSmallBungIsRefused) {
  const Plan plan = plan_of_text(
      with_branches("{to: regulator}, {name: relief, ends in: 3/4 relief valve set 3 psi, special order: yes}"));
  ASSERT_FALSE(refusals_of(plan).empty());
  EXPECT_EQ(report::said(refusals_of(plan).front().reason),
            "'manifold' cannot be put together: the relief cannot be reached from the base (1/2 FNPT) as asked: every "
            "way to the relief is smaller than the relief valve's own inlet; give it a port of its own size");
}

TEST(BranchesOfAJob, ASmallerWayToTheReliefValveIsTheJobsOwnWordAndIsCautioned) {
  const Plan plan =
      plan_of_text(with_branches("{to: regulator}, {name: relief, ends in: 3/4 relief valve set 3 psi, special order: "
                                 "yes, smallest bore: 0.4 in}"));
  EXPECT_TRUE(refusals_of(plan).empty()) << report::said(refusals_of(plan).front().reason);
  EXPECT_THAT(report::said(plan.cautions), Contains("The job lets the way to 'relief' narrow to 0.4 in, whatever the "
                                                    "valve's own inlet is."));
}

TEST(BranchesOfAJob, OfSeveralReliefValvesTheOneThatTheBungCanFeedIsTaken) {
  const Plan plan = plan_of_text(
      with_branches("{to: regulator}, {name: relief, ends in: relief valve set 3 psi, special order: yes}"));
  ASSERT_NE(plan.connections.back().assembly(), nullptr);
  const PartId valve = *plan.connections.back().assembly()->ends[1].device;
  EXPECT_THAT(plan.catalog->part(valve).size, Not(HasSubstr("3/4")));
}

/// The bench job with branches, and the message that they must get.
struct WrongBranches {
  const char* name;
  const char* branches;
  const char* message;
};

class WrongBranch : public testing::TestWithParam<WrongBranches> {};

TEST_P(WrongBranch, IsRefusedWithThisMessage) {
  try {
    read_job(*shipped_catalog(), with_branches(GetParam().branches), "bench.yaml");
    FAIL() << "it loaded";
  } catch (const InputError& error) {
    EXPECT_THAT(error.what(), HasSubstr(GetParam().message));
  }
}

INSTANTIATE_TEST_SUITE_P(
    Job, WrongBranch,
    testing::Values(
        WrongBranches{"One", "{to: regulator}", "connections[2].branches: 2 to 8 branches are allowed, not 1"},
        WrongBranches{"NoEnd", "{to: regulator}, {name: gauge}",
                      "connections[2].branches[2]: its end is missing: 'to' names a port, 'ends in' a device"},
        WrongBranches{"TwoEnds", "{to: regulator}, {to: inlet, ends in: gauge}",
                      "connections[2].branches[2].ends in: a branch has 'to' or 'ends in', not both"},
        WrongBranches{"NoSuchPort", "{to: regulater}, {ends in: gauge}",
                      "connections[2].branches[1].to: no port is called 'regulater'"},
        WrongBranches{"TakenPort", "{to: regulator}, {to: inlet}",
                      "connections[2].branches[2].to: the port 'inlet' is taken by the connection 'water up' already"},
        WrongBranches{"NoSuchLook", "{to: regulator, looks: up}, {ends in: gauge}",
                      "'up' is not one of anywhere, straight on or to a side"},
        WrongBranches{"UnknownKey", "{to: regulator, never: valve}, {ends in: gauge}",
                      "connections[2].branches[1]: unknown key 'never'"},
        WrongBranches{
            "TooManyNeeds",
            "{to: regulator, need: [union, union, union, union, union]}, {ends in: gauge, need: [union, union, "
            "union, union]}",
            "connections[2].branches: 9 things are asked for, with those of the whole connection; allowed are at "
            "most 8"}),
    [](const auto& row) { return std::string(row.param.name); });

TEST(BranchesOfAJob, WhatIsForOneRunIsRefused) {
  const std::string text = with(with_branches("{to: regulator}, {ends in: gauge}"), "carries: air, branches",
                                "carries: air, gap: 4 in, branches");
  try {
    read_job(*shipped_catalog(), text, "bench.yaml");
    FAIL() << "it loaded";
  } catch (const InputError& error) {
    EXPECT_THAT(error.what(),
                HasSubstr("connections[2].gap: is for a connection with one far end; with 'branches' say it "
                          "there or leave it out"));
  }
}

TEST(BranchesOfAJob, NeedsOfAllBranchesHaveNoOrder) {
  const std::string text = with(with_branches("{to: regulator}, {ends in: gauge}"), "carries: air, branches",
                                "carries: air, in order: yes, branches");
  try {
    read_job(*shipped_catalog(), text, "bench.yaml");
    FAIL() << "it loaded";
  } catch (const InputError& error) {
    EXPECT_THAT(error.what(),
                HasSubstr("bench.yaml:27:62: error: connections[2].in order: what all branches need has no one order; "
                          "with 'branches', 'need' and 'in order' go together in the branch that they are for"));
  }
}

TEST(BranchesOfAJob, OrderBushingsAndRoomReachTheSearch) {
  const Job job =
      read_job(*shipped_catalog(),
               with(with_branches("{to: regulator, need: [union, check valve], in order: yes}, {ends in: gauge}"),
                    "carries: air, branches", "carries: air, room: 3 in, most bushings: 2, branches"),
               "bench.yaml");
  EXPECT_TRUE(job.connections.back().branches[0].needs_in_order);
  const Plan plan = make_plan(shipped_catalog(), job);
  const chain::AssemblyRequest& request = *plan.connections.back().branched;
  EXPECT_TRUE(request.branches[0].needs_in_order);
  EXPECT_FALSE(request.branches[1].needs_in_order);
  EXPECT_EQ(request.rules.most_bushings, 2);
  EXPECT_EQ(request.rules.room, inches(3.0));
  EXPECT_EQ(trough().connections.back().request.most_bushings, std::nullopt);
}

TEST(BranchesOfAJob, AReliefValveBelongsOnTheReservoir) {
  const std::string text =
      with(kBench, "{name: air in, from: regulator, to: air bung, carries: air}",
           "{name: manifold, from: regulator, carries: air, branches: [{to: air bung}, {ends in: relief valve}]}");
  try {
    read_job(*shipped_catalog(), text, "bench.yaml");
    FAIL() << "it loaded";
  } catch (const InputError& error) {
    EXPECT_THAT(error.what(), HasSubstr("connections[2].branches[2]: a relief valve belongs on the reservoir itself: "
                                        "'from' must be one of its ports"));
  }
}

}  // namespace
}  // namespace riserun::plan
