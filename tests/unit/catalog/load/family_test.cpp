// Families expand by rule over their tables.
#include "unit/catalog/small_catalog.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace riserun::catalog {
namespace {

using ::testing::DoubleNear;
using ::testing::ElementsAre;

class SmallCatalog : public ::testing::Test {
 protected:
  const Catalog catalog = testing::small_catalog();
  const Part& part(std::string_view id) const {
    const std::optional<PartId> found = catalog.find_part(id);
    if (!found) throw std::runtime_error("no part " + std::string(id));
    return catalog.part(*found);
  }
};

TEST_F(SmallCatalog, YieldsEachPartOnceInTheOrderOfTheRowsAndMaterials) {
  std::vector<std::string> ids;
  for (const Part& one : catalog.parts()) ids.push_back(one.id);
  EXPECT_THAT(ids, ElementsAre("reducing-coupling/black-iron/3-4x1-2", "reducing-coupling/galvanized/3-4x1-2",
                               "reducing-coupling/black-iron/1x1-2", "reducing-coupling/galvanized/1x1-2",
                               "reducing-coupling/black-iron/1x3-4", "reducing-coupling/galvanized/1x3-4",
                               "nipple/black-iron/1-2x2-in", "nipple/brass/1-2x2-in", "nipple/black-iron/1-2x4-in",
                               "nipple/brass/1-2x4-in", "nipple/black-iron/3-4x4-in", "check-valve/brass/1-2",
                               "hose-adapter/brass/3-4x1-2", "hose-adapter/pvc/3-4x1-2", "hose-adapter/brass/3-4x3-4"));
}

TEST_F(SmallCatalog, ListCellStandsForOneRowEach) {
  EXPECT_EQ(part("reducing-coupling/black-iron/1x1-2").name, "1 x 1/2 reducing coupling");
  EXPECT_EQ(part("reducing-coupling/black-iron/1x3-4").name, "1 x 3/4 reducing coupling");
}

TEST_F(SmallCatalog, MeasuresAddColumnsAndLengths) {
  // 1-11/16 in over two; 2.5 - 0.5 in; half of 2.5 in and 0.25 in.
  EXPECT_THAT(in_inches(part("reducing-coupling/black-iron/1x3-4").ports[0].reach), DoubleNear(0.84375, 1e-12));
  EXPECT_THAT(in_inches(part("check-valve/brass/1-2").ports[0].reach), DoubleNear(2.0, 1e-12));
  EXPECT_THAT(in_inches(part("check-valve/brass/1-2").ports[1].reach), DoubleNear(1.5, 1e-12));
}

TEST_F(SmallCatalog, BoreComesFromTheTableAtThePortsOwnSize) {
  const Part& coupling = part("reducing-coupling/black-iron/1x3-4");
  EXPECT_THAT(in_inches(coupling.ports[0].bore), DoubleNear(1.049, 1e-12));
  EXPECT_THAT(in_inches(coupling.ports[1].bore), DoubleNear(0.824, 1e-12));
}

TEST_F(SmallCatalog, PriceIsTheRowsTimesTheMaterialsFactor) {
  EXPECT_EQ(part("reducing-coupling/black-iron/1x3-4").price, cents(400));
  EXPECT_EQ(part("reducing-coupling/galvanized/1x3-4").price, cents(500));
  EXPECT_EQ(part("hose-adapter/pvc/3-4x1-2").price, cents(300));
}

TEST_F(SmallCatalog, PricePerInchIsTakenTimesTheLength) {
  EXPECT_EQ(part("nipple/black-iron/1-2x4-in").price, cents(240));
  EXPECT_EQ(part("nipple/brass/1-2x4-in").price, cents(960));
}

TEST_F(SmallCatalog, PartIsStockedWhenItsRowAndItsMaterialBothSaySo) {
  EXPECT_FALSE(part("reducing-coupling/black-iron/3-4x1-2").stocked);
  EXPECT_TRUE(part("reducing-coupling/galvanized/3-4x1-2").stocked);
  EXPECT_TRUE(part("reducing-coupling/black-iron/1x1-2").stocked);
  EXPECT_FALSE(part("reducing-coupling/galvanized/1x1-2").stocked);
}

TEST(OwnFamily, SaysWhatItsPartsAreForAndAreSetTo) {
  const SourceText own{"own.yaml", R"(families:
  - name: relief
    shelf: mine
    role: relief valve
    set pressure: set
    title: "{size} {material} relief, {set} psi"
    size: "{size}"
    id: "{size}-{set}"
    ports: [{kind: npt, end: male, size: size, bore: 0.3 in, reach: 1 in}]
    materials: {brass: {rating: 150 psi}}
    source: mine
    table: {columns: [size, set (psi), price (usd)], rows: [[1/2, [1.5, 2], 2]]}
  - name: my check
    shelf: mine
    role: check valve
    check: spring
    opening pressure: 0.4 psi
    title: "{size} check"
    size: "{size}"
    ports: [{kind: npt, end: female, size: size, bore: 0.3 in, reach: 1 in},
            {kind: npt, end: female, size: size, bore: 0.3 in, reach: 1 in}]
    materials: {brass: {rating: 150 psi}}
    source: mine
    table: {columns: [size, price (usd)], rows: [[1/2, 2]]}
  - name: my strainer
    shelf: mine
    role: device
    arrow: yes
    title: "{size} strainer"
    size: "{size}"
    ports: [{kind: npt, end: female, size: size, bore: 0.3 in, reach: 1 in},
            {kind: npt, end: female, size: size, bore: 0.3 in, reach: 1 in}]
    materials: {brass: {rating: 150 psi}}
    source: mine
    table: {columns: [size, price (usd)], rows: [[1/2, 2]]}
parts:
  - {id: dial, name: dial, size: 1/2, role: gauge, range: 5 psi, material: brass, rating: 5 psi, source: mine,
     ports: [{port: 1/2 MNPT, bore: 0.1 in, reach: 1 in}]}
  - {id: stub, name: stub, size: 1/2, close: yes, material: brass, rating: 150 psi, source: mine,
     ports: [{port: 1/2 MNPT, bore: 0.5 in, reach: 1 in}, {port: 1/2 MNPT, bore: 0.5 in, reach: 1 in}]}
)"};
  const Catalog catalog = load_catalog(testing::small_catalog_texts(), std::span(&own, 1));
  const Part& relief = catalog.part(*catalog.find_part("relief/brass/1-2-1.5"));
  EXPECT_EQ(relief.name, "1/2 brass relief, 1.5 psi");
  EXPECT_TRUE(relief.names_material);
  EXPECT_EQ(relief.opens_at, psig(1.5));
  EXPECT_EQ(catalog.family(relief.family).role, Role::relief_valve);
  const Part& check = catalog.part(*catalog.find_part("my-check/brass/1-2"));
  EXPECT_EQ(catalog.family(check.family).check, CheckKind::spring);
  EXPECT_EQ(check.opens_at, psig(0.4));
  EXPECT_TRUE(check.one_way && check.arrow);
  const Part& strainer = catalog.part(*catalog.find_part("my-strainer/brass/1-2"));
  EXPECT_TRUE(strainer.arrow && !strainer.one_way);
  const Part& dial = catalog.part(*catalog.find_part("dial"));
  EXPECT_EQ(dial.full_scale, psig(5.0));
  EXPECT_EQ(catalog.family(dial.family).role, Role::gauge);
  EXPECT_TRUE(catalog.part(*catalog.find_part("stub")).close);
  EXPECT_EQ(catalog.nominal_inches(*catalog.find_size("3/4")), 0.75);
}

TEST_F(SmallCatalog, RatingComesFromTheMaterialOrFromAColumn) {
  EXPECT_NEAR(in_psi(part("nipple/brass/1-2x2-in").rating), 400.0, 1e-9);
  EXPECT_NEAR(in_psi(part("check-valve/brass/1-2").rating), 125.0, 1e-9);
}

TEST_F(SmallCatalog, PlasticIsKeptFromCompressedAir) {
  EXPECT_TRUE(part("hose-adapter/brass/3-4x1-2").air);
  EXPECT_FALSE(part("hose-adapter/pvc/3-4x1-2").air);
}

TEST_F(SmallCatalog, StraightPartsLookBothWaysUnlessToldOtherwise) {
  EXPECT_EQ(part("nipple/brass/1-2x2-in").ports[0].heading_degrees, 180.0);
  EXPECT_EQ(part("nipple/brass/1-2x2-in").ports[1].heading_degrees, 0.0);
}

TEST_F(SmallCatalog, GalvanicVerdictFollowsTheLimitsOfTheFile) {
  const auto verdict = [&](std::string_view a, std::string_view b) {
    return catalog.galvanic(*catalog.find_material(a), *catalog.find_material(b));
  };
  EXPECT_EQ(verdict("black", "brass"), GalvanicVerdict::watch);            // 0.40 V
  EXPECT_EQ(verdict("galvanized", "brass"), GalvanicVerdict::keep_apart);  // 0.75 V
  EXPECT_EQ(verdict("PVC", "brass"), GalvanicVerdict::fine);
  std::vector<SourceText> texts = testing::small_catalog_texts();
  texts[0].text.replace(texts[0].text.find("0.25 V"), 6, "0.40 V");
  const Catalog changed = load_catalog(texts, {});
  // A difference of just the limit is still fine, although 0.85 - 0.45 is a little more than 0.40 in a computer.
  EXPECT_EQ(changed.galvanic(*changed.find_material("black"), *changed.find_material("brass")), GalvanicVerdict::fine);
}

TEST_F(SmallCatalog, EndsMateByRuleOnly) {
  const auto type = [&](std::string_view size, std::string_view kind, End end) {
    return *catalog.find_port_type({*catalog.find_kind(kind), *catalog.find_size(size), end});
  };
  EXPECT_NE(catalog.mating_rule(type("1", "npt", End::male), type("1", "npt", End::female)), nullptr);
  EXPECT_NE(catalog.mating_rule(type("1", "npt", End::female), type("1", "npt", End::male)), nullptr);
  EXPECT_EQ(catalog.mating_rule(type("1", "npt", End::male), type("3/4", "npt", End::female)), nullptr);
  EXPECT_EQ(catalog.mating_rule(type("1", "npt", End::male), type("1", "npt", End::male)), nullptr);
  EXPECT_EQ(catalog.mating_rule(type("3/4", "ght", End::male), type("3/4", "npt", End::female)), nullptr);
}

TEST_F(SmallCatalog, LoadsTheSameEachTime) {
  EXPECT_EQ(testing::written_out(catalog), testing::written_out(testing::small_catalog()));
}

TEST(OwnFile, AddsPartsAndFamiliesAndReplacesPrices) {
  const SourceText own{"own.yaml", R"(
parts:
  - id: own-manifold
    name: manifold
    size: 1 x 1/2
    material: brass
    rating: 150 psi
    source: measured
    ports: [{port: 1 FNPT, bore: 1 in, reach: 2 in}, {port: 1/2 FIP, bore: 0.6 in, reach: 2 in}]
prices:
  - {part: "1 x 3/4 reducing coupling, black iron", price: 3.10 usd}
  - {part: own-manifold, price: $12}
)"};
  const Catalog catalog = load_catalog(testing::small_catalog_texts(), std::span(&own, 1));
  const PartId manifold = catalog.find_part("own-manifold").value();
  EXPECT_EQ(catalog.written(catalog.part(manifold).ports[1].type), "1/2 FNPT");
  EXPECT_EQ(catalog.part(manifold).price, cents(1200));
  EXPECT_EQ(catalog.part(catalog.find_part("reducing-coupling/black-iron/1x3-4").value()).price, cents(310));
  EXPECT_EQ(catalog.part(catalog.find_part("reducing-coupling/galvanized/1x3-4").value()).price, cents(500));
}

TEST(OwnFile, SaysOfAPartThatItCanShut) {
  const SourceText own{"own.yaml", R"(
parts:
  - {id: own-cock, name: plug cock, size: 1, can shut: yes, material: brass, rating: 150 psi, source: measured,
     ports: [{port: 1 FNPT, bore: 1 in, reach: 2 in}, {port: 1 FNPT, bore: 1 in, reach: 2 in}]}
)"};
  const Catalog catalog = load_catalog(testing::small_catalog_texts(), std::span(&own, 1));
  const Family& family = catalog.family(catalog.part(catalog.find_part("own-cock").value()).family);
  EXPECT_EQ(family.name, "own valve");
  EXPECT_TRUE(family.can_shut);
}

}  // namespace
}  // namespace riserun::catalog
