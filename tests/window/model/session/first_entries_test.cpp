// What is typed into the boxes of a new job, while others are still empty.
#include "gui/model/session/editor.h"
#include "gui/model/session/first_measures.h"
#include "window/model/bench.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace riserun::gui {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::Not;

class FirstEntries : public ::testing::Test {
 protected:
  FirstEntries() { editor.start(blank_job(), "new job.yaml"); }

  Editor editor{testing::shipped_catalog()};
};

TEST_F(FirstEntries, AGaugeWithoutItsMetalIsRefusedBeforeTheOthersAreGiven) {
  const JobPath sheet = at("reservoir") / "sheet";
  EXPECT_FALSE(editor.perform(SetValue{sheet, "11 ga"}).done);
  const JobState state = editor.state();
  ASSERT_TRUE(state.wrong_entries.contains(sheet));
  EXPECT_EQ(state.wrong_entries.at(sheet).written, "11 ga");
  EXPECT_THAT(state.wrong_entries.at(sheet).reason, AllOf(HasSubstr("steel"), HasSubstr("stainless")));
  EXPECT_FALSE(state.values.contains(sheet));
  EXPECT_TRUE(editor.perform(SetValue{sheet, "11 ga steel"}).done);
  EXPECT_TRUE(editor.state().wrong_entries.empty());
}

TEST_F(FirstEntries, TheReasonIsOfTheBoxThatWasTypedIntoNotOfOneStillEmpty) {
  const JobPath length = at("reservoir") / "inside" / "length";
  EXPECT_FALSE(editor.perform(SetValue{length, "abc"}).done);
  EXPECT_THAT(editor.state().wrong_entries.at(length).reason, AllOf(HasSubstr("abc"), Not(HasSubstr("width"))));
  EXPECT_TRUE(editor.perform(SetValue{length, "48"}).done);
  EXPECT_EQ(editor.state().values.at(length).text, "48");
}

}  // namespace
}  // namespace riserun::gui
