// Every part of the shipped catalog can be drawn, and the drawing says what its ports are.
#include "report/drawing/part_drawing.h"

#include "unit/plan/shipped.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>

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

bool shows_its_inside(const Part& part) {
  const catalog::Role role = shipped().family(part.family).role;
  return role != catalog::Role::gauge && role != catalog::Role::hose_clamp;
}

TEST(PartDrawing, SocketsShowWhatTheyTakeUpInHiddenLines) {
  for (const Part& part : shipped().parts()) {
    if (!shows_its_inside(part)) continue;
    std::size_t female = 0;
    bool hose = false;
    for (const catalog::Port& port : part.ports) {
      const catalog::PortType& type = shipped().port_type(port.type);
      female += type.end == End::female ? 1U : 0U;
      hose = hose || shipped().kind(type.kind).female_shape == catalog::EndShape::hose;
    }
    const Drawing drawing = straight(part);
    const bool plug = shipped().family(part.family).role == catalog::Role::plug;
    EXPECT_EQ(count(drawing, "bore"), plug ? 0 : 2 * part.ports.size()) << part.id;
    EXPECT_GE(count(drawing, "axis"), part.ports.size()) << part.id;
    if (!hose) {
      EXPECT_EQ(count(drawing, "mouth"), female) << part.id;
    }
    for (const Shape& shape : drawing.shapes)
      if (const Stroke* stroke = std::get_if<Stroke>(&shape); stroke != nullptr && stroke->name == "mouth") {
        EXPECT_EQ(stroke->line, Line::hidden) << part.id;
      }
  }
}

TEST(PartDrawing, StepsOfTheBoreAreInScaleToEachOther) {
  const auto id = shipped().find_part("hex-bushing/black-iron/1x3-4");
  ASSERT_TRUE(id);
  const Part& bushing = shipped().part(*id);
  std::vector<double> offsets;  // of the bore's lines from the axis
  for (const Shape& shape : straight(bushing).shapes)
    if (const Stroke* stroke = std::get_if<Stroke>(&shape); stroke != nullptr && stroke->name == "bore")
      offsets.push_back(std::abs(stroke->points.front().y));
  ASSERT_EQ(offsets.size(), 4U);
  EXPECT_NEAR(offsets[0], in_metres(bushing.ports[0].bore) / 2.0, 1e-9);
  EXPECT_NEAR(offsets[2], in_metres(bushing.ports[1].bore) / 2.0, 1e-9);
}

TEST(PartDrawing, TheEnteredPortLooksLeft) {
  for (const Part& part : shipped().parts()) {
    if (part.ports.size() < 2) continue;
    for (const std::size_t enter : {std::size_t{0}, std::size_t{1}}) {
      const PartPicture picture = part_picture(shipped(), part, enter, 1 - enter);
      EXPECT_LT(picture.ports[enter].at.x, 0.0) << part.id;
      EXPECT_NEAR(picture.ports[enter].at.y, 0.0, 1e-9) << part.id;
      // What is not broken is as long as the catalog says, unless it says next to nothing.
      if (!picture.broken && in_metres(part.ports[enter].reach) > 0.03) {
        EXPECT_NEAR(-picture.ports[enter].at.x, in_metres(part.ports[enter].reach), 1e-9) << part.id;
      }
    }
  }
}

