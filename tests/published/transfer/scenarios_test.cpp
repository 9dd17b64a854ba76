// Six invented shops, each with the times and pressures that a simple hand model gives for it (good to about 10 %).
// They check that the whole hangs together, not the digits: the lines here are drawn from a few words, the hand model
// ignored the receiver, and lengths and barbs' bores are guesses of the usual size.
#include "transfer/transfer.h"

#include <gtest/gtest.h>

namespace riserun::transfer {
namespace {

constexpr double kHandModel = 0.15;  // relative, of a time
constexpr double kRounding = 0.015;  // relative, of a pressure printed to three digits

struct PipePiece {
  double bore_in, length_in, k;
};

hydraulics::Line line_of(const std::vector<PipePiece>& pieces) {
  std::vector<hydraulics::LineElement> elements;
  for (const PipePiece& piece : pieces) {
    hydraulics::LineElement element;
    element.name = "piece";
    element.bore = inches(piece.bore_in);
    element.length = inches(piece.length_in);
    element.roughness = millimetres(0.046);  // commercial steel, Moody 1944
    element.fixed_k = piece.k;
    elements.push_back(element);
  }
  return {elements, {0.78, 1.0, 0.0, ""}, {0.5, 1.0, 0.0, ""}};  // Crane TP-410 A-29
}

/// Everything in inches, psi, scfm and gallons.
struct Shop {
  reservoir::Box box;
  reservoir::Table table;
  double riser_end, charge, want;
  std::vector<PipePiece> pieces;
  double free_air;
  int vents;
};

System system_of(const Shop& shop, double set_psi) {
  System s;
  s.reservoir = shop.box;
  s.table = shop.table;
  s.riser_end_height = inches(shop.riser_end);
  s.line = line_of(shop.pieces);
  s.temperature = degrees_fahrenheit(68.0);
  s.water = {kilograms_per_cubic_metre(998.2), pascal_seconds(1.0e-3), absolute_pascals(2339.0)};
  s.atmosphere = absolute_pascals(quantity::kStandardAtmosphere);
  s.air.set_pressure = psig(set_psi);
  s.air.droop = 0.1;
  s.air.regulator_rated_flow = cubic_feet_per_minute(30.0);
  s.air.free_air_delivery = cubic_feet_per_minute(shop.free_air);
  s.air.receiver_pressure = psig(100.0);
  s.air.feed_bore = inches(0.25);
  s.vent = {inches(0.622), 0.6, shop.vents};  // 1/2 NPT
  return s;
}

reservoir::Box box(double l, double w, double h) { return {inches(l), inches(w), inches(h), 0.0}; }
reservoir::Table table(double l, double w, double rim, double floor) {
  return {inches(l), inches(w), inches(floor), inches(rim), 0.0};
}

const Shop kStone{box(54, 22, 14),
                  table(60, 30, 5, 30),
                  0.5,
                  12.5,
                  4.0,
                  {{1.049, 13.7, 0}, {0.85, 2, 0}, {1.0, 10, 0}, {0.85, 2, 0}, {1.61, 4, 0}},
                  4.0,
                  1};
const Shop kHeatTreat{box(36, 30, 18),
                      table(36, 36, 10, 34),
                      0.75,
                      16.0,
                      8.0,
                      {{1.61, 18, 0}, {1.61, 14, 0.3}, {1.38, 4, 0.3}, {1.61, 3, 0.3}},
                      8.0,
                      1};
const Shop kWash{box(40, 24, 12),
                 table(44, 26, 6, 28),
                 0.5,
                 10.5,
                 5.0,
                 {{1.049, 12, 0}, {0.85, 2, 0}, {1.0, 14, 0}, {0.85, 2, 0}},
                 2.4,
                 1};
const Shop kFlameCutting{
    box(96, 40, 16), table(120, 60, 6, 31), 1.0, 14.5, 4.5, {{3.068, 16, 0}, {3.0, 18, 0.2}}, 17.0, 2};
const Shop kPottery{box(30, 18, 12),
                    table(36, 20, 4, 24),
                    0.375,
                    10.5,
                    3.0,
                    {{0.824, 12, 0}, {0.45, 2, 0}, {0.625, 36, 0.5}, {0.45, 2, 0.5}},
                    0.7,
                    1};

void expect_time(Time time, double minutes_expected) {
  EXPECT_NEAR(in_minutes(time), minutes_expected, minutes_expected * kHandModel);
}

Fill fill_shop(const Shop& shop, double set_psi) {
  Fill f = fill(system_of(shop, set_psi), {inches(shop.charge), {}, {}}, inches(shop.want));
  EXPECT_EQ(f.stop, Stop::goal_reached);
  return f;
}

Drain drain_shop(const Shop& shop, const Fill& from) {
  Drain d = drain(system_of(shop, 1.0), {from.reservoir_depth, from.table_depth, from.hold_pressure});
  EXPECT_EQ(d.stop, Stop::goal_reached);
  return d;
}

TEST(Scenarios, StoneShopFillsInTheHandModelsTime) {
  const Fill at_3 = fill_shop(kStone, 3.0);
  expect_time(at_3.time, 1.4);
  EXPECT_NEAR(in_inches(at_3.coast_up), 0.6, 0.15);
  EXPECT_NEAR(in_psi(at_3.hold_pressure), 0.99, 0.99 * kRounding);
  EXPECT_NEAR(in_inches_of_water(at_3.hold_pressure), 28.0, 0.6);
  EXPECT_NEAR(in_us_gallons(at_3.volume), 31.2, 0.2);
  const Fill at_1_5 = fill_shop(kStone, 1.5);
  expect_time(at_1_5.time, 2.4);
  EXPECT_EQ(at_1_5.limited_by, "line");
  Shop weak = kStone;
  weak.free_air = 1.0;
  EXPECT_EQ(fill_shop(weak, 3.0).limited_by, "compressor");
}

TEST(Scenarios, StoneShopOverflowsIfForgotten) {
  const Fill f = fill_shop(kStone, 3.0);
  EXPECT_EQ(f.walk_away, WalkAway::table_overflows);
  // All that the riser reaches, less the line and what the rim holds (39 gal).
  EXPECT_NEAR(in_us_gallons(f.walk_away_spill), 61.7 - 39.0, 0.3);
}

TEST(Scenarios, HeatTreatBayFillsAndDrainsInTheHandModelsTime) {
  const Fill at_1_8 = fill_shop(kHeatTreat, 1.8);
  expect_time(at_1_8.time, 1.3);
  EXPECT_NEAR(in_psi(at_1_8.hold_pressure), 1.29, 1.29 * kRounding);
  EXPECT_NEAR(in_inches_of_water(at_1_8.hold_pressure), 36.0, 0.6);
  const Fill at_3 = fill_shop(kHeatTreat, 3.0);
  expect_time(at_3.time, 0.9);
  EXPECT_NEAR(in_inches(at_3.coast_up), 0.8, 0.2);
  expect_time(drain_shop(kHeatTreat, at_3).time, 1.1);
}

TEST(Scenarios, WashBoxFillsInTheHandModelsTime) {
  const Fill at_1_2 = fill_shop(kWash, 1.2);
  expect_time(at_1_2.time, 2.9);
  EXPECT_NEAR(in_psi(at_1_2.hold_pressure), 1.03, 1.03 * kRounding);
  expect_time(fill_shop(kWash, 2.0).time, 1.6);
}

TEST(Scenarios, FlameCuttingBedIsHeldUpByItsVents) {
  const Fill f = fill_shop(kFlameCutting, 2.0);
  expect_time(f.time, 1.2);
  EXPECT_NEAR(in_psi(f.hold_pressure), 1.06, 1.06 * kRounding);
  EXPECT_NEAR(in_us_gallons(f.volume), 140.0, 1.5);
  EXPECT_EQ(f.walk_away, WalkAway::table_overflows);
  EXPECT_NEAR(in_us_gallons(f.walk_away_spill), 37.0, 4.0);
  Shop one_vent = kFlameCutting;
  one_vent.vents = 1;
  const Drain two = drain_shop(kFlameCutting, f);
  const Drain one = drain_shop(one_vent, f);
  EXPECT_EQ(one.limited_by, "vent");
  EXPECT_GT(in_seconds(one.time), 1.1 * in_seconds(two.time));
  // At 160 gpm the air goes out at 21 cfm; one vent then backs up 17 in of water, two 4 in.
  const auto backed_up_at_160_gpm = [](const Drain& d) {
    for (std::size_t i = 1; i < d.history.size(); ++i) {
      if (in_us_gallons_per_minute(d.history[i].flow) > -160.0 &&
          in_us_gallons_per_minute(d.history[i - 1].flow) <= -160.0)
        return in_inches_of_water(d.history[i].ullage_pressure);
    }
    return 0.0;
  };
  EXPECT_NEAR(backed_up_at_160_gpm(two), 4.0, 1.0);
}

TEST(Scenarios, PotteryBenchFillsFromASmallReceiver) {
  System s = system_of(kPottery, 1.3);
  s.air.receiver = us_gallons(2.0);
  const Fill f = fill(s, {inches(kPottery.charge), {}, {}}, inches(kPottery.want));
  EXPECT_EQ(f.stop, Stop::goal_reached);
  expect_time(f.time, 3.2);
  EXPECT_NEAR(in_psi(f.hold_pressure), 0.74, 0.74 * kRounding);
  expect_time(drain_shop(kPottery, f).time, 3.2);
  // "The small receiver alone holds the air": no compressor, and it still fills.
  s.air.free_air_delivery = cubic_feet_per_minute(0.0);
  EXPECT_EQ(fill(s, {inches(kPottery.charge), {}, {}}, inches(kPottery.want)).stop, Stop::goal_reached);
}

TEST(Scenarios, PrintShopInMetric) {
  Shop shop{};
  shop.box = {millimetres(1200), millimetres(600), millimetres(350), 0.0};
  shop.table = {millimetres(1300), millimetres(700), millimetres(820), millimetres(180), 0.0};
  shop.riser_end = 12.0 / 25.4;
  shop.charge = 315.0 / 25.4;
  shop.want = 140.0 / 25.4;
  shop.pieces = {{35.0 / 25.4, 14, 0}, {31.0 / 25.4, 2.5, 0}, {38.0 / 25.4, 14, 1.0}, {31.0 / 25.4, 2.5, 0}};
  shop.vents = 1;
  System s = system_of(shop, 1.0);
  s.air.set_pressure = bar_gauge(0.14);
  s.air.free_air_delivery = litres_per_minute(150.0);
  const Fill f = fill(s, {millimetres(315), {}, {}}, millimetres(140));
  EXPECT_EQ(f.stop, Stop::goal_reached);
  expect_time(f.time, 1.3);
  EXPECT_NEAR(in_bar(f.hold_pressure), 0.081, 0.081 * kRounding);
  EXPECT_NEAR(in_litres(f.volume), 128.0, 1.0);
  expect_time(drain_shop(shop, f).time, 1.3);
}

}  // namespace
}  // namespace riserun::transfer
