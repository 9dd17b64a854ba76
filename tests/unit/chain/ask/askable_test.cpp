// Every row of what can be asked of a run: set by itself where no run keeps it, a refusal names it, has words for it,
// and offers a relief that works. A row without an example here fails, and so does a field without a row (see
// tests/structure/asked_test.py).
#include "chain/ask/askable.h"

#include "chain/refusal/request_rules.h"
#include "report/words/say.h"
#include "unit/chain/small_world.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>
#include <map>
#include <string>

namespace riserun::chain::testing::askable_test {
namespace {

using ::testing::Contains;
using ::testing::IsEmpty;
using ::testing::Not;

/// A shop in which one rule alone is in the way, and the rule.
struct Example {
  const char* parts;
  std::function<void(const SmallWorld&, ChainRequest&)> ask;
};

constexpr const char* kCoupling = "coupling: 1 A female, 1 A female, 200c, rating 100, bore 20, nylon";

void ban(const SmallWorld& shop, ChainRequest& request) {
  request.banned.assign(shop.catalog().parts().size(), false);
  request.banned[shop.part("coupling").row] = true;
}

/// By the code of the row.
const std::map<std::string_view, Example>& examples() {
  static const std::map<std::string_view, Example> kExamples = {
      {"held_ends",
       {kCoupling, [](const SmallWorld&, ChainRequest& r) { r.from.freedom = r.to.freedom = Freedom::fixed; }}},
      {"need",
       {"coupling: 1 A female, 1 A female, 200c\ngauge tee: 3/4 A female, 3/4 A male, 200c, device",
        [](const SmallWorld& shop, ChainRequest& r) { r.needs = {shop.need("gauge tee", {"gauge tee"})}; }}},
      {"order_of_needs",
       {"valve: 1 A female, 3/4 A male, 900c\ngauge tee: 3/4 A female, 1/2 A male, 500c\n"
        "strainer: 1/2 A female, 1 A female, 700c",  // either way round the tee stands between the others
        [](const SmallWorld& shop, ChainRequest& r) {
          r.needs = {shop.need("gauge tee", {"gauge tee"}), shop.need("valve", {"valve"}),
                     shop.need("strainer", {"strainer"})};
          r.needs_in_order = true;
        }}},
      {"most_parts", {kCoupling, [](const SmallWorld&, ChainRequest& r) { r.most_parts = 0; }}},
      {"most_bushings",
       {"coupling: 1 A female, 1 A female, 200c, bushing",
        [](const SmallWorld&, ChainRequest& r) { r.most_bushings = 0; }}},
      {"rating", {kCoupling, [](const SmallWorld&, ChainRequest& r) { r.rating = psig(150.0); }}},
      {"hottest", {kCoupling, [](const SmallWorld&, ChainRequest& r) { r.hottest = degrees_celsius(60.0); }}},
      {"vacuum", {kCoupling, [](const SmallWorld&, ChainRequest& r) { r.vacuum = true; }}},
      {"smallest_bore", {kCoupling, [](const SmallWorld&, ChainRequest& r) { r.smallest_bore = inches(1.0); }}},
      {"room", {kCoupling, [](const SmallWorld&, ChainRequest& r) { r.room = inches(0.3); }}},
      {"galvanic",
       {"coupling: 1 A female, 1 A female, 200c, iron",
        [](const SmallWorld& shop, ChainRequest& r) {
          r.galvanic = Galvanic::avoid;
          r.to.material = shop.catalog().find_material("brass");
        }}},
      {"air",
       {"coupling: 1 A female, 1 A female, 200c, pvc",
        [](const SmallWorld&, ChainRequest& r) { r.service = Service::air; }}},
      {"avoid",
       {kCoupling,
        [](const SmallWorld& shop, ChainRequest& r) {
          ban(shop, r);
          r.avoided = {{"couplings", {shop.part("coupling")}}};
        }}},
      {"ruled_out", {kCoupling, [](const SmallWorld& shop, ChainRequest& r) { ban(shop, r); }}},
      {"bin_only", {kCoupling, [](const SmallWorld&, ChainRequest& r) { r.not_sold.assign(1, true); }}},
      {"stocked_only",
       {"coupling: 1 A female, 1 A female, 200c, special\nother coupling: 1 A female, 3/4 A female, 200c, special\n"
        "bell: 3/4 A male, 1 A female, 200c, special",
        [](const SmallWorld&, ChainRequest& r) { r.most_parts = 2; }}},
  };
  return kExamples;
}

bool is_rule(const Askable& row) { return row.of == AskedOf::run && row.relief != Relief::none; }

std::vector<std::string_view> codes(const Facts& facts) {
  std::vector<std::string_view> all;
  for (const Fact& fact : facts) all.push_back(fact.code);
  return all;
}

TEST(Askable, EveryRuleHasAnExample) {
  for (const Askable& row : askables())
    EXPECT_TRUE(!is_rule(row) || examples().contains(row.code)) << row.code << " has no example";
}

TEST(Askable, IsRefusedByNameInWordsAndWithARelief) {
  for (const auto& [code, example] : examples()) {
    SCOPED_TRACE(std::string(code));
    const SmallWorld shop(example.parts);
    const Finder finder(shop.catalog());
    ChainRequest request = shop.ask("1 A male", "1 A male");
    if (code != "stocked_only") {
      EXPECT_TRUE(std::holds_alternative<Chain>(finder.find(request))) << "without the rule";
    }
    example.ask(shop, request);
    const Answer answer = finder.find(request);  // of the same finder: what it keeps must not forget the rule
    ASSERT_TRUE(std::holds_alternative<NoChain>(answer));
    const NoChain& none = std::get<NoChain>(answer);
    EXPECT_THAT(codes(none.conflict), Contains(code));
    EXPECT_THAT(none.mends, Not(IsEmpty()));
    for (const UnitSystem units : {UnitSystem::inch, UnitSystem::metric}) {
      EXPECT_THAT(report::say(none.reason, units), Not(IsEmpty()));
      EXPECT_THAT(report::say_all(none.mends, units), ::testing::Each(Not(IsEmpty())));
    }
    // Each relief makes a run.
    const std::vector<RequestRule> rules = rules_of(shop.catalog(), request, asked_chain(shop.catalog(), request));
    for (std::size_t row = 0; row < rules.size(); ++row) {
      if (rules[row].code() != code) continue;
      EXPECT_TRUE(std::holds_alternative<Chain>(finder.find(without(request, rules, RuleSet{1} << row))));
      for (const Fact& said : {rules[row].rule, rules[row].alone}) EXPECT_NE(report::say(said, UnitSystem::inch), "");
    }
  }
}

TEST(Askable, RulesWithAFigureSayItInTheUnitsAskedFor) {
  const SmallWorld shop(kCoupling);
  ChainRequest request = shop.ask("1 A male", "1 A male");
  request.rating = psig(150.0);
  request.smallest_bore = inches(1.0);
  request.room = inches(0.3);
  request.hottest = degrees_fahrenheit(140.0);
  for (const RequestRule& rule : rules_of(shop.catalog(), request, asked_chain(shop.catalog(), request))) {
    const bool has_figure = !std::holds_alternative<std::monostate>(rule.row->range);
    for (const Fact& said : {rule.rule, rule.alone, rule.reliefs.front()}) {
      const std::string inch = report::say(said, UnitSystem::inch);
      const std::string metric = report::say(said, UnitSystem::metric);
      EXPECT_EQ(inch != metric, has_figure) << inch << " / " << metric;
    }
  }
}

TEST(Askable, CodesKeysAndOptionsAreToldApart) {
  for (const Askable& a : askables()) {
    for (const Askable& b : askables()) {
      if (&a == &b) continue;
      EXPECT_NE(a.code, b.code);
      EXPECT_TRUE(a.option.empty() || a.option != b.option) << a.option;
      const bool in_one_map = (a.of == AskedOf::branch) == (b.of == AskedOf::branch);
      EXPECT_TRUE(a.key.empty() || !in_one_map || a.key != b.key) << a.key;
    }
  }
}

}  // namespace
}  // namespace riserun::chain::testing::askable_test
