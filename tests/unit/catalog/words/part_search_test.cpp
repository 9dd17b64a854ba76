// Words find parts, and a bin takes them.
#include "catalog/words/part_search.h"

#include "catalog/words/avoided_parts.h"
#include "unit/catalog/shipped_catalog.h"
#include "unit/catalog/small_catalog.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace riserun::catalog {
namespace {

using ::testing::AllOf;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::IsSupersetOf;
using ::testing::Not;

std::vector<std::string> found(const Catalog& catalog, std::string_view words) {
  std::vector<std::string> ids;
  for (const PartId part : find_parts(catalog, words)) ids.push_back(catalog.part(part).id);
  return ids;
}

TEST(PartSearch, WordsOfFamilyMaterialAndSizeFind) {
  const Catalog catalog = testing::small_catalog();
  EXPECT_THAT(found(catalog, "1/2 x 4 nipple, brass"), ElementsAre("nipple/brass/1-2x4-in"));
  EXPECT_THAT(found(catalog, "brass Nipples 1/2 x 4 in"), ElementsAre("nipple/brass/1-2x4-in"));
  EXPECT_THAT(found(catalog, "bell reducers 1 x 3/4 black"), ElementsAre("reducing-coupling/black-iron/1x3-4"));
  EXPECT_THAT(found(catalog, "coupling 3/4 by 1 galvanized"), ElementsAre("reducing-coupling/galvanized/1x3-4"));
  EXPECT_THAT(found(catalog, "check valve"), ElementsAre("check-valve/brass/1-2"));
  EXPECT_THAT(found(catalog, "valve"), ElementsAre("check-valve/brass/1-2"));
  EXPECT_THAT(found(catalog, "check-valve/brass/1-2"), ElementsAre("check-valve/brass/1-2"));
}

// The card's own words for what a riser is cut of, and a drill in millimetres, are read as they stand.
TEST(PartSearch, WhatACardPrintsIsReadBack) {
  const Catalog& catalog = testing::shipped_catalog();
  EXPECT_THAT(found(catalog, "1 x 18 pipe, black iron"), ElementsAre("threaded-pipe/black-iron/1x18"));
  EXPECT_EQ(found(catalog, "1.6 mm hole restrictor"), found(catalog, "1/16 in hole restrictor"));
  EXPECT_EQ(found(catalog, "restrictor, 2.4 mm hole"), found(catalog, "restrictor, 3/32 in hole"));
  EXPECT_FALSE(found(catalog, "1.6 mm hole restrictor").empty());
  EXPECT_THAT(found(catalog, "1.4 mm hole restrictor"), IsEmpty());
}

// A hole that nobody drills is not read as the thread's size: the finest hole would be taken for a wide one.
TEST(PartSearch, AHoleThatNoneHasIsAnError) {
  PartSearch search(testing::shipped_catalog());
  for (const char* words : {"1/4 in hole restrictor", "restrictor, 0.25 in hole", "restrictor 1/2 in hole"}) {
    const auto none = search.find_called(words);
    const auto* error = std::get_if<NotationError>(&none);
    ASSERT_NE(error, nullptr) << words;
    EXPECT_THAT(error->message, ::testing::HasSubstr("; there are 1/32 in, 3/64 in, 1/16 in, 3/32 in or 1/8 in"));
  }
  for (const char* words : {"1/16 in hole restrictor", "1/4 restrictor, 3/64 in hole", "1/4 restrictor"})
    EXPECT_TRUE(std::holds_alternative<std::vector<PartId>>(search.find_called(words))) << words;
}

TEST(PartSearch, LengthsThatAreNoNominalSizeAreReadInEverySpelling) {
  for (const char* words :
       {"1-1/4 x 5-1/2 nipple, black", "1 1/4 x 5 1/2 in black nipples", "1.25 x 5 1/2 black nipple"})
    EXPECT_THAT(found(testing::shipped_catalog(), words), ElementsAre("nipple/black-iron/1-1-4x5-1-2")) << words;
}

TEST(PartSearch, TheDegreesOfAnElbowAreNoSize) {
  for (const char* words : {"1 90 elbow black", "90 degree elbow 1 black iron", "1 elbow 90 black"})
    EXPECT_THAT(found(testing::shipped_catalog(), words), ElementsAre("90-elbow/black-iron/1")) << words;
  EXPECT_THAT(found(testing::shipped_catalog(), "1 45 elbow black"), ElementsAre("45-elbow/black-iron/1"));
  EXPECT_THAT(found(testing::shipped_catalog(), "1 street 90 black"), ElementsAre("90-street-elbow/black-iron/1"));
}

std::vector<std::string> families_avoided(std::string_view words) {
  const Catalog& catalog = testing::shipped_catalog();
  std::vector<std::string> names;
  for (const PartId part : find_avoided_parts(catalog, words)) {
    const std::string& name = catalog.family(catalog.part(part).family).name;
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  }
  std::sort(names.begin(), names.end());
  return names;
}

TEST(AvoidedParts, AreAllThatIsCalledSo) {
  EXPECT_THAT(families_avoided("nipples"),
              IsSupersetOf({"BSP nipple", "PVC close nipple", "PVC nipple", "close nipple", "hex nipple", "nipple",
                            "reducing hex nipple", "reducing nipple"}));
  EXPECT_THAT(families_avoided("nipple"), Not(Contains("threaded pipe")));
  // What is called a half union holds no union: a flare connector may stand where unions may not.
  EXPECT_THAT(families_avoided("union"), AllOf(Contains("union"), Contains("PVC union")));
  EXPECT_THAT(families_avoided("union"), Not(Contains("45 flare to male pipe")));
  EXPECT_THAT(families_avoided("hex nipple"), ElementsAre("BSP hex nipple", "hex nipple", "reducing hex nipple"));
  EXPECT_THAT(families_avoided("brass nipple"), Contains("hex nipple"));
  EXPECT_THAT(families_avoided("brass nipple"), Not(Contains("PVC nipple")));
  EXPECT_THAT(families_avoided("PVC nipple"), ElementsAre("PVC close nipple", "PVC nipple"));
}

// Thermoplastics by their chemistry; rubber, which is vulcanized, is none (common knowledge).
TEST(AvoidedParts, OfPlasticAreEveryPlasticAndOfMetalEveryMetal) {
  const Catalog& catalog = testing::shipped_catalog();
  const std::vector<PartId> plastic = find_avoided_parts(catalog, "plastic");
  const std::vector<PartId> metal = find_avoided_parts(catalog, "metal");
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const Material& material = catalog.material(catalog.part({row}).material);
    const bool is_plastic = material.id == "pvc" || material.id == "polypropylene" || material.id == "pex" ||
                            material.id == "nylon" || material.id == "vinyl";
    EXPECT_EQ(std::binary_search(plastic.begin(), plastic.end(), PartId{row}), is_plastic) << catalog.part({row}).id;
    EXPECT_EQ(std::binary_search(metal.begin(), metal.end(), PartId{row}), material.metal) << catalog.part({row}).id;
  }
}

