// Where posts and bars stand, so that they can be marked out: the walls' limit rests on their even spacing.
#pragma once

#include "plan/stage/inputs.h"
#include "quantity/fact.h"
#include "reservoir/stay_bars.h"

#include <string>
#include <vector>

namespace riserun::plan {

/// The rows of a wall, as reservoir::StayBars names it, one way and the other: middles from the left end or from the
/// front, of a side's level bars over the floor. Of the single ties the rows at whose crossings they stand. Empty: the
/// wall has none.
quantity::Facts places_of_stays(const Inputs& inputs, const std::string& wall);

/// All walls that have bars, each with its places.
quantity::Facts places_of_all_stays(const Inputs& inputs, const std::vector<reservoir::StayBars>& bars);

/// Of bars that stand across a wall's longer measure the rows of that way alone, of those between them theirs, and the
/// bays of the row that they fill; of ties both rows at whose crossings they stand.
quantity::Facts places_of(const Inputs& inputs, const reservoir::StayBars& bars);

}  // namespace riserun::plan
