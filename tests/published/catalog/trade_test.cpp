// What every fitter knows of a part by its name: its ends, its metal, what it is for. Common practice, where no
// standard is named.
#include "published/catalog/shipped.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace riserun::catalog {
namespace {

std::string ends_of(const Part& part) {
  std::string text;
  for (const Port& port : part.ports) text += (text.empty() ? "" : " x ") + shipped().written(port.type);
  return text;
}

const Family& family_of(const Part& part) { return shipped().family(part.family); }
const std::string& material_of(const Part& part) { return shipped().material(part.material).id; }

struct Truth {
  const char* part;
  const char* name;
  const char* ends;
};

constexpr Truth kTruths[] = {
    {"coupling/black-iron/1", "1 coupling", "1 FNPT x 1 FNPT"},
    {"reducing-coupling/galvanized/1x3-4", "1 x 3/4 reducing coupling", "1 FNPT x 3/4 FNPT"},
    {"hex-bushing/black-iron/1x3-4", "1 x 3/4 hex bushing", "1 MNPT x 3/4 FNPT"},
    {"hex-bushing/brass/1-2x1-4", "1/2 x 1/4 hex bushing", "1/2 MNPT x 1/4 FNPT"},
    {"face-bushing/black-iron/1x3-4", "1 x 3/4 face bushing", "1 MNPT x 3/4 FNPT"},
    {"double-tapped-bushing/brass/1-1-4x3-4", "1-1/4 x 3/4 double-tapped bushing", "1-1/4 MNPT x 3/4 FNPT"},
    {"close-nipple/stainless/1-1-2", "1-1/2 close nipple", "1-1/2 MNPT x 1-1/2 MNPT"},
    {"nipple/galvanized/1x4", "1 x 4 nipple", "1 MNPT x 1 MNPT"},
    {"nipple/brass/3-4x2-1-2", "3/4 x 2-1/2 nipple", "3/4 MNPT x 3/4 MNPT"},
    {"reducing-nipple/black-iron/1x3-4", "1 x 3/4 reducing nipple", "1 MNPT x 3/4 MNPT"},
    {"threaded-pipe/black-iron/1x36", "1 x 36 pipe, threaded both ends", "1 MNPT x 1 MNPT"},
    {"90-elbow/galvanized/1-2", "1/2 90 degree elbow", "1/2 FNPT x 1/2 FNPT"},
    {"90-street-elbow/black-iron/1", "1 90 degree street elbow", "1 FNPT x 1 MNPT"},
    {"45-elbow/stainless/1", "1 45 degree elbow", "1 FNPT x 1 FNPT"},
    {"tee/brass/1-4", "1/4 tee", "1/4 FNPT x 1/4 FNPT x 1/4 FNPT"},
    {"reducing-tee/galvanized/1x1x1-2", "1 x 1 x 1/2 reducing tee", "1 FNPT x 1 FNPT x 1/2 FNPT"},
    {"cross/black-iron/1-2", "1/2 cross", "1/2 FNPT x 1/2 FNPT x 1/2 FNPT x 1/2 FNPT"},
    {"union/galvanized/1", "1 union", "1 FNPT x 1 FNPT"},
    {"dielectric-union/galvanized/3-4-fnptx3-4-cup", "3/4 FNPT x 3/4 cup dielectric union",
     "3/4 FNPT x 3/4 solder cup"},
    {"cap/black-iron/1", "1 cap", "1 FNPT"},
    {"plug/black-iron/1", "1 square head plug", "1 MNPT"},
    {"full-coupling/forged-steel/1", "1 full coupling, class 3000", "1 FNPT x 1 FNPT"},
    {"half-coupling/forged-steel/1-1-2", "1-1/2 half coupling, class 3000", "1-1/2 weld bung x 1-1/2 FNPT"},
    {"ball-valve/brass/1", "1 full-bore ball valve", "1 FNPT x 1 FNPT"},
    {"barb-to-male-pipe/brass/1-barbx1-mnpt", "1 barb x 1 MNPT", "1 barb x 1 MNPT"},
    {"barb-to-male-pipe/nylon/3-4-barbx1-2-mnpt", "3/4 barb x 1/2 MNPT", "3/4 barb x 1/2 MNPT plastic"},
    {"barb-to-female-pipe/brass/1-2-barbx1-2-fnpt", "1/2 barb x 1/2 FNPT", "1/2 barb x 1/2 FNPT"},
    {"barb-to-male-garden-hose/brass/5-8-barbx3-4-mght", "5/8 barb x 3/4 MGHT", "5/8 barb x 3/4 MGHT"},
    {"barb-to-female-garden-hose/brass/5-8-barbx3-4-fght", "5/8 barb x 3/4 FGHT swivel", "5/8 barb x 3/4 FGHT"},
    {"hose/rubber/1", "1 rubber hose, by the foot", "1 hose end x 1 hose end"},
    {"male-hose-thread-to-female-pipe-adapter/brass/3-4", "3/4 MGHT x 3/4 FNPT adapter", "3/4 MGHT x 3/4 FNPT"},
    {"male-hose-thread-to-male-pipe-adapter/brass/1", "3/4 MGHT x 1 MNPT adapter", "3/4 MGHT x 1 MNPT"},
    {"female-hose-thread-to-male-pipe-adapter/brass/1-2", "3/4 FGHT swivel x 1/2 MNPT adapter", "3/4 FGHT x 1/2 MNPT"},
    {"female-hose-thread-to-female-pipe-adapter/brass/3-4", "3/4 FGHT swivel x 3/4 FNPT adapter",
     "3/4 FGHT x 3/4 FNPT"},
    {"female-hose-thread-to-female-hose-thread-adapter/brass/3-4", "3/4 FGHT swivel x 3/4 FGHT swivel adapter",
     "3/4 FGHT x 3/4 FGHT"},
    {"flexible-connector/brass/3-4xswivelx18", "3/4 FNPSM swivel x 3/4 swivel x 18 in flexible connector",
     "3/4 FNPSM swivel x 3/4 FNPSM swivel"},
    {"cup-to-male-pipe/copper/3-4-cupx1-2-mnpt", "3/4 cup x 1/2 MNPT copper adapter", "3/4 solder cup x 1/2 MNPT"},
    {"pvc-male-adapter/pvc/3-4-socketx3-4-mnpt", "3/4 socket x 3/4 MNPT PVC adapter", "3/4 socket x 3/4 MNPT plastic"},
    {"bsp-nipple/galvanized/1-1-4x150mm", "R 1-1/4 x 150 mm BSP nipple", "1-1/4 MBSPT x 1-1/4 MBSPT"},
    {"bsp-reducing-bush/galvanized/r-1-1-2xrc-1-1-4", "R 1-1/2 x Rc 1-1/4 BSP reducing bush",
     "1-1/2 MBSPT x 1-1/4 FBSPT"},
    {"g-male-to-female-npt-adapter/brass/3-4", "G 3/4 male x 3/4 FNPT adapter", "3/4 MBSPP x 3/4 FNPT"},
};

TEST(Trade, PartsHaveTheEndsThatTheirNamesSay) {
  for (const Truth& truth : kTruths) {
    const Part* part = shipped_part(truth.part);
    ASSERT_NE(part, nullptr) << truth.part;
    EXPECT_EQ(part->name, truth.name) << truth.part;
    EXPECT_EQ(ends_of(*part), truth.ends) << truth.part;
  }
}

// What shuts, checks or ends a run is there for a purpose, and so only where it is asked for. A new family needs no
// line here: what its file says of it is held against each other.
TEST(Trade, OnlyPlainFittingsArePutInAChainUnasked) {
  for (const Part& part : shipped().parts()) {
    const Family& family = family_of(part);
    const bool plain = !only_if_asked(family.role);
    // A coupler shuts when it is pulled apart, and a wye of garden hose is sold with its valves: both join (common
    // practice).
    const bool joins = family.name == "air coupler" || family.name == "hose wye";
    EXPECT_FALSE(plain && !joins && (family.can_shut || part.one_way)) << part.id;
    EXPECT_EQ(family.role == Role::plug, plain && part.ports.size() == 1) << part.id;
    EXPECT_EQ(family.role == Role::relief_valve || family.role == Role::check_valve, part.opens_at.has_value())
        << part.id;
    EXPECT_EQ(family.role == Role::check_valve, family.check != CheckKind::none) << part.id;
    EXPECT_TRUE(part.arrow || !part.one_way) << part.id;
    EXPECT_EQ(family.role == Role::gauge || family.role == Role::regulator, part.full_scale.has_value()) << part.id;
  }
}

// A plug holds back what stands behind it, and so does not let any of it out: nothing that is made to breathe, pass or
// blow off is one (common practice).
TEST(Trade, WhatPlugsAnEndIsACapAPlugOrABlindFlange) {
  for (const Part& part : shipped().parts()) {
    if (family_of(part).role != Role::plug) continue;
    const std::string& name = family_of(part).name;
    EXPECT_TRUE(name.ends_with("cap") || name.ends_with("plug") || name == "blind flange") << part.id;
  }
}

TEST(Trade, EveryHoseHasItsClamp) {
  for (const std::string& size : size_names("hose")) {
    std::string id = "hose-clamp/stainless/" + size;
    std::replace(id.begin() + 21, id.end(), '/', '-');
    const Part* clamp = shipped_part(id);
    ASSERT_NE(clamp, nullptr) << id;
    EXPECT_EQ(clamp->size, size);
    EXPECT_TRUE(clamp->stocked);
  }
}

TEST(Trade, UnionsCloseAndOnlyUnionsDo) {
  for (const Part& part : shipped().parts()) {
    const bool is_union = family_of(part).name.find("union") != std::string::npos;
    EXPECT_EQ(part.closing, is_union) << part.id;
    EXPECT_EQ(part.dielectric, family_of(part).name == "dielectric union") << part.id;
  }
}

TEST(Trade, DielectricUnionIsSteelOneSideAndBrassTheOther) {
  const Part& part = *shipped_part("dielectric-union/galvanized/3-4-fnptx3-4-fnpt");
  EXPECT_EQ(shipped().material(part.material_at(0)).id, "galvanized");
  EXPECT_EQ(shipped().material(part.material_at(1)).id, "brass");
}

TEST(Trade, ChecksAndRegulatorsPassOneWay) {
  for (const Part& part : shipped().parts()) {
    const Role role = family_of(part).role;
    EXPECT_EQ(part.one_way, role == Role::check_valve || role == Role::regulator) << part.id;
    const std::string& name = family_of(part).name;
    EXPECT_EQ(family_of(part).check != CheckKind::none, name.ends_with("check valve") || name == "foot valve")
        << part.id;
  }
}

// OSHA Hazard Information Bulletin, 1990 (as cited in the trade): no PVC where compressed air can be.
TEST(Trade, NoPvcWithCompressedAir) {
  int pvc = 0;
  for (const Part& part : shipped().parts()) {
    if (material_of(part) != "pvc") continue;
    EXPECT_FALSE(part.air) << part.id;
    ++pvc;
  }
  EXPECT_GE(pvc, 150);
  EXPECT_TRUE(shipped_part("coupling/black-iron/1")->air);
  EXPECT_TRUE(shipped_part("hose/rubber/1")->air);
  EXPECT_FALSE(shipped_part("hose/vinyl/1")->air);
}

// Malleable, cast, galvanized and brass parts are not for welding (trade guides); aluminium bungs are made for
// aluminium tanks (common practice).
TEST(Trade, OnlyForgedAndStainlessSteelAndAluminiumAreWeldedIn) {
  for (const Part& part : shipped().parts()) {
    bool weld_end = family_of(part).weld_bung != WeldBung::none;
    for (const Port& port : part.ports)
      weld_end = weld_end || shipped().kind(shipped().port_type(port.type).kind).id == "weld";
    if (weld_end) {
      EXPECT_THAT(material_of(part), ::testing::AnyOf("forged-steel", "stainless", "aluminium")) << part.id;
    }
  }
}

// ASME B16.3 Table 1: class 150, 300 psi to 150 degF (published). ASME B16.11: class 3000 (published).
TEST(Trade, RatingsAreThoseOfTheirClass) {
  const auto psi = [](const Part& part) { return part.rating.in_si() / quantity::kPascalsPerPsi; };
  for (const Part& part : shipped().parts()) {
    const Family& family = family_of(part);
    if (family.standard == "ASME B16.3" && material_of(part) != "brass") {
      EXPECT_NEAR(psi(part), 300, 1e-6) << part.id;
    }
    if (family.standard == "ASME B16.11") {
      EXPECT_NEAR(psi(part), 3000, 1e-6) << part.id;
    }
  }
}

struct MetalPair {
  const char* a;
  const char* b;
  GalvanicVerdict verdict;
};

// Differences of anodic index, MIL-STD-889 practice (from memory), and what the trade makes of them: brass between
// steel pipes is accepted, copper on galvanized or black pipe wants a dielectric union, brass in an aluminium wall is
// isolated.
constexpr MetalPair kMetals[] = {{"copper", "brass", GalvanicVerdict::fine},
                                 {"brass", "stainless", GalvanicVerdict::fine},
                                 {"black-iron", "mild-steel", GalvanicVerdict::fine},
                                 {"forged-steel", "black-iron", GalvanicVerdict::fine},
                                 {"black-iron", "brass", GalvanicVerdict::watch},
                                 {"black-iron", "stainless", GalvanicVerdict::watch},
                                 {"black-iron", "galvanized", GalvanicVerdict::watch},
                                 {"copper", "galvanized", GalvanicVerdict::keep_apart},
                                 {"copper", "black-iron", GalvanicVerdict::keep_apart},
                                 {"brass", "aluminium", GalvanicVerdict::keep_apart},
                                 {"stainless", "galvanized", GalvanicVerdict::keep_apart},
                                 {"pvc", "galvanized", GalvanicVerdict::fine},
                                 {"nylon", "aluminium", GalvanicVerdict::fine}};

TEST(Trade, MetalsGoTogetherAsTheTradeSays) {
  for (const MetalPair& pair : kMetals)
    EXPECT_EQ(shipped().galvanic(*shipped().find_material(pair.a), *shipped().find_material(pair.b)), pair.verdict)
        << pair.a << " and " << pair.b;
}

struct LossRow {
  const char* name;
  double n, k1, ki, kd;
};

// n: Crane TP-410 Appendix A (valves and the short sweep published by the fluids library, the others from memory).
// Three-K: Darby, Chemical Engineering Fluid Mechanics 2nd ed., table 7-3 (published).
constexpr LossRow kLosses[] = {
    {"elbow 90 threaded", 30, 800, 0.14, 4.0},   {"elbow 45 threaded", 16, 500, 0.071, 4.2},
    {"street elbow 90", 50, 800, 0.14, 4.0},     {"street elbow 45", 26, 500, 0.071, 4.2},
    {"elbow 90 short sweep", 20, 800, 0.091, 4}, {"tee run", 20, 200, 0.091, 4.0},
    {"tee branch", 60, 500, 0.274, 4.0},         {"ball valve full bore", 3, 300, 0.017, 3.5},
    {"gate valve", 8, 300, 0.037, 3.9},          {"globe valve", 340, 1500, 1.7, 3.6},
    {"swing check", 100, 1500, 0.46, 4.0}};

TEST(Trade, LossesAreThoseOfTheHandbooks) {
  for (const LossRow& row : kLosses) {
    const auto items = shipped().loss_items();
    const auto item = std::find_if(items.begin(), items.end(), [&](const LossItem& i) { return i.name == row.name; });
    ASSERT_NE(item, items.end()) << row.name;
    EXPECT_EQ(item->crane_n, row.n) << row.name;
    EXPECT_EQ(item->darby_k1, row.k1) << row.name;
    EXPECT_EQ(item->darby_ki, row.ki) << row.name;
    EXPECT_EQ(item->darby_kd, row.kd) << row.name;
    EXPECT_GE(item->scatter, 0.3) << row.name;
  }
}

struct LossOfFamily {
  const char* part;
  const char* loss;
  const char* branch_loss;  // nullptr: none
};

constexpr LossOfFamily kLossOf[] = {{"90-elbow/black-iron/1", "elbow 90 threaded", nullptr},
                                    {"45-elbow/black-iron/1", "elbow 45 threaded", nullptr},
                                    {"90-street-elbow/black-iron/1", "street elbow 90", nullptr},
                                    {"tee/black-iron/1", "tee run", "tee branch"},
                                    {"reducing-tee/black-iron/1x1x1-2", "tee run", "tee branch"},
                                    {"ball-valve/brass/1", "ball valve full bore", nullptr},
                                    {"check-valve/brass/1", "swing check", nullptr}};

TEST(Trade, FittingsLoseHeadAsTheirKindDoes) {
  for (const LossOfFamily& row : kLossOf) {
    const Part* part = shipped_part(row.part);
    ASSERT_NE(part, nullptr) << row.part;
    EXPECT_EQ(shipped().loss_item(part->loss).name, row.loss);
    ASSERT_EQ(part->branch_loss.valid(), row.branch_loss != nullptr) << row.part;
    if (row.branch_loss != nullptr) {
      EXPECT_EQ(shipped().loss_item(part->branch_loss).name, row.branch_loss);
    }
  }
  EXPECT_FALSE(shipped_part("coupling/black-iron/1")->loss.valid());
  EXPECT_FALSE(shipped_part("nipple/black-iron/1x4")->loss.valid());
}

TEST(Trade, HoseAndTubeAreCutToLength) {
  for (const Part& part : shipped().parts()) {
    const std::string& name = family_of(part).name;
    EXPECT_EQ(part.cut_to_length,
              name == "hose" || name == "suction hose" || name.ends_with(" tube") || name == "PVC pipe")
        << part.id;
  }
}

// The next size up of the same thing costs more, whatever it is made of.
TEST(Trade, BiggerCostsMore) {
  for (const char* family : {"coupling", "90-elbow", "tee", "union", "cap", "plug", "close-nipple"}) {
    for (const char* material : {"black-iron", "galvanized", "brass", "stainless"}) {
      Price before;
      for (const char* size : {"1-4", "3-8", "1-2", "3-4", "1", "1-1-4", "1-1-2", "2"}) {
        const Part* part = shipped_part(std::string(family) + "/" + material + "/" + size);
        ASSERT_NE(part, nullptr) << family << ' ' << material << ' ' << size;
        EXPECT_GT(part->price, before) << part->id;
        before = part->price;
      }
    }
  }
}

TEST(Trade, EveryPartHasAPriceARatingAndASource) {
  for (const Part& part : shipped().parts()) {
    EXPECT_GT(part.price.cents(), 0) << part.id;
    EXPECT_FALSE(part.source.empty()) << part.id;
    EXPECT_GT(part.rating.in_si(), 0.0) << part.id;
    for (const Port& port : part.ports) {
      EXPECT_GT(port.bore, metres(0.0)) << part.id;
      EXPECT_GT(port.reach, metres(0.0)) << part.id;
    }
  }
}

}  // namespace
}  // namespace riserun::catalog
