#include "plan/stage/test_air.h"

namespace riserun::plan {

bool is_sold_for_air(const Catalog& catalog, PartId part) {
  return catalog.part(part).air && catalog.material(catalog.part(part).material).compressed_air;
}

void ask_for_test_air(const Inputs& inputs, const Bin& bin, chain::ChainRequest& request) {
  const Catalog& catalog = inputs.catalog;
  request.order = chain::Order::bin;
  request.service = Service::air;
  request.rating = inputs.settled.regulator_range;
  request.bin = bin;
  request.banned.assign(catalog.parts().size(), false);
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const catalog::Part& part = catalog.parts()[row];
    request.banned[row] = !is_sold_for_air(catalog, PartId{row}) || part.flexible || part.cut_to_length;
  }
}

}  // namespace riserun::plan
