// The parts of a card, each filled by a file of its own.
#pragma once

#include "plan/plan.h"
#include "quantity/write.h"
#include "report/card/card.h"

namespace riserun::report {

void add_card_settings(const plan::Plan& plan, UnitSystem units, Card& card);
void add_card_lists(const plan::Plan& plan, UnitSystem units, Card& card);
void add_card_work(const plan::Plan& plan, UnitSystem units, Card& card);

}  // namespace riserun::report
