#include "property/chain/judged_duty.h"

#include <algorithm>

namespace riserun::chain::testing {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)

namespace {

/// What names family and material, else the family, else the material; the last of equals.
const Duty* duty_of(const Catalog& catalog, const Part& part) {
  const auto has = [](const auto& list, auto id) { return std::find(list.begin(), list.end(), id) != list.end(); };
  const Duty* found[3] = {};
  for (const Duty& duty : catalog.duties()) {
    const bool family = has(duty.families, part.family);
    const bool material = has(duty.materials, part.material);
    if (family && material) found[0] = &duty;
    if (family && duty.materials.empty()) found[1] = &duty;
    if (material && duty.families.empty()) found[2] = &duty;
  }
  return found[0] ? found[0] : (found[1] ? found[1] : found[2]);
}

}  // namespace

bool joins_unasked(const Catalog& catalog, const ChainRequest& request, const Part& part) {
  const Family& family = catalog.family(part.family);
  return family.role == Role::connector && (request.vacuum || !family.for_vacuum);
}

bool stands(const Catalog& catalog, const ChainRequest& request, PartId id) {
  const Part& part = catalog.part(id);
  const Duty* duty = duty_of(catalog, part);
  if (duty && duty->air_alone && request.service == Service::water && !request.dry) return false;
  if (request.vacuum && !(duty && duty->vacuum == InVacuum::stands)) return false;
  double share = 1.0;
  if (request.hottest && in_degrees_fahrenheit(*request.hottest) > 73.0) {
    share = 0.0;
    for (std::size_t row = duty ? duty->heat.size() : 0; row-- > 0;)
      if (in_kelvins(*request.hottest) <= in_kelvins(duty->heat[row].up_to) + 0.001) share = duty->heat[row].share;
    if (share == 0.0) return false;
  }
  double psi = in_psi(part.rating);
  if (request.service == Service::air) {
    if (!part.air || !catalog.material(part.material).compressed_air) return false;
    if (part.far_material && !catalog.material(*part.far_material).compressed_air) return false;
    if (!duty || duty->under_air == UnderAir::not_proved) return false;
    if (duty && duty->under_air == UnderAir::limited) psi = std::min(psi, in_psi(duty->air_limit));
  }
  return !request.rating || psi * share >= in_psi(*request.rating) - 1e-6;
}

}  // namespace riserun::chain::testing
