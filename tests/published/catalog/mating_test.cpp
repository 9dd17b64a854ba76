// What goes into what, and what must not: one row for each pair of the thread standards and of the trade's rules.
#include "published/catalog/shipped.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace riserun::catalog {
namespace {

enum class Verdict { mates, must_not };

struct PairRow {
  const char* kind_a;
  End end_a;
  const char* kind_b;
  End end_b;
  Verdict verdict;
  std::vector<const char*> sizes;  // empty: every size that both kinds have
  const char* source;
};

constexpr End kMale = End::male;
constexpr End kFemale = End::female;
constexpr End kNeither = End::neither;

const std::vector<PairRow>& verdicts() {
  static const std::vector<PairRow> rows = {
      {"npt", kMale, "npt", kFemale, Verdict::mates, {}, "ASME B1.20.1 1.4, 3.1 (published)"},
      {"npt", kMale, "npsm", kFemale, Verdict::mates, {}, "thread guides; ASME B1.20.1 section 5 (published)"},
      {"npt", kMale, "npsh", kFemale, Verdict::mates, {}, "ASME B1.20.1 section 1.2, sizes 1/2 to 4 (published)"},
      {"npsm", kMale, "npsm", kFemale, Verdict::mates, {}, "ASME B1.20.1 (from memory)"},
      {"npsm", kMale, "npt", kFemale, Verdict::must_not, {}, "ASME B1.20.1; common practice"},
      {"bspt", kMale, "bspt", kFemale, Verdict::mates, {}, "ISO 7-1 (published)"},
      {"bspt",
       kMale,
       "bsp-rp",
       kFemale,
       Verdict::mates,
       {},
       "ISO 7-1: taper external in parallel internal (published)"},
      {"bspp", kMale, "bsp-rp", kFemale, Verdict::must_not, {}, "ISO 7-1, ISO 228-1: nothing seals (published)"},
      {"npt", kMale, "bsp-rp", kFemale, Verdict::must_not, {}, "ASME B1.20.1, ISO 7-1; thread guides (published)"},
      {"npt-plastic", kMale, "bsp-rp", kFemale, Verdict::must_not, {}, "ASTM F1498, ISO 7-1 (from memory)"},
      {"ght", kMale, "bsp-rp", kFemale, Verdict::must_not, {"3/4"}, "ASME B1.20.7, ISO 7-1 (published)"},
      {"bspp", kMale, "bspp", kFemale, Verdict::mates, {}, "ISO 228-1 (published)"},
      {"bspp", kMale, "bspp-swivel", kFemale, Verdict::mates, {}, "ISO 228-1 (published)"},
      {"bspt", kMale, "bspp", kFemale, Verdict::must_not, {}, "ISO 7-1, ISO 228-1: not assured (from memory)"},
      {"bspp", kMale, "bspt", kFemale, Verdict::must_not, {}, "ISO 7-1, ISO 228-1 (from memory)"},
      {"bspt", kMale, "bspp-swivel", kFemale, Verdict::must_not, {}, "common practice"},
      {"npt", kMale, "bspt", kFemale, Verdict::must_not, {}, "ASME B1.20.1, ISO 7-1; thread guides (published)"},
      {"npt", kMale, "bspp", kFemale, Verdict::must_not, {}, "ASME B1.20.1, ISO 228-1; thread guides (published)"},
      {"npt", kMale, "bspp-swivel", kFemale, Verdict::must_not, {}, "ASME B1.20.1, ISO 228-1 (published)"},
      {"bspt", kMale, "npt", kFemale, Verdict::must_not, {}, "ASME B1.20.1, ISO 7-1 (published)"},
      {"bspp", kMale, "npt", kFemale, Verdict::must_not, {}, "ASME B1.20.1, ISO 228-1 (published)"},
      {"bspt", kMale, "npt-plastic", kFemale, Verdict::must_not, {}, "ASTM F1498, ISO 7-1 (from memory)"},
      {"npt", kMale, "ght", kFemale, Verdict::must_not, {"3/4"}, "ASME B1.20.1, ASME B1.20.7 (published)"},
      {"ght", kMale, "npt", kFemale, Verdict::must_not, {"3/4"}, "ASME B1.20.1, ASME B1.20.7 (published)"},
      {"ght", kMale, "ght", kFemale, Verdict::mates, {"3/4"}, "ASME B1.20.7 (published)"},
      {"ght", kMale, "npsh", kFemale, Verdict::must_not, {"3/4"}, "ASME B1.20.7 (from memory)"},
      {"ght", kMale, "npsm", kFemale, Verdict::must_not, {"3/4"}, "ASME B1.20.1, ASME B1.20.7 (from memory)"},
      {"ght", kMale, "bspp", kFemale, Verdict::must_not, {"3/4"}, "ASME B1.20.7, ISO 228-1 (published)"},
      {"npt-plastic", kMale, "npt", kFemale, Verdict::mates, {}, "common practice"},
      {"npt-plastic", kMale, "npt-plastic", kFemale, Verdict::mates, {}, "ASTM F1498 (from memory)"},
      {"npt", kMale, "npt-plastic", kFemale, Verdict::must_not, {}, "common practice: a metal male splits it"},
      {"npt-plastic", kMale, "npsm", kFemale, Verdict::mates, {}, "common practice"},
      {"npsh", kMale, "npsh", kFemale, Verdict::mates, {}, "ASME B1.20.7 (from memory)"},
      {"hose", kMale, "hose", kFemale, Verdict::mates, {}, "common practice"},
      {"copper", kMale, "copper", kFemale, Verdict::mates, {}, "ASME B16.22, ASTM B88 (published)"},
      {"pvc", kMale, "pvc", kFemale, Verdict::mates, {}, "ASTM D2466, ASTM D1785 (published)"},
      {"copper", kMale, "pvc", kFemale, Verdict::must_not, {}, "ASTM B88, ASTM D1785 (published)"},
      {"weld", kMale, "weld", kFemale, Verdict::mates, {}, "common practice"},
      {"air-quick", kMale, "air-quick", kFemale, Verdict::mates, {}, "common practice"},
      {"clamp-band", kNeither, "clamp-band", kNeither, Verdict::mates, {}, "common practice"},
      {"pex", kMale, "pex", kFemale, Verdict::mates, {}, "ASTM F1807 in ASTM F876 tube (from memory)"},
      {"push-on", kFemale, "copper", kMale, Verdict::mates, {}, "ASTM B88: the same outside diameter (published)"},
      {"push-on", kFemale, "pex", kMale, Verdict::mates, {}, "ASTM F876: the same outside diameter (published)"},
      {"pex", kMale, "pvc", kFemale, Verdict::must_not, {}, "ASTM F876, ASTM D1785 (published)"},
      {"pex", kMale, "hose", kMale, Verdict::must_not, {}, "common practice"},
      {"flange", kNeither, "flange", kNeither, Verdict::mates, {}, "ASME B16.5 (from memory)"},
      {"cam", kMale, "cam", kFemale, Verdict::mates, {}, "A-A-59326 (from memory)"},
      {"flare-37", kMale, "flare-37", kFemale, Verdict::mates, {}, "SAE J514 / ISO 8434-2 (published)"},
      {"flare-45", kMale, "flare-45", kFemale, Verdict::mates, {}, "SAE J512 (from memory)"},
      {"flare-37", kMale, "flare-45", kFemale, Verdict::must_not, {}, "SAE J514, SAE J512; thread guides (published)"},
      {"flare-45", kMale, "flare-37", kFemale, Verdict::must_not, {}, "SAE J512, SAE J514; thread guides (published)"},
      {"push-in", kFemale, "air-tube", kMale, Verdict::mates, {}, "common practice"},
      {"drain-sleeve", kFemale, "pvc", kMale, Verdict::mates, {}, "ASTM C1173: over pipe's outside (published)"},
      {"drain-sleeve", kFemale, "plain", kNeither, Verdict::mates, {}, "ASTM C1173: over pipe's outside (published)"},
      {"flare-37", kMale, "npt", kFemale, Verdict::must_not, {}, "SAE J514; ASME B1.20.1 (published)"},
  };
  return rows;
}

bool same_pair(const PairRow& row, const PortType& a, const PortType& b) {
  const auto is = [](const PortType& port, const char* kind, End end) {
    return shipped().kind(port.kind).id == kind && port.end == end;
  };
  return (is(a, row.kind_a, row.end_a) && is(b, row.kind_b, row.end_b)) ||
         (is(b, row.kind_a, row.end_a) && is(a, row.kind_b, row.end_b));
}

std::vector<std::string> sizes_of(const PairRow& row) {
  if (!row.sizes.empty()) return {row.sizes.begin(), row.sizes.end()};
  std::vector<std::string> common;
  for (const std::string& size : size_names(row.kind_a))
    if (shipped_joint(row.kind_b, size) != nullptr) common.push_back(size);
  return common;
}

TEST(Mating, EachPairIsAsTheStandardsAndTheTradeSay) {
  for (const PairRow& row : verdicts()) {
    const std::vector<std::string> sizes = sizes_of(row);
    EXPECT_FALSE(sizes.empty()) << row.kind_a << " and " << row.kind_b;
    for (const std::string& size : sizes) {
      const PortTypeId a = shipped_port(row.kind_a, size, row.end_a);
      const PortTypeId b = shipped_port(row.kind_b, size, row.end_b);
      ASSERT_TRUE(a.valid() && b.valid()) << row.kind_a << " and " << row.kind_b << ' ' << size;
      EXPECT_EQ(shipped().mating_rule(a, b) != nullptr, row.verdict == Verdict::mates)
          << shipped().written(a) << " and " << shipped().written(b) << ": " << row.source;
      EXPECT_EQ(shipped().mating_rule(a, b), shipped().mating_rule(b, a));
    }
  }
}

TEST(Mating, WhatMustNotBeJoinedHasItsReason) {
  for (const PairRow& row : verdicts()) {
    for (const std::string& size : sizes_of(row)) {
      const PortTypeId a = shipped_port(row.kind_a, size, row.end_a);
      const PortTypeId b = shipped_port(row.kind_b, size, row.end_b);
      const LookAlike* trap = shipped().look_alike(shipped().port_type(a), shipped().port_type(b));
      EXPECT_EQ(trap != nullptr, row.verdict == Verdict::must_not)
          << shipped().written(a) << " and " << shipped().written(b);
      if (trap == nullptr) continue;
      EXPECT_GT(trap->reason.size(), 40u);
      EXPECT_FALSE(trap->source.empty());
    }
  }
}

// By the outside diameter of the tube, which is 1/8 in over the name of the copper tube: ASTM B88 (published).
const std::vector<std::pair<std::string, std::string>>& compression_onto_copper() {
  static const std::vector<std::pair<std::string, std::string>> sizes = {
      {"3/8", "1/4"}, {"1/2", "3/8"}, {"5/8", "1/2"}, {"7/8", "3/4"}};
  return sizes;
}

bool goes_by_outside_diameter(const PortType& type) {
  return shipped().kind(type.kind).id == "compression" || shipped().kind(type.kind).id == "flared-tube";
}

TEST(Mating, CompressionAndFlareNutGoByTheTubesOutsideDiameter) {
  for (const char* kind : {"compression", "flared-tube"})
    for (const auto& [size, copper] : compression_onto_copper()) {
      const PortTypeId fitting = shipped_port(kind, size, kFemale);
      EXPECT_NE(shipped().mating_rule(fitting, shipped_port("copper", copper, kMale)), nullptr) << kind << ' ' << size;
      EXPECT_EQ(shipped_joint(kind, size)->outside_diameter, shipped_joint("copper", copper)->outside_diameter);
      EXPECT_EQ(shipped().mates(fitting).size(), 1u) << kind << ' ' << size;
    }
}

TEST(Mating, NothingElseMates) {
  for (std::uint32_t row = 0; row < shipped().port_types().size(); ++row) {
    const PortType& a = shipped().port_type(PortTypeId{row});
    if (goes_by_outside_diameter(a)) continue;  // above
    for (const Mate& mate : shipped().mates(PortTypeId{row})) {
      const PortType& b = shipped().port_type(mate.other);
      if (goes_by_outside_diameter(b)) continue;
      EXPECT_EQ(a.size, b.size);
      EXPECT_TRUE(
          std::any_of(verdicts().begin(), verdicts().end(),
                      [&](const PairRow& known) { return known.verdict == Verdict::mates && same_pair(known, a, b); }))
          << shipped().written(PortTypeId{row}) << " and " << shipped().written(mate.other);
    }
  }
}

// At 1/2 and 3/4 both have 14 threads per inch, so the thread gauge cannot tell them: the reason says so. At the other
// sizes it can (ASME B1.20.1, ISO 7-1).
TEST(Mating, NptAndBspHaveOnePitchAtHalfAndThreeQuarterOnly) {
  for (const std::string& size : size_names("bspt")) {
    if (shipped_joint("npt", size) == nullptr) continue;
    const bool one_pitch =
        shipped_joint("npt", size)->threads_per_inch == shipped_joint("bspt", size)->threads_per_inch;
    EXPECT_EQ(one_pitch, size == "1/2" || size == "3/4") << size;
    const LookAlike* trap = shipped().look_alike(shipped().port_type(shipped_port("npt", size, kMale)),
                                                 shipped().port_type(shipped_port("bspt", size, kFemale)));
    ASSERT_NE(trap, nullptr);
    EXPECT_EQ(trap->reason.find("14 threads") != std::string::npos, one_pitch) << size;
  }
}

struct JointRow {
  const char* kind;
  const char* size;
  const char* female_kind;
  const char* seal;
  Turning turning;
  bool closing, comes_apart;
};

// Common practice; ASME B1.20.7 and ISO 228-1 for the washers. Rigid tube and pipe must slide into their sockets, so
// those joints close no run between fixed ends although nothing turns.
constexpr Turning kScrewed = Turning::either;
constexpr Turning kStill = Turning::neither;

constexpr JointRow kJoints[] = {
    {"npt", "1", "npt", "thread sealant", kScrewed, false, true},
    {"npt-plastic", "1", "npt", "plastic thread sealant", kScrewed, false, true},
    {"npt", "3/4", "npsm", "flat gasket", kStill, true, true},
    {"ght", "3/4", "ght", "hose washer", kStill, true, true},
    {"bspt", "1", "bspt", "thread sealant", kScrewed, false, true},
    {"bspt", "1", "bsp-rp", "thread sealant", kScrewed, false, true},
    {"bspp", "1", "bspp", "bonded washer", kScrewed, false, true},
    {"bspp", "1", "bspp-swivel", "flat gasket", kStill, true, true},
    {"hose", "1", "hose", "clamp", kStill, true, true},
    {"copper", "3/4", "copper", "solder", kStill, false, false},
    {"pvc", "3/4", "pvc", "solvent cement", kStill, false, false},
    {"weld", "1", "weld", "weld", kStill, false, false},
    {"pex", "3/4", "pex", "crimp ring", kStill, true, false},
    {"copper", "3/4", "push-on", "push-on", kStill, false, true},
    {"cam", "2", "cam", "cam gasket", kStill, true, true},
    {"flare-37", "1/2", "flare-37", "flare cone", kStill, true, true},
};

TEST(Mating, SealsAndClosesAsTheTradeDoes) {
  for (const JointRow& row : kJoints) {
    const MatingRule* rule = shipped().mating_rule(shipped_port(row.kind, row.size, kMale),
                                                   shipped_port(row.female_kind, row.size, kFemale));
    ASSERT_NE(rule, nullptr) << row.kind << ' ' << row.female_kind;
    EXPECT_EQ(rule->seal, row.seal) << row.kind;
    EXPECT_EQ(rule->closing, row.closing) << row.kind;
    EXPECT_EQ(rule->turning, row.turning) << row.kind;
    EXPECT_EQ(rule->comes_apart, row.comes_apart) << row.kind;
    EXPECT_NE(shipped().seal(rule->seal), nullptr) << rule->seal;
  }
}

// A loose piece of copper is bowed until its end goes into the nut, what comes out of a wall is not; PEX is in any case
// (common practice).
TEST(Mating, OfTubeThatIsBowedInOnlyALoosePieceOfCopperGives) {
  const MatingRule* copper =
      shipped().mating_rule(shipped_port("copper", "1/4", kMale), shipped_port("compression", "3/8", kFemale));
  const MatingRule* pex = shipped().mating_rule(shipped_port("pex", "1/2", kMale), shipped_port("pex", "1/2", kFemale));
  ASSERT_TRUE(copper && pex);
  EXPECT_TRUE(copper->closing && copper->bowed && !copper->end_bows);
  EXPECT_TRUE(pex->closing && pex->bowed && pex->end_bows);
}

// No tape on washers, gaskets, flares (trade articles, published).
TEST(Mating, WasherJointsGetNoTape) {
  for (const char* seal : {"hose washer", "flat gasket", "bonded washer", "flare cone", "compression sleeve"}) {
    EXPECT_NE(shipped().seal(seal)->instruction.find("no tape"), std::string::npos) << seal;
    EXPECT_EQ(shipped().seal(seal)->consumable.find("tape"), std::string::npos) << seal;
  }
}

}  // namespace
}  // namespace riserun::catalog
