#include "chain/build/line_elements.h"

#include "chain/part/head.h"

namespace riserun::chain {

using hydraulics::LineElement;

std::vector<LineElement> line_elements(const Catalog& catalog, const Chain& chain) {
  std::vector<LineElement> elements;
  for (const ChainPart& link : chain.parts) {
    const catalog::Part& part = catalog.part(link.part);
    for (LineElement& element : link.cut_length
                                    ? elements_of_cut(catalog, part, link.enter, link.leave, *link.cut_length)
                                    : elements_of(catalog, part, link.enter, link.leave))
      elements.push_back(std::move(element));
  }
  return elements;
}

}  // namespace riserun::chain
