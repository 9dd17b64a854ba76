#include "report/words/explanations.h"

#include <algorithm>

namespace riserun::report {

const std::vector<Explanation>& explanations() {
  static const std::vector<Explanation> kAll = [] {
    std::vector<Explanation> all;
    for (const auto table : {wall_explanations(), air_explanations(), relief_explanations(), water_explanations(),
                             run_explanations(), caution_explanations(), joint_explanations(), input_explanations()})
      all.insert(all.end(), table.begin(), table.end());
    return all;
  }();
  return kAll;
}

const Explanation* explanation_of(std::string_view code) {
  const std::vector<Explanation>& all = explanations();
  const auto found = std::find_if(all.begin(), all.end(), [&](const Explanation& row) { return row.code == code; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace riserun::report
