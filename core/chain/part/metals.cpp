#include "chain/part/metals.h"

#include <cmath>

namespace riserun::chain {

using catalog::GalvanicVerdict;

namespace {

constexpr double kKeptApartDry = 0.50;  // volts
constexpr double kRounding = 1e-6;

}  // namespace

GalvanicVerdict verdict_in(const Catalog& catalog, bool dry, MaterialId a, MaterialId b) {
  const GalvanicVerdict verdict = catalog.galvanic(a, b);
  if (!dry || verdict == GalvanicVerdict::fine) return verdict;
  const double apart = std::abs(catalog.material(a).anodic_index_volts - catalog.material(b).anodic_index_volts);
  return verdict == GalvanicVerdict::keep_apart && apart > kKeptApartDry + kRounding ? verdict : GalvanicVerdict::fine;
}

bool metals_may_meet(const Catalog& catalog, const ChainRequest& request, MaterialId a, MaterialId b) {
  if (request.galvanic == Galvanic::warn || !a.valid() || !b.valid()) return true;
  if (catalog.is_coat_and_metal(a, b)) return true;
  return verdict_in(catalog, request.service == Service::air || request.dry, a, b) == GalvanicVerdict::fine;
}

bool must_part_its_ends(const Catalog& catalog, const ChainRequest& request) {
  return request.from.material && request.to.material &&
         !metals_may_meet(catalog, request, *request.from.material, *request.to.material);
}

}  // namespace riserun::chain
