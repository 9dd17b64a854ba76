// The plan and its parts as JSON. SI numbers with the unit in the key; pressures are gauge unless the key says `abs`.
// `units` are those of the sentences.
#pragma once

#include "chain/ask/spares.h"
#include "plan/plan.h"
#include "quantity/write.h"

#include <string>

namespace riserun::report {

std::string plan_json(const plan::Plan& plan, UnitSystem units);
/// Sections by themselves, each with the plan's "verdict" first. Where no leak test is possible that is all there is.
std::string riser_json(const plan::Plan& plan, UnitSystem units);
std::string transfer_json(const plan::Plan& plan);
std::string walls_json(const plan::Plan& plan);
std::string leak_test_json(const plan::Plan& plan, UnitSystem units);
std::string list_json(const plan::Plan& plan, UnitSystem units);
/// With the spares worth buying: "spares", "spares_usd", and "stock_outs" with what stands in for each missing part.
std::string list_json(const plan::Plan& plan, const chain::Spares& spares, UnitSystem units);
/// Of a riser asked for without a job.
std::string riser_json(const reservoir::Riser& riser, UnitSystem units);

}  // namespace riserun::report
