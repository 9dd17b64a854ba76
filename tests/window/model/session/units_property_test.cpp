// Units are a way of writing: switched at random while a job is edited, they change no number of the plan and no step
// of undo.
#include "gui/model/session/model.h"
#include "report/json/plan_json.h"
#include "window/model/bench.h"

#include <gtest/gtest.h>

#include <random>

namespace riserun::gui {
namespace {

using testing::Folder;
using testing::write_file;

class UnitsSwitched : public ::testing::Test {
 protected:
  std::unique_ptr<Model> opened(const std::string& name) const {
    write_file(folder / (name + ".yaml"), testing::example("bevel-bench"));
    auto model = std::make_unique<Model>(gui::Setup{testing::shipped_catalog(), folder / name});
    model->post(Open{folder / (name + ".yaml")});
    model->settle();
    return model;
  }
  static void post(Model& model, Command command) {
    model.post(std::move(command));
    model.settle();
    model.poll();
  }

  Folder folder;
};

TEST_F(UnitsSwitched, FiftyTimesAtRandomDuringEdits) {
  const auto plain = opened("plain");
  const auto switched = opened("switched");
  std::mt19937 random(21);
  const auto pick = [&](std::size_t n) { return random() % n; };
  const std::vector<std::pair<JobPath, std::vector<std::string>>> fields = {
      {at("table") / "depth", {"3 in", "3-1/4 in", "80 mm", "0.25 ft"}},
      {at("riser") / "clearance", {"1/2 in", "3/4 in", "16 mm"}},
      {at("air") / "delivery", {"3 scfm", "4.2 scfm", "90 L/min"}},
      {at("reservoir") / "charge", {"8 in", "9-3/8 in", "22 cm"}}};
  int changed = 0;
  for (int turn = 0; turn < 50; ++turn) {
    ViewState view = switched->view();
    view.units = pick(2) == 0 ? UnitSystem::metric : UnitSystem::inch;
    post(*switched, SetView{view});
    ASSERT_EQ(switched->units(), *view.units);
    if (turn % 4 == 0) {
      Command act = Undo{};
      if (const std::size_t which = pick(6); which < 4) {
        const auto& [field, values] = fields[which];
        act = Perform{SetValue{field, values[pick(values.size())]}};
      } else if (which == 4) {
        act = Redo{};
      }
      const auto before = plain->job().revision;
      for (Model* model : {plain.get(), switched.get()}) post(*model, act);
      changed += plain->job().revision != before ? 1 : 0;
    }
    ASSERT_EQ(switched->job().text, plain->job().text) << turn;
    ASSERT_EQ(switched->job().undo_name, plain->job().undo_name) << turn;
    ASSERT_EQ(switched->job().redo_name, plain->job().redo_name) << turn;
    ASSERT_TRUE(switched->plan().current && plain->plan().current) << turn;
    for (const UnitSystem units : {UnitSystem::inch, UnitSystem::metric})
      ASSERT_EQ(report::plan_json(*switched->plan().plan, units), report::plan_json(*plain->plan().plan, units))
          << turn;
  }
  EXPECT_GT(changed, 6);
}

}  // namespace
}  // namespace riserun::gui
