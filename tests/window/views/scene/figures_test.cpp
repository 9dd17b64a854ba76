#include "gui/views/scene/figures.h"

#include "report/text/plan_text.h"
#include "unit/plan/shipped.h"

#include <gmock/gmock.h>

#include <algorithm>

namespace riserun::views {
namespace {

using testing::HasSubstr;
using testing::Not;

TEST(Figures, EachSaysWhereItComesFrom) {
  for (const char* name : {"bevel-bench", "air-too-weak", "one-part-short", "walls-too-thin"}) {
    const plan::Plan plan = plan::plan_of_example(name);
    auto groups = figures_of(plan, UnitSystem::inch);
    groups.push_back({"headline", plan::Topic::whole_job, headline(plan, UnitSystem::inch)});
    for (const FigureGroup& group : groups)
      for (const Figure& figure : group.figures) {
        EXPECT_FALSE(figure.value.empty()) << name << ": " << figure.label;
        EXPECT_GT(figure.where_from.size(), 10u) << name << ": " << figure.label;
      }
  }
}

TEST(Figures, ThePressuresStandBesideTheWallsLimit) {
  for (const FigureGroup& group : figures_of(plan::bevel_bench(), UnitSystem::inch))
    for (const Figure& figure : group.figures)
      if (figure.label == "regulator setting" || figure.label == "hold pressure" ||
          (group.title == "Leak test" && figure.label == "pressure")) {
        EXPECT_THAT(figure.beside, HasSubstr("walls' limit " +
                                             write_pressure_alone(plan::bevel_bench().walls.limit, UnitSystem::inch)));
      }
  EXPECT_THAT(headline(plan::bevel_bench(), UnitSystem::inch).front().beside, HasSubstr("walls' limit"));
}

TEST(Figures, AreThoseThatTheCommandPrints) {
  for (const UnitSystem units : {UnitSystem::inch, UnitSystem::metric}) {
    const std::string printed = report::plan_text(plan::bevel_bench(), report::Style{units, false});
    for (const Figure& figure : headline(plan::bevel_bench(), units))
      if (figure.label != "buy") {
        EXPECT_THAT(printed, HasSubstr(figure.value)) << figure.label;
      }
  }
}

TEST(Figures, WaterThatNeverGetsThereHasNoTime) {
  for (const auto& [name, why] :
       {std::pair("one-part-short", "'water up' does not go together"), std::pair("air-too-weak", "stops after")}) {
    const plan::Plan plan = plan::plan_of_example(name);
    const std::vector<Figure> figures = headline(plan, UnitSystem::inch);
    const auto fill = std::find_if(figures.begin(), figures.end(), [](const Figure& f) { return f.label == "fill"; });
    ASSERT_NE(fill, figures.end());
    EXPECT_EQ(fill->value, "never") << name;
    EXPECT_THAT(fill->beside, HasSubstr(why));
    const std::string printed = report::plan_text(plan, report::Style{UnitSystem::inch, false});
    const std::size_t line = printed.find("\n  Fill ");
    EXPECT_THAT(printed.substr(line, printed.find('\n', line + 1) - line), Not(HasSubstr(" min "))) << name;
  }
}

TEST(Verdict, IsSaidInCapitals) {
  EXPECT_EQ(verdict_of(plan::Verdict::ready), "READY");
  EXPECT_EQ(verdict_of(plan::Verdict::not_yet), "NOT YET");
  EXPECT_EQ(verdict_of(plan::Verdict::refused), "REFUSED");
}

}  // namespace
}  // namespace riserun::views
