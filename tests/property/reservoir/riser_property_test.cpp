// What must hold of every riser that can be made.
#include "report/words/say.h"
#include "reservoir/riser.h"

#include <gtest/gtest.h>

#include <random>

namespace riserun::reservoir {
namespace {

class RandomRiser {
 public:
  explicit RandomRiser(unsigned seed) : engine_(seed) {}

  RiserRequest request() {
    RiserRequest r;
    r.box = {inches(between(12, 100)), inches(between(10, 48)), inches(between(4, 40)), between(0.0, 0.2)};
    r.bung = static_cast<BungKind>(whole(0, 3));
    r.bung_length = inches(between(0.5, 3.0));
    r.bung_projection = inches(between(0.0, 2.0));
    r.bung_opening = inches(between(0.5, 3.0));
    const double bore = between(0.3, 3.1);
    const double make_up = between(0.4, 1.2);
    r.pipe = {
        "pipe", inches(bore), inches(bore + 0.25), inches(make_up), inches(between(0.0, 0.12)), inches(make_up), {},
        {}};
    for (int i = whole(0, 12); i > 0; --i) r.pipe.stock_nipples.push_back(inches(between(1, 40)));
    if (whole(0, 2) > 0) r.wanted_clearance = inches(between(0.05, 2.5));
    if (whole(0, 1) == 0) r.obstacle_height = inches(between(0.0, 4.0));
    if (whole(0, 1) == 0) r.headroom = inches(between(0.0, 40.0));
    r.lid_closed = whole(0, 1) == 1;
    return r;
  }

 private:
  double between(double low, double high) { return std::uniform_real_distribution<double>(low, high)(engine_); }
  int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(engine_); }
  std::mt19937 engine_;
};

constexpr double kExact = 1.0e-12;  // m: sums are unrounded

TEST(RiserProperties, ThePiecesAddUpToTheInsideHeight) {
  RandomRiser random(11);
  for (int i = 0; i < 3000; ++i) {
    const RiserRequest r = random.request();
    const Riser riser = plan_riser(r);
    const Length projection = r.bung == BungKind::welded_riser ? Length() : r.bung_projection;
    const Length sum = projection + riser.cut_length - riser.make_up + riser.clearance + r.obstacle_height;
    EXPECT_NEAR(in_metres(sum), in_metres(r.box.height), kExact);
    EXPECT_NEAR(in_metres(riser.end_height), in_metres(r.obstacle_height + riser.clearance), kExact);
    EXPECT_LE(riser.clearance_low, riser.clearance);
    EXPECT_LE(riser.clearance, riser.clearance_high);
    EXPECT_NEAR(in_cubic_metres(riser.heel), in_cubic_metres(r.box.volume_at(riser.end_height)), kExact);
  }
}

TEST(RiserProperties, StockIsTheShortestThatIsLongEnoughAndCutPlusOffcut) {
  RandomRiser random(12);
  int with_stock = 0;
  for (int i = 0; i < 3000; ++i) {
    const RiserRequest r = random.request();
    const Riser riser = plan_riser(r);
    if (!riser.stock) continue;
    ++with_stock;
    const Length left = *riser.stock - riser.cut_length;  // less the saw cut of 1/16 in
    EXPECT_NEAR(in_metres(riser.offcut), std::max(0.0, in_metres(left - inches(1.0 / 16.0))), 1e-9);
    EXPECT_TRUE(riser.is_stock_uncut ? in_metres(left) < 1e-9 : in_metres(left) > in_metres(kLeastTrim) - 1e-9)
        << in_inches(left);
    for (const Length& length : r.pipe.stock_nipples) {  // a shorter one leaves less to saw off than is sawn off
      EXPECT_TRUE(length >= *riser.stock || length < riser.cut_length + kLeastTrim) << in_inches(length);
    }
    if (riser.stock_for_two) {
      EXPECT_GE(*riser.stock_for_two, 2.0 * riser.cut_length);
    }
  }
  EXPECT_GT(with_stock, 500);
}

TEST(RiserProperties, AnUncutNippleKeepsAQuarterOfTheBoreAtTheShortEnd) {
  RandomRiser random(13);
  int uncut = 0;
  for (int i = 0; i < 3000; ++i) {
    const RiserRequest r = random.request();
    const Riser riser = plan_riser(r);
    if (!riser.stock_uncut) continue;
    ++uncut;
    const Length low = riser.stock_uncut_clearance - r.pipe.make_up_tolerance;
    EXPECT_GE(in_metres(low), in_metres(r.pipe.bore / 4.0) - 1e-8);
    EXPECT_GE(in_inches(low), 0.375 - 1e-6);
  }
  EXPECT_GT(uncut, 500);
}

TEST(RiserProperties, WhatCannotGoInIsAlwaysRefused) {
  RandomRiser random(14);
  for (int i = 0; i < 3000; ++i) {
    const RiserRequest r = random.request();
    const Riser riser = plan_riser(r);
    if (riser.insertion == Insertion::cannot_go_in || riser.clearance_low <= Length() ||
        riser.cut_length <= riser.make_up || r.bung == BungKind::half_coupling) {
      EXPECT_FALSE(riser.refusals.empty());
    }
    if (riser.can_be_drawn_out) {
      EXPECT_GT(r.bung_opening, r.pipe.outside_diameter);
    }
    for (const std::string& refusal : report::say_all(riser.refusals, UnitSystem::inch)) {
      EXPECT_EQ(refusal.back(), '.');
      EXPECT_NE(refusal.find(": "), std::string::npos) << refusal;  // the reason, then the change that lifts it
    }
  }
}

TEST(RiserProperties, LiftingARefusalOfLengthAsToldLiftsIt) {
  RandomRiser random(15);
  for (int i = 0; i < 3000; ++i) {
    RiserRequest r = random.request();
    const Riser riser = plan_riser(r);
    if (riser.insertion != Insertion::cannot_go_in || !r.headroom || r.bung_opening <= r.pipe.outside_diameter)
      continue;
    if (r.bung == BungKind::half_coupling) continue;
    r.headroom = riser.headroom_needed;
    EXPECT_EQ(plan_riser(r).insertion, Insertion::through_the_bung);
  }
}

}  // namespace
}  // namespace riserun::reservoir
