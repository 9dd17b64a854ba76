// The one check at the door: what nobody may ask is refused there whoever asks, with all mistakes at once.
#include "chain/check.h"

#include "chain/ask/askable.h"
#include "quantity/input_error.h"
#include "unit/chain/small_world.h"

#include <gmock/gmock.h>

namespace riserun::chain::testing::check_test {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;

const SmallWorld& shop() {
  static const SmallWorld kShop(
      "coupling: 1 A female, 1 A female, 200c\ntee: 1 A female, 1 A female, 1 A female, 300c");
  return kShop;
}

ChainRequest plain() { return shop().ask("1 A male", "1 A male"); }

template <class... Asked>
std::vector<std::string> mistakes(const Asked&... asked) {
  std::vector<std::string> messages;
  try {
    check(shop().catalog(), asked...);
  } catch (const quantity::InputError& error) {
    for (const quantity::Problem& problem : error.problems()) messages.push_back(problem.message);
  }
  return messages;
}

TEST(Check, LetsThroughWhatCanBeAsked) {
  EXPECT_THAT(mistakes(plain()), IsEmpty());
  EXPECT_THAT(mistakes(plain(), Span{inches(12.0), {}, {}}), IsEmpty());
}

TEST(Check, ToldAllMistakesAtOnce) {
  ChainRequest request = plain();
  request.needs.assign(9, shop().need("coupling", {"coupling"}));
  request.needs.back().parts.clear();
  request.rating = psig(-10.0);
  request.smallest_bore = feet(1000.0);
  request.most_parts = 41;
  request.banned.assign(1, false);
  EXPECT_EQ(mistakes(request).size(), 6U);
  EXPECT_EQ(mistakes(request, Span{feet(61.0), {}, inches(1.0)}).size(), 8U);
}

TEST(Check, EveryFigureOfTheTableHasItsRange) {
  for (const Askable& row : askables()) {
    const bool has_figure = row.kind == AskedKind::count || row.kind == AskedKind::length ||
                            row.kind == AskedKind::pressure || row.kind == AskedKind::temperature;
    if (!has_figure) continue;
    EXPECT_FALSE(std::holds_alternative<std::monostate>(row.range)) << row.code;
    EXPECT_FALSE(std::holds_alternative<std::monostate>(row.field)) << row.code;
  }
}

TEST(Check, StandsBeforeEveryQuestion) {
  const Finder finder(shop().catalog());
  ChainRequest wrong = plain();
  wrong.rating = psig(1e6);
  const Span span{inches(12.0), {}, {}};
  EXPECT_THROW(finder.find(wrong), quantity::InputError);
  EXPECT_THROW(finder.find_span(wrong, span), quantity::InputError);
  EXPECT_THROW(finder.can_join(wrong), quantity::InputError);
  EXPECT_THROW(finder.can_join(wrong, span), quantity::InputError);
  EXPECT_THROW(finder.alternatives(wrong, 3), quantity::InputError);
  EXPECT_THROW(finder.alternatives(wrong, span, 3), quantity::InputError);
  EXPECT_THROW(finder.substitutes(wrong, {}), quantity::InputError);
  EXPECT_THROW(finder.allocate({{wrong, {}}}, {}, Order::parts), quantity::InputError);
  EXPECT_THROW(finder.least_spares({{wrong, {}}}), quantity::InputError);
  EXPECT_THROW(finder.best_with_valve_left(wrong, ReservoirEnd::first), quantity::InputError);
  EXPECT_THROW(finder.find_span(plain(), Span{feet(61.0), {}, {}}), quantity::InputError);
}

TEST(Check, OfAnAssemblyLooksAtEachBranchAndAtWhatIsForOneRun) {
  AssemblyRequest request;
  request.rules = plain();
  request.targets.assign(2, request.rules.to);
  EXPECT_THAT(mistakes(request), IsEmpty());
  request.rules.most_parts = 3;
  request.rules.needs_in_order = true;
  request.rules.order = Order::length;
  request.branches.resize(2);
  request.branches[1].smallest_bore = inches(13.0);
  request.branches[1].needs.assign(9, shop().need("coupling", {"coupling"}));
  const std::vector<std::string> all = mistakes(request);
  EXPECT_EQ(all.size(), 5U);
  EXPECT_THAT(all, ::testing::Contains(HasSubstr("branch 2: smallest bore")));
  EXPECT_THAT(all, ::testing::Contains(HasSubstr("most parts: is for a run with one far end")));
}

}  // namespace
}  // namespace riserun::chain::testing::check_test
