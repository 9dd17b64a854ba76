// Ports are read generously, written one way, and what is not understood is said.
#include "catalog/words/port_notation.h"

#include "unit/catalog/shipped_catalog.h"
#include "unit/catalog/small_catalog.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace riserun::catalog {
namespace {

std::string reading(const Catalog& catalog, std::string_view text) {
  const auto port = read_port(catalog, text);
  const PortTypeId* id = std::get_if<PortTypeId>(&port);
  EXPECT_EQ(PortNotation(catalog).find(text), id ? std::optional(*id) : std::nullopt) << text;
  if (id) return catalog.written(*id);
  const NotationError& error = std::get<NotationError>(port);
  return "error at " + std::to_string(error.offset) + ": " + error.message;
}

TEST(PortNotation, ManySpellingsAreOnePort) {
  const Catalog& catalog = testing::shipped_catalog();
  const std::vector<std::pair<std::string, std::string>> spellings = {
      {"1 FNPT", "1 FNPT"},
      {"1\" FIP", "1 FNPT"},
      {"1 in female NPT", "1 FNPT"},
      {"female 1 npt", "1 FNPT"},
      {"npt f 1\"", "1 FNPT"},
      {"1FNPT", "1 FNPT"},
      {"DN 25 npt female", "1 FNPT"},
      {"-8 37 degree flare male", "1/2 male 37 flare"},
      {"7/16 37 flare male", "1/4 male 37 flare"},
      {"7/16-20 JIC male", "1/4 male 37 flare"},
      {"-4 JIC female", "1/4 female 37 flare swivel"},
      {"3/4-16 37 flare male", "1/2 male 37 flare"},
      {"3/4-12 37 flare male", "3/4 male 37 flare"},
      {"5/8-18 flare male", "3/8 male 45 flare"},
      {"3/4-14 NPT female", "3/4 FNPT"},
      {"3/4-11.5 GHT male", "3/4 MGHT"},
      {"1-1/4 MNPT", "1-1/4 MNPT"},
      {"1 1/4 MIP", "1-1/4 MNPT"},
      {"1\xC2\xBC mip", "1-1/4 MNPT"},
      {"1.25 inch male pipe thread", "1-1/4 MNPT"},
      {"3/4 GHT male", "3/4 MGHT"},
      {"3/4 MGHT", "3/4 MGHT"},
      {"male garden hose 3/4", "3/4 MGHT"},
      {"1/2 barb", "1/2 barb"},
      {"G 1/2 female", "1/2 FBSPP"},
      {"R 3/4", "3/4 MBSPT"},
      {"Rc 1-1/4", "1-1/4 FBSPT"},
      {"Rp 3/4", "3/4 Rp"},  // ISO 7-1: parallel internal, tight on R
      {"3/4 Rp female", "3/4 Rp"},
      {"1/2 cup", "1/2 solder cup"},
      {"1/2 C", "1/2 solder cup"},
      {"3/4 hose", "3/4 hose end"},
  };
  for (const auto& [text, port] : spellings) EXPECT_EQ(reading(catalog, text), port) << text;
}

TEST(PortNotation, WhatIsWrittenIsReadBackForEveryPortOfTheCatalog) {
  const Catalog& catalog = testing::shipped_catalog();
  const PortNotation notation(catalog);
  for (std::uint32_t row = 0; row < catalog.port_types().size(); ++row) {
    for (const std::string& text : {catalog.written(PortTypeId{row}), catalog.spelled(PortTypeId{row})}) {
      const auto port = notation.read(text);
      ASSERT_TRUE(std::holds_alternative<PortTypeId>(port)) << text << ": " << std::get<NotationError>(port).message;
      EXPECT_EQ(std::get<PortTypeId>(port), PortTypeId{row}) << text;
    }
  }
}

TEST(PortNotation, MistakesAreSaid) {
  const Catalog catalog = testing::small_catalog();
  const std::vector<std::pair<std::string, std::string>> mistakes = {
      {"", "error at 0: a port is expected, as in '3/4 FNPT'"},
      {"1 FTP", "error at 2: 'FTP' is not understood; close to it: fip or fpt"},
      {"1 zzzzz",
       "error at 2: 'zzzzz' is not understood; a port is a size, a kind of joint and an end, as in '3/4 FNPT'"},
      {"1 NPT", "error at 5: the end is missing: 1 MNPT or 1 FNPT"},
      {"FNPT", "error at 4: the size is missing; NPT comes in 1/2, 3/4 or 1"},
      {"7/8 FNPT", "error at 0: '7/8' is not a size of NPT, which comes in 1/2, 3/4 or 1"},
      {"3/4 female", "error at 10: the kind of joint is missing; it could be 3/4 FNPT or 3/4 FGHT"},
      {"1 MNPT female", "error at 7: 'female': there is no such end of NPT; there is 1 MNPT"},
      {"1 male npt female", "error at 11: 'female' does not go with what stands before it"},
      {"1 FNPT garden hose", "error at 7: 'garden hose' does not go with what stands before it"},
      {"1 1/2 3/4 MNPT", "error at 6: two sizes, '1 1/2' and '3/4': a port has one"},
      {"1/2 MGHT", "error at 0: '1/2' is not a size of garden hose thread, which comes in 3/4"},
  };
  for (const auto& [text, said] : mistakes) EXPECT_EQ(reading(catalog, text), said) << text;
}

// Names of the trade, common practice; dash sizes are sixteenths of an inch of the tube (SAE J514, from memory).
TEST(PortNotation, AFittersWordsAreRead) {
  const Catalog& catalog = testing::shipped_catalog();
  const std::vector<std::pair<std::string, std::string>> spellings = {
      {"G 1 swivel", "1 FBSPP swivel"},
      {"G 1/2 swivel nut", "1/2 FBSPP swivel"},
      {"1 NPT swivel", "1 FNPSM swivel"},
      {"1/2 PEX", "1/2 PEX tube"},
      {"pex 3/4", "3/4 PEX tube"},
      {"1/2 PEX crimp", "1/2 PEX crimp"},
      {"hose tail 1/2", "1/2 barb"},
      {"1-1/2 hub", "1-1/2 socket"},
      {"3/4 hose bib", "3/4 MGHT"},
      {"1/4 industrial plug", "1/4 air plug"},
      {"1/4 industrial coupler", "1/4 air coupler"},
      {"3/8 nylon tube", "3/8 air tube"},
      {"JIC 8 male", "1/2 male 37 flare"},
      {"12 JIC female", "3/4 female 37 flare swivel"},
  };
  for (const auto& [text, port] : spellings) EXPECT_EQ(reading(catalog, text), port) << text;
}

TEST(PortNotation, WhatASizeLeavesOpenIsNotGuessed) {
  const Catalog& catalog = testing::shipped_catalog();
  EXPECT_EQ(reading(catalog, "G1"), "error at 2: the end is missing: 1 MBSPP or 1 FBSPP");
  EXPECT_EQ(reading(catalog, "1 slip"), "error at 6: the end is missing: 1 spigot or 1 socket");
  EXPECT_EQ(reading(catalog, "2 JIC male"), "2 male 37 flare");  // two inches: so is it printed
  EXPECT_EQ(reading(catalog, "8 NPT male"), "8 MNPT");           // of a pipe thread inches, never sixteenths
}

// Copper tube of 15 mm (EN 1057, from memory) is 15.0 mm across, 1/2 in of ASTM B88 5/8 in: neither goes into the
// other's cup.
TEST(PortNotation, TubeInMillimetresIsToldItsNearestAndNotTakenForIt) {
  const Catalog& catalog = testing::shipped_catalog();
  for (const char* words : {"15 mm copper", "15mm copper", "15 mm copper tube"}) {
    const auto made = read_made_port(catalog, words);
    ASSERT_TRUE(std::holds_alternative<NotationError>(made)) << words;
    EXPECT_EQ(std::get<NotationError>(made).message,
              "'15 mm' is no size here: sizes are nominal, in inches or as DN 15; the nearest is 1/2 copper tube (15.9 "
              "mm across), and another diameter does not fit it")
        << words;
  }
  EXPECT_THAT(reading(catalog, "10 mm push-in"), ::testing::HasSubstr("the nearest is 3/8 push-in (9.5 mm across)"));
  EXPECT_THAT(reading(catalog, "19 mm hose"), ::testing::HasSubstr("the nearest is 3/4 hose end (19.0 mm inside)"));
}

TEST(PortNotation, WhatFitsSeveralKindsListsThem) {
  EXPECT_EQ(reading(testing::shipped_catalog(), "3/4 bsp male"),
            "error at 0: this can be read in several ways: 3/4 MBSPT or 3/4 MBSPP");
}

}  // namespace
}  // namespace riserun::catalog
