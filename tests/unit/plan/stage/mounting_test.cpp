// A swing check closes by its weight: where the job says that the flow comes down through it, it is refused, and a
// spring check is taken where either would do.
#include "unit/plan/bench_job.h"
#include "unit/plan/shipped.h"
#include "unit/report/words/said.h"

#include <gmock/gmock.h>

#include <string>

namespace riserun::plan {
namespace {

using ::testing::HasSubstr;

/// The bench with one more connection, from a port of the reservoir that is placed so, through one more part.
std::string with_drain(const std::string& place, const std::string& need) {
  std::string job = kBench;
  const std::string air = "    air bung: 1/2 FNPT\n";
  job.replace(job.find(air), air.size(),
              air + "    drain bung: {port: 1 FNPT, bung: half coupling, where: " + place + "}\n");
  const std::string last = "carries: air}\n";
  job.replace(job.rfind(last), last.size(),
              last + "  - {name: drain, from: drain bung, ends in: 1 brass gate valve, carries: water, need: [" + need +
                  "]}\n");
  return job;
}

std::string refusals(const Plan& plan) {
  std::string all;
  for (const Finding& finding : plan.findings)
    if (finding.severity == Severity::refused) all += report::said(finding.reason) + "\n";
  return all;
}

std::string check_in(const Plan& plan) {
  for (const ConnectionPlan& connection : plan.connections)
    if (connection.name == "drain" && connection.run() != nullptr)
      for (const chain::RunPart& link : connection.run()->parts) {
        const std::string& id = shipped_catalog()->part(link.part).id;
        if (id.find("check-valve") != std::string::npos) return id;
      }
  return "none";
}

TEST(Mounting, ASwingCheckUnderTheFloorIsRefused) {
  const Plan plan = plan_of_text(with_drain("floor", "check-valve/brass/1"));
  EXPECT_THAT(refusals(plan),
              HasSubstr("'drain': the flow runs down through the 1 swing check valve, brass, whose flap "
                        "hangs open there and does not close"));
}

TEST(Mounting, InTheSideItLiesFlatAndOnTheLidTheFlowRunsUp) {
  for (const char* place : {"side", "lid"})
    EXPECT_THAT(refusals(plan_of_text(with_drain(place, "check-valve/brass/1"))), ::testing::Not(HasSubstr("flap")))
        << place;
}

TEST(Mounting, WhereASpringCheckWouldDoItIsTaken) {
  const Plan plan = plan_of_text(with_drain("floor", "check valve"));
  EXPECT_THAT(check_in(plan), HasSubstr("spring-check-valve/"));
  EXPECT_THAT(refusals(plan), ::testing::Not(HasSubstr("flap")));
}

}  // namespace
}  // namespace riserun::plan
