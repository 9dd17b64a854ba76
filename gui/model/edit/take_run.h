// The run that a person has chosen for a connection: written into the job under `take`, parts by their ids, and planned
// in place of the best.
#pragma once

#include "chain/ask/answer.h"
#include "gui/model/edit/act.h"
#include "gui/model/edit/bench.h"

#include <vector>

namespace riserun::gui {

/// The run as TakeRun asks for it.
std::vector<TakenRow> rows_of_run(const catalog::Catalog& catalog, const chain::Chain& chain);

/// The text with the run in it, its ports only where they would not be understood without. Refused, with the reason,
/// where the job's rules do not let the run in.
Edited take_run(const Bench& bench, const TakeRun& act);
Edited back_to_best(const JobText& text, const BackToBest& act);
/// The text with the run in which the other part is in the part's place: the rest as it was if that can be, else as the
/// search finds best with that part.
Edited swap_part(const Bench& bench, const SwapPart& act);

/// The ids that `take` of the connection at that path holds.
std::vector<std::string> taken_ids(const JobText& text, const JobPath& connection);

}  // namespace riserun::gui
