// What mends a run that cannot be made, as a fitter would mend it: never by doing without what keeps the reservoir
// safe, and never by another way to carry air in what is not made for it.
#pragma once

#include "catalog/catalog.h"
#include "chain/ask/request.h"
#include "plan/remarks.h"

#include <optional>
#include <string>
#include <vector>

namespace riserun::plan {

/// @param reason  why there is none, as the search gives it
/// @param mend  what lifts it by the search's own rules
/// @return in its place; nullopt: that mend is as good as any
std::optional<Fact> fitters_mend(const catalog::Catalog& catalog, const std::vector<chain::Need>& asked,
                                 const Fact& reason, const std::optional<Fact>& mend);

/// A mend that is one part to order is tried, and followed, by what lets the connection take it.
void change_for_special_order(const std::string& connection, Finding& refusal);

}  // namespace riserun::plan
