#include "report/file/write_file.h"

#include "quantity/input_error.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <stdlib.h>
#include <sys/stat.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>

namespace riserun::report {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;

class Written : public testing::Test {
 protected:
  Written() {
    std::string pattern = (fs::temp_directory_path() / "riserun-written-XXXXXX").string();
    folder_ = ::mkdtemp(pattern.data());
  }
  ~Written() override { fs::remove_all(folder_); }

  std::string path(const std::string& name) const { return (folder_ / name).string(); }
  std::string read(const std::string& name) const {
    std::stringstream text;
    text << std::ifstream(folder_ / name, std::ios::binary).rdbuf();
    return text.str();
  }
  long files() const { return std::distance(fs::directory_iterator(folder_), fs::directory_iterator()); }
  static std::string refusal(const std::string& file, Overwrite overwrite) {
    try {
      write_file(file, "new", overwrite);
    } catch (const quantity::InputError& error) {
      return error.what();
    }
    return "";
  }

 private:
  fs::path folder_;
};

TEST_F(Written, IsThereWholeAndNothingBesideIt) {
  write_file(path("a"), "text", Overwrite::no);
  EXPECT_EQ(read("a"), "text");
  write_file(path("a"), "other", Overwrite::yes);
  EXPECT_EQ(read("a"), "other");
  EXPECT_EQ(files(), 1);
}

TEST_F(Written, ReplacesNothingThatItMayNot) {
  write_file(path("a"), "old", Overwrite::no);
  fs::create_symlink("nowhere", path("dangling"));
  EXPECT_THAT(refusal(path("a"), Overwrite::no), HasSubstr("is there already"));
  EXPECT_THAT(refusal(path("dangling"), Overwrite::no), HasSubstr("is there already"));
  EXPECT_EQ(read("a"), "old");
  EXPECT_EQ(files(), 2);
}

TEST_F(Written, LeavesAReaderOfTheOldFileItsText) {
  write_file(path("a"), "old", Overwrite::no);
  std::ifstream reader(path("a"));
  write_file(path("a"), "new", Overwrite::yes);
  std::string text;
  reader >> text;
  EXPECT_EQ(text, "old");
}

TEST_F(Written, KeepsTheModeAndTheLink) {
  write_file(path("a"), "old", Overwrite::no);
  ::chmod(path("a").c_str(), 0640);
  fs::create_symlink("a", path("link"));
  write_file(path("link"), "new", Overwrite::yes);
  EXPECT_TRUE(fs::is_symlink(path("link")));
  EXPECT_EQ(read("a"), "new");
  struct stat status {};
  ASSERT_EQ(::stat(path("a").c_str(), &status), 0);
  EXPECT_EQ(status.st_mode & 07777, 0640U);
}

TEST_F(Written, SaysWhyNot) {
  EXPECT_THAT(refusal("/dev/full", Overwrite::yes), HasSubstr("/dev/full: error: cannot be written: No space left"));
  EXPECT_THAT(refusal(path("none/a"), Overwrite::yes), HasSubstr("cannot be made: No such file or directory"));
  EXPECT_THAT(refusal(path(""), Overwrite::yes), HasSubstr("this is a folder"));
  fs::create_symlink("loop", path("loop"));
  EXPECT_NE(refusal(path("loop"), Overwrite::yes), "");
  EXPECT_EQ(files(), 1);
}

}  // namespace
}  // namespace riserun::report
