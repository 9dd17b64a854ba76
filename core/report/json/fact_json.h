// A fact as JSON: its code, its values in SI, and its sentence.
#pragma once

#include "quantity/fact.h"
#include "quantity/write.h"

#include <nlohmann/json_fwd.hpp>

namespace riserun::report {

/// A quantity is {"value", "unit"} with its SI unit ("m", "Pa gauge", "usd" for a price), a name a string, a count or a
/// bare number a number, rows an array.
nlohmann::ordered_json value_json(const quantity::Value& value, UnitSystem units);
/// {"code", "values": [...], "text"}.
nlohmann::ordered_json fact_json(const quantity::Fact& fact, UnitSystem units);
nlohmann::ordered_json facts_json(const quantity::Facts& facts, UnitSystem units);

}  // namespace riserun::report
