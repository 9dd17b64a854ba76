// The catalog's threads other than NPT: BSP, garden hose thread, NPSM.
#include "published/catalog/shipped.h"

#include <gtest/gtest.h>

namespace riserun::catalog {
namespace {

struct BspRow {
  const char* size;
  double threads_per_inch, pitch, major, minor, gauge_length, useful_thread;  // mm
};

// ISO 7-1 Table 1 (R, Rc) and ISO 228-1 Table 1 (G), in mm. Threads and pitch, and the diameters of 1/8, 1/4 and 1,
// seen in thread charts; the third decimals of the others, the gauge lengths but 3/4, the useful threads and sizes
// above 2 from memory.
constexpr BspRow kIso[] = {
    {"1/16", 28, 0.907, 7.723, 6.561, 4.0, 6.5},      {"1/8", 28, 0.907, 9.728, 8.566, 4.0, 6.5},
    {"1/4", 19, 1.337, 13.157, 11.445, 6.0, 9.7},     {"3/8", 19, 1.337, 16.662, 14.95, 6.4, 10.1},
    {"1/2", 14, 1.814, 20.955, 18.631, 8.2, 13.2},    {"3/4", 14, 1.814, 26.441, 24.117, 9.5, 14.5},
    {"1", 11, 2.309, 33.249, 30.291, 10.4, 16.8},     {"1-1/4", 11, 2.309, 41.91, 38.952, 12.7, 19.1},
    {"1-1/2", 11, 2.309, 47.803, 44.845, 12.7, 19.1}, {"2", 11, 2.309, 59.614, 56.656, 15.9, 23.4},
    {"2-1/2", 11, 2.309, 75.184, 72.226, 17.5, 26.7}, {"3", 11, 2.309, 87.884, 84.926, 20.6, 29.8},
    {"4", 11, 2.309, 113.03, 110.072, 25.4, 35.8},    {"5", 11, 2.309, 138.43, 135.472, 28.6, 40.1},
    {"6", 11, 2.309, 163.83, 160.872, 28.6, 40.1},
};

constexpr double kPitchRounding = 0.0005;  // the standards print the pitch to 0.001 mm
constexpr double kDiameterRounding = 0.001;

TEST(BspThread, DiameterAndThreadsAreThoseOfTheStandard) {
  for (const char* kind : {"bspt", "bsp-rp", "bspp", "bspp-swivel"}) {
    int seen = 0;
    for (const BspRow& row : kIso) {
      const JointSize* size = shipped_joint(kind, row.size);
      if (size == nullptr) continue;
      ++seen;
      EXPECT_NEAR(in_millimetres(size->outside_diameter), row.major, kPrintedExactly) << kind << ' ' << row.size;
      EXPECT_NEAR(size->threads_per_inch, row.threads_per_inch, kPrintedExactly) << kind << ' ' << row.size;
      EXPECT_NEAR(25.4 / size->threads_per_inch, row.pitch, kPitchRounding) << kind << ' ' << row.size;
    }
    EXPECT_EQ(static_cast<std::size_t>(seen), size_names(kind).size()) << kind << " has a size that is not checked";
  }
}

TEST(BspThread, TaperGoesInToTheGaugePlaneByHandAndThenWithinTheUsefulThread) {
  for (const BspRow& row : kIso) {
    const JointSize& size = *shipped_joint("bspt", row.size);
    EXPECT_NEAR(in_millimetres(size.hand_tight_engagement), row.gauge_length, kPrintedExactly) << row.size;
    EXPECT_NEAR(in_millimetres(size.thread_length), row.useful_thread, kPrintedExactly) << row.size;
    EXPECT_LE(size.make_up(), size.thread_length) << row.size;
  }
}

// Thread height 0.640327 p of the 55 degree form: ISO 7-1 (from memory). The waterway of a socket is that of the pipe
// in it, which is narrower than the thread.
TEST(BspThread, SocketsHaveTheWaterwayOfThePipe) {
  int seen = 0;
  for (const BspRow& row : kIso) {
    EXPECT_NEAR(row.major - 2 * 0.640327 * row.pitch, row.minor, kDiameterRounding) << row.size;
    const PortTypeId type = shipped_port("bspt", row.size, End::female);
    for (const PortUse& use : shipped().uses(type)) {
      const Part& part = shipped().part(use.part);
      if (shipped().family(part.family).name != "BSP socket") continue;
      EXPECT_LT(in_millimetres(part.ports[use.port].bore), row.minor) << part.id;
      EXPECT_GT(in_millimetres(part.ports[use.port].bore), 0.7 * row.minor) << part.id;
      ++seen;
    }
  }
  EXPECT_GE(seen, 24);
}

// ASME B1.20.7-1991: 3/4-11.5NH, 1-1/16 in outside (published); nipple length 9/16 in, coupling depth 17/32 in (from
// memory). The washer takes up 1/8 in of the depth (common practice).
TEST(GardenHoseThread, HasOneSizeOfOneAndASixteenthWithElevenAndAHalfThreads) {
  EXPECT_EQ(size_names("ght"), std::vector<std::string>{"3/4"});
  const JointSize& size = *shipped_joint("ght", "3/4");
  EXPECT_NEAR(in_inches(size.outside_diameter), 1.0625, kPrintedExactly);
  EXPECT_NEAR(size.threads_per_inch, 11.5, kPrintedExactly);
  EXPECT_NEAR(in_inches(size.thread_length), 0.5625, kPrintedExactly);
  EXPECT_NEAR(in_inches(size.make_up()), 17.0 / 32 - 1.0 / 8, 0.005);
}

// Only 1/80 in of diameter tells 3/4 hose thread from 3/4 pipe thread; the threads per inch do (trade guides).
TEST(GardenHoseThread, DiffersFromPipeThreadByAnEightiethOfAnInchAndByItsPitch) {
  const JointSize& hose = *shipped_joint("ght", "3/4");
  const JointSize& pipe = *shipped_joint("npt", "3/4");
  EXPECT_NEAR(in_inches(hose.outside_diameter - pipe.outside_diameter), 1.0 / 80, 1e-6);
  EXPECT_NE(hose.threads_per_inch, pipe.threads_per_inch);
}

// ASME B1.20.1 section 5 and ASME B1.20.7 Table 2: the pitch of NPT of the same size (from memory).
TEST(FreeFittingThread, HasThePitchOfNptOfItsSize) {
  for (const char* kind : {"npsm", "npsh"})
    for (const std::string& size : size_names(kind))
      EXPECT_EQ(shipped_joint(kind, size)->threads_per_inch, shipped_joint("npt", size)->threads_per_inch)
          << kind << ' ' << size;
}

}  // namespace
}  // namespace riserun::catalog
