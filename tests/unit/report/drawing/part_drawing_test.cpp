// Every part of the shipped catalog can be drawn, and the drawing says what its ports are.
#include "report/drawing/part_drawing.h"

#include "unit/plan/shipped.h"

#include <gtest/gtest.h>

#include <cmath>

namespace riserun::report {
namespace {

using catalog::Catalog;
using catalog::End;
using catalog::Part;

const Catalog& shipped() { return *plan::shipped_catalog(); }

Drawing straight(const Part& part) { return part_drawing(shipped(), part, 0, part.ports.size() > 1 ? 1 : 0); }

std::size_t count(const Drawing& drawing, const std::string& name) {
  std::size_t found = 0;
  for (const Shape& shape : drawing.shapes)
    std::visit([&](const auto& each) { found += each.name == name ? 1U : 0U; }, shape);
  return found;
}

/// Twice the signed area: above zero for an outline that turns left.
double turn(const Spot& a, const Spot& b, const Spot& c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

TEST(PartDrawing, EveryOutlineOfEveryPartIsConvexAndFinite) {
  for (const Part& part : shipped().parts()) {
    const Drawing drawing = straight(part);
    ASSERT_GT(drawing.width(), 0.0) << part.id;
    ASSERT_GT(drawing.height(), 0.0) << part.id;
    for (const Shape& shape : drawing.shapes) {
      const Area* area = std::get_if<Area>(&shape);
      if (area == nullptr) continue;
      const auto& o = area->outline;
      for (std::size_t i = 0; i < o.size(); ++i) {
        ASSERT_TRUE(std::isfinite(o[i].x) && std::isfinite(o[i].y)) << part.id;
        ASSERT_GE(turn(o[i], o[(i + 1) % o.size()], o[(i + 2) % o.size()]), -1e-12) << part.id << ' ' << area->name;
      }
    }
  }
}

TEST(PartDrawing, MaleEndsStandOutAndFemaleEndsAreOpen) {
  for (const Part& part : shipped().parts()) {
    std::size_t female = 0;
    for (const catalog::Port& port : part.ports) female += shipped().port_type(port.type).end == End::female ? 1U : 0U;
    const Drawing drawing = straight(part);
    EXPECT_EQ(count(drawing, "mouth"), female) << part.id;
    EXPECT_EQ(count(drawing, "socket"), female) << part.id;
    EXPECT_EQ(count(drawing, "bore"), part.ports.size()) << part.id;
  }
}

TEST(PartDrawing, StepsOfTheBoreAreInScaleToEachOther) {
  const auto id = shipped().find_part("hex-bushing/black-iron/1x3-4");
  ASSERT_TRUE(id);
  const Part& bushing = shipped().part(*id);
  const Drawing drawing = straight(bushing);
  std::vector<double> heights;
  for (const Shape& shape : drawing.shapes)
    if (const Area* area = std::get_if<Area>(&shape); area != nullptr && area->name == "bore")
      heights.push_back(std::abs(area->outline[3].y - area->outline[0].y));
  ASSERT_EQ(heights.size(), 2u);
  EXPECT_NEAR(heights[0] / heights[1], in_metres(bushing.ports[0].bore) / in_metres(bushing.ports[1].bore), 1e-9);
}

TEST(PartDrawing, TheEnteredPortLooksLeft) {
  for (const Part& part : shipped().parts()) {
    if (part.ports.size() < 2) continue;
    for (const std::size_t enter : {std::size_t{0}, std::size_t{1}}) {
      const Drawing drawing = part_drawing(shipped(), part, enter, 1 - enter);
      const Area* bore = nullptr;
      std::size_t row = 0;
      for (const Shape& shape : drawing.shapes)
        if (const Area* area = std::get_if<Area>(&shape); area != nullptr && area->name == "bore" && row++ == enter)
          bore = area;
      ASSERT_NE(bore, nullptr);
      EXPECT_LT(bore->outline[1].x + bore->outline[2].x, 0.0) << part.id;
    }
  }
}

}  // namespace
}  // namespace riserun::report
