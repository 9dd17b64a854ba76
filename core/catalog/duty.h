// What parts stand besides their rating at room temperature: heat, compressed air, vacuum.
#pragma once

#include "catalog/ids.h"
#include "quantity/quantities.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace riserun::catalog {

/// Share of the rating that is left up to that temperature.
struct HeatShare {
  Temperature up_to{};
  double share = 1.0;  // over 0, at most 1
};

enum class InVacuum : std::uint8_t { not_proved, stands, collapses };

/// How much of a rating holds for compressed air.
enum class UnderAir : std::uint8_t { not_proved, as_water, limited };

/// It holds for the parts that are of one of the families and of one of the materials; an empty list: of any.
struct Duty {
  std::vector<FamilyId> families;
  std::vector<MaterialId> materials;
  std::vector<HeatShare>
      heat;  // coldest first, shares not rising; beyond the last nothing is proved; empty: nothing is
  UnderAir under_air = UnderAir::not_proved;
  bool air_alone = false;     // never in a run of water
  GaugePressure air_limit{};  // for UnderAir::limited: no more than that, nor than the rating
  InVacuum vacuum = InVacuum::not_proved;
  std::string source;
};

}  // namespace riserun::catalog
