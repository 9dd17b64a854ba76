// What thread is this: every size of the standards' tables from its own measurements, exact and off by what the tool is
// off by.
#include "published/catalog/identify/bench.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace riserun::catalog {
namespace {

// A miss in times the tool's error; the tables print minor diameters to 0.001 mm, a hundredth of the caliper's.
constexpr double kWithinTheTool = 1.01;

std::string label(const BenchThread& thread) {
  return thread.kind + " " + thread.size + (thread.end == End::male ? " male" : " female");
}

bool is_named_for(const Identification& found, PortTypeId of, PortTypeId other) {
  return std::any_of(found.look_alikes.begin(), found.look_alikes.end(),
                     [&](const Resemblance& pair) { return pair.of == of && pair.other == other; });
}

bool is_named(const Identification& found, PortTypeId of, PortTypeId other) {
  return candidate(found, other) != nullptr || is_named_for(found, of, other);
}

class EverySize : public testing::TestWithParam<BenchThread> {
 protected:
  Identification look(double across, Tool tool, double threads) const {
    const BenchThread& t = GetParam();
    return identify(shipped(), measured({reading(across, tool, t.end), ThreadCount{threads, {}}, TaperSeen{t.tapered}},
                                        t.end, t.shelf));
  }
  /// Ends of the tables that tape and rule cannot tell from this one: within 1/16 in across and half a thread.
  std::vector<PortTypeId> true_look_alikes() const {
    const BenchThread& t = GetParam();
    std::vector<PortTypeId> ports;
    for (const BenchThread& other : bench_threads())
      if (other.end == t.end && other.kind != t.kind && std::abs(other.across - t.across) <= 1.0 / 16 &&
          std::abs(other.threads_per_inch - t.threads_per_inch) <= 0.5)
        ports.push_back(port_of(other));
    return ports;
  }
};

TEST_P(EverySize, IsFoundFirstOrBehindLookAlikesThatAreNamed) {
  const BenchThread& t = GetParam();
  const PortTypeId wanted = port_of(t);
  ASSERT_TRUE(wanted.valid());
  for (const Tool tool : {Tool::tape, Tool::caliper}) {
    const Identification found = look(t.across, tool, t.threads_per_inch);
    ASSERT_NE(candidate(found, wanted), nullptr);
    for (const Candidate& ahead : found.candidates) {
      if (ahead.type == wanted) break;
      EXPECT_TRUE(is_named_for(found, wanted, ahead.type)) << shipped().written(ahead.type) << " stands first";
      EXPECT_FALSE(found.certain);
    }
    for (const PortTypeId other : true_look_alikes())
      EXPECT_TRUE(is_named(found, wanted, other)) << shipped().written(other) << " is not named";
  }
}

TEST_P(EverySize, IsFoundFirstWhenEverythingIsLookedAt) {
  const BenchThread& t = GetParam();
  const bool flare = t.kind == "flare-37";
  const bool nut = t.end == End::female && (flare || t.kind == "ght");
  const bool washer = t.kind == "ght" ? t.end == End::female : t.kind == "bspp" && t.end == End::male;
  const Identification found =
      identify(shipped(), measured({reading(t.across, Tool::caliper, t.end), ThreadCount{t.threads_per_inch, {}},
                                    TaperSeen{t.tapered}, SwivelSeen{nut}, WasherSeen{washer}, FlankSeen{t.flank},
                                    SeatSeen{flare ? SeatShape::cone_37 : SeatShape::none}},
                                   t.end, t.shelf));
  ASSERT_FALSE(found.candidates.empty());
  EXPECT_EQ(shipped().written(found.candidates.front().type), shipped().written(port_of(t)));
  EXPECT_GE(found.candidates.front().confidence, 0.5);
}

TEST_P(EverySize, StaysACandidateWhenTheToolIsOff) {
  const BenchThread& t = GetParam();
  const PortTypeId wanted = port_of(t);
  // Tape 1/16 in, caliper 0.005 in, string 1/8 in of its length, half a thread in an inch: common practice.
  const std::pair<Tool, double> tools[] = {
      {Tool::tape, 1.0 / 16}, {Tool::caliper, 0.005}, {Tool::string, 1.0 / 8 / std::numbers::pi}};
  for (const auto& [tool, off] : tools) {
    if (tool == Tool::string && t.end == End::female) continue;
    for (const double side : {-1.0, 1.0})
      for (const double half : {-0.5, 0.0, 0.5}) {
        const Identification found = look(t.across + side * off, tool, t.threads_per_inch + half);
        ASSERT_NE(candidate(found, wanted), nullptr) << side * off << " in, " << half << " threads";
        EXPECT_LE(candidate(found, wanted)->evidence.front().miss, kWithinTheTool);
        for (const PortTypeId other : true_look_alikes())
          EXPECT_TRUE(is_named(found, wanted, other))
              << shipped().written(other) << " is not named at " << side * off << " in, " << half << " threads";
      }
  }
}

TEST_P(EverySize, SharesAddUpToOne) {
  const BenchThread& t = GetParam();
  double sum = 0.0;
  for (const Candidate& c : look(t.across, Tool::tape, t.threads_per_inch).candidates) sum += c.confidence;
  EXPECT_NEAR(sum, 1.0, 1e-12);
}

INSTANTIATE_TEST_SUITE_P(OfTheTables, EverySize, testing::ValuesIn(bench_threads()), [](const auto& row) {
  std::string name = label(row.param);
  for (char& c : name)
    if (std::isalnum(static_cast<unsigned char>(c)) == 0) c = '_';
  return name;
});

const DiameterReading kThreeQuarterByTape = {inches(1.0 + 1.0 / 16), Tool::tape, false};

TEST(Identify, TapeCannotTellHoseThreadFromPipeThread) {
  const Identification found = identify(shipped(), measured({kThreeQuarterByTape}, End::male));
  EXPECT_FALSE(found.certain);
  EXPECT_NE(candidate(found, shipped_port("npt", "3/4", End::male)), nullptr);
  EXPECT_NE(candidate(found, shipped_port("ght", "3/4", End::male)), nullptr);
}

TEST(Identify, CountTellsHoseThreadFromPipeThread) {
  const Identification pipe = identify(shipped(), measured({kThreeQuarterByTape, ThreadCount{14, {}}}, End::male));
  const Identification hose = identify(shipped(), measured({kThreeQuarterByTape, ThreadCount{11.5, {}}}, End::male));
  EXPECT_EQ(candidate(pipe, shipped_port("ght", "3/4", End::male)), nullptr);
  EXPECT_EQ(hose.candidates.front().type, shipped_port("ght", "3/4", End::male));
  EXPECT_TRUE(hose.certain);
}

TEST(Identify, TapeAndPitchCannotTellThreeQuarterNptFromBspTaper) {
  const Identification found =
      identify(shipped(), measured({kThreeQuarterByTape, ThreadCount{14, {}}, TaperSeen{true}}, End::male));
  const PortTypeId bsp = shipped_port("bspt", "3/4", End::male);
  EXPECT_FALSE(found.certain);
  EXPECT_NE(std::find(found.undecided.begin(), found.undecided.end(), bsp), found.undecided.end());
}

TEST(Identify, FlankGaugeDecidesBetweenThem) {
  const auto with_gauge = [](int degrees, Shelf shelf) {
    return identify(shipped(), measured({kThreeQuarterByTape, ThreadCount{14, {}}, TaperSeen{true}, FlankSeen{degrees}},
                                        End::male, shelf));
  };
  const Identification inch = with_gauge(60, Shelf::inch);
  EXPECT_TRUE(inch.certain);
  EXPECT_EQ(shipped().written(inch.candidates.front().type), "3/4 MNPT");
  EXPECT_EQ(shipped().written(with_gauge(55, Shelf::metric).candidates.front().type), "3/4 MBSPT");
  EXPECT_FALSE(with_gauge(55, Shelf::inch).certain);  // against what the shelf holds: measure again
}

TEST(Identify, CountryOfTheShelfPutsItsOwnThreadFirst) {
  const std::vector<Observation> seen = {DiameterReading{inches(0.83), Tool::tape, false}, ThreadCount{14, {}},
                                         TaperSeen{true}};
  EXPECT_EQ(shipped().written(identify(shipped(), measured(seen, End::male, Shelf::inch)).candidates.front().type),
            "1/2 MNPT");
  EXPECT_EQ(shipped().written(identify(shipped(), measured(seen, End::male, Shelf::metric)).candidates.front().type),
            "1/2 MBSPT");
}

TEST(Identify, NutThatTurnsTellsSwivelFromFixedFemale) {
  const std::vector<Observation> fixed = {DiameterReading{inches(0.95), Tool::tape, true}, ThreadCount{14, {}},
                                          SwivelSeen{false}};
  const std::vector<Observation> nut = {DiameterReading{inches(0.95), Tool::tape, true}, ThreadCount{14, {}},
                                        SwivelSeen{true}};
  EXPECT_EQ(shipped().written(identify(shipped(), measured(fixed, End::female)).candidates.front().type), "3/4 FNPT");
  EXPECT_EQ(shipped().written(identify(shipped(), measured(nut, End::female)).candidates.front().type),
            "3/4 FNPSM swivel");
}

TEST(Identify, NothingFitsNamesTheNearestAndTheMiss) {
  const Identification found = identify(
      shipped(), measured({DiameterReading{inches(1.05), Tool::caliper, false}, ThreadCount{40, {}}}, End::male));
  EXPECT_TRUE(found.candidates.empty());
  ASSERT_EQ(found.nearest.size(), 3u);
  EXPECT_GT(found.nearest.front().evidence[0].miss + found.nearest.front().evidence[1].miss, kImpossible);
}

TEST(Identify, CopperTubeIsToldFromPipeByItsDiameter) {
  Measurements seen{{DiameterReading{inches(0.875), Tool::caliper, false}}, End::male, false, Shelf::inch};
  const Identification found = identify(shipped(), seen);
  EXPECT_EQ(shipped().written(found.candidates.front().type), "3/4 copper tube");
  EXPECT_NE(candidate(found, shipped_port("pex", "3/4", End::male)), nullptr);
  EXPECT_EQ(candidate(found, shipped_port("pvc", "3/4", End::male)), nullptr);
  EXPECT_FALSE(found.certain);
  ASSERT_FALSE(next_measurements(shipped(), found).empty());
  EXPECT_EQ(next_measurements(shipped(), found).front().question, Question::material);
}

/// Of males that go so many turns into a 3/4 pipe thread, or of females that take a 3/4 male so.
Identification by_trial(const char* kind, const char* size, End known, double turns) {
  const End end = known == End::male ? End::female : End::male;
  return identify(shipped(), measured({HandTrial{shipped_port(kind, size, known), turns}}, end));
}

// Sizes of ASME B1.20.1 (published): a 3/4 male, 1.05 in across, has turns in nothing but threads about that size.
TEST(Identify, WhatTurnsIntoAThreadIsOfASizeThatCanEnterIt) {
  for (const double turns : {1.0, 2.0, 4.5}) {
    const Identification males = by_trial("npt", "3/4", End::female, turns);
    ASSERT_FALSE(males.candidates.empty());
    for (const char* size : {"1", "1-1/4", "2", "1/2", "1/4"})
      EXPECT_EQ(candidate(males, shipped_port("npt", size, End::male)), nullptr) << size << ", " << turns << " turns";
    EXPECT_NE(candidate(males, shipped_port("npt", "3/4", End::male)), nullptr);
    const Identification females = by_trial("npt", "3/4", End::male, turns);
    for (const char* size : {"1", "2", "1/2", "3/8"})
      EXPECT_EQ(candidate(females, shipped_port("npt", size, End::female)), nullptr) << size;
    EXPECT_NE(candidate(females, shipped_port("npt", "3/4", End::female)), nullptr);
  }
}

TEST(Identify, WhatTurnsTwiceIntoPipeThreadIsNoHoseThread) {
  const Identification found = by_trial("npt", "3/4", End::female, 2.0);
  const Candidate* hose = candidate(found, shipped_port("ght", "3/4", End::male));
  const Candidate* pipe = candidate(found, shipped_port("npt", "3/4", End::male));
  ASSERT_NE(pipe, nullptr);
  EXPECT_TRUE(hose == nullptr || hose->confidence < pipe->confidence);
}

struct Foreigner {
  const char* kind;
  const char* size;
  double across;  // inches
  double threads_per_inch;
};
// Major diameters and pitches by the name: ISO 261 (metric), EN 60423 (metric conduit), ASME B1.1 (unified); an
// eleventh of the tolerance below, as a caliper finds them.
constexpr Foreigner kForeigners[] = {
    {"metric-fine", "20", 19.9 / 25.4, 16.93},   {"metric-fine", "25", 24.9 / 25.4, 16.93},
    {"metric-fine", "16", 15.9 / 25.4, 16.93},   {"metric-medium", "30", 29.85 / 25.4, 12.7},
    {"metric-coarse", "12", 11.9 / 25.4, 14.51}, {"unified-coarse", "3/4", 0.745, 10},
    {"unified-coarse", "1/2", 0.495, 13},        {"unified-fine", "1/2", 0.495, 20},
};

TEST(Identify, AThreadThatNoPartHasCanWin) {
  for (const Foreigner& thread : kForeigners) {
    const Identification found = identify(
        shipped(), measured({DiameterReading{inches(thread.across), Tool::caliper, false},
                             ThreadCount{thread.threads_per_inch, {}}, TaperSeen{false}, SeatSeen{SeatShape::none}},
                            End::male));
    ASSERT_FALSE(found.candidates.empty()) << thread.kind << ' ' << thread.size;
    EXPECT_EQ(found.candidates.front().type, shipped_port(thread.kind, thread.size, End::male))
        << thread.kind << ' ' << thread.size << ": " << shipped().written(found.candidates.front().type);
  }
}

TEST(Identify, NothingIsCertainOfAConeThatNobodySaw) {
  for (const FlareDimensions& row : kFlare37) {
    const std::vector<Observation> thread = {DiameterReading{inches(row.major), Tool::caliper, false},
                                             ThreadCount{row.threads_per_inch, {}}, TaperSeen{false}};
    EXPECT_FALSE(identify(shipped(), measured(thread, End::male)).certain) << row.size;
  }
  const std::vector<Observation> with_cone = {DiameterReading{inches(0.5625), Tool::caliper, false},
                                              ThreadCount{18, {}}, TaperSeen{false}, SeatSeen{SeatShape::cone_37}};
  EXPECT_TRUE(identify(shipped(), measured(with_cone, End::male)).certain);
}

// Threads of ASME B1.20.1 section 5 and ISO 228-1: within a tape of each other, so that the shelf decides.
TEST(Identify, ASwivelNutWithAWasherIsTheShopsOwn) {
  for (const char* size : {"1/2", "3/4", "1", "1-1/4", "1-1/2", "2"}) {
    const PortTypeId npsm = shipped_port("npsm", size, End::female);
    const PortTypeId bspp = shipped_port("bspp-swivel", size, End::female);
    const auto nut = [&](Shelf shelf) {
      const double across = in_inches(thread_diameters(shipped().kind(shipped().port_type(npsm).kind),
                                                       *shipped().joint_size(shipped().port_type(npsm)))
                                          ->between_female_crests.low);
      return identify(shipped(),
                      measured({DiameterReading{inches(across), Tool::tape, true}, SwivelSeen{true}, WasherSeen{true}},
                               End::female, shelf));
    };
    const auto share = [](const Identification& found, PortTypeId type) {
      const Candidate* one = candidate(found, type);
      return one == nullptr ? 0.0 : one->confidence;
    };
    EXPECT_GT(share(nut(Shelf::inch), npsm), share(nut(Shelf::inch), bspp)) << size;
    EXPECT_LT(share(nut(Shelf::metric), npsm), share(nut(Shelf::metric), bspp)) << size;
  }
}

// What is stamped in outweighs what two threads share: R and NPT of 1/2 in have 14 threads per inch and diameters
// within 0.02 in (ISO 7-1 and ASME B1.20.1, published), G and NPT of 3/4 in likewise.
TEST(ThreadMark, DecidesBetweenWhatMeasuringLeavesOpen) {
  const auto mark = [](std::string_view text) { return std::get<MarkSeen>(read_mark(shipped(), text)); };
  const Identification taper = identify(
      shipped(), measured({reading(0.84, Tool::caliper, End::male), ThreadCount{14, {}}, mark("R 1/2")}, End::male));
  EXPECT_EQ(shipped().written(taper.candidates.front().type), "1/2 MBSPT");
  EXPECT_GT(taper.candidates.front().confidence, 0.9);
  const Identification parallel =
      identify(shipped(), measured({reading(1.05, Tool::tape, End::male), mark("G 3/4")}, End::male));
  EXPECT_EQ(shipped().written(parallel.candidates.front().type), "3/4 MBSPP");
  EXPECT_GT(parallel.candidates.front().confidence, 0.85);
}

// Air tube is sold by its outside diameter (common practice); hose and barbs of a quarter inch are thicker.
TEST(PlainEnds, AQuarterInchAcrossIsAirTube) {
  Measurements seen = measured({reading(0.25, Tool::caliper, End::male)}, End::male);
  seen.threaded = false;
  EXPECT_EQ(shipped().written(identify(shipped(), seen).candidates.front().type), "1/4 air tube");
}

TEST(ThreadMark, AMetricMarkHasItsPitch) {
  const auto mark = std::get<MarkSeen>(read_mark(shipped(), "M20x1.5"));
  EXPECT_EQ(mark.kinds, std::vector<KindId>{*shipped().find_kind("metric-fine")});
  EXPECT_EQ(mark.size, shipped().find_size("20"));
  EXPECT_EQ(std::get<MarkSeen>(read_mark(shipped(), "M 20")).kinds.size(), 3u);
}

TEST(ThreadMark, LettersAndSizeAreRead) {
  const auto mark = [](std::string_view text) { return std::get<MarkSeen>(read_mark(shipped(), text)); };
  EXPECT_EQ(mark("Rc 1/2").kinds, std::vector<KindId>{*shipped().find_kind("bspt")});
  EXPECT_EQ(mark("Rc 1/2").end, End::female);
  EXPECT_EQ(mark("Rp 1/2").kinds, std::vector<KindId>{*shipped().find_kind("bsp-rp")});
  EXPECT_EQ(mark("Rc1/2").size, shipped().find_size("1/2"));
  EXPECT_EQ(mark("nh").kinds, std::vector<KindId>{*shipped().find_kind("ght")});
  EXPECT_EQ(mark("G 3/4").kinds.size(), 2u);  // fixed, or on a swivel nut
  EXPECT_EQ(mark("3/4").kinds.size(), 0u);
}

// ASME B1.20.1 and B1.20.7 write a thread as 3/4-14 NPT and 3/4-11.5 NH, ASME B1.1 as 7/8-14 UN (published).
TEST(ThreadMark, IsReadAsItIsStamped) {
  const auto leader = [](std::string_view text, End end) {
    Measurements seen = measured({std::get<MarkSeen>(read_mark(shipped(), text))}, end);
    return shipped().written(identify(shipped(), seen).candidates.front().type);
  };
  EXPECT_EQ(leader("3/4-14 NPT", End::male), "3/4 MNPT");
  EXPECT_EQ(leader("1-11.5 NPT", End::female), "1 FNPT");
  EXPECT_EQ(leader("3/4-11.5 NH", End::male), "3/4 MGHT");
  // SAE J514: 7/8-14 is the thread of 5/8 tube, 1-1/16-12 that of 3/4, 9/16-18 that of 3/8 (published).
  EXPECT_EQ(leader("JIC 7/8-14", End::male), "5/8 male 37 flare");
  EXPECT_EQ(leader("JIC 1 1/16-12", End::male), "3/4 male 37 flare");
  EXPECT_EQ(leader("JIC 6", End::male), "3/8 male 37 flare");
  EXPECT_EQ(leader("JIC 8", End::male), "1/2 male 37 flare");
  EXPECT_EQ(leader("M20x1.5", End::female), "20 female metric fine");
}

// ISO 228-1: males have a class, A or B, females none.
TEST(ThreadMark, OfAParallelMaleHasItsClass) {
  const auto mark = std::get<MarkSeen>(read_mark(shipped(), "G3/4A"));
  EXPECT_EQ(mark.end, End::male);
  EXPECT_EQ(mark.size, shipped().find_size("3/4"));
  const auto tapered = std::get<MarkSeen>(read_mark(shipped(), "NPT 3/4 A"));
  EXPECT_EQ(tapered.unread, std::vector<std::string>{"A"});
  EXPECT_FALSE(tapered.end);
}

// Dryseal pipe thread screws into plain (ASME B1.20.3); PT and PF are JIS B 0203's and B 0202's R and G (from memory).
TEST(ThreadMark, ReadsTheStampsOfDrysealAndOfJapan) {
  const auto is_of = [](const char* text, const char* kind) {
    const auto mark = std::get<MarkSeen>(read_mark(shipped(), text));
    return std::find(mark.kinds.begin(), mark.kinds.end(), *shipped().find_kind(kind)) != mark.kinds.end();
  };
  EXPECT_TRUE(is_of("1/2 NPTF", "npt"));
  EXPECT_TRUE(is_of("1/2-14 NPTF", "npt"));
  EXPECT_TRUE(is_of("PT 1/2", "bspt"));
  EXPECT_TRUE(is_of("PF 1/2", "bspp"));
}

// M is on males and females.
TEST(ThreadMark, SaysTheEndOnlyWhereAllOfItsKindsDo) {
  EXPECT_FALSE(std::get<MarkSeen>(read_mark(shipped(), "M20x1.5")).end);
}

TEST(ThreadMark, ThatClashesWithACountIsNotCertain) {
  const auto mark = std::get<MarkSeen>(read_mark(shipped(), "3/4 NPT"));
  EXPECT_FALSE(
      identify(shipped(), measured({reading(1.05, Tool::tape, End::male), ThreadCount{11.5, {}}, mark}, End::male))
          .certain);
}

TEST(HandTrial, GoesNoFurtherThanItsThreads) {
  const auto known = *shipped().find_port_type({*shipped().find_kind("npt"), *shipped().find_size("3/4"), End::female});
  EXPECT_FALSE(identify(shipped(), measured({HandTrial{known, 4.5}}, End::male)).candidates.empty());
  const Identification far = identify(shipped(), measured({HandTrial{known, 25.0}}, End::male));
  EXPECT_TRUE(far.candidates.empty());
  EXPECT_FALSE(far.nearest.empty());
}

// Forged fittings carry their class and their steel's grade beside the size: ASME B16.11, 4 (from memory).
TEST(ThreadMark, AClassAndAGradeSayNothingOfTheThread) {
  const auto forged = std::get<MarkSeen>(read_mark(shipped(), "3000 1 A105"));
  EXPECT_EQ(forged.size, shipped().find_size("1"));
  EXPECT_EQ(forged.unread, (std::vector<std::string>{"3000", "A105"}));
  const auto made = std::get<MarkSeen>(read_mark(shipped(), "150 1/2 NPT Forge"));
  EXPECT_EQ(made.size, shipped().find_size("1/2"));
  EXPECT_EQ(made.kinds.size(), std::get<MarkSeen>(read_mark(shipped(), "NPT")).kinds.size());
  EXPECT_TRUE(std::holds_alternative<MarkError>(read_mark(shipped(), "3000 A105")));
}

// ISO 7-1: Rp is the parallel female that a tapered male seals in, and no other thread has these two letters
// (published).
TEST(ThreadMark, LettersThatOneKindAloneHasAreEnough) {
  const auto mark = std::get<MarkSeen>(read_mark(shipped(), "Rp 3/4"));
  const Identification found = identify(shipped(), measured({mark}, End::female));
  EXPECT_EQ(shipped().written(found.candidates.front().type), "3/4 Rp");
  EXPECT_TRUE(found.certain);
}

// UNF is the thread of bolts and of O-ring ports, which are females (SAE J1926: from memory).
TEST(ThreadMark, AUnifiedThreadMayBeAPort) {
  EXPECT_FALSE(std::get<MarkSeen>(read_mark(shipped(), "7/16-20 UNF")).end);
  EXPECT_FALSE(std::get<MarkSeen>(read_mark(shipped(), "1/4-20 UNC")).end);
}

TEST(ThreadMark, UnknownLettersNameTheKnownOnes) {
  const auto wrong = std::get<MarkError>(read_mark(shipped(), "3/4 XYZ"));
  EXPECT_EQ(wrong.offset, 4u);
  EXPECT_EQ(
      wrong.message,
      "'XYZ' is no mark of a thread known here; known are NPT, MPT, FPT, MIP, FIP, IPS, NPTF, NPSM, NPSH, NH, GHT, "
      "NHR, NHT, R, Rc, BSPT, BSP, PT, Rp, G, BSPP, PF, JIC, SAE, M, UNF, UN, ORB, UNC, EMT, with or without a size");
  EXPECT_TRUE(std::holds_alternative<MarkError>(read_mark(shipped(), "  ")));
  EXPECT_TRUE(std::holds_alternative<MarkError>(read_mark(shipped(), "G 3/")));
}

}  // namespace
}  // namespace riserun::catalog
