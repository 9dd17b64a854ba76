// The plan and its parts as JSON. SI numbers with the unit in the key; pressures are gauge unless the key says `abs`.
#pragma once

#include "chain/result.h"
#include "plan/plan.h"

#include <string>

namespace riserun::report {

std::string plan_json(const plan::Plan& plan);
std::string transfer_json(const plan::Plan& plan);
std::string walls_json(const plan::Plan& plan);
std::string list_json(const plan::Plan& plan);
std::string riser_json(const reservoir::Riser& riser);
std::string chain_json(const catalog::Catalog& catalog, const chain::ChainRequest& request,
                       const chain::Answer& answer);

}  // namespace riserun::report
