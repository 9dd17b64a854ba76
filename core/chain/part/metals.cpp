#include "chain/part/metals.h"

namespace riserun::chain {

using catalog::GalvanicVerdict;

bool metals_may_meet(const Catalog& catalog, const ChainRequest& request, MaterialId a, MaterialId b) {
  if (request.galvanic == Galvanic::warn || !a.valid() || !b.valid()) return true;
  if (catalog.is_coat_and_metal(a, b)) return true;
  const GalvanicVerdict verdict = catalog.galvanic(a, b);
  // Nothing carries the current where it is dry: there only metals far apart are kept so.
  const bool dry = request.service == Service::air || request.dry;
  return verdict == GalvanicVerdict::fine || (verdict == GalvanicVerdict::watch && dry);
}

bool must_part_its_ends(const Catalog& catalog, const ChainRequest& request) {
  return request.from.material && request.to.material &&
         !metals_may_meet(catalog, request, *request.from.material, *request.to.material);
}

}  // namespace riserun::chain
