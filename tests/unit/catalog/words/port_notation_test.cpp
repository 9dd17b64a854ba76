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
  const std::vector<std::pair<std::string, std::string>> kSpellings = {
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
  for (const auto& [text, port] : kSpellings) EXPECT_EQ(reading(catalog, text), port) << text;
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
  const std::vector<std::pair<std::string, std::string>> kMistakes = {
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
  for (const auto& [text, said] : kMistakes) EXPECT_EQ(reading(catalog, text), said) << text;
}

TEST(PortNotation, WhatFitsSeveralKindsListsThem) {
  EXPECT_EQ(reading(testing::shipped_catalog(), "3/4 bsp male"),
            "error at 0: this can be read in several ways: 3/4 MBSPT or 3/4 MBSPP");
}

}  // namespace
}  // namespace riserun::catalog
