// Laws that hold for every line: head rises with flow, flow and head are inverse, losses add up.
#include "hydraulics/compiled_line.h"
#include "hydraulics/friction.h"
#include "hydraulics/line.h"
#include "property/hydraulics/random_line.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

namespace riserun::hydraulics {
namespace {

double head(const Line& line, double flow, Direction direction, const Water& water,
            Coefficients coefficients = Coefficients::nominal) {
  return in_metres(line.head_loss(cubic_metres_per_second(flow), direction, water, coefficients));
}

/// Flow at which the first element has that Reynolds number.
double flow_at_reynolds(const Line& line, double reynolds, const Water& water) {
  const double viscosity = in_pascal_seconds(water.viscosity) / in_kilograms_per_cubic_metre(water.density);
  return reynolds * viscosity * 0.25 * 3.14159265358979 * in_metres(line.elements().front().bore);
}

TEST(FrictionFactorProperty, HeadRisesWithFlowAndFactorIsContinuousAtEveryRoughness) {
  for (const double roughness : {0.0, 1.0e-6, 1.0e-4, 1.0e-3, 0.01, 0.05, 0.5}) {
    for (const double scale : {0.9, 1.0, 1.1}) {
      FrictionFactor friction(roughness, scale);
      double last = 0.0;
      double last_factor = 0.0;
      for (double reynolds = 1500.0; reynolds < 5000.0; reynolds += 0.5) {
        const FrictionFactor::Value value = friction.at(reynolds);
        EXPECT_GT(value.factor * reynolds * reynolds, last) << reynolds;
        EXPECT_GT(value.slope, -1.0 - 1.0e-12);
        // Between two steps the factor moves as its slopes say: continuous, and the slopes are right. The rise of the
        // join is steepest for the roughest wall.
        const double stride = 0.5 / reynolds;
        if (last_factor > 0.0) {
          EXPECT_NEAR(std::log(value.factor / last_factor), value.slope * stride, 2.0e-5);
        }
        last = value.factor * reynolds * reynolds;
        last_factor = value.factor;
      }
    }
  }
}

TEST(FrictionFactorProperty, DoesNotDependOnWhatItSolvedBefore) {
  RandomLines random(11);
  FrictionFactor used(0.002);
  for (int i = 0; i < 20000; ++i) {
    const double reynolds = random.log_uniform(4000.0, 1.0e9);
    EXPECT_NEAR(used.at(reynolds).factor / colebrook_friction_factor(reynolds, 0.002), 1.0, 1.0e-14);
  }
}

TEST(LineProperty, HeadRisesStrictlyWithFlow) {
  RandomLines random(1);
  for (int i = 0; i < 300; ++i) {
    const Line line = random.line();
    const Water water = random.water();
    const Direction direction = random.direction();
    double last = 0.0;
    for (double flow = 1.0e-9; flow < 0.1; flow *= 1.07) {
      const double now = head(line, flow, direction, water);
      ASSERT_GT(now, last) << "flow " << flow;
      last = now;
    }
  }
}

// A jump would show as a change of head that doesn't shrink with the change of flow: head grows no faster than flow^3.
TEST(LineProperty, HeadIsContinuousInFlow) {
  RandomLines random(2);
  for (int i = 0; i < 100; ++i) {
    const Line line = random.line();
    const Water water = random.water();
    for (const double edge : {kLaminarReynolds, kTurbulentReynolds, random.log_uniform(10.0, 1.0e6)}) {
      const double flow = flow_at_reynolds(line, edge, water);
      const double below = head(line, flow * (1.0 - 1.0e-9), Direction::forward, water);
      const double above = head(line, flow * (1.0 + 1.0e-9), Direction::forward, water);
      EXPECT_LT(above / below - 1.0, 6.0e-9);
    }
  }
}

TEST(LineProperty, FlowAtIsTheInverseOfHeadLoss) {
  RandomLines random(3);
  for (int i = 0; i < 2000; ++i) {
    const Line line = random.line();
    const Water water = random.water();
    const Direction direction = random.direction();
    const Coefficients coefficients = random.chance(0.5) ? Coefficients::nominal : Coefficients::high;
    const double wanted = random.log_uniform(1.0e-9, 1.0e3);
    const VolumeFlow flow = line.flow_at(metres_of_head(wanted), direction, water, coefficients);
    EXPECT_NEAR(in_metres(line.head_loss(flow, direction, water, coefficients)) / wanted, 1.0, 4.0e-12);
  }
}

TEST(LineProperty, LossesAddUpToTheHeadExactly) {
  RandomLines random(4);
  for (int i = 0; i < 500; ++i) {
    const Line line = random.line();
    const Water water = random.water();
    const Direction direction = random.direction();
    const VolumeFlow flow = cubic_metres_per_second(random.log_uniform(1.0e-8, 0.1));
    double sum = 0.0;
    for (const ElementLoss& loss : line.losses(flow, direction, water)) {
      sum += in_metres(loss.head);
      const double velocity = in_metres_per_second(loss.velocity);
      const double from_k = loss.k * velocity * velocity / (2.0 * quantity::kStandardGravity);
      EXPECT_NEAR(in_metres(loss.head), from_k, 1.0e-13 * from_k) << loss.element;
      EXPECT_FALSE(loss.source.empty()) << loss.element;
    }
    EXPECT_EQ(sum, in_metres(line.head_loss(flow, direction, water)));
  }
}

TEST(LineProperty, CompiledLineGivesTheSame) {
  RandomLines random(5);
  for (int i = 0; i < 500; ++i) {
    const Line line = random.line();
    const Water water = random.water();
    const Direction direction = random.direction();
    CompiledLine compiled(line, direction, water);
    for (int j = 0; j < 10; ++j) {
      const double flow = random.log_uniform(1.0e-10, 0.1);
      const double expected = head(line, flow, direction, water);
      EXPECT_NEAR(compiled.head(flow) / expected, 1.0, 1.0e-12);
      EXPECT_NEAR(compiled.flow(expected) / flow, 1.0, 1.0e-12);
      // The slope against a central difference, whose own error is near 1e-8 away from kinks.
      const double step = 1.0e-6 * flow;
      const double difference = (compiled.head(flow + step) - compiled.head(flow - step)) / (2.0 * step);
      EXPECT_NEAR(compiled.head_and_slope(flow).slope / difference, 1.0, 2.0e-6);
    }
  }
}

TEST(LineProperty, ASymmetricLineTakesTheSameHeadBothWays) {
  RandomLines random(6);
  for (int i = 0; i < 300; ++i) {
    std::vector<LineElement> elements = random.elements();
    for (std::size_t k = elements.size(); k-- > 0;) elements.push_back(elements[k]);
    const LineEnd end = random.end();
    const Line line(elements, end, end);
    const Water water = random.water();
    const double flow = random.log_uniform(1.0e-7, 0.05);
    const double there = head(line, flow, Direction::forward, water);
    EXPECT_NEAR(head(line, flow, Direction::backward, water), there, 1.0e-13 * there);
  }
}

TEST(LineProperty, BackwardIsTheReversedLineForward) {
  RandomLines random(7);
  for (int i = 0; i < 300; ++i) {
    const std::vector<LineElement> elements = random.elements();
    const LineEnd first = random.end();
    const LineEnd last = random.end();
    const Line line(elements, first, last);
    const Line reversed({elements.rbegin(), elements.rend()}, last, first);
    const Water water = random.water();
    const double flow = random.log_uniform(1.0e-7, 0.05);
    EXPECT_EQ(head(line, flow, Direction::backward, water), head(reversed, flow, Direction::forward, water));
  }
}

// Two lines joined where their bores are the same take the sum of their heads, less the end losses at the joint.
TEST(LineProperty, LinesInSeriesAdd) {
  RandomLines random(8);
  const LineEnd free_end{0.0, 0.0, 0.0, ""};
  for (int i = 0; i < 300; ++i) {
    std::vector<LineElement> first = random.elements();
    std::vector<LineElement> second = random.elements();
    second.front().bore = first.back().bore;
    std::vector<LineElement> both = first;
    both.insert(both.end(), second.begin(), second.end());
    const LineEnd outer_first = random.end();
    const LineEnd outer_last = random.end();
    const Water water = random.water();
    const double flow = random.log_uniform(1.0e-7, 0.05);
    const Direction direction = random.direction();
    const double sum = head(Line(first, outer_first, free_end), flow, direction, water) +
                       head(Line(second, free_end, outer_last), flow, direction, water);
    EXPECT_NEAR(head(Line(both, outer_first, outer_last), flow, direction, water), sum, 1.0e-12 * sum);
  }
}

TEST(LineProperty, APipeCutInTwoTakesTheSameHead) {
  RandomLines random(9);
  const LineEnd end;
  for (int i = 0; i < 300; ++i) {
    LineElement whole = random.element();
    whole.crane_n = whole.fixed_k = whole.darby_k1 = whole.darby_ki = 0.0;
    LineElement part = whole;
    part.length = 0.3 * whole.length;
    LineElement rest = whole;
    rest.length = whole.length - part.length;
    const Water water = random.water();
    const double flow = random.log_uniform(1.0e-7, 0.05);
    const double expected = head(Line({whole}, end, end), flow, Direction::forward, water);
    EXPECT_NEAR(head(Line({part, rest}, end, end), flow, Direction::forward, water), expected, 1.0e-13 * expected);
  }
}

TEST(LineProperty, LowIsBelowNominalIsBelowHigh) {
  RandomLines random(10);
  for (int i = 0; i < 500; ++i) {
    const Line line = random.line();
    const Water water = random.water();
    const Direction direction = random.direction();
    const double flow = random.log_uniform(1.0e-9, 0.1);
    const double low = head(line, flow, direction, water, Coefficients::low);
    const double nominal = head(line, flow, direction, water);
    const double high = head(line, flow, direction, water, Coefficients::high);
    EXPECT_GT(low, 0.0);
    EXPECT_LT(low, nominal);
    EXPECT_LT(nominal, high);
  }
}

}  // namespace
}  // namespace riserun::hydraulics
