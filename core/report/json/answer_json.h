// What the solver answers, as JSON: runs, or why there is none.
#pragma once

#include "chain/ask/answer.h"
#include "chain/ask/assembly.h"
#include "chain/ask/spares.h"
#include "quantity/write.h"

#include <nlohmann/json_fwd.hpp>

#include <string>
#include <vector>

namespace riserun::report {

/// {"ports", "chains", "why_none"}: one chain or none.
nlohmann::ordered_json answer_json(const catalog::Catalog& catalog, const chain::ChainRequest& request,
                                   const chain::Answer& answer, UnitSystem units);
/// {"ports", "assemblies", "why_none"}, with the base first among the ports.
nlohmann::ordered_json answer_json(const catalog::Catalog& catalog, const chain::AssemblyRequest& request,
                                   const chain::AssemblyAnswer& answer, UnitSystem units);
/// Puts "spares", "spares_usd" and "stock_outs" into the object.
/// @param names  of the connections, by StockOut::chosen; empty: there is one chain and it has no name
void add_spares(const catalog::Catalog& catalog, const chain::Spares& spares, const std::vector<std::string>& names,
                nlohmann::ordered_json& object);

// The same as whole texts.
std::string chain_json(const catalog::Catalog& catalog, const chain::ChainRequest& request, const chain::Answer& answer,
                       UnitSystem units, const chain::Spares* spares = nullptr);
std::string assembly_json(const catalog::Catalog& catalog, const chain::AssemblyRequest& request,
                          const chain::AssemblyAnswer& answer, UnitSystem units);
/// All rows as `chains`, each with "reason" and "same_in", and `shelf_empty`: what to take for bought parts of the
/// first.
std::string alternatives_json(const catalog::Catalog& catalog, const chain::ChainRequest& request,
                              const std::vector<chain::Alternative>& rows,
                              const std::vector<chain::Substitute>& substitutes, UnitSystem units,
                              const chain::Spares* spares = nullptr);

}  // namespace riserun::report
