// The other chains of a connection, as they stand beside the canvas.
#pragma once

#include "catalog/catalog.h"
#include "chain/ask/answer.h"

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace riserun::gui {

/// What the job comes to with a run in place of the one that is planned.
struct Comes {
  quantity::Price price;               // of what the list buys for the run: hose by its length and clamps with it
  std::optional<quantity::Time> fill;  // none: the water never gets there
};

/// Runs side by side, best first. One that is planned and not among them stands first where the solver chose it, last
/// where a person did.
struct Alternatives {
  std::string connection;
  std::uint64_t revision = 0;  // of the job that they were worked out for
  std::shared_ptr<const catalog::Catalog> catalog;
  std::vector<chain::Alternative> rows;
  std::vector<Comes> comes;  // of each row; empty: still being worked out
  std::size_t in_use = 0;    // row of the one that is planned; rows.size(): the one taken cannot be made
  bool taken = false;        // because a person took it
};

}  // namespace riserun::gui
