// The catalog as a person looks it up.
#pragma once

#include "catalog/catalog.h"
#include "report/text/text_layout.h"

#include <span>
#include <string>

namespace riserun::report {

/// A line a part: name, material, ports, rating, price, how it is had.
std::string catalog_text(const catalog::Catalog& catalog, std::span<const catalog::PartId> parts, const Style& style);

}  // namespace riserun::report
