// What a job takes out of the bin, and what is left over and goes back into it.
#pragma once

#include "plan/plan.h"

#include <string>
#include <vector>

namespace riserun::plan {

struct BinChange {
  struct Count {
    std::string part;  // id
    int more = 0;      // below zero: fewer
  };
  struct Piece {
    PartId part;  // of the catalog, sold by length
    Length length{};
  };
  std::vector<Count> counts;
  std::vector<Piece> pieces;
};

/// Shorter ends are swept up (common practice).
inline const Length kShortestPiece = inches(3.0);

/// For each bin of the job, in their order: the rows of the list that come out of it, less; and the ends of what is
/// cut from a length, as pieces, in the bin that it came from, or of what is bought in the first. Of hose that lies in
/// the bin by the foot the end stays on its roll, with whole feet counted.
std::vector<BinChange> changes_by(const Plan& plan);

}  // namespace riserun::plan
