// How the solver is led to a chain that it does not choose by itself: by wishes that a job can hold. Nothing is forced;
// a wish counts only once the search, asked again with it, answers with that chain.
#pragma once

#include "chain/finder.h"
#include "gui/model/edit/act_edits.h"

#include <functional>
#include <optional>
#include <vector>

namespace riserun::gui {

/// Wishes to be added to those of a connection.
struct Lead {
  std::optional<chain::Order> order;
  std::vector<catalog::PartId> needs;  // a part twice: two of it
  std::vector<catalog::PartId> avoids;
  std::optional<int> most_parts;

  std::size_t size() const { return needs.size() + avoids.size() + (order ? 1 : 0) + (most_parts ? 1 : 0); }
};

/// The parts of a chain, first to last.
using PartRow = std::vector<catalog::PartId>;
PartRow parts_of(const chain::Chain& chain);

/// Tries wishes, the smallest first, and hands those that lead the search to the chain to `accept`, until one is
/// accepted. False: none was.
/// @param may_reorder  another order may be asked for
bool find_lead(const chain::Finder& finder, const chain::ChainRequest& request, const PartRow& target, bool may_reorder,
               const std::function<bool(const Lead&)>& accept);

/// The text with wishes that lead to the alternative; proved by planning the job anew with them.
Edited lead_to_alternative(const Bench& bench, const TakeAlternative& act);
/// The text with wishes that put the other part in the part's place: the rest of the chain as it was if that can be,
/// otherwise as the search finds best.
Edited lead_to_swap(const Bench& bench, const SwapPart& act);

}  // namespace riserun::gui