TEST(AvoidedParts, AnAdapterIsNotWhatItJoinsTo) {
  EXPECT_THAT(families_avoided("pipe"), Not(Contains("barb to male pipe")));
  EXPECT_THAT(families_avoided("hose"), Not(Contains("barb to male garden hose")));
  EXPECT_THAT(families_avoided("adapter"), Contains("male hose thread to male pipe adapter"));
}

TEST(AvoidedParts, OfAKindOfJointAreAllThatHaveIt) {
  const Catalog& catalog = testing::shipped_catalog();
  const auto with_port_of = [&](std::string_view kind) {
    std::vector<PartId> parts;
    for (std::uint32_t row = 0; row < catalog.parts().size(); ++row)
      for (const Port& port : catalog.part({row}).ports)
        if (catalog.kind(catalog.port_type(port.type).kind).id == kind && (parts.empty() || parts.back().row != row))
          parts.push_back({row});
    return parts;
  };
  for (const char* words : {"garden hose", "Garden hoses", "garden hose thread", "hose thread"})
    EXPECT_THAT(find_avoided_parts(catalog, words), ::testing::IsSupersetOf(with_port_of("ght"))) << words;
  for (const char* words : {"cam lock", "camlock", "cam-and-groove"})
    EXPECT_THAT(find_avoided_parts(catalog, words), ::testing::IsSupersetOf(with_port_of("cam"))) << words;
  for (const char* kind : {"npt", "npt-plastic"})
    EXPECT_THAT(find_avoided_parts(catalog, "NPT"), ::testing::IsSupersetOf(with_port_of(kind))) << kind;
  EXPECT_THAT(families_avoided("garden hose"), Not(Contains("nipple")));
  EXPECT_THAT(families_avoided("just garden hose"), ElementsAre("garden hose"));
}

