// Lines of words that are broken at their blanks and nowhere else.
#include "gui/views/scene/scene.h"

#include <gtest/gtest.h>
#include <imgui.h>

#include <algorithm>
#include <sstream>

namespace riserun::views {
namespace {

class AtBlanks : public testing::Test {
 protected:
  void SetUp() override {
    font_ = atlas_.AddFontDefault();
    ASSERT_TRUE(atlas_.Build());
  }
  float width(const std::string& text) const {
    return font_->CalcTextSizeA(font_->FontSize, FLT_MAX, 0.0F, text.c_str()).x;
  }

  ImFontAtlas atlas_;
  ImFont* font_ = nullptr;
};

TEST_F(AtBlanks, APriceStaysWhole) {
  const std::string text = "water up:\n3 parts, $41.10";
  EXPECT_EQ(at_blanks(*font_, text, width("3 parts, $41.1")), "water up:\n3 parts,\n$41.10");
  EXPECT_EQ(at_blanks(*font_, text, width("3 parts, $41.10")), text);
}

TEST_F(AtBlanks, NothingIsLostAndEachLineHoldsAsManyWordsAsFit) {
  const std::string text = "set 2.25 psi, 13-3/8 in;  two blanks,\n\n and averyveryverylongword: $1,041.10 in all";
  for (float wide = 1.0F; wide < 1.2F * width(text); wide += 3.0F) {
    const std::string lines = at_blanks(*font_, text, wide);
    std::string flat = lines;
    std::string wanted = text;
    std::replace(flat.begin(), flat.end(), '\n', ' ');
    std::replace(wanted.begin(), wanted.end(), '\n', ' ');
    EXPECT_EQ(flat, wanted) << wide;
    std::istringstream in(lines);
    std::string before;
    for (std::string line; std::getline(in, line); before = line) {
      EXPECT_TRUE(width(line) <= wide || line.find(' ') == std::string::npos) << wide << ": " << line;
      const bool broken_here = text.find(before + "\n" + line) == std::string::npos;
      if (broken_here && !before.empty()) {
        EXPECT_GT(width(before + " " + line.substr(0, line.find(' '))), wide) << line;
      }
    }
  }
}

}  // namespace
}  // namespace riserun::views
