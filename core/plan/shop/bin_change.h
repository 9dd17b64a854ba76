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
    int lent = 0;      // that stay, as the leak test only borrows them
  };
  struct Piece {
    PartId part;  // of the catalog, sold by length, or pipe
    Length length{};
    int sawn_ends = 0;  // of pipe, as in Part
  };
  std::vector<Count> counts;
  std::vector<Piece> pieces;
};

/// Shorter ends are swept up; of pipe those that are no longer than the nipples of the shelf are scrap (common
/// practice).
inline const Length kShortestPiece = inches(3.0);
inline const Length kShortestPipe = inches(6.0);

/// From so much on hose is a roll.
inline const Length kRoll = inches(120.0);

/// For each bin of the job, in their order: the rows of the list that come out of it, less, but for what comes back
/// after the leak test; and the ends of what is cut from a length or a pipe, as pieces, in the bin that it came from,
/// or of what is bought in the first. Of hose that lies in the bin by the foot the end is a piece, too, where less than
/// a roll is left: on a roll, from which several are cut, whole feet are counted.
std::vector<BinChange> changes_by(const Plan& plan);

}  // namespace riserun::plan
