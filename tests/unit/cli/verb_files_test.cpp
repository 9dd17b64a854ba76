// The verbs about files: `new` and `check`, and `catalog`.
#include "unit/cli/asked_command.h"

#include <stdlib.h>

#include <filesystem>
#include <fstream>

namespace riserun::cli {
namespace {

using testing::ContainsRegex;

/// A folder of its own for each test, gone afterwards.
class Files : public testing::Test {
 protected:
  Files() {
    std::string pattern = (std::filesystem::temp_directory_path() / "riserun-files-XXXXXX").string();
    folder_ = ::mkdtemp(pattern.data());
  }
  ~Files() override { std::filesystem::remove_all(folder_); }

  std::string path(const std::string& name) const { return (folder_ / name).string(); }
  std::string write(const std::string& name, const std::string& text) const {
    std::ofstream(path(name), std::ios::binary) << text;
    return path(name);
  }
  static std::string read(const std::string& file) {
    std::stringstream text;
    text << std::ifstream(file, std::ios::binary).rdbuf();
    return text.str();
  }

 private:
  std::filesystem::path folder_;
};

TEST_F(Files, NewMakesAJobThatPlansAndIsRight) {
  const std::string job = path("job.yaml");
  EXPECT_EQ(ask({"new", job}).status, kDone);
  EXPECT_EQ(ask({"plan", job}).status, kDone);
  EXPECT_THAT(ask({"check", job}).out, HasSubstr("nothing wrong; a job"));
}

TEST_F(Files, NewNeverWritesOverAFile) {
  const std::string mine = write("job.yaml", "mine\n");
  complaint({"new", mine});
  EXPECT_EQ(read(mine), "mine\n");
}

TEST_F(Files, OfDutiesAreCheckedAsCatalogFiles) {
  const Answered shipped = ask({"check", std::string(RISERUN_SOURCE_DIR) + "/catalog/duty.yaml"});
  EXPECT_EQ(shipped.status, kDone) << shipped.err;
  EXPECT_THAT(shipped.out, HasSubstr("nothing wrong; part of the shipped catalog of"));
  const auto own = [](const std::string& air) {
    return "duties:\n  - materials: [brass]\n    heat: {150 F: 1}\n    air: " + air +
           "\n    vacuum: stands\n    source: ours\n";
  };
  const Answered right = ask({"check", write("own.yaml", own("as water"))});
  EXPECT_EQ(right.status, kDone) << right.err;
  EXPECT_THAT(right.out, HasSubstr("own.yaml: nothing wrong; a catalog file that adds 0 parts."));
  EXPECT_THAT(complaint({"check", write("own.yaml", own("some"))}),
              ContainsRegex("own\\.yaml:4:10: error: duties\\[1\\]\\.air: "));
}

TEST_F(Files, WithATypoAreShownWithPlaceAndCaret) {
  std::string text = read(example("bevel-bench"));
  const std::size_t key = text.find("\nreservoir:");
  ASSERT_NE(key, std::string::npos);
  text.replace(key, 11, "\nresevoir:");
  const std::string error = complaint({"plan", write("job.yaml", text)});
  EXPECT_THAT(error, ContainsRegex("job\\.yaml:[0-9]+:1: error: .*resevoir.*reservoir"));
  EXPECT_THAT(error, HasSubstr("\n  ^"));
}

TEST_F(Files, WithAnOddNameArePlannedAndNamedInEscapes) {
  std::string text = read(example("bevel-bench"));
  const std::size_t name = text.find("\nname:");
  text.erase(name, text.find('\n', name + 1) - name);
  const std::string job = write("j\xff\x1b.yaml", text);
  const Answered planned = ask({"plan", job, "--json"});
  EXPECT_EQ(planned.err, "");
  EXPECT_EQ(json::parse(planned.out).at("name"), "j\\xFF\\x1B");
  EXPECT_THAT(ask({"plan", job}).out, testing::StartsWith("j\\xFF\\x1B  "));
  EXPECT_THAT(ask({"check", job}).out, HasSubstr("j\\xFF\\x1B.yaml: nothing wrong"));
}

// What lies in the job's own drawer is bought then, and nothing else would say so.
TEST_F(Files, OfABinStandInPlaceOfTheJobsOwnAndThatIsSaid) {
  const std::string bin = write("truck.yaml", "bin:\n  - {part: 1 union brass, count: 1}\n");
  EXPECT_THAT(ask({"plan", example("bevel-bench"), "--bin", bin}).err, HasSubstr("the job's own bin is set aside"));
  EXPECT_EQ(ask({"plan", example("one-part-short"), "--bin", bin}).err, "");
}

TEST_F(Files, OfOwnPricesMayNamePartsInWords) {
  const std::string prices =
      write("prices.yaml", "prices:\n  - {part: \"1 x 3/4 hex bushing brass\", price: 7.77 usd}\n");
  const Answered priced = ask({"catalog", "1 x 3/4 hex bushing brass", "--catalog", prices});
  EXPECT_EQ(priced.err, "");
  EXPECT_THAT(priced.out, HasSubstr("$7.77"));
}

TEST_F(Files, OfPricesSayWhichRowsHaveNone) {
  const std::string prices = write("prices.csv", "part,price\n1 union brass,\n1 union black iron,12\n1 tee brass,\n");
  const Answered checked = ask({"check", prices});
  EXPECT_THAT(checked.out, HasSubstr("prices 1; without a price, and left at the catalog's: lines 2, 4."));
  EXPECT_THAT(ask({"check", write("all.csv", "part,price\n1 union brass,12\n")}).out,
              testing::Not(HasSubstr("without a price")));
}

TEST_F(Files, OfOwnPartsHaveNamesOfOneLine) {
  const std::string own =
      write("own.yaml",
            "parts:\n  - {id: o, name: \"tee\\nFORGED\", size: 1, material: brass, rating: 150 psi, source: me,\n"
            "     ports: [{port: 1 MNPT, bore: 1 in, reach: 1 in}, {port: 3/4 MGHT, bore: 0.7 in, reach: 1 in}]}\n");
  EXPECT_THAT(complaint({"chain", "1 FNPT", "3/4 FGHT", "--catalog", own}),
              HasSubstr("own.yaml:2:23: error: a line break (U+000A) in a text"));
}

TEST_F(Files, OfManyLinesAreReadInTime) {
  std::string described = "bin:\n";
  std::string spelled = "bin:\n";
  for (int i = 0; i < 16000; ++i) {
    described += "  - {part: \"1/2 x " + std::to_string(i % 7 + 2) + " nipple, galvanizd\", count: 1}\n";
    spelled += "  - {part: \"1/2 x 4 galvanizd nipple" + std::string(static_cast<std::size_t>(i), ' ') + "\"}\n";
    if (spelled.size() > 1'000'000) break;
  }
  EXPECT_THAT(ask({"check", write("bin.yaml", described)}).out, HasSubstr("a bin with 7 kinds of part"));
  EXPECT_THAT(complaint({"check", write("bin.yaml", spelled)}), HasSubstr("more than 1000 different descriptions"));
}

TEST_F(Files, OfAFamilyDoNotMakeMorePartsThanACatalogHolds) {
  std::string family =
      "families:\n  - name: spool\n    shelf: ours\n    title: \"{size} x {length} spool\"\n"
      "    size: \"{size} x {length}\"\n    source: ours\n    materials: {brass: {rating: 200 psi}, stainless: "
      "{rating: 200 psi}}\n"
      "    ports:\n      - {kind: npt, end: male, size: size, bore: schedule 40, reach: half of length}\n"
      "      - {kind: npt, end: male, size: size, bore: schedule 40, reach: half of length}\n"
      "    table:\n      columns: [size, length (in), price (usd)]\n      rows:\n";
  for (int row = 0; row < 49'000; ++row) family += "        - [1, 1." + std::to_string(10000 + row) + ", 1]\n";
  EXPECT_THAT(complaint({"check", write("own.yaml", family)}),
              HasSubstr("with 49000 rows in 2 materials the catalog has more than 100000 parts"));
}

TEST(Catalog, FindsAPartByItsWords) {
  const Answered done = ask({"catalog", "1 x 3/4 hex bushing brass"});
  EXPECT_EQ(done.status, kDone) << done.err;
  EXPECT_THAT(done.out, HasSubstr("hex-bushing/brass/1x3-4"));
}

TEST(Catalog, RefusesNonsense) { complaint({"catalog", "left-handed smoke bender"}); }

}  // namespace
}  // namespace riserun::cli
