#include "gui/model/edit/parts_in_words.h"

#include "catalog/words/part_search.h"

#include <fmt/format.h>

namespace riserun::gui {

bool mean_only(const catalog::Catalog& catalog, const std::string& words, catalog::PartId part) {
  const std::vector<catalog::PartId> found = catalog::find_parts(catalog, words);
  return found.size() == 1 && found.front() == part;
}

std::string words_for(const catalog::Catalog& catalog, catalog::PartId part) {
  const catalog::Part& it = catalog.part(part);
  const std::string words = it.name + " " + catalog.material(it.material).name;
  return mean_only(catalog, words, part) ? words : it.id;
}

std::string title_of(const catalog::Catalog& catalog, const std::string& part_id) {
  const auto part = catalog.find_part(part_id);
  if (!part) return part_id;
  const catalog::Part& it = catalog.part(*part);
  return fmt::format("{} ({})", it.name, catalog.material(it.material).name);
}

}  // namespace riserun::gui
