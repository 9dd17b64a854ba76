// The catalog's NPT against the tables and the formulas of ASME B1.20.1, and make-up against a handbook.
#include "published/catalog/shipped.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace riserun::catalog {
namespace {

struct NptRow {
  const char* size;
  double outside_diameter, threads_per_inch, e0, e1, l1, l2, l3;  // in
};

// ASME B1.20.1-1983 (R2006), Table 2, as printed, in inches. D, threads, L1 and L2 to size 6 seen in reprints; E1 to
// size 2 in one of them; E0, L3 and sizes 8 to 12 from memory. All agree with the formulas below to the printed digits.
constexpr NptRow kTable2[] = {
    {"1/16", 0.3125, 27, 0.27118, 0.28118, 0.16, 0.2611, 0.1111},
    {"1/8", 0.405, 27, 0.36351, 0.3736, 0.1615, 0.2639, 0.1111},
    {"1/4", 0.54, 18, 0.47739, 0.49163, 0.2278, 0.4018, 0.1667},
    {"3/8", 0.675, 18, 0.61201, 0.62701, 0.24, 0.4078, 0.1667},
    {"1/2", 0.84, 14, 0.75843, 0.77843, 0.32, 0.5337, 0.2143},
    {"3/4", 1.05, 14, 0.96768, 0.98887, 0.339, 0.5457, 0.2143},
    {"1", 1.315, 11.5, 1.21363, 1.23863, 0.4, 0.6828, 0.2609},
    {"1-1/4", 1.66, 11.5, 1.55713, 1.58338, 0.42, 0.7068, 0.2609},
    {"1-1/2", 1.9, 11.5, 1.79609, 1.82234, 0.42, 0.7235, 0.2609},
    {"2", 2.375, 11.5, 2.26902, 2.29627, 0.436, 0.7565, 0.2609},
    {"2-1/2", 2.875, 8, 2.71953, 2.76216, 0.682, 1.1375, 0.25},
    {"3", 3.5, 8, 3.34062, 3.3885, 0.766, 1.2, 0.25},
    {"3-1/2", 4.0, 8, 3.8375, 3.88881, 0.821, 1.25, 0.25},
    {"4", 4.5, 8, 4.33438, 4.38712, 0.844, 1.3, 0.25},
    {"5", 5.563, 8, 5.39073, 5.44929, 0.937, 1.4063, 0.25},
    {"6", 6.625, 8, 6.44609, 6.50597, 0.958, 1.5125, 0.25},
    {"8", 8.625, 8, 8.43359, 8.50003, 1.063, 1.7125, 0.25},
    {"10", 10.75, 8, 10.54531, 10.62094, 1.21, 1.925, 0.25},
    {"12", 12.75, 8, 12.53281, 12.61781, 1.36, 2.125, 0.25},
};

constexpr double kFiveDecimals = 1.05e-5;      // E is printed to five decimals, from a pitch of five decimals
constexpr double kFourDecimalsOfPitch = 6e-5;  // L2 and L3 are printed to four decimals

class NptSize : public testing::TestWithParam<NptRow> {
 protected:
  const JointSize& catalog_row() const {
    const JointSize* row = shipped_joint("npt", GetParam().size);
    if (row == nullptr) throw std::runtime_error(std::string("no NPT size ") + GetParam().size);
    return *row;
  }
  double pitch() const { return 1.0 / catalog_row().threads_per_inch; }
  double outside_diameter() const { return in_inches(catalog_row().outside_diameter); }
  /// E0 = D - (0.05 D + 1.1) p: ASME B1.20.1, 3.1.6 (from memory).
  double e0() const { return outside_diameter() - (0.05 * outside_diameter() + 1.1) * pitch(); }
};

TEST_P(NptSize, DiameterAndThreadsAreThoseOfTheStandard) {
  EXPECT_NEAR(outside_diameter(), GetParam().outside_diameter, kPrintedExactly);
  EXPECT_NEAR(catalog_row().threads_per_inch, GetParam().threads_per_inch, kPrintedExactly);
}

TEST_P(NptSize, LengthsAreThoseOfTheStandard) {
  EXPECT_NEAR(in_inches(catalog_row().hand_tight_engagement), GetParam().l1, kPrintedExactly);
  EXPECT_NEAR(in_inches(catalog_row().thread_length), GetParam().l2, kPrintedExactly);
  EXPECT_NEAR(in_inches(catalog_row().wrench_engagement), GetParam().l3, kPrintedExactly);
}

TEST_P(NptSize, PitchDiameterAtTheSmallEndFollows) { EXPECT_NEAR(e0(), GetParam().e0, kFiveDecimals); }

// E1 = E0 + L1/16: ASME B1.20.1, 3.1.6 (from memory).
TEST_P(NptSize, PitchDiameterAtHandTightFollows) {
  EXPECT_NEAR(e0() + in_inches(catalog_row().hand_tight_engagement) / 16.0, GetParam().e1, kFiveDecimals);
}

// L2 = (0.80 D + 6.8) p: ASME B1.20.1, 3.1.7 (from memory).
TEST_P(NptSize, EffectiveThreadFollowsTheFormula) {
  EXPECT_NEAR(in_inches(catalog_row().thread_length), (0.80 * outside_diameter() + 6.8) * pitch(),
              kFourDecimalsOfPitch);
}

// L3 = 3 p to size 2, 2 p above: ASME B1.20.1, Table 2 (from memory).
TEST_P(NptSize, WrenchMakeUpIsThreeTurnsAndTwoAboveSizeTwo) {
  const double turns = outside_diameter() < 2.5 ? 3.0 : 2.0;
  EXPECT_NEAR(in_inches(catalog_row().wrench_engagement), turns * pitch(), kFourDecimalsOfPitch);
  EXPECT_LE(catalog_row().turns_past_hand_low, turns);
  EXPECT_GE(catalog_row().turns_past_hand_high, turns);
}

// Gauging tolerance: plus or minus one turn, ASME B1.20.1, 3.2 (published). The catalog prints it to a thousandth.
TEST_P(NptSize, ToleranceIsOneTurn) {
  EXPECT_NEAR(in_inches(catalog_row().make_up_tolerance), pitch(), 0.0005 + kPrintedExactly);
}

TEST_P(NptSize, TheThreadIsLongerThanItsMakeUp) {
  EXPECT_GT(catalog_row().thread_length, catalog_row().hand_tight_engagement);
}

std::string size_as_name(const testing::TestParamInfo<NptRow>& row) {
  std::string name = std::string("Size_") + row.param.size;
  std::replace_if(
      name.begin(), name.end(), [](char c) { return c == '/' || c == '-'; }, '_');
  return name;
}
INSTANTIATE_TEST_SUITE_P(Table2, NptSize, testing::ValuesIn(kTable2), size_as_name);

TEST(Npt, EverySizeOfTheCatalogIsChecked) {
  std::vector<std::string> checked;
  for (const NptRow& row : kTable2) checked.emplace_back(row.size);
  EXPECT_EQ(size_names("npt"), checked);
}

struct Engagement {
  const char* size;
  double inches;
};

// "Normal engagement between male and female threads", pipeline handbook table, printed to 1/16 in (published; sizes
// as they are quoted in trade guides).
constexpr Engagement kNormalEngagement[] = {
    {"1/2", 1.0 / 2}, {"3/4", 9.0 / 16}, {"1", 11.0 / 16}, {"1-1/4", 11.0 / 16}, {"1-1/2", 11.0 / 16}};

TEST(Npt, MakeUpIsTheHandbooksNormalEngagement) {
  for (const Engagement& row : kNormalEngagement)
    EXPECT_NEAR(in_inches(shipped_joint("npt", row.size)->make_up()), row.inches, 1.0 / 16) << row.size;
}

// Fitter's allowance for a 90 degree elbow, centre to the end of the pipe in it, printed to 1/16 in (from memory).
constexpr Engagement kElbowAllowance[] = {{"1/2", 5.0 / 8}, {"3/4", 3.0 / 4}, {"1", 7.0 / 8}};

TEST(Npt, TakeOutOfAnElbowIsTheFittersAllowance) {
  for (const Engagement& row : kElbowAllowance) {
    std::string id = std::string("90-elbow/galvanized/") + row.size;
    std::replace(id.begin() + 20, id.end(), '/', '-');
    const Part* elbow = shipped_part(id);
    ASSERT_NE(elbow, nullptr) << id;
    const Length take_out = elbow->ports[0].reach - shipped_joint("npt", row.size)->make_up();
    EXPECT_NEAR(in_inches(take_out), row.inches, 1.0 / 16) << row.size;
  }
}

// ASTM F1498 takes the basic dimensions of ASME B1.20.1 (from memory); a plastic thread is turned less (common
// practice).
TEST(NptInPlastic, HasTheThreadOfNptAndFewerTurns) {
  for (const std::string& size : size_names("npt-plastic")) {
    const JointSize& metal = *shipped_joint("npt", size);
    const JointSize& plastic = *shipped_joint("npt-plastic", size);
    EXPECT_EQ(plastic.outside_diameter, metal.outside_diameter) << size;
    EXPECT_EQ(plastic.threads_per_inch, metal.threads_per_inch) << size;
    EXPECT_EQ(plastic.hand_tight_engagement, metal.hand_tight_engagement) << size;
    EXPECT_EQ(plastic.turns_past_hand_low, 1.0) << size;
    EXPECT_EQ(plastic.turns_past_hand_high, 2.0) << size;
  }
}

}  // namespace
}  // namespace riserun::catalog
