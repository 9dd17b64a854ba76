// Diameters and hand turns worked out from the thread's form, against the figures that the standards print.
#include "published/catalog/identify/bench.h"

#include <gtest/gtest.h>

namespace riserun::catalog {
namespace {

ThreadDiameters diameters(std::string_view kind, std::string_view size) {
  return *thread_diameters(shipped().kind(*shipped().find_kind(kind)), *shipped_joint(kind, size));
}

void expect_within(double inch, const LengthBand& band, const std::string& what) {
  EXPECT_GE(inch, in_inches(band.low) - 1e-4) << what;
  EXPECT_LE(inch, in_inches(band.high) + 1e-4) << what;
}

// ASME B1.20.1 Table 2: E0 and E1 (those of bench.h and of npt_test.cpp), printed to five decimals.
TEST(ThreadDiameters, PitchDiametersOfNptAreThoseOfTheStandard) {
  EXPECT_NEAR(in_inches(diameters("npt", "1/2").male_pitch_diameter), 0.75843, 1.5e-5);
  EXPECT_NEAR(in_inches(diameters("npt", "3/4").male_pitch_diameter), 0.96768, 1.5e-5);
  EXPECT_NEAR(in_inches(diameters("npt", "2").male_pitch_diameter), 2.26902, 1.5e-5);
  for (const NptDimensions& row : kNpt)
    EXPECT_NEAR(in_inches(diameters("npt", row.size).female_pitch_diameter), row.e1, 1.5e-5) << row.size;
}

// A taper male is smaller at its end than its standard's diameter, by about 1/16 of its length and no more than twice.
TEST(ThreadDiameters, TaperMaleIsABandBelowItsLargeEnd) {
  for (const char* kind : {"npt", "bspt"})
    for (const std::string& size : size_names(kind)) {
      const LengthBand band = diameters(kind, size).over_male_crests;
      const Length length = shipped_joint(kind, size)->thread_length;
      EXPECT_GE(band.high - band.low, length / 16.0 * 0.7) << kind << ' ' << size;
      EXPECT_LE(band.high - band.low, length / 16.0 * 2.0) << kind << ' ' << size;
    }
}

// ASME B1.20.7: nipple 1.0455 to 1.0625, coupling bore 0.9595 to 0.9765. SAE J514 threads to ASME B1.1, classes 2A and
// 2B: 3/4-16 major 0.7391 to 0.7485, minor 0.682 to 0.696; 7/16-20 minor 0.383 to 0.395. ISO 228-1: G 3/4 minor
// 24.117 to 24.658 mm, major 26.157 to 26.441 mm. All from memory.
TEST(ThreadDiameters, StandardsLimitsLieWithinTheBand) {
  expect_within(1.0455, diameters("ght", "3/4").over_male_crests, "hose male, least");
  expect_within(1.0625, diameters("ght", "3/4").over_male_crests, "hose male, most");
  expect_within(0.9595, diameters("ght", "3/4").between_female_crests, "hose female, least");
  expect_within(0.9765, diameters("ght", "3/4").between_female_crests, "hose female, most");
  expect_within(0.7391, diameters("flare-37", "1/2").over_male_crests, "3/4-16 male, least");
  expect_within(0.7485, diameters("flare-37", "1/2").over_male_crests, "3/4-16 male, most");
  expect_within(0.682, diameters("flare-37", "1/2").between_female_crests, "3/4-16 female, least");
  expect_within(0.696, diameters("flare-37", "1/2").between_female_crests, "3/4-16 female, most");
  expect_within(0.383, diameters("flare-37", "1/4").between_female_crests, "7/16-20 female, least");
  expect_within(0.395, diameters("flare-37", "1/4").between_female_crests, "7/16-20 female, most");
  expect_within(24.117 / 25.4, diameters("bspp", "3/4").between_female_crests, "G 3/4 female, least");
  expect_within(24.658 / 25.4, diameters("bspp", "3/4").between_female_crests, "G 3/4 female, most");
  expect_within(26.157 / 25.4, diameters("bspp", "3/4").over_male_crests, "G 3/4 male, least");
}

class HandTurns : public testing::Test {
 protected:
  double turns(std::string_view male, std::string_view female, std::string_view size) {
    return hand_turns(shipped(), traits(male, size, End::male), traits(female, size, End::female)).value_or(-1.0);
  }

 private:
  const PortTraits& traits(std::string_view kind, std::string_view size, End end) {
    const PortTypeId type = shipped_port(kind, size, end);
    return *std::find_if(ports_.begin(), ports_.end(), [&](const PortTraits& p) { return p.type == type; });
  }
  const std::vector<PortTraits> ports_ = recognisable_ports(shipped());
};

// ASME B1.20.1 Table 2, column L1 in threads.
TEST_F(HandTurns, NptInItsOwnGoesTheStandardsTurns) {
  EXPECT_NEAR(turns("npt", "npt", "1/16"), 4.32, 0.02);
  EXPECT_NEAR(turns("npt", "npt", "1/4"), 4.1, 0.02);
  EXPECT_NEAR(turns("npt", "npt", "1/2"), 4.48, 0.02);
  EXPECT_NEAR(turns("npt", "npt", "3/4"), 4.75, 0.02);
  EXPECT_NEAR(turns("npt", "npt", "1"), 4.6, 0.02);
  EXPECT_NEAR(turns("npt", "npt", "2"), 5.01, 0.02);
  EXPECT_NEAR(turns("npt", "npt", "3"), 6.13, 0.02);
}

// Trade guides (published): 3/4 pipe thread cross-threads in hose thread after about a turn; NPT in BSP of another
// pitch binds after a few turns; of the same pitch (1/2, 3/4) it screws in nearly as its own.
TEST_F(HandTurns, ForeignThreadsBindAsTheTradeFindsThem) {
  EXPECT_GT(turns("npt", "ght", "3/4"), 0.5);
  EXPECT_LT(turns("npt", "ght", "3/4"), 2.0);
  EXPECT_LT(turns("npt", "bspp", "1/4"), 3.0);
  EXPECT_GT(turns("npt", "bspt", "1"), 2.0);
  EXPECT_LT(turns("npt", "bspt", "1"), turns("npt", "npt", "1"));
  EXPECT_NEAR(turns("bspt", "npt", "1/2"), turns("npt", "npt", "1/2"), 1.0);
  EXPECT_NEAR(turns("bspt", "npt", "3/4"), turns("npt", "npt", "3/4"), 1.5);
}

}  // namespace
}  // namespace riserun::catalog
