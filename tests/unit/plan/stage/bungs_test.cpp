// Weld bungs of a job: of the tank's metal, and of nothing that cracks, fumes or does not weld.
#include "unit/plan/bench_job.h"
#include "unit/plan/judge/ready_job.h"
#include "unit/plan/shipped.h"
#include "unit/report/words/said.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

using testing::HasSubstr;

Plan bench_with(const std::string& bung) {
  return plan_of_text(with(kBench, "{port: 1 FNPT, bung: full coupling, where: lid}",
                           "{port: 1 FNPT, bung: full coupling, where: lid, " + bung + "}"));
}

std::string first_refusal(const Plan& plan) {
  return refusals_of(plan).empty() ? "" : report::said(refusals_of(plan).front().reason);
}

TEST(WeldBung, OfCastIronZincOrBrassIsRefusedBeforeItIsWelded) {
  EXPECT_THAT(first_refusal(bench_with("material: black iron, welded in: no")),
              HasSubstr("The bung of 'riser bung': black iron is no weld bung: a malleable casting, which cracks"));
  EXPECT_THAT(first_refusal(bench_with("material: galvanized, welded in: no")), HasSubstr("poisonous fume"));
  EXPECT_THAT(first_refusal(bench_with("material: brass, welded in: no")), HasSubstr("does not weld"));
  EXPECT_THAT(first_refusal(bench_with("material: stainless, welded in: no")),
              HasSubstr("stainless is not the metal of the tank, steel"));
  EXPECT_EQ(first_refusal(bench_with("material: forged steel, welded in: no")), "");
}

TEST(WeldBung, OfAThreadThatTheCatalogHasNoneForIsMeasuredFirst) {
  const auto of = [](const std::string& thread) {
    return plan_of_text(with(kReady, "relief bung: 3/4 FNPT",
                             "relief bung: {port: " + thread + ", bung: half coupling, where: lid, welded in: no}"));
  };
  const Plan plan = of("3/4 BSPP female");
  const auto said = std::find_if(plan.cautions.begin(), plan.cautions.end(),
                                 [](const Caution& caution) { return caution.fact.code == "bung_not_in_catalog"; });
  ASSERT_NE(said, plan.cautions.end());
  EXPECT_THAT(report::said(said->fact), HasSubstr("half coupling is in the catalog"));
  EXPECT_FALSE(warns_of(of("3/4 FNPT"), "bung_not_in_catalog"));
}

TEST(WeldBung, ThatIsWeldedInAlreadyIsCautioned) {
  const Plan plan = bench_with("material: black iron, welded in: yes");
  EXPECT_EQ(first_refusal(plan), "");
  EXPECT_TRUE(std::any_of(plan.cautions.begin(), plan.cautions.end(), [](const Caution& caution) {
    return report::said(caution.fact).find("Look at its weld for cracks before each leak test") != std::string::npos;
  }));
}

TEST(WeldBung, OfWhichNobodySaysThatItIsThereIsRefused) {
  EXPECT_THAT(first_refusal(bench_with("material: black iron")), HasSubstr("black iron is no weld bung"));
  EXPECT_THAT(first_refusal(bench_with("material: aluminium")), HasSubstr("not the metal of the tank"));
  EXPECT_THAT(first_refusal(bench_with("material: PVC, welded in: yes")), HasSubstr("PVC cannot be welded"));
}

TEST(WeldBung, NamedAsAPartMustBeMadeForIt) {
  EXPECT_THAT(first_refusal(bench_with("bung part: \"1 coupling, black iron\", welded in: no")),
              HasSubstr("black iron is no weld bung"));
  EXPECT_EQ(first_refusal(bench_with("bung part: \"1 full coupling, forged steel\", welded in: no")), "");
  EXPECT_THAT(first_refusal(bench_with("bung part: \"3/4 full coupling, forged steel\", welded in: no")),
              HasSubstr("has no 1 FNPT"));
}

// Neither steel nor stainless in the other's place: it does not weld to the tank.
TEST(Bungs, GoWithTheMetalOfTheTankAndSoDoesWhatStandsInForThem) {
  struct Tank {
    const char* sheet;
    const char* welds_to;
  };
  for (const Tank& tank : {Tank{"10 ga steel", "steel"}, Tank{"1/8 in stainless", "stainless steel"},
                           Tank{"3/16 in aluminium", "aluminium"}}) {
    const Plan plan =
        plan_of_text(with(with(kReady, "10 ga steel", tank.sheet), "air bung: {port: 1/2 FNPT, where: lid}",
                          "air bung: {port: 1/2 FNPT, where: lid, bung: half coupling, welded in: no}"));
    int bungs = 0;
    for (const ListItem& item : plan.list.buy) {
      if (!item.part ||
          plan.catalog->family(plan.catalog->part(*item.part).family).weld_bung == catalog::WeldBung::none)
        continue;
      ++bungs;
      EXPECT_EQ(plan.catalog->material(plan.catalog->part(*item.part).material).welds_to, tank.welds_to) << tank.sheet;
      EXPECT_TRUE(item.instead.empty()) << tank.sheet << ": " << testing::PrintToString(item.instead);
    }
    EXPECT_EQ(bungs, 1) << tank.sheet;
  }
}

}  // namespace
}  // namespace riserun::plan
