// The shipped catalog and the example jobs, read once for all tests of this folder.
#pragma once

#include "catalog/load/load.h"
#include "plan/job/read_job.h"
#include "plan/plan.h"
#include "plan/planning.h"
#include "report/words/explanations.h"

#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <memory>
#include <sstream>
#include <string>
#include <vector>

namespace riserun::plan {

inline const std::shared_ptr<const Catalog>& shipped_catalog() {
  static const auto catalog =
      std::make_shared<const Catalog>(catalog::load_catalog(std::string(RISERUN_SOURCE_DIR) + "/catalog"));
  return catalog;
}

inline std::string example_path(const std::string& name) {
  return std::string(RISERUN_SOURCE_DIR) + "/examples/" + name + ".yaml";
}

inline std::string example_text(const std::string& name) {
  std::ifstream file(example_path(name), std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

/// Made once.
inline const Plan& plan_of_example(const std::string& name) {
  static std::map<std::string, Plan> plans;
  const auto known = plans.find(name);
  if (known != plans.end()) return known->second;
  return plans.emplace(name, make_plan(shipped_catalog(), load_job(*shipped_catalog(), example_path(name))))
      .first->second;
}

/// Of a row of a table of tests.
template <class Row>
std::string name_of(const ::testing::TestParamInfo<Row>& info) {
  return info.param.name;
}

inline const Plan& bevel_bench() { return plan_of_example("bevel-bench"); }

/// Planned one after another, as the window does, which shows nothing (property_plan's one_after_another_test) and
/// saves half the time. Whatever a test finds, `riserun explain` knows its code.
inline Plan plan_of_text(const std::string& text) {
  static ReadBefore before;
  static Planning planning(shipped_catalog());
  Plan plan = planning.plan(read_job(*shipped_catalog(), text, "bench.yaml", before));
  for (const Finding& finding : plan.findings)
    EXPECT_NE(report::explanation_of(finding.reason.code), nullptr) << finding.reason.code << " is not explained";
  return plan;
}

/// What is refused in it.
inline std::vector<Finding> refusals_of(const Plan& plan) {
  std::vector<Finding> refused;
  for (const Finding& finding : plan.findings)
    if (finding.severity == Severity::refused) refused.push_back(finding);
  return refused;
}

/// The text with one piece of it replaced.
inline std::string with(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  if (at == std::string::npos) throw std::logic_error("the text does not hold: " + from);
  return text.replace(at, from.size(), to);
}

}  // namespace riserun::plan
