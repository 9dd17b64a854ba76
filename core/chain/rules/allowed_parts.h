// Whether a part that somebody would put into a run keeps what is asked of it.
#pragma once

#include "chain/ask/request.h"

#include <cstdint>
#include <vector>

namespace riserun::chain {

/// A part where it would stand in a run: the way through it, and the metals that it would meet there.
struct PlacedPart {
  PartId part;
  std::uint8_t enter = 0;
  std::uint8_t leave = 1;              // that of `enter`: it ends the run, or plugs a port
  std::optional<MaterialId> before{};  // facing `enter`; nullopt: not known
  std::optional<MaterialId> behind{};  // facing `leave`
};

/// For each: no rule of the request on single parts forbids it, and it can be had, from a store or of the request's
/// bin. Counts (of parts, of bushings), needs and held ends are for whole runs and not looked at.
std::vector<bool> allowed_parts(const Catalog& catalog, const ChainRequest& request,
                                const std::vector<PlacedPart>& parts);

}  // namespace riserun::chain
