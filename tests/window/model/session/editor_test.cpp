// What each act does to the job's text and to its plan, and the way back.
#include "gui/model/session/editor.h"

#include "chain/finder.h"
#include "gui/model/edit/choices.h"
#include "gui/model/edit/fields.h"
#include "gui/model/edit/take_run.h"
#include "plan/job/read_job.h"
#include "plan/job/starter_job.h"
#include "window/model/bench.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

namespace riserun::gui {
namespace {

using testing::chain_of;
using ::testing::Contains;
using testing::example;
using ::testing::HasSubstr;
using ::testing::Not;
using testing::with;

plan::Plan plan_of(const Editor& editor) { return plan::make_plan(testing::shipped_catalog(), *editor.job()); }

class EditorTest : public ::testing::Test {
 protected:
  EditorTest() { editor.start(bench, "bench.yaml"); }

  void expect_done(const Act& act) {
    const Outcome outcome = editor.perform(act);
    EXPECT_TRUE(outcome.done) << outcome.reason;
  }
  void expect_refused(const Act& act, const std::string& reason) {
    const std::string before = editor.text();
    const Outcome outcome = editor.perform(act);
    EXPECT_FALSE(outcome.done);
    EXPECT_THAT(outcome.reason, HasSubstr(reason));
    EXPECT_EQ(editor.text(), before);
  }