TEST(AvoidedParts, WhatNamesNothingIsToldWhatMayBeSaid) {
  PartSearch search(testing::shipped_catalog());
  const NotationError error = why_no_avoided_parts(search, "just cheese");
  EXPECT_EQ(error.offset, 5u);
  for (const char* allowed : {"'cheese'", "nipple", "black iron", "garden hose thread"})
    EXPECT_THAT(error.message, ::testing::HasSubstr(allowed));
}

TEST(AvoidedParts, WithJustOrASizeAreThoseThatTheWordsFind) {
  EXPECT_THAT(families_avoided("just nipple"), ElementsAre("nipple"));
  EXPECT_THAT(families_avoided("Just PVC nipple"), ElementsAre("PVC nipple"));
  EXPECT_THAT(families_avoided("1 x 4 nipple"), ElementsAre("nipple"));
  EXPECT_THAT(families_avoided("just"), IsEmpty());
  EXPECT_THAT(families_avoided("nippels"), Contains("hex nipple"));
  EXPECT_THAT(families_avoided("zzzzz"), IsEmpty());
}

TEST(PartSearch, PortsFind) {
  const Catalog catalog = testing::small_catalog();
  EXPECT_THAT(found(catalog, "3/4 MGHT to 1/2 FIP adapter brass"), ElementsAre("hose-adapter/brass/3-4x1-2"));
  EXPECT_THAT(found(catalog, "1/2 male pipe thread brass"),
              ElementsAre("nipple/brass/1-2x2-in", "nipple/brass/1-2x4-in"));
}

// Of four letters another one makes another word; two that changed places are a slip.
// Where words name no thing but a kind of joint, all that has it in the size is what they ask for.
TEST(PartSearch, ALookIntoTheCatalogFindsAllThatFits) {
  const Catalog& catalog = testing::shipped_catalog();
  PartSearch search(catalog);
  const auto families = [&](const char* words) {
    std::set<std::string> names;
    const auto found = search.find_all(words);
    for (const PartId part : std::get<std::vector<PartId>>(found))
      names.insert(catalog.family(catalog.part(part).family).name);
    return names;
  };
  EXPECT_THAT(families("2 camlock"),
              IsSupersetOf({"cam adapter A", "cam coupler B", "cam coupler C", "cam adapter F"}));
  EXPECT_THAT(families("jic 1/2"), IsSupersetOf({"37 flare connector", "37 flare to male pipe"}));
  EXPECT_THAT(families("3/8 push-in"), IsSupersetOf({"push-in connector", "push-in tee", "push-in to male pipe"}));
  const auto of_three_eighths = search.find_all("3/8 push-in");
  for (const PartId part : std::get<std::vector<PartId>>(of_three_eighths))
    EXPECT_THAT(catalog.part(part).name, ::testing::HasSubstr("3/8 push-in"));
  EXPECT_THAT(families("camlock A 2"), ElementsAre("cam adapter A"));
  EXPECT_THAT(families("1 union"), Not(Contains("dielectric union")));
  EXPECT_THAT(families("1 x 3/4 hex bushing brass"), ElementsAre("hex bushing"));
}

TEST(PartSearch, FluxIsNoFlexibleHose) {
  const Catalog& catalog = testing::shipped_catalog();
  EXPECT_THAT(found(catalog, "flux"), IsEmpty());
  EXPECT_THAT(found(catalog, "1/2 hoes barb"), Not(IsEmpty()));
}

TEST(PartSearch, WhatIsNotThereIsExplained) {
  const Catalog catalog = testing::small_catalog();
  EXPECT_THAT(found(catalog, "coup"), IsEmpty());
  EXPECT_EQ(why_no_parts(catalog, "1/2 nipl").message, "no part knows the word 'nipl'; did you mean nipple?");
  EXPECT_EQ(why_no_parts(catalog, "1/2 x 7 nipple").message,
            "no part fits all of '1/2 x 7 nipple'; the sizes are 1/2 x 2 in, 1/2 x 4 in");
  EXPECT_EQ(why_no_parts(catalog, " ").message,
            "words that name a part are expected, as in '1 x 3/4 reducing coupling'");
}

