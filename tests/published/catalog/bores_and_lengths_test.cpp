// Bores and lengths of the catalog's parts against pipe, tube and fitting standards.
#include "published/catalog/shipped.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace riserun::catalog {
namespace {

std::string dashed(std::string text) {
  std::replace(text.begin(), text.end(), '/', '-');
  return text;
}

/// Parts of the family with a port of that size, of any material or of one.
std::vector<const Part*> parts_of(std::string_view family, std::string_view size, std::string_view material = "") {
  std::vector<const Part*> found;
  for (const Part& part : shipped().parts()) {
    const Port& port = part.ports.empty() ? Port{} : part.ports.front();
    if (shipped().family(part.family).name != family || !port.type.valid()) continue;
    if (shipped().size_name(shipped().port_type(port.type).size) != size) continue;
    if (material.empty() || shipped().material(part.material).id == material) found.push_back(&part);
  }
  return found;
}

struct PipeRow {
  const char* size;
  double outside_diameter, wall_40, wall_80;  // in
};

// ASME B36.10M Table 1, inch columns (published). ASTM D1785 PVC has the same outside diameters and least walls.
constexpr PipeRow kPipe[] = {
    {"1/8", 0.405, 0.068, 0.095},   {"1/4", 0.54, 0.088, 0.119}, {"3/8", 0.675, 0.091, 0.126},
    {"1/2", 0.84, 0.109, 0.147},    {"3/4", 1.05, 0.113, 0.154}, {"1", 1.315, 0.133, 0.179},
    {"1-1/4", 1.66, 0.14, 0.191},   {"1-1/2", 1.9, 0.145, 0.2},  {"2", 2.375, 0.154, 0.218},
    {"2-1/2", 2.875, 0.203, 0.276}, {"3", 3.5, 0.216, 0.3},      {"3-1/2", 4.0, 0.226, 0.318},
    {"4", 4.5, 0.237, 0.337},
};

TEST(PipeBore, SteelNipplesAreScheduleForty) {
  for (const PipeRow& row : kPipe) {
    for (const char* family : {"nipple", "close nipple"}) {
      for (const char* material : {"black-iron", "galvanized"}) {
        const std::vector<const Part*> nipples = parts_of(family, row.size, material);
        EXPECT_FALSE(nipples.empty()) << row.size;
        for (const Part* part : nipples)
          for (const Port& port : part->ports)
            EXPECT_NEAR(in_inches(port.bore), row.outside_diameter - 2 * row.wall_40, kPrintedExactly) << part->id;
      }
    }
    EXPECT_NEAR(in_inches(shipped_joint("npt", row.size)->outside_diameter), row.outside_diameter, kPrintedExactly);
  }
}

TEST(PipeBore, PvcPipeIsScheduleFortyAndThreadedPvcEighty) {
  int seen = 0;
  for (const PipeRow& row : kPipe) {
    for (const Part* part : parts_of("PVC pipe", row.size)) {
      EXPECT_NEAR(in_inches(part->ports[0].bore), row.outside_diameter - 2 * row.wall_40, kPrintedExactly) << part->id;
      EXPECT_NEAR(in_inches(shipped_joint("pvc", row.size)->outside_diameter), row.outside_diameter, kPrintedExactly);
      ++seen;
    }
    for (const char* family : {"PVC nipple", "PVC close nipple"}) {
      for (const Part* part : parts_of(family, row.size)) {
        EXPECT_NEAR(in_inches(part->ports[0].bore), row.outside_diameter - 2 * row.wall_80, kPrintedExactly)
            << part->id;
        ++seen;
      }
    }
  }
  EXPECT_GE(seen, 60);
}

struct CopperRow {
  const char* size;
  char type;
  double outside_diameter, wall;  // in
};

// ASTM B88 Table 1, types L and M (published).
constexpr CopperRow kCopper[] = {
    {"1/4", 'L', 0.375, 0.03},    {"3/8", 'L', 0.5, 0.035},     {"3/8", 'M', 0.5, 0.025},
    {"1/2", 'L', 0.625, 0.04},    {"1/2", 'M', 0.625, 0.028},   {"3/4", 'L', 0.875, 0.045},
    {"3/4", 'M', 0.875, 0.032},   {"1", 'L', 1.125, 0.05},      {"1", 'M', 1.125, 0.035},
    {"1-1/4", 'L', 1.375, 0.055}, {"1-1/4", 'M', 1.375, 0.042}, {"1-1/2", 'L', 1.625, 0.06},
    {"1-1/2", 'M', 1.625, 0.049}, {"2", 'L', 2.125, 0.07},      {"2", 'M', 2.125, 0.058},
};

TEST(CopperBore, IsThatOfTheTubesType) {
  for (const CopperRow& row : kCopper) {
    const std::string id =
        "copper-tube/copper/" + dashed(row.size) + "-type-" + static_cast<char>(row.type - 'A' + 'a');
    const Part* tube = shipped_part(id);
    ASSERT_NE(tube, nullptr) << id;
    EXPECT_NEAR(in_inches(tube->ports[0].bore), row.outside_diameter - 2 * row.wall, kPrintedExactly) << id;
    EXPECT_NEAR(in_inches(shipped_joint("copper", row.size)->outside_diameter), row.outside_diameter, kPrintedExactly);
  }
}

// A hose barb is narrower than its hose: 0.75 of it in metal, 0.80 in plastic (common practice).
TEST(BarbBore, IsThatOfTheBarbAndNotOfTheHose) {
  int seen = 0;
  for (const Part& part : shipped().parts()) {
    if (shipped().family(part.family).name.find("barb") == std::string::npos) continue;
    for (const Port& port : part.ports) {
      const PortType& type = shipped().port_type(port.type);
      if (shipped().kind(type.kind).id != "hose") continue;
      const double share = port.bore / shipped().joint_size(type)->bore;
      // The catalog prints the bore of a barb to a thousandth of an inch.
      EXPECT_NEAR(share, shipped().material(part.material).id == "nylon" ? 0.80 : 0.75, 0.002) << part.id;
      ++seen;
    }
  }
  EXPECT_GE(seen, 100);
}

struct MalleableRow {
  const char* size;
  double elbow_90, elbow_45, street_male, coupling;  // in; 0: not made or not in the table
};

// ASME B16.3 class 150, inch tables I-2 and I-7: centre to end A and C, street elbow J, coupling W (from memory; A of
// 1/2 and of 1-1/4 seen in trade texts).
constexpr MalleableRow kMalleable[] = {
    {"1/8", 0.69, 0, 0, 0.96},         {"1/4", 0.81, 0.73, 1.19, 1.06},   {"3/8", 0.95, 0.8, 1.44, 1.16},
    {"1/2", 1.12, 0.88, 1.63, 1.34},   {"3/4", 1.31, 0.98, 1.89, 1.52},   {"1", 1.5, 1.12, 2.14, 1.67},
    {"1-1/4", 1.75, 1.29, 2.45, 1.93}, {"1-1/2", 1.94, 1.43, 2.69, 2.15}, {"2", 2.25, 1.68, 3.26, 2.53},
    {"2-1/2", 2.7, 1.95, 0, 2.88},     {"3", 3.08, 2.17, 0, 3.18},        {"3-1/2", 3.42, 2.39, 0, 3.43},
    {"4", 3.79, 2.61, 0, 3.69},
};

void expect_reach(std::string_view family, const char* size, std::size_t port, double inches) {
  if (inches == 0.0) return;
  for (const Part* part : parts_of(family, size))
    EXPECT_NEAR(in_inches(part->ports[port].reach), inches, kPrintedExactly) << part->id;
}

TEST(FittingLength, MalleableFittingsAreThoseOfTheStandard) {
  for (const MalleableRow& row : kMalleable) {
    for (const char* family : {"90 elbow", "tee", "cross"}) expect_reach(family, row.size, 1, row.elbow_90);
    EXPECT_FALSE(parts_of("90 elbow", row.size).empty());
    expect_reach("45 elbow", row.size, 0, row.elbow_45);
    expect_reach("90 street elbow", row.size, 1, row.street_male);
    expect_reach("coupling", row.size, 0, row.coupling / 2);
  }
}

struct ForgedRow {
  const char* size;
  double outside_diameter, full_length, half_length;  // mm
};

// ASME B16.11 class 3000, metric table (published). The catalog has the inch table; both are rounded, the metric one to
// whole and half millimetres.
constexpr ForgedRow kForged[] = {
    {"1/8", 16.0, 32.0, 16.0}, {"1/4", 19.0, 35.0, 17.5},   {"3/8", 22.0, 38.0, 19.0},   {"1/2", 28.0, 48.0, 24.0},
    {"3/4", 35.0, 51.0, 25.5}, {"1", 44.0, 60.0, 30.0},     {"1-1/4", 57.0, 67.0, 33.5}, {"1-1/2", 64.0, 79.0, 39.5},
    {"2", 76.0, 86.0, 43.0},   {"2-1/2", 92.0, 92.0, 46.0}, {"3", 108.0, 108.0, 54.0},   {"4", 140.0, 121.0, 60.5},
};
constexpr double kWholeMillimetre = 0.51;

TEST(FittingLength, WeldBungsAreThoseOfTheStandard) {
  for (const ForgedRow& row : kForged) {
    for (const char* material : {"forged-steel", "stainless"}) {
      const Part* full = shipped_part(std::string("full-coupling/") + material + "/" + dashed(row.size));
      const Part* half = shipped_part(std::string("half-coupling/") + material + "/" + dashed(row.size));
      ASSERT_TRUE(full != nullptr && half != nullptr) << row.size;
      EXPECT_NEAR(in_millimetres(full->ports[0].reach + full->ports[1].reach), row.full_length, kWholeMillimetre);
      EXPECT_NEAR(in_millimetres(half->ports[0].reach + half->ports[1].reach), row.half_length, kWholeMillimetre);
    }
    // The outside diameter in the metric table is a whole millimetre, in the inch table a sixteenth rounded to 0.01.
    EXPECT_NEAR(in_millimetres(shipped_joint("weld", row.size)->outside_diameter), row.outside_diameter, 0.75)
        << row.size;
  }
}

struct CloseRow {
  const char* size;
  double length;  // in
};

// ASTM A733 close nipples as a drainage-fitting table reprints them (published).
constexpr CloseRow kClose[] = {{"1-1/2", 1.75}, {"2", 2.0}, {"3", 2.625}, {"4", 2.875}};

TEST(FittingLength, CloseNipplesAreThoseOfTheStandard) {
  for (const CloseRow& row : kClose)
    for (const Part* part : parts_of("close nipple", row.size))
      EXPECT_NEAR(in_inches(part->ports[0].reach + part->ports[1].reach), row.length, kPrintedExactly) << part->id;
}

// ASTM A733: half inches to 6 in, then whole inches to 12 in (from memory). The shortest is the shoulder nipple.
TEST(FittingLength, NipplesStepByHalvesToSixAndThenByInchesToTwelve) {
  for (const char* size : {"1/8", "1/2", "1", "2", "4"}) {
    std::vector<double> lengths;
    for (const Part* part : parts_of("nipple", size, "black-iron"))
      lengths.push_back(in_inches(part->ports[0].reach + part->ports[1].reach));
    std::sort(lengths.begin(), lengths.end());
    ASSERT_GE(lengths.size(), 11u) << size;
    for (std::size_t i = 1; i < lengths.size(); ++i)
      EXPECT_NEAR(lengths[i] - lengths[i - 1], lengths[i] > 6.01 ? 1.0 : 0.5, 1e-9) << size << ' ' << lengths[i];
    EXPECT_NEAR(lengths.back(), 12.0, 1e-9) << size;
  }
}

// A part that goes between two fittings is longer than what goes into them.
TEST(FittingLength, EveryPieceIsLongerThanItsMakeUp) {
  for (const Part& part : shipped().parts()) {
    if (part.ports.size() != 2) continue;
    Length make_up{};
    for (const Port& port : part.ports) {
      const PortType& type = shipped().port_type(port.type);
      if (type.end == End::male) make_up += shipped().joint_size(type)->make_up();
    }
    EXPECT_GT(part.ports[0].reach + part.ports[1].reach, make_up) << part.id;
  }
}

}  // namespace
}  // namespace riserun::catalog
