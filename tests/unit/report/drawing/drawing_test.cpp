#include "report/drawing/drawing.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <random>

namespace riserun::report {
namespace {

using testing::DoubleNear;
using testing::ElementsAre;

TEST(Spread, LeavesWhatIsFarEnoughApart) {
  EXPECT_THAT(spread({10.0, 50.0, 30.0}, 15.0, 0.0, 100.0), ElementsAre(10.0, 50.0, 30.0));
}

TEST(Spread, PushesTwoApartAboutTheirMiddle) {
  EXPECT_THAT(spread({40.0, 44.0}, 20.0, 0.0, 100.0), ElementsAre(DoubleNear(32.0, 1e-9), DoubleNear(52.0, 1e-9)));
}

TEST(Spread, StaysInsideWhereThereIsRoom) {
  EXPECT_THAT(spread({1.0, 2.0, 3.0}, 10.0, 0.0, 100.0), ElementsAre(0.0, 10.0, 20.0));
  EXPECT_THAT(spread({99.0, 98.0}, 10.0, 0.0, 100.0), ElementsAre(100.0, 90.0));
}

TEST(Spread, KeepsOrderAndGapForAnyWishes) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> anywhere(0.0, 200.0);
  for (int round = 0; round < 500; ++round) {
    std::vector<double> wanted(1 + round % 9);
    for (double& wish : wanted) wish = anywhere(random);
    const auto places = spread(wanted, 12.0, 0.0, 200.0);
    for (std::size_t i = 0; i < wanted.size(); ++i) {
      EXPECT_GE(places[i], -1e-9);
      EXPECT_LE(places[i], 200.0 + 1e-9);
      for (std::size_t j = 0; j < i; ++j) {
        EXPECT_GE(std::abs(places[i] - places[j]), 12.0 - 1e-9);
        EXPECT_TRUE(wanted[j] >= wanted[i] || places[j] < places[i]);
      }
    }
  }
}

TEST(InARow, StandsInTheMiddleWhereThereIsRoom) {
  EXPECT_THAT(in_a_row({50.0, 120.0}, {40.0, 20.0}, 10.0, 0.0, 200.0), ElementsAre(30.0, 110.0));
}

TEST(InARow, TheLastIsNotCutOffAndPushesTheOthers) {
  EXPECT_THAT(in_a_row({175.0, 198.0}, {40.0, 30.0}, 10.0, 0.0, 200.0), ElementsAre(120.0, 170.0));
  EXPECT_THAT(in_a_row({2.0, 4.0}, {40.0, 30.0}, 10.0, 0.0, 200.0), ElementsAre(0.0, 50.0));
}

TEST(InARow, KeepsOrderAndGapForAnyWishes) {
  std::mt19937 random(8);
  std::uniform_real_distribution<double> anywhere(0.0, 300.0);
  std::uniform_real_distribution<double> wide(10.0, 60.0);
  for (int round = 0; round < 500; ++round) {
    std::vector<double> middles(1 + round % 4);
    std::vector<double> widths;
    for (double& middle : middles) {
      middle = anywhere(random);
      widths.push_back(wide(random));
    }
    std::sort(middles.begin(), middles.end());
    const auto begins = in_a_row(middles, widths, 5.0, 0.0, 300.0);
    EXPECT_GE(begins.front(), -1e-9);
    EXPECT_LE(begins.back() + widths.back(), 300.0 + 1e-9);
    for (std::size_t i = 1; i < begins.size(); ++i) EXPECT_GE(begins[i] - begins[i - 1] - widths[i - 1], 5.0 - 1e-9);
  }
}

}  // namespace
}  // namespace riserun::report
