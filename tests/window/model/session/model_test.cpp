// The model on its threads, as the window drives it.
#include "gui/model/session/model.h"

#include "gui/model/edit/take_run.h"
#include "plan/job/starter_job.h"
#include "window/model/bench.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <chrono>
#include <thread>

namespace riserun::gui {
namespace {

namespace fs = std::filesystem;
using ::testing::Contains;
using ::testing::ElementsAre;
using testing::Folder;
using ::testing::HasSubstr;
using ::testing::Not;
using testing::text_of_file;
using testing::write_file;

class ModelTest : public ::testing::Test {
 protected:
  void SetUp() override { write_file(file, testing::example("bevel-bench")); }
  std::unique_ptr<Model> started() {
    return std::make_unique<Model>(gui::Setup{testing::shipped_catalog(), folder / "state"});
  }
  std::unique_ptr<Model> opened() {
    auto model = started();
    model->post(Open{file});
    model->settle();
    return model;
  }
  /// Polls as a window does, until it holds.
  template <class Holds>
  static bool soon(Model& model, Holds holds) {
    for (int i = 0; i < 3000; ++i) {
      model.poll();
      if (holds()) return true;
      std::this_thread::sleep_for(std::chrono::milliseconds(10));
    }
    return false;
  }

  Folder folder;
  const fs::path file = folder / "bench.yaml";
  const JobPath depth = at("table") / "depth";
};

TEST_F(ModelTest, StartsWithTheStarterAndItsPlan) {
  const auto model = started();
  EXPECT_EQ(model->job().text, plan::starter_job());
  EXPECT_TRUE(soon(*model, [&] { return model->plan().current; }));
  EXPECT_FALSE(model->job().file.unsaved);
}

TEST_F(ModelTest, ThePlanFollowsAnActAndTheCallerIsNotHeldUpMeanwhile) {
  const auto model = opened();
  const auto before = model->plan().plan;
  model->post(Perform{SetValue{depth, "3 in"}});
  long polls = 0;
  while (!model->plan().current || model->plan().plan == before) {
    model->poll();
    ++polls;
    ASSERT_TRUE(model->plan().plan);  // the last one stays until the next is there
    std::this_thread::yield();
  }
  EXPECT_GT(polls, 20);
  EXPECT_NEAR(in_inches(model->plan().plan->levels.table_depth), 3.0, 1e-6);
}

TEST_F(ModelTest, AWrongEntryLeavesTheLastGoodPlan) {
  const auto model = opened();
  const auto before = model->plan().plan;
  model->post(Perform{SetValue{depth, "3 inn"}});
  model->settle();
  EXPECT_FALSE(model->plan().current);
  EXPECT_EQ(model->plan().plan, before);
  EXPECT_THAT(model->job().wrong_entries.at(depth).reason, HasSubstr("inn"));
  EXPECT_TRUE(model->take_notices().empty());  // it is told beside the field
  model->post(GiveUpEntry{depth});
  model->settle();
  EXPECT_TRUE(model->plan().current);
}

TEST_F(ModelTest, TheNewestOfManyRequestsWins) {
  const auto model = opened();
  model->post(Perform{SetValue{depth, "2 in"}});
  for (int i = 0; i < 200; ++i) model->post(Perform{SetValue{depth, std::to_string(100 + i % 7) + " mm"}, true});
  model->post(Perform{SetValue{depth, "71 mm"}, true});
  std::uint64_t last = 0;
  int plans = 0;
  const plan::Plan* seen = model->plan().plan.get();
  while (!(model->plan().current && model->job().values.at(depth).text == "71 mm")) {
    model->poll();
    EXPECT_GE(model->plan().revision, last);  // never an older one after a newer
    last = model->plan().revision;
    if (model->plan().plan.get() != seen) ++plans;
    seen = model->plan().plan.get();
    std::this_thread::yield();
  }
  EXPECT_LT(plans, 60);
  EXPECT_NEAR(in_metres(model->plan().plan->levels.table_depth), 0.071, 1e-9);
  model->post(Undo{});
  model->settle();
  EXPECT_EQ(model->job().text, testing::example("bevel-bench"));
}

TEST_F(ModelTest, APlanOfAnotherDocumentIsNotShown) {
  write_file(folder / "other.yaml", testing::example("air-too-weak"));
  const auto model = opened();
  for (int round = 0; round < 5; ++round) {
    model->post(Perform{SetValue{depth, "3 in"}});
    model->post(Open{round % 2 == 0 ? folder / "other.yaml" : file, true});
    const std::string name = round % 2 == 0 ? "Brick soak basin" : "Bevelling bench";
    EXPECT_TRUE(soon(*model, [&] {
      const bool opened = model->job().job && model->job().job->name == name;
      if (opened && model->plan().plan) {
        EXPECT_EQ(model->plan().plan->job.name, name);
      }
      return opened && model->plan().current;
    }));
  }
}

TEST_F(ModelTest, WorkThatIsNotSavedStaysUntilItIsDiscarded) {
  write_file(folder / "other.yaml", testing::example("air-too-weak"));
  const auto model = opened();
  model->post(Perform{SetValue{depth, "3 in"}});
  for (const Command& other : {Command{Open{folder / "other.yaml"}}, Command{StartNew{}}}) {
    model->post(other);
    model->settle();
    EXPECT_THAT(model->job().text, HasSubstr("depth: 3 in"));
    EXPECT_EQ(model->job().file.path, file);
    const auto notices = model->take_notices();
    ASSERT_FALSE(notices.empty());
    EXPECT_THAT(notices.back().text, HasSubstr("not saved"));
  }
  // One that is not there takes nothing with it either.
  model->post(Open{folder / "none.yaml", true});
  model->settle();
  EXPECT_THAT(model->job().text, HasSubstr("depth: 3 in"));
  model->post(Open{folder / "other.yaml", true});
  model->settle();
  EXPECT_EQ(model->job().file.path, folder / "other.yaml");
}

TEST_F(ModelTest, RefusedActsAreTold) {
  const auto model = opened();
  model->post(Perform{AddWish{"water up", WishKind::need, "flux capacitor"}});
  model->post(Perform{Connect{"riser bung", "table inlet", "", ""}});
  model->settle();
  const std::vector<Notice> notices = model->take_notices();
  ASSERT_EQ(notices.size(), 2U);
  EXPECT_EQ(notices[0].kind, Notice::Kind::refused);
  EXPECT_THAT(notices[0].text, HasSubstr("flux"));
  EXPECT_GT(notices[1].problems.front().line, 0);
  EXPECT_EQ(model->job().text, testing::example("bevel-bench"));
}

TEST_F(ModelTest, AlternativesComeWhenAskedForAndCanBeTaken) {
  const auto model = opened();
  EXPECT_EQ(model->alternatives("water up"), nullptr);
  model->work_out_alternatives("water up");
  const Alternatives* rows = nullptr;
  ASSERT_TRUE(soon(*model, [&] { return (rows = model->alternatives("water up")) != nullptr; }));
  ASSERT_GE(rows->rows.size(), 2U);
  // The port faces are measured: every row makes the distance, and the first is the one that is planned.
  for (const chain::Alternative& row : rows->rows) EXPECT_TRUE(row.chain.span);
  EXPECT_EQ(rows->rows[0].chain.price, model->plan().plan->connections.front().chain()->price);
  const std::size_t beside = rows->rows.size();
  std::vector<std::string> ids;
  for (const chain::RunPart& part : rows->rows[1].chain.parts) ids.push_back(rows->catalog->part(part.part).id);
  model->post(Perform{TakeRun{"water up", rows_of_run(*rows->catalog, rows->rows[1].chain)}});
  model->settle();
  EXPECT_EQ(testing::chain_of(*model->plan().plan, "water up"), ids);
  EXPECT_EQ(model->alternatives("water up"), nullptr);  // the old rows are of another plan
  model->work_out_alternatives("water up");
  model->settle();
  const Alternatives* again = model->alternatives("water up");
  ASSERT_NE(again, nullptr);
  EXPECT_TRUE(again->taken);
  EXPECT_EQ(again->in_use, 1U);
  EXPECT_EQ(again->rows.size(), beside);
}

TEST_F(ModelTest, SavesAndSaysSo) {
  const auto model = opened();
  model->post(Perform{SetValue{depth, "3 in"}});
  model->post(Save{});
  model->settle();
  EXPECT_FALSE(model->job().file.unsaved);
  EXPECT_EQ(text_of_file(file), testing::with(testing::example("bevel-bench"), "  depth: 4 in", "  depth: 3 in"));
  EXPECT_EQ(model->take_notices().front().text, "Saved bench.yaml");
  EXPECT_THAT(model->recent_files(), ElementsAre(file));
  model->post(Open{folder / "none.yaml"});
  model->settle();
  EXPECT_THAT(model->take_notices().front().text, HasSubstr("there is no such file"));
  EXPECT_EQ(model->job().file.path, file);
}

TEST_F(ModelTest, AChangeOnDiskIsNoticedWithoutBeingAskedFor) {
  const auto model = opened();
  write_file(file, testing::example("bevel-bench") + "# theirs\n");
  EXPECT_TRUE(soon(*model, [&] { return model->job().file.on_disk == OnDisk::changed; }));
  model->post(Reload{});
  model->settle();
  EXPECT_THAT(model->job().text, HasSubstr("# theirs"));
  EXPECT_EQ(model->job().file.on_disk, OnDisk::same);
}

TEST_F(ModelTest, AnotherUnitSystemIsAWayOfWritingAndPlansNothing) {
  const auto model = opened();
  model->post(Perform{SetValue{depth, "3 in"}});
  model->settle();
  const auto plan = model->plan().plan;
  const JobState before = model->job();
  int plans = 0;
  ViewState view = model->view();
  for (int i = 0; i < 20; ++i) {
    view.units = i % 2 == 0 ? quantity::UnitSystem::metric : quantity::UnitSystem::inch;
    model->post(SetView{view});
    EXPECT_EQ(model->units(), *view.units);  // at once
    model->poll();
    EXPECT_TRUE(model->plan().current);
    model->settle();
    if (model->plan().plan != plan) ++plans;
  }
  EXPECT_EQ(plans, 0);
  EXPECT_EQ(model->job().revision, before.revision);
  EXPECT_EQ(model->job().text, before.text);
  EXPECT_EQ(model->job().undo_name, before.undo_name);
  EXPECT_EQ(model->job().redo_name, std::nullopt);
}

TEST_F(ModelTest, TheUnitsOfAJobStayWithItAndThoseThatAFileNamesBeatTheHabit) {
  ViewState view;
  view.units = quantity::UnitSystem::metric;
  view.moved["reservoir"] = {10.0F, 20.0F};
  write_file(folder / "silent.yaml", testing::with(testing::example("bevel-bench"), "units: inch\n", ""));
  write_file(folder / "own.yaml", testing::example("bevel-bench"));
  {
    const auto model = opened();
    model->post(SetView{view});
    model->settle();
    EXPECT_FALSE(model->job().file.unsaved);
  }
  EXPECT_EQ(read_view(text_of_file(folder / "bench.view.yaml")), view);
  const auto model = opened();
  EXPECT_EQ(model->view(), view);  // as they were chosen for this very job
  EXPECT_EQ(text_of_file(file), testing::example("bevel-bench"));
  model->post(Open{folder / "own.yaml"});
  model->settle();
  EXPECT_EQ(model->units(), quantity::UnitSystem::inch);
  EXPECT_TRUE(model->view().moved.empty());
  // A file that names none, and a new job, begin with the user's habit.
  model->post(Open{folder / "silent.yaml"});
  model->settle();
  EXPECT_EQ(model->units(), quantity::UnitSystem::metric);
  model->post(StartNew{});
  model->settle();
  EXPECT_EQ(model->view().units, view.units);
  EXPECT_TRUE(model->view().moved.empty());
  EXPECT_EQ(started()->view().units, view.units);
}

// By the light in the shop: a job that was left dark yesterday opens light where that was chosen since.
TEST_F(ModelTest, LightOrDarkIsTheProgramsAndNoJobs) {
  write_file(folder / "other.yaml", testing::example("bevel-bench"));
  ViewState dark;
  dark.looks = Looks::dark;
  const auto model = opened();
  model->post(SetView{dark});
  model->settle();
  model->post(Open{folder / "other.yaml"});
  model->settle();
  EXPECT_EQ(model->view().looks, Looks::dark);
  model->post(SetView{ViewState()});
  model->settle();
  model->post(Open{file});
  model->settle();
  EXPECT_EQ(model->view().looks, Looks::light);
}

TEST_F(ModelTest, UnsavedWorkIsThereAgainNextTime) {
  {
    const auto model = opened();
    model->post(Perform{SetValue{depth, "3 in"}});
  }
  {
    const auto model = started();
    ASSERT_EQ(model->recoveries().size(), 1U);
    model->post(Recover{model->recoveries().front()});
    model->settle();
    EXPECT_THAT(model->job().text, HasSubstr("depth: 3 in"));
    EXPECT_TRUE(model->job().file.unsaved);
    EXPECT_EQ(model->job().file.path, file);
    EXPECT_TRUE(model->recoveries().empty());
    model->post(GiveUpUnsaved{});
  }
  EXPECT_TRUE(started()->recoveries().empty());
}

TEST_F(ModelTest, AFileThatDoesNotLoadShowsItsMistakesAndNoPlan) {
  write_file(file, "reservoir: {inside: [\n");
  const auto model = opened();
  EXPECT_EQ(model->job().job, nullptr);
  ASSERT_FALSE(model->job().problems.empty());
  EXPECT_GT(model->job().problems.front().line, 0);
  EXPECT_EQ(model->plan().plan, nullptr);
  EXPECT_FALSE(model->plan().current);
  model->post(Perform{SetText{testing::example("bevel-bench")}});
  model->settle();
  EXPECT_TRUE(model->plan().current);
}

}  // namespace
}  // namespace riserun::gui
