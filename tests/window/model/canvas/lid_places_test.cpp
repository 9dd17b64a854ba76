// Where what stands on the lid is put: against the plan, and against any other places that would do.
#include "gui/model/canvas/lid_places.h"

#include "gui/model/canvas/draft.h"
#include "gui/model/canvas/lay_out.h"
#include "plan/job/read_job.h"
#include "window/model/bench.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace riserun::gui {
namespace {

double off(const std::vector<LidStand>& stands, const std::vector<float>& places) {
  double sum = 0.0;
  for (std::size_t i = 0; i < stands.size(); ++i) sum += std::pow(places[i] - stands[i].wanted, 2.0);
  return sum;
}

bool stand_apart(const std::vector<LidStand>& stands, const std::vector<float>& places, float low, float high) {
  constexpr float kRounding = 0.01F;
  for (std::size_t i = 0; i < stands.size(); ++i) {
    if (places[i] - stands[i].left < low - kRounding || places[i] + stands[i].right > high + kRounding) return false;
    if (i > 0 && places[i - 1] + stands[i - 1].right > places[i] - stands[i].left + kRounding) return false;
  }
  return true;
}

TEST(LidPlaces, AreAsNearToWhereTheyAreWantedAsCanBe) {
  std::mt19937 random(11);
  const auto any = [&](float low, float high) { return std::uniform_real_distribution<float>(low, high)(random); };
  for (int world = 0; world < 2000; ++world) {
    std::vector<LidStand> stands(1 + random() % 7);
    float room = 0.0F;
    for (LidStand& stand : stands) {
      stand = {any(0.0F, 1000.0F), any(5.0F, 60.0F), any(5.0F, 200.0F)};
      room += stand.left + stand.right;
    }
    std::sort(stands.begin(), stands.end(), [](const auto& a, const auto& b) { return a.wanted < b.wanted; });
    const float high = std::max(1000.0F, room);
    const std::vector<float> places = places_on_lid(stands, 0.0F, high);
    ASSERT_TRUE(stand_apart(stands, places, 0.0F, high)) << world;
    // The sum is convex: where no neighbours moved together bring it down, nothing does.
    for (std::size_t from = 0; from < stands.size(); ++from)
      for (std::size_t to = from + 1; to <= stands.size(); ++to)
        for (const float by : {-1.0F, 1.0F}) {
          std::vector<float> other = places;
          for (std::size_t i = from; i < to; ++i) other[i] += by;
          if (stand_apart(stands, other, 0.0F, high)) {
            EXPECT_GE(off(stands, other), off(stands, places) - 0.5) << world;
          }
        }
  }
}

TEST(LidPlaces, BungsOfAnExampleStandWhereThePlanHasThem) {
  const plan::Plan plan = plan::make_plan(
      testing::shipped_catalog(), plan::read_job(*testing::shipped_catalog(), testing::example("bevel-bench"), "b"));
  const Sketch sketch = sketch_of(plan);
  WordSizes words;
  for (const Node& node : sketch.nodes) {
    words.beside.push_back(node.part ? Size{90.0F, 45.0F} : Size{});
    words.brief.push_back(words.beside.back());
    words.listed.push_back(words.beside.back());
  }
  words.titles.assign(plan.connections.size(), Size{90.0F, 30.0F});
  const std::vector<report::RunPicture> pictures = run_pictures(plan);
  const Layout layout = lay_out({plan, sketch, pictures, words, {4000.0F, 2000.0F}, {}, {}});
  const Box& tank = layout.nodes[kReservoir];
  int seen = 0;
  for (std::size_t pin = 0; pin < sketch.nodes[kReservoir].pins.size(); ++pin) {
    const auto share = share_of_lid(plan, sketch.nodes[kReservoir].pins[pin].port);
    if (!share) continue;
    ++seen;
    EXPECT_NEAR((layout.pins[kReservoir][pin].where.x - tank.corner.x) / tank.size.width, *share, 0.02)
        << sketch.nodes[kReservoir].pins[pin].port;
  }
  EXPECT_EQ(seen, 5);
  EXPECT_NEAR(2.0 * half_of_riser(plan, layout) / layout.scale, in_metres(plan.riser.request.pipe.outside_diameter),
              1e-6);
}

TEST(DrawnBetween, KeepsAStayBetweenTheBungsThatItStandsBetween) {
  const std::vector<DrawnPlace> bungs = {{0.875F, 0.85F}, {0.125F, 0.05F}, {0.625F, 0.7F}, {0.5F, 0.5F}};
  EXPECT_FLOAT_EQ(drawn_between(bungs, 0.75F), 0.775F);  // its own share would be nearly on the bung at 0.7
  EXPECT_FLOAT_EQ(drawn_between(bungs, 0.0625F), 0.025F);
  EXPECT_FLOAT_EQ(drawn_between(bungs, 0.0F), 0.0F);
  EXPECT_FLOAT_EQ(drawn_between(bungs, 1.0F), 1.0F);
  EXPECT_FLOAT_EQ(drawn_between({}, 0.3F), 0.3F);
}

TEST(DrawnBetween, TakesTheMiddleOfBungsOneBehindTheOther) {
  EXPECT_FLOAT_EQ(drawn_between({{0.5F, 0.4F}, {0.5F, 0.6F}}, 0.25F), 0.25F);
  EXPECT_FLOAT_EQ(drawn_between({{0.5F, 0.2F}, {0.5F, 0.4F}}, 0.5F), 0.3F);
}

TEST(DrawnBetween, OfBungsInAnotherOrderIsItsOwnShare) {
  EXPECT_FLOAT_EQ(drawn_between({{0.3F, 0.7F}, {0.6F, 0.5F}}, 0.4F), 0.4F);
}

}  // namespace
}  // namespace riserun::gui
