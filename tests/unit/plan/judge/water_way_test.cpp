// The water's way up into the table, out of it again, and what holds it there.
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

constexpr const char* kWaterLine =
    "  - {name: water up, gap: 14-3/8 in, from: riser bung, to: inlet, carries: water, need: [union], held: {from: "
    "fixed, to: fixed}}\n";

/// Without the line, and without the name of the riser's bung under 'riser'.
std::string without_line(const std::string& in_its_place) {
  return with(with(kReady, kWaterLine, in_its_place), "riser: {bung: riser bung}\n", "");
}

TEST(WaterWay, ThatIsMissingIsNeverClosedByPlugs) {
  const Plan open_ports = plan_of_text(without_line(""));
  ASSERT_TRUE(has(open_ports, "riser_leads_nowhere")) << testing::PrintToString(open_in(open_ports));
  EXPECT_THAT(said_of(open_ports, "riser_leads_nowhere"),
              AllOf(HasSubstr("othing joins the riser to the table"), HasSubstr("'from: riser bung', 'to: inlet'")));
  for (const Finding& finding : open_ports.findings)
    EXPECT_THAT(report::sentences_of(finding, UnitSystem::inch),
                AllOf(Not(HasSubstr("'from: riser bung, ends in: plug'")), Not(HasSubstr("'from: inlet, ends in"))));
  const Plan plugged =
      plan_of_text(without_line("  - {name: riser plug, from: riser bung, ends in: 1 square head plug}\n"
                                "  - {name: inlet plug, from: inlet, ends in: 1 square head plug}\n"));
  EXPECT_THAT(said_of(plugged, "riser_leads_nowhere"), HasSubstr("'from: riser bung', 'to: inlet'"));
  EXPECT_EQ(plugged.verdict, Verdict::not_yet);
  EXPECT_FALSE(has(ready(), "riser_leads_nowhere"));
}

constexpr const char* kDrainLine = "  - {name: table drain, from: drain, ends in: ";

/// The ready job with a drain in the table's floor, and a check valve in the line where one is asked for.
std::string with_table_drain(const std::string& end, const std::string& line = "need: [union]") {
  const std::string job = with(kReady, "    outlet:", "    drain: {port: 1 FNPT, where: floor}\n    outlet:");
  return with(with(job, "need: [union]", line), "water temperature:", kDrainLine + end + "}\nwater temperature:");
}

constexpr const char* kChecked = "need: [union, light spring check valve], special order: yes";

TEST(TableDrain, EndsInWhatAHandShuts) {
  for (const char* open_end : {"1 barb, carries: water", "1 close nipple, carries: water",
                               "1 spring check valve, carries: water, special order: yes"}) {
    const Plan plan = plan_of_text(with_table_drain(open_end));
    ASSERT_TRUE(has(plan, "table_water_runs_out")) << open_end << testing::PrintToString(open_in(plan));
    EXPECT_THAT(said_of(plan, "table_water_runs_out"),
                AllOf(HasSubstr("'table drain' of the table"), HasSubstr("ball valve")));
  }
  for (const char* shut : {"1 brass ball valve, carries: water", "1 square head plug, carries: water"})
    EXPECT_THAT(open_in(plan_of_text(with_table_drain(shut))), IsEmpty()) << shut;
  // An overflow takes only what is too much; one that opens under the water takes all above it.
  const std::string low = with(kReady, "outlet: {port: 1 FNPT, where: floor, opens at: 5 in}",
                               "outlet: {port: 1 FNPT, where: floor, opens at: 3-1/2 in}");
  EXPECT_TRUE(has(plan_of_text(with(low, "water temperature:",
                                    "  - {name: overflow, from: outlet, ends in: 1 close nipple, carries: "
                                    "water}\nwater temperature:")),
                  "table_water_runs_out"));
  EXPECT_THAT(open_in(plan_of_text(with(kReady, "water temperature:",
                                        "  - {name: overflow, from: outlet, ends in: 1 close nipple, carries: "
                                        "water}\nwater temperature:"))),
              IsEmpty());
}

TEST(TableDrain, BehindACheckValveInTheLineLetsTheWaterOut) {
  for (const char* end : {"1 square head plug, carries: water", "1/4 air coupler, carries: water",
                          "1 spring check valve, carries: water, special order: yes"}) {
    const Plan plan = plan_of_text(with_table_drain(end, kChecked));
    EXPECT_TRUE(has(plan, "check_valve_against_drain", Severity::refused))
        << end << testing::PrintToString(open_in(plan));
  }
  const std::string drained = with_table_drain("1 brass ball valve, carries: water", kChecked);
  const std::string higher =
      with(with(drained, "set pressure: 1.6 psi", "set pressure: 1.75 psi"), "set 2 psi", "set 2.5 psi");
  EXPECT_THAT(open_in(plan_of_text(with(higher, "10 ga steel", "3/16 in steel"))), IsEmpty());
}

}  // namespace
}  // namespace riserun::plan
