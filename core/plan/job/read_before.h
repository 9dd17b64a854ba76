// What one reading of a job leaves for the next.
#pragma once

#include "catalog/words/part_search.h"

#include <memory>

namespace riserun::plan {

/// What reading a job leaves for reading it again, after a change: its own catalog, where its own parts stayed as they
/// were, and what words of parts were found to mean. For one thread, and for one catalog, which must outlive it.
struct ReadBefore {
  std::shared_ptr<const catalog::Catalog> own_catalog;  // of the job; nullptr: it has no parts of its own
  std::unique_ptr<catalog::PartSearch> listed;          // what words mean in the catalog that the job is read against
  std::unique_ptr<catalog::PartSearch> own;             // ... and in its own
};

}  // namespace riserun::plan