TEST(PartSearch, WholeNameOfAFamilyLeavesOutThoseThatMerelyContainIt) {
  std::vector<SourceText> texts = testing::small_catalog_texts();
  texts.push_back({"more.yaml", R"(families:
  - name: close nipple
    shelf: pipe nipples
    title: "{size} close nipple"
    size: "{size}"
    bore: schedule 40
    ports:
      - {kind: npt, end: male, size: size, reach: 0.5 in}
      - {kind: npt, end: male, size: size, reach: 0.5 in}
    materials: {black-iron: {rating: 1000 psi}}
    source: test
    table: {columns: [size, price (usd)], rows: [[1/2, 1.00]]}
)"});
  const Catalog catalog = load_catalog(texts, {});
  EXPECT_THAT(found(catalog, "close nipple"), ElementsAre("close-nipple/black-iron/1-2"));
  EXPECT_THAT(found(catalog, "nipple 3/4"), ElementsAre("nipple/black-iron/3-4x4-in"));
  EXPECT_EQ(found(catalog, "nipple").size(), 5U);
}

TEST(Bin, CountsPartsAndAddsUpTheSamePart) {
  const Catalog small = testing::small_catalog();
  CatalogBuilder builder(small);
  const Bin bin = load_bin(builder, SourceText{"bin.yaml", R"(bin:
  - {part: "1/2 check valve", count: 2}
  - part: 1/2 x 4 nipple
    material: brass
  - {part: check-valve/brass/1-2}
)"});
  ASSERT_EQ(bin.items.size(), 2U);
  EXPECT_EQ(bin.count_of(*small.find_part("check-valve/brass/1-2")), 3);
  EXPECT_EQ(bin.count_of(*small.find_part("nipple/brass/1-2x4-in")), 1);
}

TEST(Bin, MeasuredPartIsACopyOfTheCatalogsPart) {
  CatalogBuilder builder(testing::small_catalog());
  const Bin bin = load_bin(builder, SourceText{"bin.yaml", R"(bin:
  - {part: "1/2 x 4 nipple, brass", measured: {length: 3-7/8 in}}
  - {part: "1/2 x 4 nipple, brass", measured: {length: 3-7/8 in}, count: 2}
)"});
  const Catalog catalog = std::move(builder).build();
  ASSERT_EQ(bin.items.size(), 1U);
  EXPECT_EQ(bin.items[0].count, 3);
  const Part& measured = catalog.part(bin.items[0].part);
  const Part& stated = catalog.part(*catalog.find_part("nipple/brass/1-2x4-in"));
  EXPECT_TRUE(measured.measured);
  EXPECT_FALSE(stated.measured);
  EXPECT_NEAR(in_inches(measured.ports[0].reach + measured.ports[1].reach), 3.875, 1e-9);
  EXPECT_NEAR(in_inches(stated.ports[0].reach + stated.ports[1].reach), 4.0, 1e-9);
  EXPECT_EQ(measured.ports[0].type, stated.ports[0].type);
  EXPECT_EQ(measured.name, "1/2 x 4 in nipple, measured 3-7/8 in");
}

TEST(Bin, PieceOfHoseIsAPartOfItsOwnLengthThatNobodySells) {
  CatalogBuilder builder(testing::shipped_catalog());
  const Bin bin = load_bin(builder, SourceText{"bin.yaml", R"(bin:
  - {part: 1 rubber hose, length: 36 in}
  - {part: 1 rubber hose, length: 3 ft, count: 2}
  - {part: 1 rubber hose, length: 18 in}
  - {part: 1 rubber hose, count: 4}
)"});
  const Catalog catalog = std::move(builder).build();
  ASSERT_EQ(bin.items.size(), 3U);
  EXPECT_EQ(bin.items[0].count, 3);
  const Part& piece = catalog.part(bin.items[0].part);
  EXPECT_EQ(piece.name, "1 rubber hose, a piece of 36 in");
  EXPECT_TRUE(piece.remnant);
  EXPECT_FALSE(piece.stocked);
  EXPECT_FALSE(sold_by_the_foot(piece));
  EXPECT_NEAR(in_inches(piece.ports[0].reach + piece.ports[1].reach), 36.0, 1e-9);
  EXPECT_TRUE(sold_by_the_foot(catalog.part(bin.items[2].part)));
  EXPECT_FALSE(catalog.part(bin.items[2].part).remnant);
}

}  // namespace
}  // namespace riserun::catalog
