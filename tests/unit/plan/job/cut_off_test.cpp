// A job file that was cut off: it loads as what it says, or it is refused; never anything in between.
#include "plan/job/read_job.h"
#include "unit/plan/shipped.h"

#include <gmock/gmock.h>

namespace riserun::plan {
namespace {

/// The job that a cut-off text gives, if it gives one. A refusal holds at least one problem with its line.
std::optional<Job> job_of(const std::string& text) {
  try {
    return read_job(*shipped_catalog(), text, "cut.yaml");
  } catch (const InputError& error) {
    EXPECT_FALSE(error.problems().empty());
    for (const Problem& problem : error.problems()) EXPECT_FALSE(problem.message.empty());
    return std::nullopt;
  }
}

/// All but the last thing that stands in the cut text must be as in the whole text.
void expect_part_of(const Job& cut, const Job& whole) {
  EXPECT_EQ(cut.reservoir.length, whole.reservoir.length);
  EXPECT_EQ(cut.reservoir.sheet.thickness, whole.reservoir.sheet.thickness);
  EXPECT_EQ(cut.reservoir.ports.size(), whole.reservoir.ports.size());
  EXPECT_EQ(cut.table.depth, whole.table.depth);
  ASSERT_LE(cut.connections.size(), whole.connections.size());
  for (std::size_t i = 0; i + 1 < cut.connections.size(); ++i) {
    EXPECT_EQ(cut.connections[i].name, whole.connections[i].name);
    EXPECT_EQ(cut.connections[i].to, whole.connections[i].to);
    EXPECT_EQ(cut.connections[i].needs.size(), whole.connections[i].needs.size());
  }
  ASSERT_LE(cut.bin.items.size(), whole.bin.items.size());
}

// Up to the connections every fifth byte; from there on, where each reading looks through all parts, every end of a
// line. The fuzz target tries the rest.
TEST(CutOffJob, LoadsAsWhatItSaysOrIsRefused) {
  const std::string text = example_text("bevel-bench");
  ASSERT_GT(text.size(), 3000u);
  const std::size_t connections = text.find("\n  - name:");
  ASSERT_NE(connections, std::string::npos);
  const Job whole = read_job(*shipped_catalog(), text, "cut.yaml");
  int loaded = 0;
  for (std::size_t length = 0; length < text.size(); length += length < connections ? 5 : 1) {
    if (length > connections && text[length] != '\n') continue;
    const auto job = job_of(text.substr(0, length));
    if (!job) continue;
    ++loaded;
    expect_part_of(*job, whole);
    // `3.2` without its unit is another flow only where it was cut within the number.
    if (length > text.find("scfm")) {
      EXPECT_EQ(job->air.delivery, whole.air.delivery);
    }
    if (HasFailure()) FAIL() << "cut after " << length << " bytes";
  }
  EXPECT_GT(loaded, 20);  // every end of a line after the air supply loads
}

}  // namespace
}  // namespace riserun::plan
