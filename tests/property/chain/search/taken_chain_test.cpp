// Runs that a person has chosen, of thousands of small random catalogs: what is offered can be taken and comes back as
// it was; of what is thought up, just what the judge lets in is made.
#include "chain/ask/answer.h"
#include "chain/finder.h"
#include "property/chain/assembly.h"
#include "property/chain/exhaustive.h"
#include "property/chain/random_world.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>

namespace riserun::chain::testing::taken_chain_test {
namespace {

constexpr std::uint32_t kWorlds = 8200;
constexpr std::size_t kBeginnings = 300;

std::vector<TakenPart> without_ports(std::vector<TakenPart> parts) {
  for (TakenPart& part : parts) part.through.reset();
  return parts;
}

quantity::Facts facts_of(const Chain& chain) {
  quantity::Facts facts = chain.cautions;
  for (const BuildStep& step : chain.steps) facts.push_back(step.what);
  return facts;
}

class TakenRuns : public ::testing::Test {
 protected:
  void check_world(std::uint32_t seed);
  void check_row(const Finder& finder, const ChainRequest& request, const Chain& row, Exhaustive& judge);
  void check_thought_up(const Finder& finder, const ChainRequest& request, std::vector<TakenPart> parts,
                        const Exhausted& every, Exhaustive& judge, Dice& dice);
  int taken_ = 0;
  int made_ = 0;
  int refused_ = 0;
};

void TakenRuns::check_row(const Finder& finder, const ChainRequest& request, const Chain& row, Exhaustive& judge) {
  const Answer answer = finder.make(request, taken_parts(row));
  ASSERT_TRUE(std::holds_alternative<Chain>(answer)) << std::get<NoChain>(answer).reason.code;
  const Chain& chain = std::get<Chain>(answer);
  std::string why;
  EXPECT_EQ(judge.judge(chain, why), judge.judge(row, why)) << why;
  EXPECT_TRUE(facts_of(chain) == facts_of(row));
  EXPECT_EQ(chain.price, row.price);
  EXPECT_EQ(carry_out(finder.catalog(), request, chain), "");
  ++taken_;
}

// One part of the run is changed for another: made is what the judge lets in, and no run of these parts that it lets in
// is refused.
void TakenRuns::check_thought_up(const Finder& finder, const ChainRequest& request, std::vector<TakenPart> parts,
                                 const Exhausted& every, Exhaustive& judge, Dice& dice) {
  if (parts.empty()) return;
  const catalog::Catalog& catalog = finder.catalog();
  const auto place = static_cast<std::size_t>(dice.below(static_cast<int>(parts.size())));
  parts[place].part = {static_cast<std::uint32_t>(dice.below(static_cast<int>(catalog.parts().size())))};
  std::vector<std::string> ids;
  for (const TakenPart& part : parts) ids.push_back(catalog.part(part.part).id);
  const Answer answer = finder.make(request, parts);
  std::optional<Sums> best;
  for (const Sums& sums : every.chains)
    if (sums.ids == ids && (!best || better(request.order, sums, *best))) best = sums;
  if (const Chain* chain = std::get_if<Chain>(&answer)) {
    std::string why;
    const std::optional<Sums> sums = judge.judge(*chain, why);
    ASSERT_TRUE(sums) << why;
    EXPECT_EQ(sums->ids, ids);
    if (best) {
      EXPECT_EQ(*sums, *best);
    }
    ++made_;
  } else {
    EXPECT_FALSE(best) << std::get<NoChain>(answer).reason.code;
    EXPECT_EQ(std::get<NoChain>(answer).reason.code, "taken_cannot_be_made");
    ++refused_;
  }
}

void TakenRuns::check_world(std::uint32_t seed) {
  SCOPED_TRACE("seed " + std::to_string(seed));
  Dice dice(seed);
  const catalog::Catalog catalog = random_catalog(dice);
  ChainRequest request = random_request(dice, catalog);
  request.order = static_cast<Order>(seed % 5);
  const Finder finder(catalog);
  Exhaustive judge(catalog, request);
  const std::vector<Alternative> rows = finder.alternatives(request, SIZE_MAX);
  for (const Alternative& row : rows) check_row(finder, request, row.chain, judge);
  if (rows.empty()) return;
  const Exhausted every = judge.run(kBeginnings);
  const auto row = static_cast<std::size_t>(dice.below(static_cast<int>(rows.size())));
  const std::vector<TakenPart> parts = without_ports(taken_parts(rows[row].chain));
  for (int change = 0; change < 6; ++change) check_thought_up(finder, request, parts, every, judge, dice);
  // What is best is so without a word on its ports, too.
  const Answer best = finder.make(request, without_ports(taken_parts(rows.front().chain)));
  ASSERT_TRUE(std::holds_alternative<Chain>(best));
  EXPECT_EQ(taken_parts(std::get<Chain>(best)), taken_parts(rows.front().chain));
}

TEST_F(TakenRuns, ComeBackAsTheyWereOfferedAndAreRefusedWhereTheyBreakARule) {
  for (std::uint32_t seed = first_world(); seed < first_world() + kWorlds && !HasFailure(); ++seed) check_world(seed);
  std::cout << taken_ << " offered runs taken; of those thought up " << made_ << " made, " << refused_ << " refused\n";
  EXPECT_GT(taken_, 2000);
  EXPECT_GT(made_, 500);
  EXPECT_GT(refused_, 500);
}

}  // namespace
}  // namespace riserun::chain::testing::taken_chain_test
