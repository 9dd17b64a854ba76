// A plan's card.
#pragma once

#include "plan/plan.h"
#include "quantity/write.h"
#include "report/card/card.h"

namespace riserun::report {

/// The card of a plan. A refused plan has its verdict, findings and cautions alone: nothing of it is to be bought, cut
/// or set before they are settled.
Card card_of(const plan::Plan& plan, UnitSystem units);

}  // namespace riserun::report
