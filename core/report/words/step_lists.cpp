#include "report/words/step_lists.h"

#include "report/words/say.h"

#include <fmt/format.h>

#include <array>

namespace riserun::report {

namespace {

using plan::WorkPhase;

struct PhaseWords {
  WorkPhase phase;
  std::string_view key;
  std::string_view title;
};
constexpr std::array<PhaseWords, 6> kPhases = {{{WorkPhase::before_lid, "before_lid", "Before the lid goes on"},
                                                {WorkPhase::lid, "lid", "The lid"},
                                                {WorkPhase::leak_test, "leak_test", "Leak test"},
                                                {WorkPhase::in_the_vise, "in_the_vise", "In the vise"},
                                                {WorkPhase::on_the_tank, "on_the_tank", "On the tank"},
                                                {WorkPhase::first_fill, "first_fill", "First fill"}}};

StepList said_list(std::string title, const std::vector<Fact>& facts, UnitSystem units) {
  StepList list{std::move(title), {}};
  for (const Fact& fact : facts) list.steps.push_back({say(fact, units)});
  return list;
}

StepList rig_parts(const catalog::Catalog& catalog, const plan::LeakTestPlan& test) {
  StepList list{"Rig", {}};
  for (const plan::RigPart& part : test.rig->parts) {
    const catalog::Part& row = catalog.part(part.part);
    list.steps.push_back(
        {fmt::format("{}, {} ({})", row.name, catalog.material(row.material).name, source_of(catalog, part))});
  }
  for (const plan::RigPart& part : test.at_supply)
    list.steps.push_back(
        {fmt::format("at the far end of the hose: {} ({})", catalog.part(part.part).name, source_of(catalog, part))});
  return list;
}

StepList rig_order(const plan::TestRig& rig, const chain::Run& run, UnitSystem units) {
  StepList list{"Building the rig up", {}};
  for (const chain::BuildStep& step : run.steps) list.steps.push_back({say(step.what, units)});
  if (rig.relief_stands) list.steps.push_back({say(*rig.relief_stands, units)});
  return list;
}

StepList readings(const plan::LeakTestPlan& test) {
  StepList list{kReadings, {}};
  for (const Time& at : test.readings)
    list.steps.push_back({fmt::format("after {:>6}   gauge ________   air ________   metal ________",
                                      write_time(at, UnitSystem::inch))});
  return list;
}

}  // namespace

std::vector<StepList> leak_test_steps(const plan::Plan& plan, UnitSystem units) {
  const plan::LeakTestPlan& test = plan.leak_test;
  if (test.steps.empty()) return {};
  std::vector<StepList> lists;
  if (const chain::Run* run = test.rig ? test.rig->run() : nullptr) {
    lists.push_back(rig_parts(*plan.catalog, test));
    lists.push_back(rig_order(*test.rig, *run, units));
  }
  lists.push_back(said_list("Steps", test.steps, units));
  lists.push_back(said_list("Brush in this order", test.welds, units));
  lists.push_back(readings(test));
  return lists;
}

std::vector<StepList> work_steps(const plan::Plan& plan, UnitSystem units) {
  std::vector<StepList> lists;
  for (const PhaseWords& words : kPhases) {
    StepList list{std::string(words.title), {}};
    for (const plan::WorkStep& step : plan.work.steps)
      if (step.phase == words.phase) list.steps.push_back({say(step.what, units), step.of, step.number});
    if (!list.steps.empty()) lists.push_back(std::move(list));
  }
  return lists;
}

std::string source_of(const catalog::Catalog& catalog, const plan::RigPart& part) {
  switch (part.whose) {
    case plan::RigPart::Whose::job:
      return "lent by the job";
    case plan::RigPart::Whose::bin:
      return "bin";
    case plan::RigPart::Whose::bought:
      break;
  }
  return "buy " + write_price(catalog.part(part.part).price);
}

std::string_view key_of(WorkPhase phase) { return kPhases[static_cast<std::size_t>(phase)].key; }

}  // namespace riserun::report
