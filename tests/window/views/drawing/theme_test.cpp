#include "gui/views/drawing/theme.h"

#include <gtest/gtest.h>

namespace riserun::views {
namespace {

// W3C WCAG 2.1, success criterion 1.4.3: text at least 4.5 to 1.
constexpr double kLeastContrast = 4.5;

class EachLook : public testing::TestWithParam<gui::Looks> {};

TEST_P(EachLook, TextStandsOutFromItsGround) {
  const Theme& theme = theme_of(GetParam());
  for (const TextPair& pair : text_pairs())
    EXPECT_GE(contrast(theme[pair.text], theme[pair.ground]), kLeastContrast)
        << "ink " << static_cast<int>(pair.text) << " on " << static_cast<int>(pair.ground);
}

TEST_P(EachLook, WaterIsGreenAndAirIsBlueAndBothAreLetteredWhite) {
  // ASME A13.1: other water white on green, compressed air white on blue.
  const Theme& theme = theme_of(GetParam());
  const Color& water = theme[Ink::water];
  EXPECT_GT(water.green, water.red);
  EXPECT_GT(water.green, water.blue);
  const Color& air = theme[Ink::air];
  EXPECT_GT(air.blue, air.red);
  EXPECT_GT(air.blue, air.green);
  const Color white{1.0F, 1.0F, 1.0F, 1.0F};
  EXPECT_EQ(theme[Ink::water_text], white);
  EXPECT_EQ(theme[Ink::air_text], white);
}

INSTANTIATE_TEST_SUITE_P(Looks, EachLook, testing::Values(gui::Looks::light, gui::Looks::dark),
                         [](const auto& which) { return which.param == gui::Looks::light ? "Light" : "Dark"; });

TEST(Contrast, IsThatOfThePublishedExamples) {
  // WCAG 2.1: black on white 21:1; #767676 on white 4.54:1 (W3C, understanding 1.4.3).
  const Color white{1.0F, 1.0F, 1.0F, 1.0F};
  EXPECT_NEAR(contrast({0.0F, 0.0F, 0.0F, 1.0F}, white), 21.0, 1e-9);
  const float grey = 118.0F / 255.0F;
  EXPECT_NEAR(contrast({grey, grey, grey, 1.0F}, white), 4.54, 0.005);
  EXPECT_EQ(contrast(white, white), 1.0);
}

}  // namespace
}  // namespace riserun::views
