// The one check of what is asked, before any search: each question that Finder answers is held against the table of
// what can be asked (ask/askable.h), so that what a caller forgot to look at is refused and not quietly left out.
#pragma once

#include "chain/ask/assembly.h"
#include "chain/ask/span.h"

namespace riserun::chain {

/// @throws InputError with every mistake: more needs than can be told apart, a need that no part meets, figures out of
///         the range of their row, bans for another number of parts than the catalog has
void check(const Catalog& catalog, const ChainRequest& request);
/// @throws InputError for the same, and for a distance out of range or a second offset without a first
void check(const Catalog& catalog, const ChainRequest& request, const Span& span);
/// @throws InputError for the same, branch by branch, for too few or too many targets, and for what says nothing of a
/// run
///         with several far ends: another order or another freedom than AssemblyRequest allows, needs in order, a count
///         of parts
void check(const Catalog& catalog, const AssemblyRequest& request);

}  // namespace riserun::chain
