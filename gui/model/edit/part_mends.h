// Mends that no one key of a job says: another part in a run, a port elsewhere, a higher table.
#pragma once

#include "gui/model/edit/bench.h"
#include "quantity/write.h"

#include <optional>
#include <string>

namespace riserun::gui {

/// Whether the change is one of those that with_part_mend writes.
bool is_part_mend(const plan::Change& change);
/// Whether a job's text can say it: not that a line is left out, that it needs one part more, that a restrictor stands
/// in it.
bool can_be_written(const plan::Change& change);

/// The text with the change, as the plan has tried it; or why the text has no place for it.
/// @pre is_part_mend(change)
Edited with_part_mend(const Bench& bench, const JobText& text, const plan::Change& change, quantity::UnitSystem units);

/// What a button says that does it: "Change the relief valve to one set at 2 psi".
/// @pre is_part_mend(change)
std::string title_of_part_mend(const catalog::Catalog& catalog, const plan::Change& change, quantity::UnitSystem units);

/// The next mark of a tape, a sixteenth or a millimetre.
quantity::Length up_to_mark(quantity::Length length, quantity::UnitSystem units);
/// A female thread of the part's size in trade notation: its own, or the one that takes it.
std::string port_for(const catalog::Catalog& catalog, catalog::PartId part);

}  // namespace riserun::gui
