// The one further measurement: the trade's own advice, and its gain against a reckoning of the test's own.
#include "published/catalog/identify/bench.h"

#include <gtest/gtest.h>

#include <cmath>

namespace riserun::catalog {
namespace {

double entropy(const Identification& found) {
  double bits = 0.0;
  for (const Candidate& c : found.candidates) bits -= c.confidence * std::log2(c.confidence);
  return bits;
}

const NextMeasurement* asked(const std::vector<NextMeasurement>& next, Question question) {
  const auto at = std::find_if(next.begin(), next.end(), [&](const auto& n) { return n.question == question; });
  return at == next.end() ? nullptr : &*at;
}

Identification three_quarter(std::vector<Observation> more, Shelf shelf = Shelf::inch) {
  more.insert(more.begin(), DiameterReading{inches(1.0 + 1.0 / 16), Tool::tape, false});
  return identify(shipped(), measured(std::move(more), End::male, shelf));
}

// Trade guides (published): a tape cannot tell 3/4 pipe thread from hose thread, count the threads.
TEST(NextMeasurement, CountTheThreadsToTellPipeFromHoseThread) {
  EXPECT_EQ(next_measurements(shipped(), three_quarter({})).front().question, Question::threads);
}

// Trade guides (published): pitch and diameter cannot tell 3/4 NPT from BSP; a thread gauge, a known part or its origin
// can.
TEST(NextMeasurement, ThreadGaugeKnownPartOrOriginTellNptFromBsp) {
  const auto next = next_measurements(shipped(), three_quarter({ThreadCount{14, {}}, TaperSeen{true}}));
  ASSERT_FALSE(next.empty());
  EXPECT_EQ(next.front().question, Question::flank);
  EXPECT_NE(asked(next, Question::hand_trial), nullptr);
  EXPECT_NE(asked(next, Question::origin), nullptr);
  EXPECT_EQ(asked(next, Question::threads), nullptr);
  EXPECT_EQ(asked(next, Question::taper), nullptr);
}

TEST(NextMeasurement, NothingWhenTheAnswerIsSure) {
  const auto found = three_quarter({ThreadCount{14, {}}, TaperSeen{true}, FlankSeen{60}, SeatSeen{SeatShape::none},
                                    MarkSeen{{*shipped().find_kind("npt")}, End::male, shipped().find_size("3/4")}});
  EXPECT_TRUE(found.certain);
  EXPECT_TRUE(next_measurements(shipped(), found).empty());
}

/// Expected entropy after a question with the outcomes given, from whole identifications, each with the outcome added:
/// P(outcome) is the sum over candidates of confidence times the outcome's likelihood.
double gain_by_hand(const Identification& found, const std::vector<Observation>& outcomes) {
  double left = 0.0;
  for (const Observation& outcome : outcomes) {
    Measurements more = found.measured;
    more.seen.push_back(outcome);
    const Identification after = identify(shipped(), more);
    double chance = 0.0;
    for (const Candidate& c : after.candidates) {
      const Candidate* before = candidate(found, c.type);
      if (before != nullptr) chance += before->confidence * c.evidence.back().likelihood;
    }
    left += chance * entropy(after);
  }
  return entropy(found) - left;
}

// The two differ by the candidates under a thousandth that next_measurements leaves out.
constexpr double kLeftOut = 0.02;

TEST(NextMeasurement, GainIsTheExpectedLossOfEntropy) {
  for (const Shelf shelf : {Shelf::inch, Shelf::metric}) {
    const Identification found = three_quarter({}, shelf);
    const auto next = next_measurements(shipped(), found);
    ASSERT_NE(asked(next, Question::taper), nullptr);
    ASSERT_NE(asked(next, Question::flank), nullptr);
    EXPECT_NEAR(asked(next, Question::taper)->gain_bits, gain_by_hand(found, {TaperSeen{true}, TaperSeen{false}}),
                kLeftOut);
    EXPECT_NEAR(asked(next, Question::flank)->gain_bits, gain_by_hand(found, {FlankSeen{55}, FlankSeen{60}}), kLeftOut);
    EXPECT_NEAR(asked(next, Question::origin)->gain_bits,
                gain_by_hand(found, {OriginKnown{Shelf::inch}, OriginKnown{Shelf::metric}}), kLeftOut);
  }
}

TEST(NextMeasurement, IsRankedByGainAndNeverGainsMoreThanThereIs) {
  for (const BenchThread& t : bench_threads()) {
    if (t.size != "1/2" && t.size != "3/4" && t.size != "1") continue;
    const Identification found = identify(shipped(), measured({reading(t.across, Tool::tape, t.end)}, t.end, t.shelf));
    const auto next = next_measurements(shipped(), found);
    ASSERT_FALSE(next.empty()) << t.kind << ' ' << t.size;
    EXPECT_TRUE(std::is_sorted(next.begin(), next.end(),
                               [](const auto& a, const auto& b) { return a.gain_bits > b.gain_bits; }));
    EXPECT_LE(next.front().gain_bits, entropy(found) + 1e-9);
    EXPECT_GT(next.back().gain_bits, 0.0);
  }
}

}  // namespace
}  // namespace riserun::catalog
