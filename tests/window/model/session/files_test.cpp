// Files: whole or not at all, known again, and unsaved work that outlives the program.
#include "gui/model/canvas/view_state.h"
#include "gui/model/session/job_file.h"
#include "gui/model/session/open_job.h"
#include "gui/model/session/state_folder.h"
#include "plan/job/read_job.h"
#include "window/model/bench.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <random>

namespace riserun::gui {
namespace {

namespace fs = std::filesystem;
using ::testing::ElementsAre;
using testing::Folder;
using ::testing::HasSubstr;
using ::testing::SizeIs;
using testing::text_of_file;
using testing::write_file;

std::vector<std::string> names_in(const fs::path& folder) {
  std::vector<std::string> names;
  for (const auto& entry : fs::directory_iterator(folder)) names.push_back(entry.path().filename().string());
  std::sort(names.begin(), names.end());
  return names;
}

/// Every line tells the version, so that a text that is not of one piece is seen.
std::string version(unsigned number, std::size_t lines) {
  std::string text;
  for (std::size_t i = 0; i < lines; ++i) text += "# version " + std::to_string(number) + "\n";
  return text + "end " + std::to_string(number) + "\n";
}

bool is_whole(const std::string& text, std::size_t lines) {
  const std::size_t last = text.rfind("end ");
  if (last == std::string::npos || !text.ends_with('\n')) return false;
  return text == version(static_cast<unsigned>(std::stoul(text.substr(last + 4))), lines);
}

/// Saves one of two texts, again and again, until it is killed; says so once the first save is done. The texts are made
/// beforehand, so that most of the time is that of saving.
[[noreturn]] void save_for_ever(const fs::path& file, unsigned first, std::size_t lines, int ready) {
  const std::string texts[] = {version(first, lines), version(first + 1, lines)};
  for (unsigned number = 0;; ++number) {
    write_whole(file, texts[number % 2]);
    if (number == 0 && ::write(ready, "x", 1) != 1) ::_exit(1);
  }
}

TEST(Saving, KilledTwoHundredTimesLeavesTheOldFileOrTheNewOneWhole) {
  constexpr std::size_t kLines = 4000;
  constexpr int kKills = 200;
  const Folder folder;
  const fs::path file = folder / "bench.yaml";
  std::mt19937 random(11);
  int in_the_middle = 0;
  for (int kill = 0; kill < kKills; ++kill) {
    int ready[2];
    ASSERT_EQ(::pipe(ready), 0);
    const pid_t child = ::fork();
    ASSERT_GE(child, 0);
    if (child == 0) save_for_ever(file, static_cast<unsigned>(kill) * 100000, kLines, ready[1]);
    char byte = 0;
    ASSERT_EQ(::read(ready[0], &byte, 1), 1);
    ::usleep(std::uniform_int_distribution<useconds_t>(0, 12000)(random));
    ASSERT_EQ(::kill(child, SIGKILL), 0);
    ASSERT_EQ(::waitpid(child, nullptr, 0), child);
    ::close(ready[0]);
    ::close(ready[1]);
    const std::string now = text_of_file(file);
    ASSERT_TRUE(is_whole(now, kLines)) << "after kill " << kill << ": " << now.size() << " bytes";
    in_the_middle += names_in(folder.path()).size() > 1 ? 1 : 0;  // the unfinished file is still there
  }
  EXPECT_GT(in_the_middle, kKills / 10) << "too few kills hit a save";
  ASSERT_FALSE(write_whole(file, "the last\n"));
  EXPECT_THAT(names_in(folder.path()), ElementsAre("bench.yaml"));  // what the killed ones left is swept away
  std::cout << in_the_middle << " of " << kKills << " killed in the middle of a save\n";
}

TEST(Saving, KeepsModeAndLinks) {
  const Folder folder;
  write_file(folder / "real.yaml", "old\n");
  ASSERT_EQ(::chmod((folder / "real.yaml").c_str(), 0640), 0);
  fs::create_symlink("real.yaml", folder / "link.yaml");
  ASSERT_FALSE(write_whole(folder / "link.yaml", "new\n"));
  EXPECT_TRUE(fs::is_symlink(folder / "link.yaml"));
  EXPECT_EQ(text_of_file(folder / "real.yaml"), "new\n");
  struct stat status {};
  ASSERT_EQ(::stat((folder / "real.yaml").c_str(), &status), 0);
  EXPECT_EQ(status.st_mode & 0777U, 0640U);
}

TEST(Saving, SaysWhyAFileCannotBeWritten) {
  const Folder folder;
  const auto error = write_whole(folder / "no such folder" / "bench.yaml", "x");
  ASSERT_TRUE(error);
  EXPECT_THAT(error->reason, HasSubstr("cannot be saved in this folder: No such file or directory"));
  EXPECT_THAT(std::get<FileError>(read_whole(folder.path())).reason, HasSubstr("this is a folder, not a file"));
}

TEST(SideFile, SaysAgainWhatWasWritten) {
  ViewState view;
  view.units = quantity::UnitSystem::metric;
  view.looks = Looks::dark;
  view.pan = {-12.5F, 1.0e5F};
  view.zoom = 1.37F;
  view.moved = {{"reservoir", {1.0F, 2.0F}}, {"a \"b\": c\\d/é, #1", {-3.25F, 1.0F / 3.0F}}};
  EXPECT_EQ(read_view(write_view(view)), view);
  EXPECT_EQ(read_view(write_view({})), ViewState());
  EXPECT_EQ(side_file_of("/shop/bench.yaml"), "/shop/bench.view.yaml");
}

TEST(SideFile, RubbishIsAsGoodAsNone) {
  for (const char* text :
       {"", "[", "moved by: 3", "{a: b", "\x01\x02", "- 1\n- 2\n", "moved by: [{node: a, at: [1]}, 7, {at: [1, 2]}]",
        "zoom: nan\npan: [inf, 2]\nlooks: 7\nunits: [metric]\n"})
    EXPECT_EQ(read_view(text), ViewState()) << text;
  EXPECT_EQ(read_view("zoom: 1000").zoom, 8.0F);
  EXPECT_EQ(read_view("zoom: -1").zoom, 0.05F);
  const std::string good = write_view({quantity::UnitSystem::inch, Looks::dark, {{"table", {5, 6}}}, {1, 2}, 2});
  std::mt19937 random(5);
  for (int i = 0; i < 3000; ++i) {
    std::string text = good;
    for (int k = 0; k < 3; ++k) text[random() % text.size()] = static_cast<char>(random() % 256);
    const ViewState view = read_view(text.substr(0, random() % (text.size() + 1)));
    ASSERT_TRUE(view.zoom >= 0.05F && view.zoom <= 8.0F);
  }
}

TEST(StateFolder, IsWhereTheSpecificationSays) {
  ::setenv("XDG_STATE_HOME", "/var/odd", 1);
  EXPECT_EQ(state_folder(), "/var/odd/riserun");
  ::setenv("XDG_STATE_HOME", "not/absolute", 1);
  ::setenv("HOME", "/home/somebody", 1);
  EXPECT_EQ(state_folder(), "/home/somebody/.local/state/riserun");
}

TEST(RecentFiles, AreNewestFirstEachOnceAndOnlyThoseThatAreThere) {
  const Folder folder;
  const fs::path state = folder / "state";
  EXPECT_TRUE(recent_files(state).empty());
  for (const char* name : {"a.yaml", "b.yaml", "c.yaml", "a.yaml"}) {
    write_file(folder / name, "x");
    note_recent(state, folder / name);
  }
  fs::remove(folder / "b.yaml");
  EXPECT_THAT(recent_files(state), ElementsAre(folder / "a.yaml", folder / "c.yaml"));
  for (int i = 0; i < 30; ++i) {
    write_file(folder / std::to_string(i), "x");
    note_recent(state, folder / std::to_string(i));
  }
  EXPECT_THAT(recent_files(state), SizeIs(kMostRecent));
  write_file(state / "recent", std::string(5000, '\xff'));
  EXPECT_TRUE(recent_files(state).empty());
}

class OpenJobTest : public ::testing::Test {
 protected:
  void SetUp() override { write_file(file, testing::example("bevel-bench")); }
  void change(OpenJob& job, const std::string& depth) {
    const Outcome outcome = job.editor().perform(SetValue{at("table") / "depth", depth});
    ASSERT_TRUE(outcome.done) << outcome.reason;
  }
  OpenJob opened() {
    OpenJob job(testing::shipped_catalog(), folder / "state");
    EXPECT_TRUE(job.open(file).done);
    return job;
  }
  Folder folder;
  const fs::path file = folder / "bench.yaml";
};

TEST_F(OpenJobTest, ASavedJobLoadsAgainAndDiffersOnlyWhereItWasEdited) {
  OpenJob job = opened();
  change(job, "3-3/4 in");
  EXPECT_TRUE(job.is_unsaved());
  EXPECT_TRUE(job.save().done);
  EXPECT_FALSE(job.is_unsaved());
  EXPECT_EQ(text_of_file(file), testing::with(testing::example("bevel-bench"), "  depth: 4 in", "  depth: 3-3/4 in"));
  EXPECT_NO_THROW(plan::load_job(*testing::shipped_catalog(), file));
  EXPECT_THAT(recent_files(folder / "state"), ElementsAre(file));
}

TEST_F(OpenJobTest, AJobThatDoesNotLoadIsNotSaved) {
  OpenJob job = opened();
  job.editor().perform(SetText{"name: half a job\n"});
  for (const Outcome& outcome : {job.save(), job.save_as(folder / "other.yaml")}) {
    EXPECT_FALSE(outcome.done);
    EXPECT_THAT(outcome.reason, HasSubstr("the job would not load again"));
    EXPECT_FALSE(outcome.problems.empty());
  }
  EXPECT_EQ(text_of_file(file), testing::example("bevel-bench"));
  EXPECT_FALSE(fs::exists(folder / "other.yaml"));
}

TEST_F(OpenJobTest, AJobIsNotSavedWhereTheFilesItNamesAreNot) {
  fs::create_directory(folder / "away");
  write_file(folder / "drawer.yaml", "bin:\n  - {part: 1 x 1/2 hex bushing black iron, count: 1}\n");
  std::string text = testing::example("air-too-weak") + "bin: drawer.yaml\n";
  write_file(file, text);
  OpenJob job = opened();
  EXPECT_FALSE(job.save_as(folder / "away" / "bench.yaml").done);
  EXPECT_EQ(job.file_state().path, file);
  EXPECT_TRUE(job.save_as(folder / "second.yaml").done);
  EXPECT_EQ(job.file_state().path, folder / "second.yaml");
}

TEST_F(OpenJobTest, AChangedFileIsNoticedAndNotWrittenOver) {
  OpenJob job = opened();
  change(job, "3 in");
  EXPECT_FALSE(job.look_at_disk());
  const std::string theirs = testing::example("bevel-bench") + "# theirs\n";
  write_file(file, theirs);
  EXPECT_TRUE(job.look_at_disk());
  EXPECT_EQ(job.file_state().on_disk, OnDisk::changed);
  EXPECT_THAT(job.save().reason, HasSubstr("was changed by another program"));
  EXPECT_EQ(text_of_file(file), theirs);
  job.keep_mine();
  EXPECT_TRUE(job.is_unsaved());
  EXPECT_TRUE(job.save().done);
  write_file(file, theirs);
  EXPECT_TRUE(job.look_at_disk());
  const std::string mine = job.editor().text();
  EXPECT_TRUE(job.reload().done);
  EXPECT_EQ(job.editor().text(), theirs);
  EXPECT_FALSE(job.is_unsaved());
  EXPECT_TRUE(job.editor().undo());
  EXPECT_EQ(job.editor().text(), mine);
  fs::remove(file);
  EXPECT_TRUE(job.look_at_disk());
  EXPECT_EQ(job.file_state().on_disk, OnDisk::gone);
  EXPECT_TRUE(job.save().done);
}

TEST_F(OpenJobTest, UnsavedWorkOutlivesAKillAndIsNobodyElsesWhileItsProgramLives) {
  int ready[2];
  ASSERT_EQ(::pipe(ready), 0);
  const pid_t child = ::fork();
  ASSERT_GE(child, 0);
  if (child == 0) {
    OpenJob job(testing::shipped_catalog(), folder / "state");
    job.open(file);
    job.editor().perform(SetValue{at("table") / "depth", "2-7/8 in"});
    job.keep_copy();
    if (::write(ready[1], "x", 1) != 1) ::_exit(1);
    while (true) ::pause();
  }
  char byte = 0;
  ASSERT_EQ(::read(ready[0], &byte, 1), 1);
  EXPECT_TRUE(recoveries(folder / "state").empty());
  ::kill(child, SIGKILL);
  ::waitpid(child, nullptr, 0);
  const std::vector<Recovery> copies = recoveries(folder / "state");
  ASSERT_THAT(copies, SizeIs(1));
  EXPECT_EQ(copies.front().job_file, file);
  EXPECT_EQ(copies.front().name, "bench.yaml");
  EXPECT_EQ(text_of_file(file), testing::example("bevel-bench"));
  OpenJob job(testing::shipped_catalog(), folder / "state");
  EXPECT_TRUE(job.recover(copies.front()).done);
  EXPECT_THAT(job.editor().text(), HasSubstr("depth: 2-7/8 in"));
  EXPECT_TRUE(job.is_unsaved());
  EXPECT_TRUE(recoveries(folder / "state").empty());
  EXPECT_TRUE(job.save().done);
  EXPECT_THAT(text_of_file(file), HasSubstr("depth: 2-7/8 in"));
}

TEST_F(OpenJobTest, ACopyGoesWithTheSavingOrWhenItIsGivenUp) {
  {
    OpenJob job = opened();
    change(job, "3 in");
    job.keep_copy();
    EXPECT_TRUE(job.save().done);
  }
  EXPECT_TRUE(recoveries(folder / "state").empty());
  {
    OpenJob job = opened();
    change(job, "2 in");
    job.keep_copy();
    job.give_up_unsaved();
    job.keep_copy();
  }
  EXPECT_TRUE(recoveries(folder / "state").empty());
  {
    OpenJob job = opened();
    change(job, "2 in");
    job.keep_copy();
  }
  const std::vector<Recovery> copies = recoveries(folder / "state");
  ASSERT_THAT(copies, SizeIs(1));
  remove(copies.front());
  EXPECT_TRUE(recoveries(folder / "state").empty());
}

TEST_F(OpenJobTest, AFileWithMistakesIsOpenedWithTheirPlaces) {
  write_file(file, testing::with(testing::example("bevel-bench"), "  depth: 4 in", "  depth: 4 psi"));
  OpenJob job = opened();
  EXPECT_EQ(job.editor().job(), nullptr);
  ASSERT_FALSE(job.editor().problems().empty());
  EXPECT_EQ(job.editor().problems().front().line, 34);
  EXPECT_FALSE(OpenJob(testing::shipped_catalog(), {}).open(folder / "none.yaml").done);
}

}  // namespace
}  // namespace riserun::gui
