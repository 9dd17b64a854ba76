// Parts as the words of a job name them.
#pragma once

#include "catalog/catalog.h"
#include "plan/shop/bin_text.h"

#include <string>

namespace riserun::gui {

using plan::mean_only;
using plan::words_for;

/// `1 x 3/4 hex bushing (black iron)`; the id itself where the catalog has no such part.
std::string title_of(const catalog::Catalog& catalog, const std::string& part_id);

}  // namespace riserun::gui
