// What gets used up, and what is taken off the rack by the length: sealants, bars of the stays, the gear of the leak
// test.
#pragma once

#include "plan/stage/inputs.h"
#include "plan/stage/listed_sections.h"

namespace riserun::plan {

/// The thread over the lid of a riser that is welded through it is that of a coupling screwed onto it; else its own.
bool has_coupling_on_top(const Catalog& catalog, const JobPort& port);

/// Behind the list's own rows. The cuts must be in it already.
void add_consumables(const Inputs& inputs, const ListedSections& sections, ShoppingList& list);

}  // namespace riserun::plan
