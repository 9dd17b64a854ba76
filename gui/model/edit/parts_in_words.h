// Parts as the words of a job name them.
#pragma once

#include "catalog/catalog.h"

#include <optional>
#include <string>

namespace riserun::gui {

/// Words that mean this part and no other: its name and material where they do, otherwise its id.
std::string words_for(const catalog::Catalog& catalog, catalog::PartId part);
/// Whether the words mean this part alone.
bool mean_only(const catalog::Catalog& catalog, const std::string& words, catalog::PartId part);
/// `1 x 3/4 hex bushing (black iron)`; the id itself where the catalog has no such part.
std::string title_of(const catalog::Catalog& catalog, const std::string& part_id);

}  // namespace riserun::gui
