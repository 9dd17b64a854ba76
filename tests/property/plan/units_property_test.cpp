// One plan from both units and from every way to write a number: random jobs in inch and in metric, with units and
// bare.
#include "property/plan/random_job.h"
#include "quantity/read.h"
#include "unit/plan/shipped.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <map>
#include <regex>
#include <tuple>

namespace riserun::plan {
namespace {

struct Metric {
  double factor;
  const char* unit;
};
const std::map<std::string, Metric> kMetric = {{"in", {25.4, "mm"}},
                                               {"psi", {0.068947572931683613, "bar"}},
                                               {"scfm", {28.316846592, "L/min"}},
                                               {"gal", {3.785411784, "L"}}};

/// Calls `rewrite` with each number that is the value of a key, and its unit.
template <class Rewrite>
std::string rewritten(const std::string& text, Rewrite rewrite) {
  static const std::regex kMeasure(R"(: (\d[\d./-]*) (in|psi|scfm|gal)(?=[,}\n]| steel))");
  std::string out;
  auto from = text.cbegin();
  for (std::sregex_iterator at(text.begin(), text.end(), kMeasure), end; at != end; ++at) {
    out.append(from, (*at)[0].first);
    out += ": " + rewrite((*at)[1].str(), (*at)[2].str());
    from = (*at)[0].second;
  }
  return out.append(from, text.cend());
}

double value_of(const std::string& number) { return std::get<double>(quantity::read_number(number)); }

std::string in_metric(const std::string& inch) {
  return with(rewritten(inch,
                        [](const std::string& number, const std::string& unit) {
                          const Metric& metric = kMetric.at(unit);
                          return fmt::format("{:.11g} {}", value_of(number) * metric.factor, metric.unit);
                        }),
              "units: inch", "units: metric");
}

std::string bare(const std::string& inch) {
  return rewritten(inch, [](const std::string& number, const std::string& /*unit*/) { return number; });
}

std::string bare_metric(const std::string& inch) {
  return with(rewritten(inch,
                        [](const std::string& number, const std::string& unit) {
                          return fmt::format("{:.11g}", value_of(number) * kMetric.at(unit).factor);
                        }),
              "units: inch", "units: metric");
}

/// What the plan comes to: its verdict, what is open, what is bought, taken and cut.
std::vector<std::string> outcome(const Plan& plan) {
  std::vector<std::string> lines = {fmt::format("verdict {}", static_cast<int>(plan.verdict))};
  for (const Finding& finding : plan.findings) {
    std::string ways;
    for (const Changes& way : finding.ways_to_mend)
      for (const Change& change : way)
        ways += fmt::format(" {} {}", change.key, change.part ? plan.catalog->part(*change.part).id : "");
    lines.push_back(fmt::format("open {} {} |{} {}", static_cast<int>(finding.where), finding.reason.code, ways,
                                finding.buy && finding.buy->part ? plan.catalog->part(*finding.buy->part).id : ""));
  }
  for (const ListItem& item : plan.list.buy) lines.push_back(fmt::format("buy {} {}", item.quantity, item.id));
  for (const ListItem& item : plan.list.from_bin) lines.push_back(fmt::format("bin {} {}", item.quantity, item.id));
  for (const CutItem& cut : plan.list.cut) {
    // A plate is called as the job's own words have it.
    lines.push_back(fmt::format("cut {} {} {:.3f}", cut.quantity, cut.width ? "plate" : cut.stock.name,
                                in_millimetres(cut.length)));
  }
  lines.push_back(fmt::format("set {:.4f}", in_psi(plan.transfer.setting)));
  return lines;
}

/// Settings that stand in a plain ratio to what is sold: a relief valve a quarter above, a dial of twice, a range of
/// ten times as much.
std::string with_setting(std::string job, std::uint32_t seed) {
  constexpr std::array kSettings = {"", "1.6 psi", "1.2 psi", "1.5 psi", "2.4 psi", "2 psi", "1 psi"};
  const std::string setting = kSettings[seed % kSettings.size()];
  return setting.empty() ? job : with(std::move(job), "  delivery:", "  set pressure: " + setting + "\n  delivery:");
}

TEST(OnePlan, ComesOfBothUnitsAndOfBareNumbers) {
  const std::uint32_t count = count_of_jobs(10);
  for (std::uint32_t seed = 5001; seed <= 5000 + count; ++seed) {
    const std::string inch = with_setting(random_job(seed), seed);
    SCOPED_TRACE(inch);
    const std::vector<std::string> wanted = outcome(plan_of_text(inch));
    EXPECT_EQ(outcome(plan_of_text(bare(inch))), wanted);
    EXPECT_EQ(outcome(plan_of_text(in_metric(inch))), wanted) << in_metric(inch);
    EXPECT_EQ(outcome(plan_of_text(bare_metric(inch))), wanted) << bare_metric(inch);
    if (HasFailure()) return;
  }
}

TEST(OnePlan, BuysTheReliefValveOfAQuarterAboveTheSettingInBothUnits) {
  const std::string job = example_text("walls-too-thin");
  for (const char* setting : {"1.6 psi", "0.11031611669 bar", "11.031611669 kPa", "110.31611669 mbar"}) {
    const Plan plan = plan_of_text(with(with(job, "16 ga steel", "3/16 in steel"),
                                        "  delivery:", fmt::format("  set pressure: {}\n  delivery:", setting)));
    const auto no_valve = std::find_if(plan.findings.begin(), plan.findings.end(),
                                       [](const Finding& open) { return open.reason.code == "no_relief_valve"; });
    ASSERT_NE(no_valve, plan.findings.end()) << setting;
    ASSERT_TRUE(no_valve->buy && no_valve->buy->part) << setting;
    EXPECT_NEAR(in_psi(*plan.catalog->part(*no_valve->buy->part).opens_at), 2.0, 1e-6) << setting;
  }
}

}  // namespace
}  // namespace riserun::plan
