// A run as it is put together, step by step: in the vise, or on what is held.
#pragma once

#include "chain/ask/answer.h"

#include <cstddef>
#include <vector>

namespace riserun::plan {

/// What hangs together while a run is made up, and whether it hangs on something that is held.
class MadeUp {
 public:
  explicit MadeUp(const chain::Run& run);

  /// Makes the step; true: it is made on what is held, false: in the vise.
  bool made_in_place(const chain::BuildStep& step);

 private:
  bool stands(std::size_t body) const;

  const chain::Run& run_;
  std::vector<std::size_t> group_;
  std::vector<bool> held_;
};

}  // namespace riserun::plan
