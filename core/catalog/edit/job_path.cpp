#include "catalog/edit/job_path.h"

namespace riserun::catalog {

JobPath JobPath::parent() const {
  std::vector<PathStep> steps = steps_;
  steps.pop_back();
  return JobPath(std::move(steps));
}

std::string JobPath::text() const {
  std::string result;
  for (const PathStep& step : steps_) {
    if (const std::size_t* place = std::get_if<std::size_t>(&step)) {
      result += "[" + std::to_string(*place + 1) + "]";
    } else {
      result += (result.empty() ? "" : ".") + std::get<std::string>(step);
    }
  }
  return result;
}

JobPath operator/(JobPath path, std::string key) {
  path.steps_.emplace_back(std::move(key));
  return path;
}

JobPath operator/(JobPath path, std::size_t place) {
  path.steps_.emplace_back(place);
  return path;
}

JobPath at(std::string key) { return JobPath() / std::move(key); }

}  // namespace riserun::catalog
