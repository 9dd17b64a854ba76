// The verdict over random jobs: its word says what is open, a mend that is printed mends, no figure is impossible.
#include "plan/advice/change.h"
#include "property/plan/random_job.h"
#include "quantity/read.h"
#include "quantity/write.h"
#include "unit/plan/shipped.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace riserun::plan {
namespace {

bool refused(const Finding& finding) { return finding.severity == Severity::refused; }

void expect_word_for_what_is_open(const Plan& plan) {
  const bool any_refused = std::any_of(plan.findings.begin(), plan.findings.end(), refused);
  EXPECT_EQ(plan.verdict == Verdict::ready, plan.findings.empty());
  EXPECT_EQ(plan.verdict == Verdict::refused, any_refused);
}

void expect_figures_that_can_be(const Plan& plan) {
  const transfer::Fill& fill = plan.transfer.fill;
  EXPECT_TRUE(std::isfinite(in_seconds(fill.time)));
  EXPECT_GE(fill.time, seconds(0.0));
  EXPECT_GE(fill.reservoir_depth, plan.riser.riser.end_height - millimetres(1.0));
  EXPECT_LE(fill.table_depth, plan.levels.rim + millimetres(1.0));
  EXPECT_GE(plan.transfer.left_in_table, Volume{});
  EXPECT_LE(plan.transfer.left_in_table, plan.levels.rim_capacity * 1.0001);
  EXPECT_GE(plan.transfer.setting, psig(0.0));
  EXPECT_GT(plan.riser.riser.cut_length, metres(0.0));
  if (plan.leak_test.possible) {
    EXPECT_GT(plan.leak_test.pressure, psig(0.0));
    EXPECT_LE(plan.leak_test.pressure, plan.walls.limit);
  }
}

/// Of the same connection or port, which its first value names.
std::string said_of(const Finding& finding) {
  const auto& values = finding.reason.values;
  const auto* name = values.empty() ? nullptr : std::get_if<std::string>(&values.front());
  return name != nullptr ? *name : std::string();
}

const Finding* like(const std::vector<Finding>& findings, const Finding& wanted) {
  for (const Finding& finding : findings)
    if (finding.reason.code == wanted.reason.code && finding.where == wanted.where &&
        said_of(finding) == said_of(wanted))
      return &finding;
  return nullptr;
}

std::vector<Finding> open_with(const Plan& plan, const Changes& changes) {
  return findings_of(plan.catalog, changed(*plan.catalog, plan.job, changes));
}

/// What a person types who reads the value in the plan.
quantity::Value typed_back(const Change& change, UnitSystem units) {
  using namespace quantity;
  if (const auto* p = std::get_if<GaugePressure>(&change.value))
    return std::get<GaugePressure>(read_pressure(write_pressure_alone(*p, units)));
  if (const auto* p = std::get_if<PressureDifference>(&change.value))
    return std::get<PressureDifference>(read_pressure_difference(write_pressure_alone(*p, units)));
  if (const auto* v = std::get_if<Volume>(&change.value)) return std::get<Volume>(read_volume(write_volume(*v, units)));
  if (const auto* q = std::get_if<VolumeFlow>(&change.value))
    return std::get<VolumeFlow>(read_air_flow(write_air_flow(*q, units)));
  if (const auto* l = std::get_if<Length>(&change.value))
    return std::get<Length>(
        read_length(change.key == "air.restrictor" ? write_thickness(*l, units) : write_length(*l, units)));
  return change.value;
}

Changes typed_back(Changes changes, UnitSystem units) {
  for (Change& change : changes) change.value = typed_back(change, units);
  return changes;
}

/// The setting that the plan chose, typed into the job as it is printed: nothing more is open then.
void expect_printed_setting_taken(const Plan& plan) {
  for (const UnitSystem units : {UnitSystem::inch, UnitSystem::metric}) {
    const Changes setting = typed_back(Changes{{"air.set pressure", plan.transfer.setting}}, units);
    for (const Finding& finding : open_with(plan, setting))
      EXPECT_NE(like(plan.findings, finding), nullptr) << finding.reason.code << " at the printed setting";
  }
}

/// It is gone, and nothing as grave has come; of what is to be bought in any case, nothing that is refused.
void expect_mended(const Plan& plan, const Finding& finding, const std::vector<Finding>& after) {
  EXPECT_EQ(like(after, finding), nullptr);
  for (const Finding& left : after) {
    const bool only_a_step = finding.buy && left.severity != Severity::refused;
    EXPECT_TRUE(left.severity > finding.severity || only_a_step || like(plan.findings, left) != nullptr)
        << left.reason.code;
  }
}

/// @return how many ways were followed
int expect_mends_that_mend(const Plan& plan) {
  int followed = 0;
  for (const Finding& finding : plan.findings) {
    for (const Changes& way : finding.ways_to_try) {
      SCOPED_TRACE(std::string(finding.reason.code));
      ++followed;
      EXPECT_TRUE(finding.mend);
      expect_mended(plan, finding, open_with(plan, way));
    }
    for (const Changes& way : finding.ways_to_mend) {
      SCOPED_TRACE(std::string(finding.reason.code));
      ++followed;
      EXPECT_TRUE(finding.mend);
      for (const Changes& typed : {way, typed_back(way, UnitSystem::inch), typed_back(way, UnitSystem::metric)}) {
        expect_mended(plan, finding, open_with(plan, typed));
        if (typed == way && way.front().part) break;  // nothing to type
      }
    }
  }
  return followed;
}

TEST(Verdict, OfRandomJobsIsWhatIsOpenAndItsMendsMend) {
  const std::uint32_t count = count_of_jobs(12);
  int followed = 0;
  int words[3] = {0, 0, 0};
  for (std::uint32_t seed = 1001 + jobs_left_out(); seed <= 1000 + jobs_left_out() + count; ++seed) {
    const std::string text = random_job(seed);
    SCOPED_TRACE(text);
    const Plan plan = plan_of_text(text);
    ++words[static_cast<int>(plan.verdict)];
    expect_word_for_what_is_open(plan);
    expect_figures_that_can_be(plan);
    expect_printed_setting_taken(plan);
    followed += expect_mends_that_mend(plan);
    if (HasFailure()) return;
  }
  EXPECT_GT(followed, 10);  // or the jobs try nothing
  EXPECT_GT(words[static_cast<int>(Verdict::refused)], 0);
  EXPECT_GT(words[static_cast<int>(Verdict::not_yet)], 0);
}

TEST(Advice, ThatDoesNotHelpIsNotGiven) {
  // A setting higher than the walls may see is no way to lift the water.
  const Plan weak = plan_of_text(
      with(example_text("walls-too-thin"), "  delivery: 2.5 scfm", "  set pressure: 0.3 psi\n  delivery: 2.5 scfm"));
  int found = 0;
  for (const Finding& finding : weak.findings) {
    if (finding.reason.code != "setting_does_not_lift_the_water") continue;
    ++found;
    EXPECT_FALSE(finding.mend);
    EXPECT_TRUE(finding.ways_to_mend.empty());
  }
  EXPECT_EQ(found, 1);
}

}  // namespace
}  // namespace riserun::plan
