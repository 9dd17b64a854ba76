#include "gui/views/scene/found.h"

#include "gui/model/canvas/draft.h"
#include "gui/views/scene/command.h"
#include "gui/views/scene/scene.h"
#include "unit/plan/shipped.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace riserun::views {
namespace {

class Finding : public ::testing::Test {
 protected:
  void SetUp() override {
    shown_.plan = std::make_shared<const plan::Plan>(plan::plan_of_example("bevel-bench"));
    shown_.sketch = gui::sketch_of(*shown_.plan);
  }
  std::vector<Found> find(const std::string& words) const { return found_by(words, shown_, &shown_.plan->job, 12); }
  Shown shown_;
};

TEST_F(Finding, ACommandByItsNameAndByItsKey) {
  for (const char* words : {"zoom fit", "ZOOM TO", "to fit"}) {
    const auto rows = find(words);
    ASSERT_FALSE(rows.empty()) << words;
    EXPECT_EQ(std::get<Do>(rows.front().leads_to), Do::fit) << words;
  }
  EXPECT_EQ(std::get<Do>(find("ctrl+z").front().leads_to), Do::undo);
}

TEST_F(Finding, APartByItsNameAndItsRun) {
  const auto rows = find("barb water up");
  ASSERT_EQ(rows.size(), 2U);
  const std::string key = std::get<ShowPart>(rows.front().leads_to).key;
  EXPECT_TRUE(std::any_of(shown_.sketch.nodes.begin(), shown_.sketch.nodes.end(),
                          [&](const gui::Node& node) { return node.key == key; }));
}

TEST_F(Finding, AMeasurement) {
  const auto rows = find("clearance");
  ASSERT_FALSE(rows.empty());
  EXPECT_EQ(std::get<ShowField>(rows.front().leads_to).label, "clearance");
}

TEST_F(Finding, NothingIsNothingAndManyAreCut) {
  EXPECT_TRUE(find("no such thing at all").empty());
  EXPECT_EQ(find("").size(), 12U);
}

}  // namespace
}  // namespace riserun::views
