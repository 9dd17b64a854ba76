#include "gui/model/edit/parts_in_words.h"

#include <fmt/format.h>

namespace riserun::gui {

std::string title_of(const catalog::Catalog& catalog, const std::string& part_id) {
  const auto part = catalog.find_part(part_id);
  if (!part) return part_id;
  const catalog::Part& it = catalog.part(*part);
  return fmt::format("{} ({})", it.name, catalog.material(it.material).name);
}

}  // namespace riserun::gui
