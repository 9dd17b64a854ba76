// What a mend prints, typed into the job as it stands there, mends.
#include "unit/plan/judge/ready_job.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

constexpr const char* kGaugeLine =
    "  - {name: gauge, from: gauge bung, ends in: 5 psi gauge, special order: yes, carries: air}\n";
constexpr const char* kReliefRow =
    "  - {name: relief, from: relief bung, ends in: 3/4 relief valve set 2 psi, special order: yes, carries: air}\n";
constexpr const char* kVentLine = "  - {name: vent, from: vent bung, ends in: 1/2 brass ball valve, carries: air}\n";

struct Missing {
  const char* line;
  const char* code;
  const char* port;
};

class TypedMend : public testing::TestWithParam<Missing> {};

/// The part that the finding has on its list.
std::string bought(const Plan& plan, std::string_view code) {
  for (const Finding& finding : plan.findings)
    if (finding.reason.code == code && finding.buy && finding.buy->part)
      return plan.catalog->part(*finding.buy->part).name;
  return "";
}

TEST_P(TypedMend, MendsInEitherStyleOfYaml) {
  const Missing& row = GetParam();
  const Plan plan = plan_of_text(with(kReady, row.line, ""));
  const std::string part = bought(plan, row.code);
  ASSERT_FALSE(part.empty()) << testing::PrintToString(open_in(plan));
  const std::string said = said_of(plan, row.code);
  EXPECT_THAT(said, HasSubstr(fmt::format("'from: {}', 'ends in: \"{}\"', 'carries: air'", row.port, part)));
  const std::string order = said.find("special order") != std::string::npos ? ", special order: yes" : "";
  // With the word on air, as it is printed, and without it: over the water is air.
  for (const char* air : {", carries: air", ""})
    EXPECT_THAT(
        open_in(plan_of_text(with(kReady, row.line,
                                  fmt::format("  - {{from: {}, ends in: \"{}\"{}{}}}\n", row.port, part, air, order)))),
        IsEmpty())
        << part << air;
}

INSTANTIATE_TEST_SUITE_P(Mends, TypedMend,
                         testing::Values(Missing{kGaugeLine, "no_gauge", "gauge bung"},
                                         Missing{kReliefRow, "no_relief_valve", "relief bung"},
                                         Missing{kVentLine, "no_vent_behind_check_valve", "vent bung"}),
                         [](const auto& row) { return std::string(row.param.code); });

// A valve of the bung's size is in every store: none of another size by special order.
TEST(TypedMends, VentValveIsOfTheBungsOwnSize) {
  const std::string said = said_of(plan_of_text(with(kReady, kVentLine, "")), "no_vent_behind_check_valve");
  EXPECT_THAT(said, HasSubstr("'ends in: \"1/2 full-bore ball valve\"'"));
  EXPECT_THAT(said, Not(HasSubstr("special order")));
}

}  // namespace
}  // namespace riserun::plan
