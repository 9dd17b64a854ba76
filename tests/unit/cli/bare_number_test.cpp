// Numbers without a unit on the command line: --units settles them, for the options and for a bin without its own.
#include "unit/cli/asked_command.h"

#include <filesystem>
#include <fstream>

namespace riserun::cli {
namespace {

TEST(BareNumbers, AreInTheUnitsThatAreAskedFor) {
  const Words riser{"riser", "--bung", "1 FNPT"};
  const Answered with_units = ask(riser + Words{"--height", "14 in", "--length", "48 in", "--width", "20 in"});
  EXPECT_EQ(ask(riser + Words{"--height", "14", "--length", "48", "--width", "20", "--units", "inch"}).out,
            with_units.out);
  const Answered span = ask({"chain", "1 FNPT", "1 FNPT", "--span", "14", "--need", "union", "--units", "inch"});
  EXPECT_EQ(span.out, ask({"chain", "1 FNPT", "1 FNPT", "--span", "14 in", "--need", "union"}).out) << span.err;
  const Answered metric = ask({"chain", "1 FNPT", "1 FNPT", "--span", "355.6", "--need", "union", "--units", "metric"});
  EXPECT_EQ(metric.out,
            ask({"chain", "1 FNPT", "1 FNPT", "--span", "14 in", "--need", "union", "--units", "metric"}).out);
}

TEST(BareNumbers, WithoutUnitsAreAMistakeThatNamesTheOption) {
  EXPECT_THAT(complaint({"chain", "1 FNPT", "1 FNPT", "--span", "14"}),
              HasSubstr("'--units inch' would make it 14 in"));
}

TEST(BareNumbers, OfABinAreInItsOwnUnitsOrThoseOfTheCommand) {
  const auto folder = std::filesystem::temp_directory_path() / "riserun-bare-bin";
  std::filesystem::create_directories(folder);
  const auto bin = [&](const char* head) {
    const std::filesystem::path file = folder / "bin.yaml";
    std::ofstream(file) << head << "bin:\n  - {part: 1 rubber hose, length: 36}\n";
    return file.string();
  };
  const Words asked{"chain", "1 barb", "1 barb", "--span", "20 in"};
  EXPECT_THAT(complaint(asked + Words{"--bin", bin("")}), HasSubstr("'units: inch' would make it 36 in"));
  EXPECT_THAT(ask(asked + Words{"--bin", bin("units: inch\n")}).out, HasSubstr("a piece of 36 in"));
  EXPECT_THAT(ask(asked + Words{"--bin", bin(""), "--units", "inch"}).out, HasSubstr("a piece of 36 in"));
  EXPECT_THAT(ask(asked + Words{"--bin", bin("units: metric\n"), "--units", "inch"}).out,
              Not(HasSubstr("piece of 36")));
  std::filesystem::remove_all(folder);
}

}  // namespace
}  // namespace riserun::cli
