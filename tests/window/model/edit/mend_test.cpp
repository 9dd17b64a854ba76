// A mend that a finding names is followed in the text, and the finding is gone.
#include "gui/model/edit/mend.h"

#include "gui/model/session/editor.h"
#include "window/model/bench.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace riserun::gui {
namespace {

std::string without_connection(std::string text, const std::string& name) {
  const std::size_t begin = text.find("  - name: " + name + "\n");
  return text.erase(begin, text.find("  - name:", begin + 5) - begin);
}

/// Jobs of which each lacks something that a key of the job can mend.
std::vector<std::string> jobs_to_mend() {
  const std::string bench = testing::example("bevel-bench");
  return {without_connection(bench, "relief"),
          without_connection(bench, "gauge"),
          testing::with(bench, "passages: yes", "passages: no"),
          testing::with(bench, "regulator range: 10 psi", "regulator range: 60 psi"),
          testing::with(bench, "regulator repeatability: 0.05 psi", "regulator repeatability: 1 psi"),
          testing::with(bench, "charge: 8-1/2 in", "charge: 6 in"),
          testing::with(bench, "depth: 4 in", "depth: 5-1/4 in"),
          testing::with(bench, "baffles across: 2", "baffles across: 14"),
          testing::with(bench, "sheet: 3/16 in steel", "sheet: 16 ga steel"),
          testing::with(bench,
                        "gauge bung:", "spare bung: {port: 1/4 FNPT, where: lid, at: [1 in, 3 in]}\n    gauge bung:"),
          testing::example("air-too-weak"),
          testing::example("walls-too-thin"),
          testing::example("one-air-bung")};
}

bool still_there(const plan::Plan& plan, const plan::Finding& finding) {
  return std::any_of(plan.findings.begin(), plan.findings.end(), [&](const plan::Finding& left) {
    return left.reason.code == finding.reason.code && left.where == finding.where;
  });
}

plan::Plan planned(const Editor& editor) { return plan::make_plan(testing::shipped_catalog(), *editor.job()); }

TEST(Mend, IsFollowedInEitherUnitsAndTakenBackByOneUndo) {
  int followed = 0;
  for (const std::string& job : jobs_to_mend()) {
    Editor editor(testing::shipped_catalog());
    editor.start(job, "job.yaml");
    const plan::Plan plan = planned(editor);
    for (const plan::Finding& finding : plan.findings)
      for (const plan::Changes& way : ways_to_follow(finding))
        for (const UnitSystem units : {UnitSystem::inch, UnitSystem::metric}) {
          const Outcome done = editor.perform(FollowMend{way, units}, false);
          EXPECT_TRUE(done.done) << done.reason;
          EXPECT_FALSE(still_there(planned(editor), finding)) << title_of_mend(*plan.catalog, way, units) << "\n"
                                                              << editor.text();
          editor.undo();
          EXPECT_EQ(editor.text(), job);
          ++followed;
        }
  }
  EXPECT_GE(followed, 10);
}

bool changes(const plan::Changes& way, const char* key) {
  return std::any_of(way.begin(), way.end(), [&](const plan::Change& change) { return change.key == key; });
}

struct Kind {
  const char* key;
  std::string job;
  const char* written;  // in the job that is mended
};

TEST(Mend, OfEachKindThatNoKeySaysIsWrittenAndHelps) {
  const std::string bench = testing::example("bevel-bench");
  const auto raised = testing::with(bench, "floor height: 31 in", "floor height: 24 in");
  const std::string gauge_bung = "gauge bung:   {port: 1/4 FNPT, bung: half coupling, where: ";
  const Kind kinds[] = {
      {plan::kReliefSetting, testing::with(bench, "relief valve set 2 psi 3/4", "relief valve set 1.5 psi 3/4"),
       "ends in: 3/4 MNPT relief valve, set 2 psi"},
      {plan::kRegulatorOfRange,
       testing::with(testing::with(bench, "  regulator range: 10 psi\n", ""), "0 to 10 psi air regulator",
                     "0 to 60 psi air regulator"),
       "[1/16 in hole restrictor, 0 to 10 psi air regulator, light spring check valve]"},
      {plan::kPortIntoLid, testing::with(bench, gauge_bung + "lid", gauge_bung + "side"), "where: lid, material"},
      {plan::kTableHigher, testing::with(raised, "face height: 29-3/4 in", "face height: 22-3/4 in"),
       "floor height: 28-1/4 in"},
      {plan::kPortIntoFloor,
       testing::with(bench, "where: floor, opens at: 0 in, face height: 29-3/4 in", "where: over rim"), "where: floor"},
      {plan::kDeviceOf, testing::with(bench, "ends in: 3/4 brass ball valve", "ends in: 3/4 pipe plug"), "ball valve"},
      {plan::kSpecialOrderIn, testing::example("one-part-short"), "special order: yes"}};
  for (const Kind& kind : kinds) {
    Editor editor(testing::shipped_catalog());
    editor.start(kind.job, "job.yaml");
    const plan::Plan plan = planned(editor);
    int followed = 0;
    for (const plan::Finding& finding : plan.findings)
      for (const plan::Changes& way : ways_to_follow(finding)) {
        if (!changes(way, kind.key)) continue;
        for (const UnitSystem units : {UnitSystem::inch, UnitSystem::metric}) {
          const Outcome done = editor.perform(FollowMend{way, units}, false);
          EXPECT_TRUE(done.done) << kind.key << ": " << done.reason;
          EXPECT_FALSE(still_there(planned(editor), finding)) << kind.key << "\n" << editor.text();
          const bool is_there = editor.text().find(kind.written) != std::string::npos;
          EXPECT_TRUE(is_there || units == UnitSystem::metric) << editor.text();
          const std::string title = title_of_mend(*plan.catalog, way, units);
          EXPECT_EQ(title.find(kind.key), std::string::npos) << title << " is no sentence";
          EXPECT_TRUE(editor.undo());
          EXPECT_EQ(editor.text(), kind.job);
          ++followed;
        }
      }
    EXPECT_GE(followed, 2) << "nothing is mended by: " << kind.key;
  }
}

TEST(Mend, OfAllTakesWhatHelpsAndIsOneStep) {
  for (const std::string& job : jobs_to_mend()) {
    Editor editor(testing::shipped_catalog());
    editor.start(job, "job.yaml");
    const plan::Plan before = planned(editor);
    const Outcome done = editor.perform(MendAll{}, false);
    if (before.findings.empty()) {
      EXPECT_FALSE(done.done) << "nothing is open";
      continue;
    }
    if (!done.done) continue;
    const plan::Plan after = planned(editor);
    EXPECT_LE(after.verdict == plan::Verdict::refused, before.verdict == plan::Verdict::refused);
    EXPECT_TRUE(after.findings.size() < before.findings.size() || before.verdict == plan::Verdict::refused)
        << editor.text();
    EXPECT_TRUE(editor.undo());
    EXPECT_EQ(editor.text(), job);
  }
}

TEST(Mend, UsesABungThatIsFree) {
  const std::string bench = testing::example("bevel-bench");
  for (const char* name : {"relief", "gauge"}) {
    Editor editor(testing::shipped_catalog());
    editor.start(without_connection(bench, name), "job.yaml");
    EXPECT_TRUE(editor.perform(MendAll{}, false).done) << name;
    EXPECT_NE(editor.text().find(std::string("from: ") + name + " bung"), std::string::npos) << editor.text();
    EXPECT_EQ(editor.text().find("welded in: no"), std::string::npos) << "no other bung is welded in";
    EXPECT_EQ(planned(editor).verdict, plan::Verdict::ready) << name;
  }
}

TEST(Mend, IsNamedInWords) {
  const auto& catalog = testing::shipped_catalog();
  EXPECT_EQ(title_of_mend(*catalog, {{"air.set pressure", psig(1.5)}}, UnitSystem::inch),
            "Set air set pressure to 1.5 psi");
  plan::Change moved{plan::kBungAt, std::string("air bung")};
  moved.spot = {inches(4.0), inches(6.5)};
  EXPECT_EQ(title_of_mend(*catalog, {moved}, UnitSystem::inch), "Move air bung to 4 in, 6-1/2 in");
  EXPECT_EQ(title_of_mend(*catalog, {{"test pressure", ""}}, UnitSystem::inch), "Leave out test pressure");
}

}  // namespace
}  // namespace riserun::gui
