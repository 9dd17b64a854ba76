// Runs of the examples, put together to scale.
#include "report/drawing/run_drawing.h"

#include "unit/plan/shipped.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace riserun::report {
namespace {

const std::vector<const char*> kDrawnExamples = {"one-air-bung", "bevel-bench", "air-too-weak", "one-part-short",
                                                 "walls-too-thin"};

void each_run(const auto& check) {
  static const std::vector<plan::Plan> kPlans = [] {
    std::vector<plan::Plan> plans;
    for (const char* name : kDrawnExamples) plans.push_back(plan::plan_of_example(name));
    return plans;
  }();
  for (const plan::Plan& plan : kPlans) {
    for (const plan::ConnectionPlan& connection : plan.connections)
      if (connection.run() != nullptr) check(plan, connection);
  }
}

TEST(RunDrawing, HasEveryPartPlugAndDevice) {
  each_run([](const plan::Plan& plan, const plan::ConnectionPlan& connection) {
    const chain::Run& run = *connection.run();
    std::size_t wanted = run.parts.size();
    for (const chain::RunPart& part : run.parts) wanted += part.plugs().size();
    for (const chain::RunEnd& end : run.ends) wanted += end.device ? 1U : 0U;
    EXPECT_EQ(run_picture(*plan.catalog, run).items.size(), wanted) << connection.name;
  });
}

TEST(RunDrawing, AStraightRunIsAsLongAsThePlanSays) {
  int seen = 0;
  each_run([&](const plan::Plan& plan, const plan::ConnectionPlan& connection) {
    const chain::Run& run = *connection.run();
    if (connection.ends.size() != 1 || run.ends[0].device) return;
    const RunPicture picture = run_picture(*plan.catalog, run);
    for (const RunItem& item : picture.items)
      if (item.broken || item.heading != 0.0 || plan.catalog->part(item.part).ports.size() != 2) return;
    double last = 0.0;  // where the part that is furthest out ends
    for (const RunItem& item : picture.items) last = std::max(last, item.high.x);
    double length = in_metres(run.length);
    for (const chain::RunJoint& joint : run.joints)
      if (joint.to_end) length += in_metres(joint.make_up);
    EXPECT_NEAR(last, length, 0.15 * length) << connection.name;
    ++seen;
  });
  EXPECT_GT(seen, 0);
}

TEST(RunDrawing, AThreadGoesInAsFarAsItsJointSays) {
  each_run([](const plan::Plan& plan, const plan::ConnectionPlan& connection) {
    const chain::Run& run = *connection.run();
    const RunPicture picture = run_picture(*plan.catalog, run);
    for (const chain::RunJoint& joint : run.joints) {
      if (joint.to_end || joint.inner != chain::kBase) continue;
      EXPECT_NEAR(picture.items[joint.outer].low.x, -in_metres(joint.make_up), 0.02) << connection.name;
    }
  });
}

/// What stands on a lid does not hang through it.
TEST(RunDrawing, NoBranchLeadsBackBehindTheBase) {
  each_run([](const plan::Plan& plan, const plan::ConnectionPlan& connection) {
    const RunPicture picture = run_picture(*plan.catalog, *connection.run());
    for (const RunItem& item : picture.items)
      EXPECT_GT((item.low.x + item.high.x) / 2.0, -0.005)
          << connection.name << ": " << plan.catalog->part(item.part).id;
  });
}

TEST(RunDrawing, NumbersStandBesideThePartsAndNotOnEachOther) {
  constexpr double kPoint = 0.0254 / 72.0 * 2.0;  // at 1:2
  each_run([](const plan::Plan& plan, const plan::ConnectionPlan& connection) {
    RunPicture picture = run_picture(*plan.catalog, *connection.run());
    number_items(picture, kPoint);
    std::vector<Spot> numbers;
    for (const Shape& shape : picture.drawing.shapes)
      if (const Label* label = std::get_if<Label>(&shape)) numbers.push_back(label->at);
    ASSERT_EQ(numbers.size(), picture.items.size()) << connection.name;
    for (std::size_t i = 0; i < numbers.size(); ++i) {
      EXPECT_GE(numbers[i].x, picture.drawing.low.x);
      EXPECT_LE(numbers[i].x, picture.drawing.high.x);
      for (std::size_t j = 0; j < i; ++j)
        EXPECT_GT(std::hypot(numbers[i].x - numbers[j].x, numbers[i].y - numbers[j].y), 6.0 * kPoint)
            << connection.name << ' ' << i << ' ' << j;
    }
  });
}

TEST(RunDrawing, EachClampIsOnItsHoseEnd) {
  int seen = 0;
  each_run([&](const plan::Plan& plan, const plan::ConnectionPlan& connection) {
    const RunPicture picture = run_picture(*plan.catalog, *connection.run());
    int clamps = 0;
    double widest = 0.0;
    for (const Shape& shape : picture.drawing.shapes) {
      const auto* area = std::get_if<Area>(&shape);
      if (area == nullptr || area->name != "clamp") continue;
      ++clamps;
      for (const Spot& spot : area->outline) widest = std::max(widest, std::abs(spot.y));
    }
    EXPECT_EQ(clamps, connection.clamps) << connection.name;
    seen += clamps;
    if (clamps > 0) {
      EXPECT_GT(2.0 * widest, in_metres(plan.catalog->part(connection.run()->parts[1].part).ports[0].bore));
    }
  });
  EXPECT_GE(seen, 8);
}

/// How much of the smaller of two items' boxes lies under the other, of two that are not joined.
double most_covered(const chain::Run& run, const RunPicture& picture) {
  const auto size = [](const RunItem& item, const RunItem& other) {
    const double wide = std::min(item.high.x, other.high.x) - std::max(item.low.x, other.low.x);
    const double tall = std::min(item.high.y, other.high.y) - std::max(item.low.y, other.low.y);
    return wide > 0.0 && tall > 0.0 ? wide * tall : 0.0;
  };
  double most = 0.0;
  for (std::size_t a = 0; a < picture.items.size(); ++a)
    for (std::size_t b = 0; b < a; ++b) {
      const auto joined = [&](const chain::RunJoint& joint) {
        const std::size_t outer = joint.to_end ? a : joint.outer;
        return (joint.inner == b && outer == a) || (joint.inner == a && outer == b);
      };
      // Devices and plugs are drawn after the parts: they are joined to what they are screwed into.
      if (a >= run.parts.size() || std::any_of(run.joints.begin(), run.joints.end(), joined)) continue;
      const RunItem& one = picture.items[a];
      const RunItem& other = picture.items[b];
      most = std::max(most, size(one, other) / std::min(size(one, one), size(other, other)));
    }
  return most;
}

TEST(RunDrawing, OfSixBranchesNoneRunsIntoAnother) {
  const plan::Plan plan = plan::plan_of_text(plan::with(
      plan::example_text("one-air-bung"), "  - name: dip                  #",
      "      - name: spare\n        ends in: 1/4 plug\n      - name: second gauge\n        ends in: 15 psi gauge\n"
      "  - name: dip                  #"));
  int seen = 0;
  for (const plan::ConnectionPlan& connection : plan.connections) {
    if (connection.run() == nullptr || connection.run()->ends.size() != 6) continue;
    const RunPicture picture = run_picture(*plan.catalog, *connection.run());
    EXPECT_LT(most_covered(*connection.run(), picture), 0.25);
    const auto device_of = [&](const char* family) {
      for (const RunItem& item : picture.items)
        if (item.end && plan.catalog->family(plan.catalog->part(item.part).family).name == family) return item;
      return RunItem{};
    };
    const RunItem valve = device_of("relief valve");
    for (const RunItem& item : picture.items) {
      const bool in_it = item.middle.x > valve.low.x && item.middle.x < valve.high.x && item.middle.y > valve.low.y &&
                         item.middle.y < valve.high.y;
      EXPECT_TRUE(item.end || !in_it) << plan.catalog->part(item.part).id;
    }
    ++seen;
  }
  EXPECT_EQ(seen, 1);
}

}  // namespace
}  // namespace riserun::report
