// A drain that is but a plug, and what else lets the water out.
#include "unit/plan/judge/ready_job.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

bool takes_care(const Plan& plan, std::string_view code) {
  return std::any_of(plan.cautions.begin(), plan.cautions.end(),
                     [&](const Caution& caution) { return caution.fact.code == code; });
}

/// The ready job with a port low in a side, and what that ends in.
std::string with_low_port(const std::string& port, const std::string& end) {
  const std::string ports =
      with(kReady, "    vent bung: 1/2 FNPT\n",
           "    vent bung: 1/2 FNPT\n    " + port + ": {port: 1 FNPT, where: side, face height: 2 in}\n");
  return with(ports, "water temperature:",
              "  - {name: out, from: " + port + ", ends in: " + end + ", carries: water}\nwater temperature:");
}

TEST(PluggedDrain, IsNoDrain) {
  const Plan plugged = plan_of_text(with_low_port("drain bung", "1 plug"));
  EXPECT_TRUE(has(plugged, "drain_is_a_plug"));
  EXPECT_THAT(said_of(plugged, "drain_is_a_plug"), testing::HasSubstr("'drain bung' ends in a plug"));
  EXPECT_TRUE(takes_care(plugged, "reservoir_drains_by_a_plug"));
  const Plan valved = plan_of_text(with_low_port("drain bung", "1 brass ball valve"));
  EXPECT_FALSE(has(valved, "drain_is_a_plug"));
  EXPECT_FALSE(takes_care(valved, "reservoir_drains_by_a_plug"));
}

TEST(PluggedDrain, OfAnotherNameIsAWordOfCareAlone) {
  const Plan spare = plan_of_text(with_low_port("spare bung", "1 plug"));
  EXPECT_FALSE(has(spare, "drain_is_a_plug"));
  EXPECT_TRUE(takes_care(spare, "reservoir_drains_by_a_plug"));
}

TEST(PluggedDrain, BesideAValveIsAPlug) {
  const std::string both =
      with(with_low_port("drain bung", "1 plug"),
           "    drain bung:", "    outlet bung: {port: 1 FNPT, where: side, face height: 2 in}\n    drain bung:");
  const Plan plan = plan_of_text(with(both, "water temperature:",
                                      "  - {name: outlet, from: outlet bung, ends in: 1 brass ball valve, carries: "
                                      "water}\nwater temperature:"));
  EXPECT_FALSE(has(plan, "drain_is_a_plug"));
  EXPECT_FALSE(takes_care(plan, "reservoir_drains_by_a_plug"));
}

/// The ready job with a line back from the table to a port low in a side, and `more` at its end.
Plan with_way_back(const std::string& more = "") {
  const std::string ports =
      with(with(kReady, "    vent bung: 1/2 FNPT\n",
                "    vent bung: 1/2 FNPT\n    back bung: {port: 1 FNPT, where: side, face height: 2 in}\n"),
           "opens at: 5 in", "opens at: 0 in");
  return plan_of_text(with(ports, "water temperature:",
                           "  - {name: back, from: outlet, to: back bung, need: [ball valve, hose], carries: water}\n"
                           "water temperature:") +
                      more);
}

// Water does not run up: what is drained against frost says so, and so does the word of care.
TEST(ReservoirDrain, IsNoLineUpToTheTable) {
  EXPECT_TRUE(takes_care(with_way_back(), "reservoir_has_no_drain"));
  EXPECT_TRUE(has(with_way_back("coldest: 20 degF\nagainst frost: drained every evening\n"), "drained_by_nothing"));
  EXPECT_FALSE(takes_care(plan_of_text(with_low_port("drain bung", "1 brass ball valve")), "reservoir_has_no_drain"));
}

}  // namespace
}  // namespace riserun::plan
