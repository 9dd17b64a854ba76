// A file that was cut off: what loads is what its text says, never anything else.
#include "unit/catalog/small_catalog.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace riserun::catalog {
namespace {

std::vector<SourceText> tiny_catalog_texts() {
  return {
      {"materials.yaml", R"(galvanic: {watch above: 0.25 V, keep apart above: 0.50 V, source: test}
materials:
  - {id: brass, name: brass, aliases: [yellow], anodic index: 0.45 V, roughness: 0.0015 mm, source: test}
  - {id: pvc, name: PVC, metal: no, compressed air: no, roughness: 0.0015 mm, source: test}
)"},
      {"joints.yaml", R"(seals:
  - {name: tape, instruction: tape it, source: test}
kinds:
  - id: npt
    name: NPT
    standard: ASME B1.20.1
    thread: taper
    notation: {male: MNPT, female: FNPT}
    source: test
    sizes:
      columns: [size, outside diameter (in), threads per inch]
      rows:
        - [1/2, 0.840, 14]
        - [1, 1.315, 11.5]
mating:
  - {a: npt male, b: npt female, seal: tape, turns: either, source: test}
)"},
      {"losses.yaml", "items:\n  - {name: valve, crane n: 100, scatter: 0.3, source: test}\n"},
      {"pipe.yaml", "bores:\n  - {name: b, source: test, columns: [size, bore (in)], rows: [[1/2, 0.6], [1, 1]]}\n"},
      {"families.yaml", R"(families:
  - name: cap
    aliases: [end cap]
    shelf: fittings
    role: plug
    title: "{size} cap"
    size: "{size}"
    ports:
      - {kind: npt, end: female, size: size, bore: b, reach: length}
    materials:
      brass: {rating: 300 psi, price factor: 2}
      pvc: {rating: 100 psi, only: {size: [1]}}
    source: >-
      invented
    table:
      columns: [size, length (in), price (usd)]
      rows:
        - [1/2, 1.25, 3.00]
        - [1, 1-1/2, 4.50]
  - name: plug
    shelf: fittings
    role: plug
    title: "{size} plug"
    size: "{size}"
    ports:
      - {kind: npt, end: male, size: size, bore: b, reach: 1 in}
    materials: {brass: {rating: 300 psi}}
    source: 'invented'
    table: {columns: [size, price (usd)], rows: [[[1/2, 1], 2.00]]}
)"}};
}

bool holds(const std::vector<std::string>& lines, const std::string& line) {
  return std::find(lines.begin(), lines.end(), line) != lines.end();
}

/// The rows of the families' tables that stand whole before the cut: what the ids of their parts begin with.
std::vector<std::string> whole_before(const std::string& text, std::size_t cut) {
  const std::vector<std::pair<std::string, std::vector<std::string>>> kRows = {
      {"[1/2, 1.25, 3.00]", {"cap/brass/1-2"}},
      {"[1, 1-1/2, 4.50]", {"cap/brass/1", "cap/pvc/1"}},
      {"[[[1/2, 1], 2.00]]}", {"plug/brass/1-2", "plug/brass/1"}}};
  std::vector<std::string> ids;
  for (const auto& [row, parts] : kRows)
    if (text.find(row) + row.size() <= cut) ids.insert(ids.end(), parts.begin(), parts.end());
  return ids;
}

TEST(CutOffFamilies, LoadJustTheRowsThatAreStillThereOrNothing) {
  std::vector<SourceText> texts = tiny_catalog_texts();
  const std::string whole = texts[4].text;
  const std::vector<std::string> all = testing::written_out(load_catalog(texts, {}));
  int loaded = 0;
  for (std::size_t cut = 0; cut < whole.size(); ++cut) {
    texts[4].text = whole.substr(0, cut);
    try {
      const Catalog catalog = load_catalog(texts, {});
      ++loaded;
      std::vector<std::string> ids;
      for (const Part& part : catalog.parts()) ids.push_back(part.id);
      EXPECT_EQ(ids, whole_before(whole, cut)) << "cut at byte " << cut;
      for (const std::string& line : testing::written_out(catalog))
        EXPECT_TRUE(holds(all, line)) << cut << ": " << line;
    } catch (const quantity::InputError& error) {
      EXPECT_FALSE(error.problems().empty());
    }
  }
  EXPECT_GT(loaded, 10);  // the cuts between two rows and between the two families
}

// The families are left out, since they need all of the joints.
TEST(CutOffJoints, LoadThingsThatAreEachAsInTheWholeFileOrNothing) {
  std::vector<SourceText> texts = tiny_catalog_texts();
  texts.resize(4);
  const std::vector<std::string> all = testing::written_out(load_catalog(texts, {}));
  for (const std::size_t file : {0U, 1U, 2U, 3U}) {
    std::vector<SourceText> cut_texts = texts;
    for (std::size_t cut = 0; cut < texts[file].text.size(); ++cut) {
      cut_texts[file].text = texts[file].text.substr(0, cut);
      try {
        for (const std::string& line : testing::written_out(load_catalog(cut_texts, {})))
          EXPECT_TRUE(holds(all, line)) << texts[file].name << " cut at byte " << cut << ": " << line;
      } catch (const quantity::InputError& error) {
        EXPECT_FALSE(error.problems().empty());
      }
    }
  }
}

TEST(CutOffBin, LoadsItemsThatAreEachAsInTheWholeFileOrNothing) {
  const Catalog catalog = load_catalog(tiny_catalog_texts(), {});
  const std::string whole = "bin:\n  - {part: 1 cap brass, count: 12}\n  - {part: 1/2 plug}\n";
  for (std::size_t cut = 0; cut < whole.size(); ++cut) {
    CatalogBuilder builder(catalog);
    try {
      const Bin bin = load_bin(builder, SourceText{"bin.yaml", whole.substr(0, cut)});
      ASSERT_GE(bin.items.size(), 1U);
      EXPECT_EQ(catalog.part(bin.items[0].part).id, "cap/brass/1");
      EXPECT_EQ(bin.items[0].count, 12);
    } catch (const quantity::InputError& error) {
      EXPECT_FALSE(error.problems().empty());
    }
  }
}

}  // namespace
}  // namespace riserun::catalog
