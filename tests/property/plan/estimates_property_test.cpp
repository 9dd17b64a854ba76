// Every estimate that is printed with a range lies in it, over random jobs with supplies that are strong or fail, with
// and without a check valve, in a floor, a side or over the rim.
#include "property/plan/random_job.h"
#include "quantity/read.h"
#include "quantity/write.h"
#include "report/figures/figures.h"
#include "unit/plan/shipped.h"

#include <gtest/gtest.h>

#include <random>

namespace riserun::plan {
namespace {

/// A quantity in its own unit, to be set beside another of its kind.
struct Number {
  template <class T>
  double operator()(const T& value) const {
    if constexpr (std::is_arithmetic_v<T>)
      return static_cast<double>(value);
    else if constexpr (requires { value.in_si(); })
      return value.in_si();
    else if constexpr (requires { value.value(); })
      return value.value();
    else
      return 0.0;  // a name, a price: they have no range
  }
};

double number(const quantity::Value& value) { return std::visit(Number{}, value); }

/// What is printed rounds the three alike, so it is read back, too.
void expect_in_its_range(const report::FigureGroup& group, const report::Figure& figure) {
  SCOPED_TRACE(std::string(group.key) + "." + std::string(figure.key));
  EXPECT_LE(number(*figure.low), number(figure.value));
  EXPECT_LE(number(figure.value), number(*figure.high));
  const auto* low = std::get_if<Time>(&*figure.low);
  const auto* value = std::get_if<Time>(&figure.value);
  if (low == nullptr || value == nullptr) return;
  const auto printed = [](Time time) { return std::get<Time>(quantity::read_time(quantity::write_time(time))); };
  EXPECT_LE(printed(*low), printed(*value));
  if (const Time high = std::get<Time>(*figure.high); std::isfinite(in_seconds(high))) {
    EXPECT_LE(printed(*value), printed(high));
  }
}

int ranges_in(const Plan& plan) {
  int ranges = 0;
  for (const report::FigureGroup& group : report::figures_of(plan))
    for (const report::Figure& figure : group.figures) {
      EXPECT_EQ(figure.low.has_value(), figure.high.has_value()) << figure.key;
      if (!figure.low || !figure.high) continue;
      ++ranges;
      expect_in_its_range(group, figure);
    }
  return ranges;
}

/// The random job with another supply and another inlet.
std::string varied(std::uint32_t seed) {
  std::mt19937 dice(seed);
  const auto one_of = [&](const std::vector<std::string>& words) { return words[dice() % words.size()]; };
  std::string text = random_job(seed);
  text =
      with(text, "delivery: 3 scfm", "delivery: " + one_of({"0.01 scfm", "0.2 scfm", "1 scfm", "3 scfm", "20 scfm"}));
  text = with(text, "receiver: 8 gal",
              "receiver: " + one_of({"0 gal", "0.3 gal", "1 gal", "3 gal", "8 gal", "60 gal"}) +
                  "\n  receiver pressure: " + one_of({"20 psi", "90 psi", "125 psi"}) +
                  one_of({"", "\n  set pressure: 1.4 psi", "\n  set pressure: 2 psi", "\n  set pressure: 6 psi"}) +
                  one_of({"", "\n  regulator repeatability: 0.01 psi", "\n  regulator repeatability: 1 psi"}));
  text = with(text, "inlet: {port: 1 FNPT, where: floor}",
              "inlet: {port: 1 FNPT, where: " +
                  one_of({"floor", "floor, opens at: 1 in", "side, opens at: 3 in", "over rim, opens at: 1 in"}) + "}");
  return text;
}

TEST(Estimates, LieInTheRangesThatArePrintedBesideThem) {
  const std::uint32_t count = count_of_jobs(16);
  int ranges = 0;
  for (std::uint32_t seed = 3001; seed <= 3000 + count; ++seed) {
    const std::string text = varied(seed);
    SCOPED_TRACE(text);
    ranges += ranges_in(plan_of_text(text));
    if (HasFailure()) return;
  }
  EXPECT_GT(ranges, static_cast<int>(2 * count));
}

}  // namespace
}  // namespace riserun::plan