  const std::string bench = example("bevel-bench");
  Editor editor{testing::shipped_catalog()};
};

TEST_F(EditorTest, AMeasurementIsChangedAsItWasTypedAndNothingElse) {
  expect_done(SetValue{at("riser") / "clearance", " 16 mm "});
  EXPECT_EQ(editor.text(), with(bench, "clearance: 5/8 in", "clearance: 16 mm"));
  EXPECT_EQ(editor.state().undo_name, "Set riser clearance to 16 mm");
  EXPECT_NEAR(in_metres(*editor.job()->riser.clearance), 0.016, 1e-9);
}

TEST_F(EditorTest, APlaceInTheLidIsTypedWithACommaAndStandsInTheFileAsAList) {
  const JobPath place = at("reservoir") / "ports" / "gauge bung" / "at";
  ASSERT_FALSE(editor.state().values.contains(place));
  expect_done(SetValue{place, "4 in,  6-1/2 in"});
  EXPECT_THAT(editor.text(), HasSubstr("at: [4 in, 6-1/2 in]"));
  EXPECT_EQ(editor.state().values.at(place).text, "4 in, 6-1/2 in");
  const auto ports = editor.job()->reservoir.ports;
  const auto port =
      std::find_if(ports.begin(), ports.end(), [](const plan::JobPort& each) { return each.name == "gauge bung"; });
  EXPECT_NEAR(in_inches(port->at->from_front), 6.5, 1e-9);
  const std::string before = editor.text();
  expect_refused(SetValue{place, "4 in"}, "expected two distances");
  expect_refused(SetValue{place, "4 in, 6 inn"}, "inn");
  expect_done(SetValue{place, "5 in, 7 in"});
  EXPECT_EQ(editor.text(), with(before, "[4 in, 6-1/2 in]", "[5 in, 7 in]"));
  expect_done(SetValue{place, ""});
  EXPECT_FALSE(editor.state().values.contains(place));
}

TEST(FieldText, OfAPlaceInTheLidIsInTheUnitsThatAreShown) {
  using quantity::UnitSystem;
  EXPECT_EQ(shown_in(FieldKind::lid_place, "4 in, 6-1/2 in", UnitSystem::metric, UnitSystem::inch), "102 mm, 165 mm");
  EXPECT_EQ(shown_in(FieldKind::lid_place, "4 in, 6-1/2 in", UnitSystem::inch, UnitSystem::inch), "4 in, 6-1/2 in");
  EXPECT_EQ(as_typed_in(FieldKind::lid_place, "100, 150", UnitSystem::metric, UnitSystem::inch), "100 mm, 150 mm");
}

TEST(FieldText, OfABareNumberIsInTheUnitsThatAreShown) {
  using quantity::UnitSystem;
  EXPECT_EQ(shown_in(FieldKind::length, "48", UnitSystem::inch, UnitSystem::inch), "48 in");
  EXPECT_EQ(shown_in(FieldKind::air_flow, "4", UnitSystem::inch, UnitSystem::inch), "4 scfm");
  EXPECT_EQ(shown_in(FieldKind::count, "4", UnitSystem::inch, UnitSystem::inch), "4");
  EXPECT_EQ(shown_in(FieldKind::length, "48", UnitSystem::metric, UnitSystem::inch), "1219 mm");
  EXPECT_EQ(shown_in(FieldKind::signed_length, "600", UnitSystem::metric, UnitSystem::inch), "182.880 m");
  EXPECT_EQ(shown_in(FieldKind::length, "48", UnitSystem::metric, std::nullopt), "48");
  EXPECT_EQ(as_typed_in(FieldKind::length, "1200", UnitSystem::metric, UnitSystem::inch), "1200 mm");
  EXPECT_EQ(as_typed_in(FieldKind::length, "1200", UnitSystem::metric, UnitSystem::metric), "1200");
  EXPECT_EQ(as_typed_in(FieldKind::pressure, "1.6", UnitSystem::inch, std::nullopt), "1.6 psi");
  EXPECT_EQ(as_typed_in(FieldKind::length, "48 in", UnitSystem::metric, UnitSystem::inch), "48 in");
  EXPECT_EQ(as_typed_in(FieldKind::stress, "36", UnitSystem::inch, UnitSystem::metric), "36");
}

TEST_F(EditorTest, AWrongEntryIsKeptBesideItsFieldWithTheCommandsOwnReason) {
  const JobPath depth = at("table") / "depth";
  std::string said;
  try {
    plan::read_job(*testing::shipped_catalog(), with(bench, "  depth: 4 in", "  depth: 4 inn"), "bench.yaml");
  } catch (const quantity::InputError& error) {
    said = error.problems().front().message;
  }
  ASSERT_FALSE(said.empty());
  expect_refused(SetValue{depth, "4 inn"}, said);
  EXPECT_EQ(editor.state().wrong_entries.at(depth).written, "4 inn");
  EXPECT_EQ(editor.state().wrong_entries.at(depth).reason, said);
  EXPECT_TRUE(editor.job() != nullptr);
  expect_done(SetValue{depth, "4-1/2 in"});
  EXPECT_TRUE(editor.state().wrong_entries.empty());
}

TEST_F(EditorTest, AnEntryThatDisagreesWithAnotherIsRefused) {
  expect_refused(SetValue{at("table") / "rim", "2 in"}, "is lower than the wanted depth");
  editor.give_up_entry(at("table") / "rim");
  EXPECT_TRUE(editor.state().wrong_entries.empty());
}

TEST_F(EditorTest, AnEmptyEntryLeavesTheKeyOut) {
  expect_done(SetValue{at("altitude"), ""});
  EXPECT_EQ(editor.text(), with(bench, "altitude: 600 ft\n", ""));
  EXPECT_EQ(editor.state().undo_name, "Leave out altitude");
  expect_done(SetValue{at("altitude"), ""});  // not there any more: nothing to do
  expect_refused(SetValue{at("table") / "depth", ""}, "depth");
}

TEST_F(EditorTest, AValueThatIsWrittenShortIsFoundAndMadeLong) {
  const JobPath port = at("air") / "ports" / "shop air";
  expect_done(SetValue{port / "port", "3/8 FNPT"});
  EXPECT_EQ(editor.text(), with(bench, "shop air: 1/4 FNPT", "shop air: 3/8 FNPT"));
  expect_done(SetValue{port / "material", "brass"});
  EXPECT_THAT(editor.text(), HasSubstr("shop air: {port: 3/8 FNPT, material: brass}"));
  EXPECT_EQ(editor.state().values.at(port / "port").text, "3/8 FNPT");
}

TEST_F(EditorTest, ABannedPartIsGoneFromThePlan) {
  const std::vector<std::string> before = chain_of(plan_of(editor), "water up");
  ASSERT_FALSE(before.empty());
  expect_done(NeverUse{"water up", before.front()});
  EXPECT_THAT(chain_of(plan_of(editor), "water up"), Not(Contains(before.front())));
  EXPECT_THAT(*editor.state().undo_name, HasSubstr("Never use "));
  EXPECT_THAT(*editor.state().undo_name, HasSubstr(" in 'water up'"));
  expect_done(UsePart{"water up", before.front()});
  EXPECT_THAT(chain_of(plan_of(editor), "water up"), Contains(before.front()));
  EXPECT_THAT(editor.text(), Not(HasSubstr("avoid:")));  // asking for it takes the ban back
}

TEST_F(EditorTest, WishesAreAddedAndDropped) {
  expect_done(AddWish{"water up", WishKind::need, "ball valve"});
  EXPECT_EQ(editor.text(), with(bench, "need: [hose] ", "need: [hose, ball valve] "));
  expect_done(DropWish{"water up", WishKind::need, "hose"});
  EXPECT_EQ(editor.text(), with(bench, "need: [hose] ", "need: [ball valve] "));
  expect_refused(DropWish{"water up", WishKind::need, "hose"}, "'water up' does not ask for 'hose'.");
  expect_refused(AddWish{"water up", WishKind::avoid, "flux capacitor"}, "flux");
  expect_refused(AddWish{"no such run", WishKind::need, "hose"}, "no connection called 'no such run'");
}

TEST_F(EditorTest, APartIsCountedIntoTheBinAndOut) {
  const std::string nipple = "hex-bushing/black-iron/1x1-2";
  ASSERT_TRUE(testing::shipped_catalog()->find_part(nipple)) << "the catalog names it otherwise";
  expect_done(CountInBin{nipple, 7});
  EXPECT_EQ(editor.text(),
            with(bench, "1 x 1/2 hex bushing black iron, count: 1", "1 x 1/2 hex bushing black iron, count: 7"));
  expect_done(CountInBin{nipple, 0});
  EXPECT_EQ(editor.text(), with(bench, "  - {part: 1 x 1/2 hex bushing black iron, count: 1}\n", ""));
  const std::string valve =
      chain_of(plan_of(editor), "vent").empty() ? "union/black-iron/1" : chain_of(plan_of(editor), "vent").front();
  expect_done(CountInBin{valve, 2});
  EXPECT_EQ(editor.job()->bin.count_of(*editor.job()->own_catalog->find_part(valve)), 2);
  expect_refused(CountInBin{valve, -1}, "-1 is no count");
}

TEST_F(EditorTest, ABinInAFileOfItsOwnIsNotTouched) {
  testing::Folder folder;
  testing::write_file(folder / "drawer.yaml", "bin:\n  - {part: 1 x 1/2 hex bushing black iron, count: 1}\n");
  const std::size_t first = bench.find("bin:\n");
  const std::size_t last = bench.find("measured:");
  std::string text = bench;
  editor.start(text.replace(first, last - first, "bin: drawer.yaml\n\n"), folder / "bench.yaml");
  ASSERT_TRUE(editor.problems().empty()) << editor.problems().front().text();
  expect_refused(CountInBin{"hex-bushing/black-iron/1x1-2", 3},
                 "The bin is kept in a file of its own, drawer.yaml: change the count there.");
}

TEST_F(EditorTest, ConnectionsAndPortsAreAddedAndTakenOut) {
  expect_done(AddPort{PortOwner::reservoir, "fill cap", "1-1/2 FIP"});
  EXPECT_EQ(editor.state().undo_name, "Add port 'fill cap', 1-1/2 FIP, to the reservoir");
  expect_refused(AddPort{PortOwner::reservoir, "fill cap", "1 FNPT"}, "There is a port called 'fill cap' already.");
  expect_refused(AddPort{PortOwner::table, "odd", "1 FTP"}, "FTP");
  expect_done(Connect{"fill cap", "", "plug", ""});
  EXPECT_TRUE(std::any_of(editor.job()->connections.begin(), editor.job()->connections.end(),
                          [](const plan::JobConnection& c) { return c.name == "fill cap to plug"; }));
  expect_refused(Connect{"fill cap", "table inlet", "", ""}, "is taken by the connection");
  expect_done(Disconnect{"fill cap to plug"});
  expect_done(RemoveValue{at("reservoir") / "ports" / "fill cap"});
  EXPECT_EQ(editor.text(), bench);
  expect_refused(RemoveValue{at("reservoir") / "ports" / "riser bung"}, "riser bung");
}

TEST_F(EditorTest, UndoAndRedoStepThroughEveryActByName) {
  const std::vector<Act> acts = {SetValue{at("table") / "depth", "3 in"},
                                 AddWish{"vent", WishKind::avoid, "galvanized"}, Disconnect{"drain"},
                                 SetText{"name: broken\n"}, SetText{bench + "# more\n"}};
  std::vector<std::string> texts = {editor.text()};
  for (const Act& act : acts) {
    ASSERT_TRUE(editor.perform(act).done);
    texts.push_back(editor.text());
  }
  EXPECT_EQ(editor.state().undo_name, "Edit the text");
  for (std::size_t i = texts.size() - 1; i-- > 0;) {
    ASSERT_TRUE(editor.undo());
    EXPECT_EQ(editor.text(), texts[i]);
  }
  EXPECT_FALSE(editor.undo());
  EXPECT_EQ(editor.state().redo_name, "Set table depth to 3 in");
  for (std::size_t i = 1; i < texts.size(); ++i) {
    ASSERT_TRUE(editor.redo());
    EXPECT_EQ(editor.text(), texts[i]);
  }
  EXPECT_FALSE(editor.redo());
}

TEST_F(EditorTest, OneHandMovementIsOneStep) {
  const JobPath clearance = at("riser") / "clearance";
  expect_done(SetValue{clearance, "1/2 in"});
  for (const char* value : {"9/16 in", "11/16 in", "3/4 in"})
    EXPECT_TRUE(editor.perform(SetValue{clearance, value}, true).done);
  EXPECT_TRUE(editor.perform(SetValue{at("table") / "depth", "3 in"}, true).done);  // another field: a step of its own
  EXPECT_TRUE(editor.undo());
  EXPECT_EQ(editor.text(), with(bench, "clearance: 5/8 in", "clearance: 3/4 in"));
  EXPECT_TRUE(editor.undo());
  EXPECT_EQ(editor.text(), bench);
}

TEST_F(EditorTest, ATextThatDoesNotLoadIsShownWithItsPlacesAndCanBeMended) {
  expect_done(SetText{with(bench, "  depth: 4 in", "  depth: four")});
  ASSERT_EQ(editor.job(), nullptr);
  const quantity::Problem& problem = editor.problems().front();
  EXPECT_EQ(problem.line, 34);
  EXPECT_EQ(problem.column, 10);
  expect_refused(AddWish{"vent", WishKind::avoid, "flux capacitor"}, "flux");
  expect_done(SetValue{at("table") / "depth", "4 in"});
  EXPECT_NE(editor.job(), nullptr);
  EXPECT_EQ(editor.text(), bench);
  expect_done(SetText{"a: [1"});
  expect_refused(SetValue{at("table") / "depth", "4 in"}, "The text of the job must be mended first.");
}

TEST(Fields, ShowWhatThePlanAssumesInTheirPlace) {
  int shown = 0;
  for (const char* name : {"bevel-bench", "one-air-bung", "air-too-weak", "one-part-short", "walls-too-thin"}) {
    Editor editor(testing::shipped_catalog());
    editor.start(example(name), "job.yaml");
    std::set<std::string> fields;
    for (const FieldGroup& group : fields_of(*editor.job()))
      for (const Field& field : group.fields) fields.insert(field.at.text());
    std::set<std::string> written;
    for (const auto& [path, value] : editor.state().values) written.insert(path.text());
    const plan::Plan plan = plan_of(editor);
    for (const plan::Assumption& assumption : plan.assumptions) {
      if (assumption.key.empty()) continue;
      EXPECT_EQ(fields.count(assumption.key), 1U) << name << ": " << assumption.key;
      EXPECT_EQ(written.count(assumption.key), 0U) << name << ": " << assumption.key;
      ++shown;
    }
  }
  EXPECT_GT(shown, 60);
  std::cout << shown << " assumptions shown in fields\n";
}

/// Every run beside the best is taken: it is what the plan has then, the others are offered as before, and back at the
/// best the text is what it was.
int taken_runs(const std::string& text, const std::string& connection) {
  Editor editor(testing::shipped_catalog());
  editor.start(text, "job.yaml");
  int taken = 0;
  const plan::Plan plan = plan_of(editor);
  for (const plan::ConnectionPlan& run : plan.connections) {
    if (run.name != connection) continue;
    const chain::Finder finder(*plan.catalog);
    const auto rows_of = [&](const plan::ConnectionPlan& of) {
      return of.span ? finder.alternatives(of.request, *of.span, 4) : finder.alternatives(of.request, 4);
    };
    const auto rows = rows_of(run);
    for (const chain::Alternative& row : rows) {
      const Outcome outcome = editor.perform(TakeRun{connection, rows_of_run(*plan.catalog, row.chain)});
      EXPECT_TRUE(outcome.done) << outcome.reason;
      const plan::Plan now = plan_of(editor);
      for (const plan::ConnectionPlan& other : now.connections) {
        if (other.name != connection) continue;
        EXPECT_NE(other.chain(), nullptr) << editor.text();
        if (other.chain() == nullptr) continue;
        EXPECT_EQ(taken_parts(*other.chain()), taken_parts(row.chain)) << editor.text();
        EXPECT_EQ(rows_of(other).size(), rows.size());
      }
      ++taken;
      EXPECT_TRUE(editor.perform(BackToBest{connection}).done);
      EXPECT_EQ(editor.text(), text);
    }
  }
  return taken;
}

TEST(Runs, OfTheAlternativesAreTakenAndLetGoAgain) {
  EXPECT_GE(taken_runs(example("bevel-bench"), "water up"), 3);
  EXPECT_GE(taken_runs(plan::starter_job(), "air in"), 2);
}

TEST_F(EditorTest, ARunThatTheRulesDoNotLetInIsNotTaken) {
  expect_refused(TakeRun{"water up", {{"union/black-iron/1"}}}, "the run that 'take' holds cannot be made: the ");
  expect_refused(TakeRun{"water up", {{"no such part"}}}, "The catalog has not all parts of this run.");
}

TEST_F(EditorTest, APartThatIsNeverToBeUsedLetsTheTakenRunGo) {
  const plan::Plan before = plan_of(editor);
  const plan::ConnectionPlan& run = before.connections.front();
  expect_done(TakeRun{run.name, rows_of_run(*before.catalog, *run.chain())});
  EXPECT_TRUE(plan_of(editor).connections.front().request.taken);
  expect_done(NeverUse{run.name, before.catalog->part(run.chain()->parts.front().part).id});
  EXPECT_FALSE(plan_of(editor).connections.front().request.taken);
}

TEST_F(EditorTest, APartIsSwappedForAnotherThatFitsThere) {
  const plan::Plan before = plan_of(editor);
  const std::vector<std::string> chain = chain_of(before, "water up");
  int swapped = 0;
  for (std::size_t place = 0; place < chain.size() && swapped < 2; ++place) {
    const std::vector<Choice> choices = choices_at(before, 0, place);
    for (std::size_t i = 0; i < choices.size() && i < 2; ++i) {
      const std::string other = before.catalog->part(choices[i].part).id;
      const Outcome outcome = editor.perform(SwapPart{"water up", chain[place], other});
      if (!outcome.done) {
        EXPECT_THAT(outcome.reason, HasSubstr("cannot take the place of"));
        continue;
      }
      ++swapped;
      EXPECT_THAT(chain_of(plan_of(editor), "water up"), Contains(other));
      EXPECT_TRUE(editor.undo());
    }
  }
  EXPECT_GE(swapped, 1);
}

}  // namespace
}  // namespace riserun::gui
