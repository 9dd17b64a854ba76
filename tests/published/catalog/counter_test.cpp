// What a US counter sells beside plain pipe fittings: threads, lengths, losses, opening pressures, prices and stock,
// each with its source beside it.
#include "hydraulics/fluid.h"
#include "hydraulics/line.h"
#include "hydraulics/minor_losses.h"
#include "published/catalog/shipped.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace riserun::catalog {
namespace {

std::string with_dashes(std::string text) {
  std::replace(text.begin(), text.end(), '/', '-');
  return text;
}

const Part& part_of(const std::string& family, const std::string& material, const std::string& rest) {
  const std::string id = family + "/" + material + "/" + with_dashes(rest);
  const Part* part = shipped_part(id);
  if (part == nullptr) throw std::runtime_error("no part " + id);
  return *part;
}

double opening_psi(const Part& part) { return in_psi(part.opens_at.value()); }

struct FlareThread {
  const char* tube;
  double major;  // in
  double threads_per_inch;
  bool runs_onto_37;  // the nut of one runs onto the other's thread
};

// SAE J512 and J513: threads per inch by diameter, flare thread chart (published); diameter by tube and which nuts run
// on, thread articles (1/4, 5/16, 1/2, 5/8, 3/4 published, the others from memory).
constexpr FlareThread kFlareThreads[] = {
    {"3/16", 0.375, 24, true},  {"1/4", 0.4375, 20, true}, {"5/16", 0.5, 20, true},
    {"3/8", 0.625, 18, false},  {"1/2", 0.75, 16, true},   {"5/8", 0.875, 14, true},
    {"3/4", 1.0625, 14, false}, {"7/8", 1.25, 12, false},  {"1", 1.375, 12, false},
};

TEST(Flare45, ThreadsAreThoseOfTheChart) {
  for (const FlareThread& row : kFlareThreads) {
    const JointSize* joint = shipped_joint("flare-45", row.tube);
    ASSERT_NE(joint, nullptr) << row.tube;
    EXPECT_NEAR(in_inches(joint->outside_diameter), row.major, kPrintedExactly) << row.tube;
    EXPECT_NEAR(joint->threads_per_inch, row.threads_per_inch, kPrintedExactly) << row.tube;
  }
}

// Threads may be the same; the cones are 8 degrees apart and leak (thread articles, published).
TEST(Flare45, NeverMeetsThe37DegreeFlare) {
  for (const FlareThread& row : kFlareThreads) {
    const JointSize& mine = *shipped_joint("flare-45", row.tube);
    const JointSize* other = shipped_joint("flare-37", row.tube);
    ASSERT_NE(other, nullptr) << row.tube;
    EXPECT_EQ(mine.outside_diameter == other->outside_diameter && mine.threads_per_inch == other->threads_per_inch,
              row.runs_onto_37)
        << row.tube;
    for (const auto& [kind, with] : {std::pair{"flare-45", "flare-37"}, std::pair{"flare-37", "flare-45"}}) {
      const PortTypeId male = shipped_port(kind, row.tube, End::male);
      const PortTypeId female = shipped_port(with, row.tube, End::female);
      EXPECT_EQ(shipped().mating_rule(male, female), nullptr) << row.tube;
      EXPECT_NE(shipped().look_alike(shipped().port_type(male), shipped().port_type(female)), nullptr) << row.tube;
    }
  }
}

// Annealed copper tube with 45 degree brass flares, to 163 degF: a data sheet (published).
TEST(Flare45, RatingIsThatOfTheTube) {
  const std::pair<const char*, double> rows[] = {{"3/16", 1900}, {"1/4", 1400}, {"5/16", 1200}, {"3/8", 1000},
                                                 {"1/2", 750},   {"5/8", 650},  {"3/4", 550}};
  for (const auto& [tube, psi] : rows) {
    int seen = 0;
    for (const Part& part : shipped().parts()) {
      const PortType& type = shipped().port_type(part.ports.front().type);
      if (shipped().kind(type.kind).id != "flare-45" || shipped().size_name(type.size) != tube) continue;
      EXPECT_NEAR(in_psi(part.rating), psi, 1e-6) << part.id;
      ++seen;
    }
    EXPECT_GE(seen, 2) << tube;
  }
}

// Makers' half unions by tube and pipe (common practice): the usual ones are on the shelf.
TEST(Flare45, UsualAdaptersAreStocked) {
  for (const char* size : {"1/4 male 45 flare x 1/8 mnpt", "3/8 male 45 flare x 3/8 mnpt",
                           "1/2 male 45 flare x 1/2 mnpt", "5/8 male 45 flare x 3/4 mnpt"}) {
    std::string id(size);
    std::replace(id.begin(), id.end(), ' ', '-');
    std::replace(id.begin(), id.end(), '/', '-');
    const auto is = [&](const Part& part) {
      return shipped().family(part.family).name == "45 flare to male pipe" && part.stocked;
    };
    const auto parts = shipped().parts();
    EXPECT_GE(std::count_if(parts.begin(), parts.end(), is), 20) << size;
  }
}

// In-line with a soft seat 0.3 to 0.5 psi, a light spring 0.1 to 0.2, swinging flap 0.1 to 0.5 (common practice); PVC
// true-union swing check under 0.5 (a valve guide, published).
TEST(CheckValves, OpenAtWhatTheirKindDoes) {
  struct Row {
    const char* family;
    CheckKind kind;
    double least, most;  // psi
    std::set<std::string> sizes;
  };
  const Row rows[] = {
      {"check valve", CheckKind::swing, 0.1, 0.5, {"1/4", "3/8", "1/2", "3/4", "1", "1-1/4", "1-1/2", "2"}},
      {"spring check valve",
       CheckKind::spring,
       0.3,
       0.5,
       {"1/8", "1/4", "3/8", "1/2", "3/4", "1", "1-1/4", "1-1/2", "2"}},
      {"light spring check valve",
       CheckKind::spring,
       0.1,
       0.2,
       {"1/4", "3/8", "1/2", "3/4", "1", "1-1/4", "1-1/2", "2"}},
      {"PVC true-union check valve",
       CheckKind::swing,
       0.1,
       0.5,
       {"1/2", "3/4", "1", "1-1/4", "1-1/2", "2", "2-1/2", "3", "4"}}};
  for (const Row& row : rows) {
    std::set<std::string> seen;
    for (const Part& part : shipped().parts()) {
      const Family& family = shipped().family(part.family);
      if (family.name != row.family) continue;
      EXPECT_EQ(family.check, row.kind) << part.id;
      EXPECT_TRUE(part.one_way && family.can_shut) << part.id;
      EXPECT_GE(opening_psi(part), row.least) << part.id;
      EXPECT_LE(opening_psi(part), row.most) << part.id;
      seen.insert(part.size);
    }
    EXPECT_EQ(seen, row.sizes) << row.family;
  }
}

// End to end with sockets, within 1/16 in: a valve guide (published).
TEST(CheckValves, PvcLengthsAreThoseOfTheGuide) {
  const std::pair<const char*, double> rows[] = {{"1/2", 5.1875},    {"3/4", 5.5},     {"1", 6.4375},
                                                 {"1-1/4", 7.4375},  {"1-1/2", 7.375}, {"2", 8.625},
                                                 {"2-1/2", 10.9375}, {"3", 11.1875},   {"4", 14.3125}};
  for (const auto& [size, length] : rows) {
    const Part& part = part_of("pvc-true-union-check-valve", "pvc", size);
    EXPECT_NEAR(in_inches(part.ports[0].reach + part.ports[1].reach), length, kPrintedExactly) << size;
  }
}

// Cv wide open, gpm at 1 psi (common practice, makers differ by 30 %).
TEST(CheckValves, FlowCoefficientsAreWithinWhatMakersPrint) {
  struct Row {
    const char* size;
    double spring, swing;
  };
  constexpr Row rows[] = {{"1/4", 0.9, 2.0}, {"3/8", 2.2, 3.5}, {"1/2", 4.5, 7},   {"3/4", 9, 14},
                          {"1", 14, 24},     {"1-1/4", 26, 44}, {"1-1/2", 36, 60}, {"2", 62, 110}};
  for (const Row& row : rows) {
    for (const char* family : {"spring-check-valve", "check-valve"}) {
      const Part& part = part_of(family, "brass", row.size);
      const LossItem& loss = shipped().loss_item(part.loss);
      hydraulics::LineElement element;
      element.bore = part.ports[0].bore;
      element.crane_n = loss.crane_n;
      const hydraulics::Line line({element}, {0.0, 0.0, 0.0, {}}, {0.0, 0.0, 0.0, {}});
      const auto water = *hydraulics::water_at(degrees_fahrenheit(60.0));
      const auto k = line.losses(us_gallons_per_minute(20.0), hydraulics::Direction::forward, water)[1].k;
      const double cv = hydraulics::cv_of_coefficient(k, element.bore);
      const double printed = std::string(family) == "check-valve" ? row.swing : row.spring;
      EXPECT_NEAR(cv / printed, 1.0, 0.3) << part.id;
    }
  }
}

double clean_loss_psi(const Part& part, double gpm, hydraulics::Coefficients coefficients) {
  const LossItem& loss = shipped().loss_item(part.loss);
  hydraulics::LineElement element;
  element.bore = part.ports[0].bore;
  element.darby_k1 = loss.darby_k1;
  element.darby_ki = loss.darby_ki;
  element.darby_kd = loss.darby_kd;
  element.scatter = loss.scatter;
  element.dirty = loss.dirty;
  const hydraulics::Line line({element}, {0.0, 0.0, 0.0, {}}, {0.0, 0.0, 0.0, {}});
  const auto water = *hydraulics::water_at(degrees_celsius(20.0));
  const Head head = line.head_loss(us_gallons_per_minute(gpm), hydraulics::Direction::forward, water, coefficients);
  return in_metres(head) * 9.80665 * 998.2 / 6894.757;
}

// About 1 psi clean at 5 gpm slim, at 10 gpm wide (common practice); 0.73 psi at 6.6 gpm and about 1 at 8.8 for a 10
// micrometre cartridge (a pressure-drop article, published). Changed at 8 to 10 psi over clean (common practice).
TEST(FilterHousing, LosesAPsiCleanAndNineDirty) {
  using hydraulics::Coefficients;
  for (const auto& [id, gpm] : {std::pair{"3/4-slim", 5.0}, std::pair{"1-slim", 5.0}, std::pair{"1-wide", 10.0},
                                std::pair{"1-1/2-wide", 10.0}}) {
    const Part& part = part_of("sediment-filter-housing", "polypropylene", id);
    EXPECT_NEAR(clean_loss_psi(part, gpm, Coefficients::nominal), 1.0, 0.05) << id;
    EXPECT_NEAR(clean_loss_psi(part, gpm, Coefficients::high), 9.0, 0.5) << id;
  }
  const Part& slim = part_of("sediment-filter-housing", "polypropylene", "3/4-slim");
  EXPECT_LE(clean_loss_psi(slim, 6.6, Coefficients::low), 0.75);
  EXPECT_LE(clean_loss_psi(slim, 8.8, Coefficients::low), 1.15);
}

// A sleeve stands the drain test head of 10 ft of water, 10 x 0.433 psi, and goes over pipe's outside: ASME B36.10M.
TEST(DrainSleeve, FitsPipeAndStandsTheDrainTest) {
  for (const auto& [size, outside] : {std::pair{"1-1/4", 1.66}, std::pair{"1-1/2", 1.9}, std::pair{"2", 2.375},
                                      std::pair{"3", 3.5}, std::pair{"4", 4.5}}) {
    const Part& part = part_of("flexible-drain-sleeve", "rubber", std::string(size) + "-unshielded");
    EXPECT_NEAR(in_psi(part.rating), 4.33, 0.05);
    EXPECT_FALSE(part.air);
    const PortType& type = shipped().port_type(part.ports[0].type);
    EXPECT_NEAR(in_inches(shipped().joint_size(type)->outside_diameter), outside, kPrintedExactly);
  }
}

// Spigot by socket, larger first: 2 x 1/2 to 1-1/2, 1 x 1/2 and 3/4, 2-1/2 x 2 and 3 x 2 on sale (a reseller's pages,
// published), 3 x 1-1/2 named as ordinary (an article, published). Cemented in, it counts as no bushing.
TEST(PvcBushing, PairsAreThoseOnSale) {
  const std::pair<const char*, const char*> pairs[] = {{"1", "1/2"}, {"1", "3/4"},   {"2", "1/2"},   {"2", "3/4"},
                                                       {"2", "1"},   {"2", "1-1/4"}, {"2", "1-1/2"}, {"2-1/2", "2"},
                                                       {"3", "2"},   {"3", "1-1/2"}};
  for (const auto& [large, small] : pairs) {
    const Part& part = part_of("pvc-reducing-bushing", "pvc", std::string(large) + "x" + small);
    EXPECT_FALSE(shipped().family(part.family).is_bushing);
    EXPECT_EQ(part.stocked, std::string(large) != "2-1/2") << part.id;
  }
  const std::pair<const char*, double> seen[] = {
      {"1x3/4", 0.57}, {"2x1/2", 1.34}, {"2x1-1/4", 1.34}, {"2-1/2x2", 2.13}};
  for (const auto& [size, usd] : seen)
    EXPECT_NEAR(in_dollars(part_of("pvc-reducing-bushing", "pvc", size).price), usd, 1e-9) << size;
}

// A submittal sheet of malleable bushings to ASME B16.14 (published): the hexagon inside.
TEST(HexBushing, SmallestReductionsHaveNoFlatsOutside) {
  for (const char* size : {"1x1/8", "1x1/4", "1x3/8", "1-1/4x1/4", "1-1/4x3/8", "1-1/4x1/2"})
    EXPECT_EQ(part_of("hex-bushing", "black-iron", size).across_flats, Length{}) << size;
  for (const char* size : {"3/4x1/8", "1x1/2", "1x3/4", "1-1/4x3/4", "1-1/4x1", "1-1/2x1-1/4", "2x1-1/2"})
    EXPECT_GT(part_of("hex-bushing", "black-iron", size).across_flats, Length{}) << size;
  EXPECT_GT(part_of("hex-bushing", "brass", "1x1/4").across_flats, Length{});  // turned from bar (common practice)
}

// The passage of a union or a coupling is the pipe's, schedule 40 of ASME B36.10M, not the tapped hole (common
// practice).
TEST(Waterway, OfUnionAndCouplingIsThePipes) {
  for (const char* size : {"1/4", "1/2", "3/4", "1", "1-1/2", "2"})
    for (const char* family : {"union", "coupling"})
      EXPECT_EQ(part_of(family, "black-iron", size).ports[0].bore,
                part_of("close-nipple", "black-iron", size).ports[0].bore)
          << family << ' ' << size;
}

struct PriceBand {
  const char* family;
  const char* material;
  const char* size;
  double least, most;  // USD
};

// Counter prices of 2024 to 2026 (common practice): brass follows its weight.
constexpr PriceBand kBands[] = {
    {"union", "brass", "1/4", 8, 14},
    {"union", "brass", "1", 22, 38},
    {"union", "brass", "1-1/2", 45, 80},
    {"union", "brass", "2", 65, 120},
    {"coupling", "brass", "1/2", 5, 9},
    {"coupling", "brass", "1", 12, 20},
    {"coupling", "brass", "2", 40, 70},
    {"close-nipple", "brass", "1/2", 5, 8},
    {"close-nipple", "brass", "1", 11, 17},
    {"close-nipple", "brass", "2", 32, 55},
    {"90-elbow", "brass", "1/2", 5, 10},
    {"90-elbow", "brass", "2", 48, 85},
    {"tee", "brass", "1", 19, 33},
    {"tee", "brass", "2", 62, 110},
    {"hex-bushing", "brass", "1x3/4", 7, 13},
    {"hex-bushing", "brass", "2x1-1/2", 25, 48},
    {"ball-valve", "brass", "1/2", 9, 16},
    {"ball-valve", "brass", "1", 19, 34},
    {"ball-valve", "brass", "2", 62, 115},
    {"ball-valve", "brass", "3", 220, 400},
    {"gate-valve", "brass", "1", 22, 36},
    {"gate-valve", "brass", "2", 50, 90},
    {"check-valve", "brass", "1", 26, 42},
    {"check-valve", "brass", "2", 75, 130},
    {"spring-check-valve", "brass", "1/2", 12, 22},
    {"spring-check-valve", "brass", "2", 60, 105},
    {"pipe-strainer", "brass", "1", 32, 60},
    {"pipe-strainer", "brass", "2", 85, 160},
    {"needle-valve", "brass", "1/4", 9, 20},
    {"relief-valve", "brass", "1/4-set-2psi", 35, 120},
    {"relief-valve", "brass", "3/4-set-3psi", 90, 260},
    {"relief-valve", "brass", "3/4-set-15psi", 70, 130},
    {"pressure-gauge", "brass", "1/4x0-30psi", 8, 20},
    {"pressure-gauge", "brass", "1/4x0-5psi", 35, 80},
    {"air-regulator", "brass", "1/4x0-10psi", 60, 160},
    {"air-regulator", "brass", "1/4x0-2psi", 110, 280},
    {"barb-to-male-pipe", "brass", "1-barbx1-mnpt", 11, 18},
    {"barb-to-male-pipe", "brass", "2-barbx2-mnpt", 40, 75},
    {"nipple", "brass", "1/2x1-1/2", 5, 8},
    {"nipple", "brass", "2x2-1/2", 32, 55},
};

TEST(Prices, LieInTheBandsThatCountersAsk) {
  for (const PriceBand& band : kBands) {
    const double usd = in_dollars(part_of(band.family, band.material, band.size).price);
    EXPECT_GE(usd, band.least) << band.family << ' ' << band.size;
    EXPECT_LE(usd, band.most) << band.family << ' ' << band.size;
  }
}

// What an ordinary US hardware store or plumbing supply house has (common practice).
TEST(Stock, WhatIsSpecialOrderAtACounter) {
  for (const Part& part : shipped().parts()) {
    const Family& family = shipped().family(part.family);
    const std::string& material = shipped().material(part.material).id;
    const double inches = shipped().nominal_inches(shipped().port_type(part.ports.front().type).size);
    const bool malleable = (material == "black-iron" || material == "galvanized") && family.standard == "ASME B16.3";
    const bool brass_barb = material == "brass" && family.name.starts_with("barb to");
    bool order = family.name == "reducing nipple" || family.name == "face bushing" || family.role == Role::restrictor ||
                 family.name == "double-tapped bushing" || (malleable && inches > 2.0) || (brass_barb && inches > 1.0);
    for (const Port& port : part.ports)
      order = order || shipped().kind(shipped().port_type(port.type).kind).id.starts_with("bsp");
    if (order) {
      EXPECT_FALSE(part.stocked) << part.id;
    }
  }
  for (const char* size : {"1-1/4", "1-1/2", "2", "3"})  // in place of brass barbs
    EXPECT_TRUE(part_of("combination-nipple", "galvanized", size).stocked) << size;
  for (const char* size : {"1/8", "1/4", "1/2", "1", "2"})
    EXPECT_TRUE(part_of("spring-check-valve", "brass", size).stocked) << size;
  for (const char* size : {"1-1/2", "2"})
    for (const char* material : {"aluminium", "polypropylene"})
      EXPECT_TRUE(part_of("cam-coupler-c", material, size).stocked) << material << ' ' << size;
  EXPECT_TRUE(part_of("45-flare-swivel-to-male-pipe", "brass", "1/2-female-45-flare-swivelx1/2-mnpt").stocked);
  EXPECT_TRUE(part_of("air-tube", "nylon", "1/4").stocked);
  for (const char* size : {"1/4", "3/4", "1", "2"})
    EXPECT_TRUE(part_of("pipe-strainer", "brass", size).stocked) << size;
}

// Wire or a rigid helix holds it open at 29 in of mercury (common practice).
TEST(SuctionHose, StandsVacuumWherePlainHoseCollapses) {
  for (const auto& [id, vacuum] :
       {std::pair{"suction-hose/rubber/2", InVacuum::stands}, std::pair{"suction-hose/vinyl/1-1-2", InVacuum::stands},
        std::pair{"hose/rubber/2", InVacuum::collapses}}) {
    const Duty* duty = shipped().duty(*shipped().find_part(id));
    ASSERT_NE(duty, nullptr) << id;
    EXPECT_EQ(duty->vacuum, vacuum) << id;
  }
}

}  // namespace
}  // namespace riserun::catalog
