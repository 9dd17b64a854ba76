// Runs that make a distance, in thousands of small random catalogs, against every chain there is.
#include "chain/span/best_span.h"

#include "chain/finder.h"
#include "property/chain/every_span.h"
#include "property/chain/random_span.h"
#include "property/chain/random_world.h"

#include <gtest/gtest.h>

#include <cmath>
#include <iostream>

namespace riserun::chain::testing::best_span_test {
namespace {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)

constexpr std::uint32_t kWorldsEach = 1000;
constexpr std::size_t kBeginnings = 500;

class MakesTheSpan : public ::testing::TestWithParam<std::uint32_t> {
 protected:
  void check_world(std::uint32_t seed);
  void check_taken(const Catalog& catalog, const ChainRequest& request, const Span& span);
  int taken_ = 0;
  void check_chain(const Catalog& catalog, const ChainRequest& request, const Chain& chain, const JudgedRun& judged);
  int kinds_[9] = {}, nones_ = 0, too_long_ = 0, offsets_ = 0, with_needs_ = 0;
};

JudgedRun as_judged(const Catalog& catalog, const ChainRequest& request, const Chain& chain, const SpanChoice& choice,
                    const EverySpan& judge) {
  const Order order = request.order == Order::length ? Order::parts : request.order;
  JudgedRun run;
  const SpanFit& fit = *chain.span;
  std::size_t row = 0;
  for (const RunPart& link : chain.parts) {
    const Move& move = choice.route.moves[row++];
    run.ids.push_back(catalog.part(link.part).id);
    for (const Follower& plug : link.plugs()) run.ids.push_back(catalog.part(plug.plug).id);
    run.ways.push_back({link.enter, link.leave(), move.stub ? 1 : move.cut ? 0 : 2});
    run.cut.push_back(link.cut_length ? std::llround(in_metres(*link.cut_length) * 1e6) : 0);
  }
  run.kind = choice.kind;
  run.lands = std::llround(in_metres(fit.lands) * 1e6);
  run.lands_aside = fit.make == SpanMake::hose ? 0 : std::llround(in_metres(fit.lands_aside) * 1e6);
  const auto weight = [](std::int64_t miss) { return (miss > 0 ? miss : -2 * miss) / 64; };
  const std::int64_t aside = fit.make == SpanMake::hose ? 0 : std::llround(in_metres(fit.wanted.aside()) * 1e6);
  run.off_weight =
      weight(run.lands - std::llround(in_metres(fit.wanted.along) * 1e6)) + weight(run.lands_aside - aside);
  if (keeps_the_line(order)) {
    ChainRequest there = request;
    there.special_order = true;
    there.most_parts.reset();
    std::string why;
    std::optional<Sums> sums = Exhaustive(catalog, there).judge(chain, why);
    EXPECT_TRUE(sums) << why;
    if (sums) sums = judge.as_used(*sums, run.ways);
    EXPECT_TRUE(sums) << "nothing closes it";
    if (!sums) sums.emplace();
    sums->cents = chain.price.cents();
    sums->buy = chain.buy_count;
    sums->off_weight = run.off_weight;
    run.cost = tuple_of(order, with_spare_unions(*sums, request));
  } else {
    const auto& tuple = choice.route.cost.tuple;  // begins with wishes
    run.cost = {tuple[1], tuple[2], tuple[3], order == Order::loss ? tuple[4] : 0};
  }
  run.set_off_the_line(order);
  run.leaves_its_line = choice.leaves_its_line;
  run.off = choice.route.off;
  run.band = std::llround(in_metres(fit.band) * 1e6);
  run.band_aside = std::llround(in_metres(fit.band_aside) * 1e6);
  run.parts = chain.part_count;
  run.cents = chain.price.cents();
  run.buy = chain.buy_count;
  return run;
}

// The pieces less what goes in at the joints are the chain's length; in line and without a hose it is where the run
// lands.
void MakesTheSpan::check_chain(const Catalog&, const ChainRequest&, const Chain& chain, const JudgedRun& judged) {
  double length = 0.0;
  for (const SpanPiece& piece : chain.span->pieces) length += in_metres(piece.length);
  for (const RunJoint& joint : chain.joints) length -= in_metres(joint.make_up);
  EXPECT_NEAR(length, in_metres(chain.length), 1e-9);
  if (chain.span->make == SpanMake::hose) return;  // it has slack
  if (chain.span->bend_degrees == 0.0 && chain.span->wanted.aside() == Length{}) {
    EXPECT_NEAR(length * 1e6, static_cast<double>(judged.lands), 20.0);
  }
  if (judged.kind != 2 && judged.kind != 3 && chain.span->wanted.aside() == Length{}) {
    EXPECT_NEAR(length, in_metres(chain.span->wanted.along), 20e-6);
  }
}

void MakesTheSpan::check_world(std::uint32_t seed) {
  SCOPED_TRACE("seed " + std::to_string(seed));
  const auto [catalog, request, span] = random_span_world(seed);
  const FoldedCatalog folded(catalog);
  const std::optional<SpanChoice> choice = best_span(folded, request, span);
  std::size_t labels = 1'000'000;
  EXPECT_EQ(makes_span(folded, request, span, labels), choice.has_value());
  std::size_t too_few = seed % 20 + 1;
  EXPECT_EQ(makes_span(folded, request, span, too_few).value_or(choice.has_value()), choice.has_value());
  EverySpan judge(catalog, request, span);
  const std::optional<JudgedRun> best = judge.best(kBeginnings);
  if (!choice) {
    ++nones_;
    ASSERT_FALSE(best) << "there is a run of kind " << best->kind << " with " << best->parts << " parts, first "
                       << (best->ids.empty() ? "none" : best->ids.front());
    return;
  }
  const Answer answer = Finder(catalog).find_span(request, span);
  const Chain& chain = std::get<Chain>(answer);
  const JudgedRun found = as_judged(catalog, request, chain, *choice, judge);
  if (found.parts > judge.depth()) {
    ++too_long_;
    EXPECT_FALSE(best && best->before(found) && best->kind != found.kind)
        << "kind " << best->kind << " of " << best->parts << " parts before kind " << found.kind << " of "
        << found.parts << "; off the line " << ::testing::PrintToString(best->off_the_line) << " and "
        << ::testing::PrintToString(found.off_the_line) << ", strays " << ::testing::PrintToString(best->strays)
        << " and " << ::testing::PrintToString(found.strays) << ", order " << static_cast<int>(request.order);
    return;
  }
  ASSERT_TRUE(best) << "found kind " << found.kind << ", " << found.parts << " parts";
  ++kinds_[found.kind];
  offsets_ += span.aside() > Length{} ? 1 : 0;
  with_needs_ += request.needs.empty() ? 0 : 1;
  EXPECT_EQ(found.kind, best->kind);
  EXPECT_EQ(found.ids, best->ids);
  EXPECT_EQ(found.ways, best->ways);
  EXPECT_EQ(found.cut, best->cut);
  EXPECT_EQ(found.cost, best->cost);
  EXPECT_EQ(found.off, best->off);
  EXPECT_EQ(found.band, best->band);
  EXPECT_EQ(found.lands, best->lands);
  EXPECT_EQ(found.lands_aside, best->lands_aside);
  EXPECT_EQ(found.cents, best->cents);
  EXPECT_EQ(found.buy, best->buy);
  EXPECT_TRUE(found == *best);
  check_chain(catalog, request, chain, found);
  if (seed % 8 == 0) check_taken(catalog, request, span);
}

// What is offered beside it can be taken, and makes the distance as it did.
void MakesTheSpan::check_taken(const Catalog& catalog, const ChainRequest& request, const Span& span) {
  const Finder finder(catalog);
  for (const Alternative& row : finder.alternatives(request, span, 5)) {
    const Answer answer = finder.make(request, span, taken_parts(row.chain));
    ASSERT_TRUE(std::holds_alternative<Chain>(answer)) << std::get<NoChain>(answer).reason.code;
    const Chain& chain = std::get<Chain>(answer);
    EXPECT_EQ(taken_parts(chain), taken_parts(row.chain));
    EXPECT_EQ(chain.price, row.chain.price);
    EXPECT_EQ(chain.span->lands, row.chain.span->lands);
    for (std::size_t part = 0; part < chain.parts.size(); ++part)
      EXPECT_EQ(chain.parts[part].cut_length, row.chain.parts[part].cut_length);
    ++taken_;
  }
}

TEST_P(MakesTheSpan, WithTheBestRunThereIsByKindThenOrderThenNearnessThenIds) {
  const std::uint32_t first = first_world() + kWorldsEach * GetParam();
  for (std::uint32_t seed = first; seed < first + kWorldsEach && !HasFailure(); ++seed) check_world(seed);
  std::cout << kinds_[0] + kinds_[1] << " cut tube, " << kinds_[2] << " stock near, " << kinds_[3] << " stock, "
            << kinds_[4] << " one cut, " << kinds_[5] << " two cut, " << kinds_[6] << " made-up hose, " << kinds_[7]
            << " hose, " << kinds_[8] << " of the kind of an end; " << offsets_ << " with an offset, " << with_needs_
            << " with needs; " << nones_ << " refusals, " << too_long_ << " longer than tried\n";
  EXPECT_GT(kinds_[0], 20);
  EXPECT_GT(kinds_[2], 50);
  EXPECT_GT(kinds_[3], 5);
  EXPECT_GT(kinds_[4], 5);
  EXPECT_GT(kinds_[6], 3);
  EXPECT_GT(kinds_[7], 10);
  EXPECT_GT(kinds_[8], 10);
  EXPECT_GT(with_needs_, 10);
  EXPECT_GT(taken_, 20);
}
INSTANTIATE_TEST_SUITE_P(FiveThousandWorlds, MakesTheSpan, ::testing::Range(0u, 5u));

// In 21146 two pieces without a price are alike but that one is in the bin; in the next two no part may be used, and
// the ends meet as they are. In 80365 pipe goes deeper into an end of another kind than into its own, so that its stub
// is longer.
class MakesTheSpanOfOneWorld : public MakesTheSpan {};

TEST_P(MakesTheSpanOfOneWorld, AsTheJudgeDoes) {
  check_world(GetParam());
  EXPECT_EQ(nones_ + too_long_, 0);
}
INSTANTIATE_TEST_SUITE_P(Worlds, MakesTheSpanOfOneWorld, ::testing::Values(21146u, 24785u, 61157u, 80365u));

}  // namespace
}  // namespace riserun::chain::testing::best_span_test
