// What the shipped parts are proved for, and what is wrong in a file of duties.
#include "unit/catalog/shipped_catalog.h"
#include "unit/catalog/small_catalog.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace riserun::catalog {
namespace {

double share(const Part& part, double fahrenheit) {
  const Duty* duty = testing::shipped_catalog().duty(*testing::shipped_catalog().find_part(part.id));
  for (const HeatShare& row : duty->heat)
    if (fahrenheit <= in_degrees_fahrenheit(row.up_to) + 0.01) return row.share;
  return 0.0;
}

TEST(ShippedDuties, AreThereForEveryPartThatStandsInARun) {
  for (std::uint32_t row = 0; row < testing::shipped_catalog().parts().size(); ++row)
    EXPECT_TRUE(testing::shipped_catalog().parts()[row].ports.size() < 2 || testing::shipped_catalog().duty({row}))
        << testing::shipped_catalog().parts()[row].id;
}

// ASTM F876: 160 psi at 73 degF, 100 at 180, 80 at 200. ASTM D1785 with the Plastics Pipe Institute's shares: 0.62 at
// 100 degF, 0.22 at 140, nothing above (from memory).
TEST(ShippedDuties, FollowThePublishedTables) {
  for (const Part& part : testing::shipped_catalog().parts()) {
    const std::string& material = testing::shipped_catalog().material(part.material).id;
    if (material == "pex") {
      EXPECT_NEAR(in_psi(part.rating) * share(part, 73.0), 160.0, 1e-6);
      EXPECT_NEAR(in_psi(part.rating) * share(part, 180.0), 100.0, 1e-6);
      EXPECT_NEAR(in_psi(part.rating) * share(part, 200.0), 80.0, 1e-6);
    }
    if (material != "pvc") continue;
    EXPECT_EQ(share(part, 100.0), 0.62) << part.id;
    EXPECT_EQ(share(part, 140.0), 0.22) << part.id;
    EXPECT_EQ(share(part, 141.0), 0.0) << part.id;
  }
}

// OSHA hazard information bulletin of 13 December 1990.
TEST(ShippedDuties, ProveNoPvcForAirAndNoSoftHoseForVacuum) {
  for (std::uint32_t row = 0; row < testing::shipped_catalog().parts().size(); ++row) {
    const std::string& material =
        testing::shipped_catalog().material(testing::shipped_catalog().parts()[row].material).id;
    const Duty* duty = testing::shipped_catalog().duty({row});
    const Part& part = testing::shipped_catalog().parts()[row];
    const bool wound = testing::shipped_catalog().family(part.family).name == "suction hose";
    const bool soft = (material == "rubber" || material == "vinyl") && !wound;
    EXPECT_TRUE(material != "pvc" || duty->under_air == UnderAir::not_proved);
    EXPECT_TRUE(!soft || duty->vacuum != InVacuum::stands);
  }
}

TEST(StraightTapped, AreTheSmallMalleableCouplings) {
  for (const Part& part : testing::shipped_catalog().parts()) {
    const std::string& family = testing::shipped_catalog().family(part.family).name;
    const bool small = part.size == "1/8" || part.size == "1/4" || part.size == "3/8";
    EXPECT_EQ(part.straight_tapped, family == "coupling" && small) << part.id;
  }
}

std::vector<std::string> said_of(const std::string& duties) {
  try {
    load_catalog(testing::small_catalog_texts(), std::vector<SourceText>{{"own.yaml", duties}});
  } catch (const quantity::InputError& error) {
    return testing::places_and_messages(error);
  }
  return {};
}

TEST(DutyMistakes, AreSaidWithTheirPlace) {
  EXPECT_THAT(said_of("duties:\n  - {heat: {100 F: 1, 90 F: 0.5}, source: test}\n"),
              ::testing::ElementsAre("own.yaml:2:5: duties[1]: 'families', 'materials' or both say what the duty is of",
                                     "own.yaml:2:23: duties[1].heat: temperatures rise from row to row"));
  EXPECT_THAT(
      said_of("duties:\n  - {families: [reducing cupling], vacuum: yes, source: test}\n"),
      ::testing::ElementsAre(
          "own.yaml:2:17: duties[1].families[1]: no family is called 'reducing cupling'; did you mean 'reducing "
          "coupling'?",
          ::testing::HasSubstr("stands, collapses or not proved")));
}

}  // namespace
}  // namespace riserun::catalog
