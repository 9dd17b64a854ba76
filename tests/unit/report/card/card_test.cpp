// The card: one page of at most sixty lines of eighty columns, with what a person acts on, and nothing that is refused.
#include "plan/job/starter_job.h"
#include "quantity/printable.h"
#include "report/card/make_card.h"
#include "report/figures/figures.h"
#include "report/text/card_text.h"
#include "report/words/remark_words.h"
#include "unit/plan/judge/ready_job.h"

#include <fmt/format.h>
#include <gmock/gmock.h>

#include <set>
#include <sstream>

namespace riserun::report {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

const char* const kShipped[] = {"bevel-bench", "one-air-bung", "air-too-weak", "one-part-short", "walls-too-thin"};

std::vector<std::string> lines_of(const plan::Plan& plan, UnitSystem units) {
  std::istringstream text(card_text(card_of(plan, units), "job.yaml", Style{units, false}));
  std::vector<std::string> lines;
  for (std::string line; std::getline(text, line);) lines.push_back(line);
  return lines;
}

std::string value_of(const std::vector<CardRow>& rows, const std::string& name) {
  for (const CardRow& row : rows)
    if (row.name == name) return row.value;
  return "";
}

TEST(Card, IsNoWiderThanAPageAndNoLongerForTheMainExample) {
  for (const char* name : kShipped)
    for (const UnitSystem units : {UnitSystem::inch, UnitSystem::metric})
      for (const std::string& line : lines_of(plan::plan_of_example(name), units)) {
        EXPECT_LE(quantity::count_characters(line), kCardWidth) << name << ": " << line;
        EXPECT_THAT(line, Not(testing::EndsWith(" "))) << name;
      }
  EXPECT_LE(lines_of(plan::bevel_bench(), UnitSystem::inch).size(), 60u);
}

TEST(Card, SetsAndMarksWhatThePlanSays) {
  const plan::Plan& plan = plan::ready();
  const Card card = card_of(plan, UnitSystem::inch);
  EXPECT_EQ(card.verdict_words, "READY");
  EXPECT_THAT(card.findings, IsEmpty());
  EXPECT_THAT(value_of(card.settings, "regulator"), HasSubstr("1.6 psi"));
  EXPECT_THAT(value_of(card.settings, "relief"), testing::MatchesRegex("2 psi, [0-9.]+ scfm, upright"));
  const plan::Plan lies =
      plan::ready_with("from: relief bung, ends in", "from: relief bung, need: [90 elbow], ends in");
  EXPECT_THAT(value_of(card_of(lies, UnitSystem::inch).settings, "relief"),
              testing::MatchesRegex("2 psi, [0-9.]+ scfm, NOT upright yet"));
  EXPECT_EQ(value_of(card.settings, "charge"), "9 in deep, water down");
  // Pressure times area, 40 in by 20 in; a relief valve to be bought is named in psi as it is stamped.
  const double force = in_psi(plan.relief.greatest) * 40.0 * 20.0;
  EXPECT_THAT(card.pressures, HasSubstr(fmt::format("at worst ({} to 1, lid {:.0f} lbf), walls' limit",
                                                    write_factor(plan.relief.factor_at_greatest), force)));
  const Card metric = card_of(plan, UnitSystem::metric);
  EXPECT_THAT(value_of(metric.settings, "relief"), HasSubstr("bar (2 psi)"));
  EXPECT_THAT(metric.pressures, Not(HasSubstr("psi")));
  EXPECT_EQ(value_of(card.settings, "mark"), "5 in below the lid");
  EXPECT_THAT(card.pressures, HasSubstr(written(walls_figures(plan)["limit"], UnitSystem::inch).substr(0, 4)));
  EXPECT_THAT(value_of(card.running, "up"),
              HasSubstr(written(filling_figures(plan)["shut_off_depth"], UnitSystem::inch)));
  EXPECT_THAT(value_of(card.running, "down"), HasSubstr("open vent"));
}

// Past a check valve or a foot valve no water runs back by the line.
TEST(Card, DrainsTheTableByItsOwnDrainWhereTheLineLetsNoneBack) {
  const std::string drained = plan::with(
      plan::with(plan::kReady, "    outlet:", "    drain: {port: 1 FNPT, where: floor}\n    outlet:"),
      "water temperature:",
      "  - {name: table drain, from: drain, ends in: 1 brass ball valve, carries: water}\nwater temperature:");
  const std::string checked =
      plan::with(drained, "need: [union]", "need: [union, light spring check valve], special order: yes");
  // A foot valve takes half a psi to open.
  const std::string footed = plan::with(
      plan::with(plan::with(drained, "riser: {bung: riser bung}", "riser: {bung: riser bung, foot valve: yes}"),
                 "set pressure: 1.6 psi", "set pressure: 2.2 psi"),
      "relief valve set 2 psi", "relief valve set 2.5 psi");
  // Nor from a mouth over the rim that stands in no water.
  const std::string over_rim =
      plan::with(plan::with(plan::with(drained, "gap: 14-3/8 in, ", ""), "need: [union]", "need: [hose]"),
                 "inlet: {port: 1 FNPT, where: floor}", "inlet: {port: 1 FNPT, where: over rim, crest: 7 in}");
  for (const std::string& job : {checked, footed, over_rim}) {
    const Card card = card_of(plan::plan_of_text(job), UnitSystem::inch);
    EXPECT_EQ(value_of(card.running, "down"), "shut air, open vent, then the drain 'table drain': 3.5 min");
    EXPECT_EQ(value_of(card.running, "left"), "0.524 gal in the table, 1/8 in deep");
  }
  EXPECT_THAT(value_of(card_of(plan::plan_of_text(drained), UnitSystem::inch).running, "down"), HasSubstr(" min"));
}

// Whatever the list holds is on the card: counted, and summed up to the same price.
TEST(Card, BuysAllThatTheListHas) {
  for (const char* name : {"bevel-bench", "one-air-bung"}) {
    const plan::Plan plan = plan::plan_of_example(name);
    const Card card = card_of(plan, UnitSystem::inch);
    int listed = 0;
    int bought = 0;
    double sum = 0.0;
    for (const plan::ListItem& item : plan.list.buy) listed += item.by_the_foot ? 1 : item.quantity;
    for (const CardItem& item : card.buy) {
      if (item.shelf == "metal") continue;
      bought += std::stoi(item.quantity);
      sum += std::stod(item.price.substr(1));
    }
    EXPECT_EQ(bought, listed) << name;
    EXPECT_NEAR(sum, static_cast<double>(plan.list.total.cents()) / 100.0, 0.005) << name;
    EXPECT_EQ(card.cuts.size(), plan.list.cut.size() + plan.lid_map.openings.size());
  }
}

// Two baffles of 19-7/8 in by 13-7/8 in and three of 13-1/8 in: 7.6 sq ft, which the rack or the steel yard has.
TEST(Card, BuysTheMetalOfBafflesAndStays) {
  const auto metal = [](const plan::Plan& plan) {
    std::vector<std::string> rows;
    for (const CardItem& item : card_of(plan, UnitSystem::inch).buy)
      if (item.shelf == "metal") rows.push_back(item.name + ": " + item.used_for);
    return rows;
  };
  EXPECT_EQ(card_of(plan::ready(), UnitSystem::inch).sheet, "baffles: 8 sq ft or 0.8 sq m of 10 ga steel, by weight");
  EXPECT_THAT(metal(plan::ready()), testing::IsEmpty());
  const plan::Plan stayed = plan::ready_with("baffles along: 1}", "baffles along: 1, lid bays: 6 x 2}");
  EXPECT_THAT(metal(stayed), testing::ElementsAre(testing::MatchesRegex(".* of steel flat bar, .* in x .* in: stays")));
  EXPECT_THAT(card_of(stayed, UnitSystem::inch).cost, HasSubstr("and 1 without price"));
  EXPECT_THAT(card_of(plan::ready(), UnitSystem::inch).cost, Not(HasSubstr("without price")));
}

// Which bung it is for would be cut short: the order of work says it.
TEST(Card, TagsABungThatIsWeldedInWithThatAlone) {
  const plan::Plan plan = plan::ready_with("air bung: {port: 1/2 FNPT, where: lid}",
                                           "air bung: {port: 1/2 FNPT, where: lid, welded in: no}");
  std::vector<std::string> tags;
  for (const CardItem& item : card_of(plan, UnitSystem::inch).buy) tags.push_back(item.used_for);
  EXPECT_THAT(tags, Contains("weld in"));
}

TEST(Card, GroupsTheSizesOfOneKindAndPutsWhatIsOrderedLast) {
  const Card card = card_of(plan::bevel_bench(), UnitSystem::inch);
  std::vector<std::string> names;
  for (const CardItem& item : card.buy) names.push_back(item.name);
  EXPECT_THAT(names, Contains("square head plug, black iron: 1, 1-1/4, 1/4, 3/4 (2)"));
  EXPECT_THAT(names, Contains("2 ft of 1-1/4 rubber hose, rubber"));
  EXPECT_TRUE(std::is_sorted(card.buy.begin(), card.buy.end(), [](const CardItem& a, const CardItem& b) {
    return a.shelf != "order" && b.shelf == "order";
  }));
}

TEST(Card, NamesEveryRunFromEndToEndInTheOrderOfWork) {
  const Card card = card_of(plan::bevel_bench(), UnitSystem::inch);
  EXPECT_EQ(value_of(card.work, "vent"), "vent bung > 3/4 close nipple > 3/4 full-bore ball valve");
  EXPECT_EQ(value_of(card.work, "first"), "in the vise: air in; straight into their bungs: relief, gauge");
  EXPECT_THAT(value_of(card.work, "water up"), HasSubstr("> 1-1/4 rubber hose >"));
  const auto place = [&](const std::string& name) {
    return std::find_if(card.work.begin(), card.work.end(), [&](const CardRow& row) { return row.name == name; });
  };
  EXPECT_THAT(value_of(card.work, "fill"), HasSubstr("charge 35 gal at table"));
  EXPECT_LT(place("test"), place("vent"));
  EXPECT_LT(place("water up"), place("air in"));
  EXPECT_LT(place("air in"), place("fill"));
}

TEST(Card, SaysWhatIsOpenFirstAndHowItIsMended) {
  const plan::Plan open = plan::ready_and("coldest: 20 degF");
  const Card card = card_of(open, UnitSystem::inch);
  ASSERT_EQ(card.findings.size(), open.findings.size());
  EXPECT_EQ(card.verdict_words, "NOT YET: 1 open");
  EXPECT_EQ(card.findings.front().mend, say(open.findings.front(), UnitSystem::inch).mend);
  EXPECT_THAT(card.settings, Not(IsEmpty()));
  EXPECT_THAT(card.pressures, HasSubstr("at worst"));
  // A relief valve that is still to be bought would hold the pressure there.
  const plan::Plan unrelieved = plan::ready_with(
      "  - {name: relief, from: relief bung, ends in: 3/4 relief valve set 2 psi, special order: yes, carries: air}\n",
      "");
  EXPECT_THAT(card_of(unrelieved, UnitSystem::inch).pressures, Not(HasSubstr("at worst")));
  EXPECT_THAT(card_of(plan::ready(), UnitSystem::inch).pressures, HasSubstr("at worst"));
}

TEST(Card, CountsBafflesAsTheCutListDoesAndGivesEachHoseItsLength) {
  const Card ready = card_of(plan::ready(), UnitSystem::inch);  // two across, one along in three pieces between them
  EXPECT_THAT(value_of(ready.work, "tank"), HasSubstr("weld in 5 baffles"));
  int cut = 0;
  for (const CardCut& piece : ready.cuts)
    if (piece.used_for.find("baffles") == 0 && !piece.is_opening) {
      cut += std::stoi(piece.count);
      const auto& passages = plan::ready().walls.passages;
      ASSERT_TRUE(passages);
      EXPECT_EQ(piece.remark,
                fmt::format("crop {} at floor, {} at lid", write_length(passages->at_floor, UnitSystem::inch),
                            write_length(passages->at_lid, UnitSystem::inch)));
    }
  EXPECT_EQ(cut, 5);
  const Card hose = card_of(plan::ready_with("need: [union]", "need: [hose], hose length: 11 in"), UnitSystem::inch);
  EXPECT_THAT(value_of(hose.work, "water up"), HasSubstr("1 rubber hose > "));
  const auto cut_hose = std::find_if(hose.cuts.begin(), hose.cuts.end(),
                                     [](const CardCut& piece) { return piece.used_for == "water up"; });
  ASSERT_NE(cut_hose, hose.cuts.end());
  EXPECT_EQ(cut_hose->size, "11 in");
}

// Nothing of it is to be bought, cut or set.
TEST(Card, OfARefusedPlanHoldsItsReasonsAlone) {
  for (const char* name : {"air-too-weak", "one-part-short", "walls-too-thin"}) {
    const Card card = card_of(plan::plan_of_example(name), UnitSystem::inch);
    EXPECT_EQ(card.verdict_words, "REFUSED");
    EXPECT_THAT(card.findings, Not(IsEmpty())) << name;
    EXPECT_TRUE(card.settings.empty() && card.running.empty() && card.cuts.empty() && card.buy.empty()) << name;
    EXPECT_TRUE(card.work.empty()) << name;
    EXPECT_THAT(card_text(card, "job.yaml", {}), Not(HasSubstr("BUY"))) << name;
  }
}

TEST(Card, SaysUnderFourInOneLine) {
  ASSERT_LT(plan::ready().relief.factor_at_greatest, 4.0);
  ASSERT_GT(plan::bevel_bench().relief.factor_at_greatest, 4.0);
  EXPECT_THAT(card_of(plan::ready(), UnitSystem::inch).pressures, HasSubstr("UNDER 4 to 1"));
  EXPECT_THAT(card_of(plan::bevel_bench(), UnitSystem::inch).pressures, Not(HasSubstr("UNDER")));
}

// What can hurt somebody is never cut off the card.
TEST(Card, ShowsEveryCautionOfPressure) {
  plan::Plan plan = plan::bevel_bench();
  for (int i = 0; i < 5; ++i)
    plan.cautions.push_back({plan::Topic::relief, plan.cautions.front().fact, "worked out", false});
  const Card card = card_of(plan, UnitSystem::inch);
  EXPECT_GE(card.watch.size(), 6u);
}

// Names are the user's own: of any length, without a blank, in any letters; what may not be printed is escaped.
TEST(Card, KeepsItsWidthWhateverThingsAreCalled) {
  plan::Plan plan = plan::bevel_bench();
  const std::string endless = std::string(120, 'x') + "\u00e9\u00e9\u00e9";
  plan.job.name = endless;
  plan.connections.front().name = endless;
  plan.connections[1].from = endless;
  plan.list.buy.front().used_for = {endless};
  plan.list.buy.back().name = endless;
  plan.list.cut.front().used_for = endless;
  for (const std::string& line : lines_of(plan, UnitSystem::inch))
    EXPECT_LE(quantity::count_characters(line), kCardWidth) << line;
}

TEST(Card, SaysWhichArmOfAManifoldHasWhat) {
  const Card card = card_of(plan::plan_of_example("one-air-bung"), UnitSystem::inch);
  std::vector<std::string> arms;
  for (const CardRow& row : card.work)
    if (row.name.empty()) arms.push_back(row.value);
  ASSERT_GE(arms.size(), 4u);
  for (const std::string& arm : arms)
    EXPECT_THAT(arm, testing::AnyOf(HasSubstr(", straight on: "), HasSubstr(", to a side: "),
                                    HasSubstr(", to the other side: ")));
  for (const char* end : {"(the gauge)", "(the relief valve)", "shop air"})
    EXPECT_THAT(arms, Contains(testing::EndsWith(end))) << end;
}

// Slots over baffles across and along may be of one size and pitch.
// Baffles of a thin sheet are of plate, which has the longer name.
TEST(Card, IsNoWiderWithBafflesOfAnotherSheet) {
  std::string thin =
      plan::with(plan::with(plan::example_text("bevel-bench"), "sheet: 3/16 in steel", "sheet: 2 mm stainless"),
                 "baffles across: 2", "baffles along: 3\n    baffles across: 8");
  const std::string bungs = "forged steel";
  while (thin.find(bungs) != std::string::npos) thin = plan::with(thin, bungs, "stainless");
  for (const UnitSystem units : {UnitSystem::inch, UnitSystem::metric}) {
    const plan::Plan plan = plan::plan_of_text(thin);
    EXPECT_THAT(card_of(plan, units).sheet, HasSubstr("plate"));
    for (const std::string& line : lines_of(plan, units))
      EXPECT_LE(quantity::count_characters(line), kCardWidth) << line;
  }
}

TEST(Card, HasNoTwoCutsThatReadAlikeButForTheirCount) {
  const plan::Plan plan = plan::plan_of_text(plan::starter_job());
  std::set<std::string> read;
  int slots = 0;
  for (const CardCut& cut : card_of(plan, UnitSystem::inch).cuts) {
    EXPECT_TRUE(read.insert(cut.size + cut.of_what() + cut.remark + cut.used_for).second) << cut.size << cut.remark;
    slots += cut.stock == "slot" ? 1 : 0;
  }
  EXPECT_EQ(slots, 2);
}

TEST(Card, NamesWhatIsNeededBesideTheParts) {
  const plan::Plan& plan = plan::ready();
  const Card card = card_of(plan, UnitSystem::inch);
  for (const plan::Consumable& item : plan.list.consumables)
    if (item.metal_of.empty()) {
      EXPECT_THAT(card.consumables, HasSubstr(item.name));
    }
  EXPECT_THAT(card.consumables, testing::AllOf(HasSubstr("leak-test solution"), HasSubstr("rod"), HasSubstr("tape")));
  EXPECT_THAT(value_of(card.work, "fill"), HasSubstr("charge 31.2 gal at table"));
  EXPECT_THAT(value_of(card.settings, "top up"), HasSubstr("dip rod"));
}

}  // namespace
}  // namespace riserun::report
