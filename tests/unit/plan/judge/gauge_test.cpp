// The gauge that is advised is one that is sold, and stands on the list.
#include "plan/advice/change.h"
#include "plan/judge/dials.h"
#include "unit/plan/judge/ready_job.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include <cmath>

namespace riserun::plan {
namespace {

constexpr const char* kGauge =
    "  - {name: gauge, from: gauge bung, ends in: 5 psi gauge, special order: yes, carries: air}\n";

// ASME BPVC Section VIII UG-102, as reported: 1.5 to 4 times, about twice preferred.
TEST(Dials, AreSoldAndReadTo15To4Times) {
  const Catalog& catalog = *shipped_catalog();
  int compared = 0;
  for (double psi = 0.05; psi < 100.0; psi *= 1.04) {
    double best = 0.0;        // by hand: the least from twice on, else the greatest
    bool at_an_edge = false;  // where a scale in other units meets its limit to within its rounding
    for (const catalog::Part& part : catalog.parts()) {
      if (catalog.family(part.family).role != catalog::Role::gauge) continue;
      const double times = in_psi(*part.full_scale) / psi;
      for (const double edge : {1.5, 2.0, 4.0}) at_an_edge = at_an_edge || std::abs(times - edge) < 0.01 * edge;
      if (times < 1.5 || times > 4.0) continue;
      const bool better = best == 0.0 || (times >= 2.0 ? best < 2.0 || times < best : best < 2.0 && times > best);
      if (better) best = times;
    }
    if (at_an_edge) continue;
    ++compared;
    const std::vector<PartId> dials = gauges_to_show(catalog, psig(psi));
    EXPECT_EQ(dials.empty(), best == 0.0) << psi;
    for (const PartId dial : dials) EXPECT_NEAR(in_psi(*catalog.part(dial).full_scale) / psi, best, 1e-6) << psi;
  }
  EXPECT_GT(compared, 100);
}

// ASME B40.100 Grade B: 3 % of the scale, 2 % in its middle half. The finest of those that show it is read.
TEST(Dials, AreReadOnTheFinestThatShows) {
  const GaugePressure read = psig(2.0);
  const auto least = [&](const std::vector<GaugePressure>& scales) { return in_psi(least_dial_error(scales, read)); };
  EXPECT_NEAR(least({psig(5.0)}), 0.1, 1e-9);
  EXPECT_NEAR(least({psig(5.0), psig(7.5)}), 0.1, 1e-9);
  EXPECT_NEAR(least({psig(7.5), psig(5.0)}), 0.1, 1e-9);
  EXPECT_NEAR(least({psig(1.0), psig(7.5)}), 0.15, 1e-9);  // the finest of all does not show it
  EXPECT_EQ(least({}), 0.0);
}

// 0 to 2 psi is no dial of the trade's: at 1 psi it is 0 to 60 inH2O.
TEST(GaugeAdvised, StandsOnTheListByItsName) {
  const std::string none = with(kReady, kGauge, "");
  for (const char* setting : {"0.4 psi", "0.9 psi", "1.1 psi", "1.6 psi"}) {
    const Plan plan = plan_of_text(with(none, "set pressure: 1.6 psi", std::string("set pressure: ") + setting));
    const auto finding = std::find_if(plan.findings.begin(), plan.findings.end(),
                                      [](const Finding& each) { return each.reason.code == "no_gauge"; });
    ASSERT_NE(finding, plan.findings.end()) << setting;
    ASSERT_TRUE(finding->buy && finding->buy->part) << setting;
    const catalog::Part& gauge = plan.catalog->part(*finding->buy->part);
    EXPECT_FALSE(gauge.stocked);
    EXPECT_THAT(report::say(*finding->mend, UnitSystem::inch),
                testing::HasSubstr(fmt::format("a {0}, on 'gauge bung', which is free ('from: gauge bung', 'ends in: "
                                               "\"{0}\"', 'carries: air', 'special order: yes')",
                                               gauge.name)));
    EXPECT_TRUE(std::any_of(plan.list.buy.begin(), plan.list.buy.end(), [&](const ListItem& item) {
      return item.part == finding->buy->part;
    })) << setting;
  }
}

TEST(GaugeAdvised, IsAWaterColumnBelowAllThatIsSold) {
  const Plan plan = plan_of_text(with(with(kReady, kGauge, ""), "set pressure: 1.6 psi", "set pressure: 0.2 psi"));
  EXPECT_THAT(said_of(plan, "no_gauge"), testing::HasSubstr("a water column in clear hose"));
}

// Of a manifold its branch alone: no bung is welded in for what stands on one.
TEST(GaugeAdvised, TakesThePlaceOfABranchsOwn) {
  const Plan plan = plan_of_text(with(example_text("one-air-bung"), "ends in: 5 psi gauge", "ends in: 15 psi gauge"));
  const auto finding = std::find_if(plan.findings.begin(), plan.findings.end(),
                                    [](const Finding& each) { return each.reason.code == "gauge_cannot_show"; });
  ASSERT_NE(finding, plan.findings.end()) << testing::PrintToString(open_in(plan));
  EXPECT_EQ(report::say(*finding->mend, UnitSystem::inch), "a 0 to 5 psi gauge, 1/4 MNPT");
  EXPECT_TRUE(finding->also_buy.empty());
  ASSERT_EQ(finding->ways_to_try.size(), 1u);
  EXPECT_THAT(findings_of(plan.catalog, changed(*plan.catalog, plan.job, finding->ways_to_try.front())),
              testing::IsEmpty());
}

}  // namespace
}  // namespace riserun::plan
