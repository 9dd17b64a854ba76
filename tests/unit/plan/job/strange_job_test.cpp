// Jobs at the edge of what is allowed make a plan too: refused or not, never a crash, and refused only with a reason.
#include "unit/plan/bench_job.h"
#include "unit/plan/shipped.h"

#include <gmock/gmock.h>

#include <cstdlib>

namespace riserun::plan {
namespace {

void expect_sound(const Plan& plan) {
  EXPECT_EQ(plan.verdict == Verdict::refused, !refusals_of(plan).empty());
  for (const Finding& refusal : refusals_of(plan)) EXPECT_FALSE(refusal.reason.code.empty());
  EXPECT_EQ(plan.connections.size(), plan.job.connections.size());
}

struct Strange {
  const char* name;
  const char* from;
  const char* to;
};

class StrangeJob : public testing::TestWithParam<Strange> {};

TEST_P(StrangeJob, MakesAPlan) { expect_sound(plan_of_text(with(kBench, GetParam().from, GetParam().to))); }

INSTANTIATE_TEST_SUITE_P(
    Job, StrangeJob,
    testing::Values(Strange{"ThinnestSheet", "10 ga steel", "0.02 in steel"},
                    Strange{"ThickestSheet", "10 ga steel", "2 in steel"},
                    Strange{"LargestTable", "{length: 44 in, width: 22 in}", "{length: 40 ft, width: 40 ft}"},
                    Strange{"SmallestTable", "{length: 44 in, width: 22 in}", "{length: 2 in, width: 2 in}"},
                    Strange{"HighestTable", "floor height: 30 in", "floor height: 60 ft"},
                    Strange{"NoAirAtAll", "delivery: 3 scfm\n  receiver: 8 gal",
                            "delivery: 0.01 scfm\n  receiver: 0 gal"},
                    Strange{"HairFeed", "regulator range: 15 psi", "feed bore: 0.01 in"},
                    Strange{"LowestRegulator", "regulator range: 15 psi", "regulator range: 0.01 psi"},
                    Strange{"LittleWater", "charge: 9 in", "charge: 1/2 in"},
                    Strange{"FullToTheLid", "charge: 9 in", "charge: 14 in"},
                    Strange{"HotWater", "water temperature: 60 degF", "water temperature: 176 degF"},
                    Strange{"HighAltitude", "altitude: 600 ft", "altitude: 5000 m"},
                    Strange{"BungThatProjectsToTheFloor", "bung: full coupling",
                            "bung: full coupling, bung length: 16 in, projects: 14 in"},
                    Strange{"RiserOnTheFloor", "riser: {bung: riser bung}", "riser: {clearance: 30 in}"},
                    Strange{"RiserOfNoKnownSize", "riser: {bung: riser bung}", "riser: {pipe: 7}"},
                    Strange{"RiserOfAnotherSize", "riser: {bung: riser bung}", "riser: {pipe: 2}"},
                    Strange{"WeldedRiser", "bung: full coupling", "bung: welded riser"},
                    Strange{"ClosedLid", "charge: 9 in", "charge: 9 in\n  lid: welded"},
                    Strange{"PostsInAGrid", "baffles across: 2", "lid bays: 4 x 3, lid stays: posts"},
                    Strange{"WishThatCannotBe", "altitude: 600 ft", "wishes: {fill time: 1 s}"},
                    Strange{"BungToBuy", "bung: full coupling", "bung: full coupling, welded in: no"}),
    name_of<Strange>);

// A riser bung and a table port of the kinds of joint there are, each bung with the next kind of table port: every
// third of them, all with RISERUN_EVERY_PORT set.
TEST(StrangeJob, OfEveryKindOfPortMakesAPlan) {
  const Catalog& catalog = *shipped_catalog();
  std::vector<std::string> ports;
  std::vector<std::string> bungs;  // a riser screws into its bung: a male one is an error at its place (bad_job_test)
  for (std::uint32_t kind = 0; kind < catalog.kinds().size(); ++kind) {
    for (const catalog::End end : {catalog::End::male, catalog::End::female, catalog::End::neither}) {
      const auto& sizes = catalog.kinds()[kind].sizes;
      const auto type = catalog.find_port_type({catalog::KindId{kind}, sizes[sizes.size() / 2].size, end});
      // A bung stands still: one on a nut is an error at its place (lid_test).
      if (!type || catalog.written(*type).find("swivel") != std::string::npos) continue;
      ports.push_back("'" + catalog.spelled(*type) + "'");
      if (end != catalog::End::male) bungs.push_back(ports.back());
    }
  }
  const std::size_t step = std::getenv("RISERUN_EVERY_PORT") == nullptr ? 3 : 1;
  for (std::size_t at = 0; at < ports.size(); at += step) {
    const std::string& bung = bungs[at % bungs.size()];
    const std::string& table = ports[(at + 1) % ports.size()];
    SCOPED_TRACE(bung + " to " + table);
    expect_sound(plan_of_text(with(with(kBench, "port: 1 FNPT, bung: full coupling", "port: " + bung),
                                   "{port: 1 FNPT, where", "{port: " + table + ", where")));
  }
}

TEST(BungToBuy, IsOnTheList) {
  const Plan plan = plan_of_text(with(kBench, "bung: full coupling", "bung: full coupling, welded in: no"));
  bool listed = false;
  for (const ListItem& item : plan.list.buy) listed = listed || item.id == "full-coupling/forged-steel/1";
  EXPECT_TRUE(listed);
}

}  // namespace
}  // namespace riserun::plan
