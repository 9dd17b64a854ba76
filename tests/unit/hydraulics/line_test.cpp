// Edge cases of lines: no flow, no head, one element, tiny and huge bores, names and ends.
#include "hydraulics/line.h"

#include "hydraulics/compiled_line.h"
#include "hydraulics/friction.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <vector>

namespace riserun::hydraulics {
namespace {

using testing::ElementsAre;

const Water kWater = *water_at(degrees_celsius(20.0));

LineElement pipe(const char* name, Length bore, Length length = metres(1.0), Length roughness = metres(0.0)) {
  LineElement made;
  made.name = name;
  made.bore = bore;
  made.length = length;
  made.roughness = roughness;
  return made;
}

std::vector<std::string> names(const std::vector<ElementLoss>& losses) {
  std::vector<std::string> made;
  for (const ElementLoss& loss : losses) made.push_back(loss.element);
  return made;
}

TEST(Line, NamesItsLossesInTheOrderThatTheWaterMeetsThem) {
  const Line line({pipe("riser", inches(1.049)), pipe("barb", inches(0.5)), pipe("hose", inches(0.75))}, LineEnd{},
                  LineEnd{});
  const VolumeFlow flow = litres_per_minute(20.0);
  EXPECT_THAT(names(line.losses(flow, Direction::forward, kWater)),
              ElementsAre("entry into riser", "riser", "narrowing into barb", "barb", "widening into hose", "hose",
                          "exit from hose"));
  EXPECT_THAT(names(line.losses(flow, Direction::backward, kWater)),
              ElementsAre("entry into hose", "hose", "narrowing into barb", "barb", "widening into riser", "riser",
                          "exit from riser"));
}

TEST(Line, TakesItsEndsByDirection) {
  const LineEnd riser_end{0.78, 1.0, 0.0, "a"};
  const LineEnd table_end{0.25, 0.9, 0.0, "b"};
  const Line line({pipe("pipe", inches(1.0))}, riser_end, table_end);
  const auto forward = line.losses(litres_per_minute(20.0), Direction::forward, kWater);
  EXPECT_NEAR(forward.front().k, 0.78, 1.0e-15);
  EXPECT_EQ(forward.front().source, "a");
  EXPECT_NEAR(forward.back().k, 0.9, 1.0e-15);
  EXPECT_EQ(forward.back().source, "b");
  const auto backward = line.losses(litres_per_minute(20.0), Direction::backward, kWater);
  EXPECT_NEAR(backward.front().k, 0.25, 1.0e-15);
  EXPECT_NEAR(backward.back().k, 1.0, 1.0e-15);
}

TEST(Line, WithoutFlowTakesNoHead) {
  const Line line({pipe("pipe", inches(1.0)), pipe("hose", inches(0.5))}, LineEnd{}, LineEnd{});
  EXPECT_EQ(line.head_loss(VolumeFlow(), Direction::forward, kWater), Head());
  for (const ElementLoss& loss : line.losses(VolumeFlow(), Direction::forward, kWater)) {
    EXPECT_EQ(loss.head, Head());
    EXPECT_EQ(loss.k, 0.0);
    EXPECT_EQ(loss.velocity, Velocity());
  }
}

TEST(Line, WithoutHeadHasNoFlow) {
  const Line line({pipe("pipe", inches(1.0))}, LineEnd{}, LineEnd{});
  EXPECT_EQ(line.flow_at(Head(), Direction::forward, kWater), VolumeFlow());
  EXPECT_EQ(line.flow_at(metres_of_head(-1.0), Direction::forward, kWater), VolumeFlow());
}

TEST(Line, WithoutElementsTakesNoHeadAtAnyFlow) {
  const Line line;
  EXPECT_TRUE(line.empty());
  EXPECT_EQ(line.head_loss(litres_per_minute(10.0), Direction::forward, kWater), Head());
  EXPECT_TRUE(line.losses(litres_per_minute(10.0), Direction::forward, kWater).empty());
  EXPECT_TRUE(std::isinf(in_cubic_metres_per_second(line.flow_at(metres_of_head(1.0), Direction::forward, kWater))));
  EXPECT_EQ(line.smallest_bore(), Length());
  EXPECT_EQ(line.volume(), Volume());
}

TEST(Line, WithoutAnyLossHasInfiniteFlow) {
  const LineEnd free_end{0.0, 0.0, 0.0, ""};
  const Line line({pipe("ring", inches(1.0), metres(0.0))}, free_end, free_end);
  EXPECT_TRUE(std::isinf(in_cubic_metres_per_second(line.flow_at(metres_of_head(1.0), Direction::forward, kWater))));
}

TEST(Line, FlowIsRightFromVanishingToHugeHeads) {
  for (const double bore : {1.0e-4, 0.001, 0.0266, 0.5, 3.0}) {
    const Line line({pipe("pipe", metres(bore), metres(2.0), metres(4.6e-5))}, LineEnd{}, LineEnd{});
    for (const double head : {1.0e-12, 1.0e-9, 1.0e-3, 1.0, 1.0e3, 1.0e6}) {
      const VolumeFlow flow = line.flow_at(metres_of_head(head), Direction::forward, kWater);
      EXPECT_NEAR(in_metres(line.head_loss(flow, Direction::forward, kWater)) / head, 1.0, 4.0e-12)
          << "bore " << bore << ", head " << head;
    }
  }
}

TEST(Line, VanishingFlowTakesVanishingHead) {
  const Line line({pipe("pipe", inches(1.0))}, LineEnd{}, LineEnd{});
  const Head head = line.head_loss(cubic_metres_per_second(1.0e-200), Direction::forward, kWater);
  EXPECT_GT(head, Head());
  EXPECT_LT(in_metres(head), 1.0e-190);
}

TEST(Line, EqualBoresHaveNoChangeBetweenThem) {
  const Line line({pipe("a", inches(1.0)), pipe("b", inches(1.0))}, LineEnd{}, LineEnd{});
  EXPECT_THAT(names(line.losses(litres_per_minute(5.0), Direction::forward, kWater)),
              ElementsAre("entry into a", "a", "b", "exit from b"));
}

// A barb of 0.75 of the hose's bore: Crane's contraction and expansion on the barb's own velocity.
TEST(Line, ABarbLosesHeadOnItsOwnBore) {
  const Line line({pipe("hose", inches(1.0), metres(0.0)), pipe("barb", inches(0.75), metres(0.0)),
                   pipe("hose", inches(1.0), metres(0.0))},
                  LineEnd{}, LineEnd{});
  const auto losses = line.losses(litres_per_minute(30.0), Direction::forward, kWater);
  const double beta2 = 0.75 * 0.75;
  EXPECT_NEAR(losses[2].k, 0.5 * (1.0 - beta2), 1.0e-14);
  EXPECT_NEAR(losses[4].k, (1.0 - beta2) * (1.0 - beta2), 1.0e-14);
  EXPECT_NEAR(losses[2].velocity / losses[1].velocity, 1.0 / beta2, 1.0e-14);
}

TEST(Line, ScatterSpansTheFittingsLossOnly) {
  LineElement valve = pipe("valve", inches(1.0), metres(0.0));
  valve.fixed_k = 4.0;
  valve.crane_n = 10.0;
  valve.scatter = 0.25;
  const Line line({valve}, LineEnd{}, LineEnd{});
  const auto k = [&](Coefficients coefficients) {
    return line.losses(litres_per_minute(30.0), Direction::forward, kWater, coefficients)[1].k;
  };
  EXPECT_NEAR(k(Coefficients::low) / k(Coefficients::nominal), 0.75, 1.0e-14);
  EXPECT_NEAR(k(Coefficients::high) / k(Coefficients::nominal), 1.25, 1.0e-14);
}

TEST(Line, TurbulentFrictionIsKnownToTenPercentAndLaminarExactly) {
  const Line line({pipe("pipe", inches(1.0), metres(5.0), metres(4.6e-5))}, LineEnd{}, LineEnd{});
  const auto ratio = [&](VolumeFlow flow, Coefficients coefficients) {
    return line.losses(flow, Direction::forward, kWater, coefficients)[1].head /
           line.losses(flow, Direction::forward, kWater)[1].head;
  };
  EXPECT_NEAR(ratio(litres_per_minute(40.0), Coefficients::low), 0.9, 1.0e-13);
  EXPECT_NEAR(ratio(litres_per_minute(40.0), Coefficients::high), 1.1, 1.0e-13);
  EXPECT_EQ(ratio(litres_per_minute(1.0), Coefficients::low), 1.0);
  EXPECT_EQ(ratio(litres_per_minute(1.0), Coefficients::high), 1.0);
}

TEST(Line, KnowsItsSmallestBoreAndItsVolume) {
  const Line line({pipe("riser", metres(0.02), metres(1.0)), pipe("barb", metres(0.01), metres(0.1))}, LineEnd{},
                  LineEnd{});
  EXPECT_EQ(in_metres(line.smallest_bore()), 0.01);
  EXPECT_NEAR(in_litres(line.volume()), 0.3141592653589793 + 0.007853981633974483, 1.0e-15);
}

TEST(Line, SaysWhatIsRougherThanTheMoodyChart) {
  const Line line({pipe("new", inches(1.0), metres(1.0), millimetres(0.15)),
                   pipe("corroded", inches(0.5), metres(1.0), millimetres(1.5)),
                   pipe("ring", inches(0.5), metres(0.0), millimetres(1.5))},
                  LineEnd{}, LineEnd{});
  EXPECT_THAT(line.beyond_moody_chart(), ElementsAre("corroded"));
}

TEST(CompiledLine, GivesNoHeadAndNoFlowForNothing) {
  CompiledLine line(Line({pipe("pipe", inches(1.0))}, LineEnd{}, LineEnd{}), Direction::forward, kWater);
  EXPECT_EQ(line.head(0.0), 0.0);
  EXPECT_EQ(line.head(-1.0), 0.0);
  EXPECT_EQ(line.flow(0.0), 0.0);
  EXPECT_EQ(line.flow(-1.0), 0.0);
  EXPECT_GT(line.head_and_slope(0.0).slope, 0.0) << "laminar friction has a slope at no flow";
}

// Where a fitting goes from 3-K to Crane's K the curve has a kink: a step across it is not yet the answer, however
// short.
TEST(CompiledLine, SolvesAcrossTheKinkOfAFitting) {
  LineElement elbow = pipe("elbow", inches(1.049), metres(0.0));
  elbow.crane_n = 400.0;
  elbow.darby_k1 = 2000.0;
  const Line line({elbow}, LineEnd{0.0, 0.0, 0.0, ""}, LineEnd{0.0, 0.0, 0.0, ""});
  CompiledLine compiled(line, Direction::forward, kWater);
  const double reynolds = elbow.darby_k1 / (elbow.crane_n * crane_turbulent_friction_factor(elbow.bore));
  const double viscosity = in_pascal_seconds(kWater.viscosity) / in_kilograms_per_cubic_metre(kWater.density);
  const double kink = reynolds * viscosity * std::numbers::pi / 4.0 * in_metres(elbow.bore);
  EXPECT_NEAR(compiled.head_and_slope(0.99 * kink).slope * 0.99 * kink / compiled.head(0.99 * kink), 1.0, 1.0e-12);
  EXPECT_NEAR(compiled.head_and_slope(1.01 * kink).slope * 1.01 * kink / compiled.head(1.01 * kink), 2.0, 1.0e-12);
  for (const double offset : {1.0e-8, 1.0e-7, 2.0e-7, 1.0e-4, 0.1, 0.9}) {
    for (const double flow : {kink * (1.0 - offset), kink * (1.0 + offset), kink * (1.0 - offset)}) {
      EXPECT_NEAR(compiled.flow(compiled.head(flow)) / flow, 1.0, 1.0e-12) << offset;
    }
  }
}

}  // namespace
TEST(LineEnds, EntryAndExitHaveRangesOfTheirOwn) {
  const Water water = water_at(degrees_celsius(20.0)).value();
  const VolumeFlow flow = us_gallons_per_minute(10.0);
  LineElement bare;
  bare.name = "bare";
  bare.bore = inches(1.0);
  LineEnd first;
  first.entry_k = 0.8;
  first.scatter = 0.5;
  const LineEnd last{0.5, 1.0, 0.0, "", 0.25};
  const Line line({bare}, first, last);
  const double nominal =
      line.head_loss(flow, Direction::forward, water) / line.head_loss(flow, Direction::backward, water);
  EXPECT_NEAR(nominal, 1.8 / 1.5, 1e-12);
  const double high = line.head_loss(flow, Direction::forward, water, Coefficients::high) /
                      line.head_loss(flow, Direction::forward, water);
  EXPECT_NEAR(high, (0.8 * 1.5 + 1.25) / 1.8, 1e-12);
}

}  // namespace riserun::hydraulics
