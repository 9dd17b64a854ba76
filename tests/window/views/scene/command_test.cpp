#include "gui/views/scene/command.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>

namespace riserun::views {
namespace {

TEST(Commands, EachHasAKeyOfItsOwn) {
  std::set<std::string> keys;
  for (const CommandRow& command : commands()) {
    EXPECT_FALSE(keys_of(command).empty()) << command.name;
    EXPECT_TRUE(keys.insert(keys_of(command)).second) << command.name << " shares " << keys_of(command);
  }
}

TEST(Commands, EachHasOneRowInTheTable) {
  std::string before = "the first of Do";
  for (int i = 0; i < static_cast<int>(Do::count); ++i) {
    const auto what = static_cast<Do>(i);
    const auto rows = std::count_if(commands().begin(), commands().end(),
                                    [&](const CommandRow& command) { return command.what == what; });
    ASSERT_EQ(rows, 1) << "number " << i << " of Do, the one after " << before;
    before = row_of(what).name;
    EXPECT_NE(row_of(what).carry_out, nullptr) << before;
  }
}

TEST(Commands, TheKeyThatAMenuShowsDoesIt) {
  for (const CommandRow& command : commands())
    EXPECT_EQ(command_for(command.shortcut, false), command.what) << command.name;
}

TEST(Commands, TypingIntoAFieldIsNoCommand) {
  EXPECT_EQ(command_for({letter('F'), false, false}, true), std::nullopt);
  EXPECT_EQ(command_for({Key::space, false, false}, true), std::nullopt);
  EXPECT_EQ(command_for({letter('Z'), true, false}, true), std::nullopt) << "the field's own undo";
  EXPECT_EQ(command_for({letter('S'), true, false}, true), Do::save);
}

TEST(Commands, UsualHabitsHold) {
  EXPECT_EQ(command_for({letter('Z'), true, false}, false), Do::undo);
  EXPECT_EQ(command_for({letter('Z'), true, true}, false), Do::redo);
  EXPECT_EQ(command_for({letter('Y'), true, false}, false), Do::redo);
  EXPECT_EQ(command_for({Key::equal, true, true}, false), Do::larger_text) << "+ is Shift and = on many keyboards";
}

}  // namespace
}  // namespace riserun::views
