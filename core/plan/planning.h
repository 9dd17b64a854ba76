// Plans of one job after another, as a person changes it.
#pragma once

#include "plan/plan.h"

#include <memory>

namespace riserun::plan {

class RunSearch;

/// Plans as make_plan does; what was searched for one plan is known to the next, as long as both are made with the same
/// catalog. For one thread.
class Planning {
 public:
  explicit Planning(std::shared_ptr<const Catalog> catalog);
  ~Planning();
  Planning(Planning&&) noexcept;
  Planning& operator=(Planning&&) noexcept;

  /// @pre the job was read against the catalog
  Plan plan(Job job);

 private:
  std::shared_ptr<const Catalog> catalog_;
  std::shared_ptr<const Catalog> searched_;  // the catalog, or the own one of the job that was planned last
  std::unique_ptr<RunSearch> search_;        // of that
};

}  // namespace riserun::plan
