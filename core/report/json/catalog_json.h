// The catalog as JSON, for whoever wants to work on it.
#pragma once

#include "catalog/catalog.h"

#include <span>
#include <string>

namespace riserun::report {

/// The parts with their ports, all mating pairs and look-alikes. SI units; pressures are gauge.
std::string catalog_json(const catalog::Catalog& catalog, std::span<const catalog::PartId> parts);

}  // namespace riserun::report
