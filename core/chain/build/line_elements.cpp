#include "chain/build/line_elements.h"

#include "chain/part/head.h"
#include "chain/part/move.h"

#include <algorithm>

namespace riserun::chain {

using hydraulics::LineElement;

std::vector<LineElement> line_elements(const Catalog& catalog, const Chain& chain) {
  std::vector<LineElement> elements;
  for (const RunPart& link : chain.parts) {
    const catalog::Part& part = catalog.part(link.part);
    for (LineElement& element : link.cut_length
                                    ? elements_of_cut(catalog, part, link.enter, link.leave(), *link.cut_length)
                                    : elements_of(catalog, part, link.enter, link.leave()))
      elements.push_back(std::move(element));
  }
  return elements;
}

std::optional<Length> bore_of_part(const Catalog& catalog, const RunPart& link) {
  const catalog::Part& part = catalog.part(link.part);
  const Length bore = std::min(port_bore(catalog, part, link.enter), port_bore(catalog, part, link.leave()));
  return bore > Length{} ? std::optional(bore) : std::nullopt;
}

std::optional<Length> bore_of_way(const Catalog& catalog, const Run& run, std::size_t end) {
  std::optional<Length> least;
  for (const RunPart& link : way_to(run, end).parts)
    if (const auto bore = bore_of_part(catalog, link); bore && (!least || *bore < *least)) least = bore;
  return least;
}

}  // namespace riserun::chain
