// The shipped catalog is noticed to be short of a file, or of a file's end.
#include "catalog/load/load.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>

namespace riserun::catalog {
namespace {

namespace fs = std::filesystem;
using ::testing::AllOf;
using ::testing::HasSubstr;

/// A copy of the shipped catalog that a test may spoil.
class CopyOfTheCatalog : public ::testing::Test {
 protected:
  void SetUp() override {
    fs::remove_all(folder_);
    fs::copy(fs::path(RISERUN_SOURCE_DIR) / "catalog", folder_, fs::copy_options::recursive);
  }
  void TearDown() override { fs::remove_all(folder_); }

  std::string said() const {
    try {
      check_whole(folder_);
    } catch (const quantity::InputError& error) {
      return error.what();
    }
    return "";
  }

  const fs::path folder_ = fs::path(::testing::TempDir()) / "copy-of-the-catalog";
};

TEST_F(CopyOfTheCatalog, IsWhole) { EXPECT_EQ(said(), ""); }

TEST_F(CopyOfTheCatalog, ShortOfAnyFileNamesIt) {
  int files = 0;
  for (const auto& entry : fs::directory_iterator(fs::path(RISERUN_SOURCE_DIR) / "catalog")) {
    if (entry.path().extension() != ".yaml") continue;
    ++files;
    const fs::path name = entry.path().filename();
    fs::remove(folder_ / name);
    EXPECT_THAT(said(), AllOf(HasSubstr((folder_ / name).string()), HasSubstr("of the shipped catalog is missing")));
    fs::copy(entry.path(), folder_ / name);
  }
  EXPECT_GT(files, 20);
  EXPECT_EQ(said(), "");
}

TEST_F(CopyOfTheCatalog, CutOffNamesTheFile) {
  std::ifstream in(folder_ / "valves.yaml", std::ios::binary);
  std::string text((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
  in.close();
  text.erase(text.rfind('\n', text.size() - 2) + 1);  // its last row
  std::ofstream(folder_ / "valves.yaml", std::ios::binary) << text;
  EXPECT_THAT(said(), AllOf(HasSubstr("valves.yaml"), HasSubstr("it is cut off")));
}

TEST_F(CopyOfTheCatalog, WithAFileMoreIsWhole) {
  std::ofstream(folder_ / "more.yaml") << "families: []\n";
  std::ofstream(folder_ / "valves.yaml", std::ios::app) << "# a note\n";
  EXPECT_EQ(said(), "");
}

}  // namespace
}  // namespace riserun::catalog