TEST(PartDrawing, EachKindHasWhatAFitterKnowsItBy) {
  const std::vector<std::pair<std::string, std::vector<std::string>>> told = {
      {"ball valve", {"lever", "ball"}},
      {"gate valve", {"wheel", "bonnet"}},
      {"hose bibb", {"wheel"}},
      {"needle valve", {"knob"}},
      {"check valve", {"flap", "arrow"}},
      {"spring check valve", {"spring", "arrow"}},
      {"foot valve", {"basket"}},
      {"pipe strainer", {"leg", "screen", "arrow"}},
      {"sediment filter housing", {"bowl"}},
      {"union", {"union nut"}},
      {"dielectric union", {"insulator"}},
      {"pressure gauge", {"dial", "hand"}},
      {"relief valve", {"bonnet", "outlet", "ring"}},
      {"air regulator", {"knob", "spring", "arrow"}},
      {"restrictor", {"orifice"}},
      {"vent muffler", {"sinter"}},
      {"hose clamp", {"screw", "band"}},
      {"barb splicer", {"barb"}},
      {"cam coupler D", {"lever"}},
      {"cam adapter A", {"groove"}},
      {"threaded flange", {"flange", "bolt hole"}},
      {"bulkhead fitting", {"lock nut", "gasket"}},
      {"hex nipple", {"hexagon", "thread"}},
      {"BSP hex nipple", {"hexagon", "thread"}},
      {"combination nipple", {"barb", "body", "thread"}},
      {"plug", {"square", "diagonal"}},
      {"hex head plug", {"hexagon"}},
      {"cap", {"cap"}},
      {"garden hose", {"nut", "break"}},
      {"90 elbow", {"elbow", "band"}},
      {"air coupler", {"sleeve", "knurl"}},
      {"push-in connector", {"collar"}},
      {"PEX coupling", {"ring"}},
      {"37 flare connector", {"cone"}}};
  for (const auto& [name, shapes] : told) {
    const auto family = shipped().find_family(name);
    ASSERT_TRUE(family) << name;
    for (const Part& part : shipped().parts()) {
      if (part.family != *family) continue;
      const Drawing drawing = straight(part);
      for (const std::string& shape : shapes) EXPECT_GT(count(drawing, shape), 0U) << part.id << ' ' << shape;
      break;
    }
  }
}

const Part& first_of(const std::string& family) {
  for (const Part& part : shipped().parts())
    if (shipped().family(part.family).name == family) return part;
  throw std::logic_error("no part of the family " + family);
}

// What a fitter knows a part by (common practice in trade catalogs' line drawings).
TEST(PartDrawing, FamiliesHaveWhatTheyAreKnownBy) {
  EXPECT_EQ(count(straight(first_of("hose")), "lay line"), 2U);
  EXPECT_EQ(count(straight(first_of("nipple")), "lay line"), 0U);
  EXPECT_GE(count(straight(first_of("barb to male pipe")), "barb"), 3U);
  EXPECT_EQ(count(straight(first_of("reducing nipple")), "swage"), 1U) << "drawn down between two straight pieces";
  EXPECT_EQ(count(straight(first_of("hose bibb")), "wheel"), 1U);
  EXPECT_GE(count(straight(first_of("hex bushing")), "thread"), 10U) << "outside and, hidden, inside";
}

/// How far the outlines of that name go across, of what all of it does.
double share_across(const Drawing& drawing, const std::string& name) {
  double most = 0.0;
  for (const Shape& shape : drawing.shapes)
    if (const Area* area = std::get_if<Area>(&shape); area != nullptr && area->name == name)
      for (const Spot& spot : area->outline) most = std::max(most, 2.0 * std::abs(spot.y));
  return most / drawing.height();
}

// With its name covered each of these was taken for another part (common practice in trade catalogs' line drawings).
TEST(PartDrawing, WhatWasTakenForAnotherHasWhatTellsIt) {
  const Drawing plug = straight(first_of("plug"));
  EXPECT_LT(share_across(plug, "square"), 0.9 * share_across(plug, "spigot")) << "its head is narrower than its thread";
  EXPECT_GT(share_across(straight(first_of("air coupler")), "sleeve"), 0.95) << "its sleeve is the widest of it";
  EXPECT_EQ(count(straight(first_of("combination nipple")), "hexagon"), 0U) << "a pipe that no wrench has a face of";
  EXPECT_EQ(count(straight(first_of("PVC true-union check valve")), "union nut"), 6U) << "two nuts, three faces each";
}

TEST(PartDrawing, ARestrictorsWallLeavesItsHole) {
  const Part& part = first_of("restrictor");
  double least = 1.0;
  for (const Shape& shape : straight(part).shapes) {
    const Area* area = std::get_if<Area>(&shape);
    if (area == nullptr || area->name != "orifice" || area->fill != Ink::part_edge) continue;
    for (const Spot& spot : area->outline) least = std::min(least, std::abs(spot.y));
  }
  EXPECT_NEAR(2.0 * least, in_metres(part.ports[0].bore), 1e-9);
}

TEST(PartDrawing, ABibbsSpoutLooksDown) {
  const PartPicture picture = part_picture(shipped(), first_of("hose bibb"), 0, 1);
  ASSERT_EQ(picture.ports.size(), 2U);
  EXPECT_LT(picture.ports[1].at.y, picture.ports[0].at.y);
  EXPECT_LT(std::sin(picture.ports[1].heading * 3.14159265 / 180.0), -0.5);
}

}  // namespace
}  // namespace riserun::report
