// Distinct types for the row numbers of a catalog's tables, so that a size cannot be used where a material is meant.
#pragma once

#include <compare>
#include <cstdint>
#include <functional>

namespace riserun::catalog {

/// Row of one table of a Catalog; valid only for the catalog that gave it out.
template <class Tag>
struct Id {
  std::uint32_t row = UINT32_MAX;
  constexpr bool valid() const { return row != UINT32_MAX; }
  constexpr auto operator<=>(const Id&) const = default;
};

using KindId = Id<struct KindTag>;
using SizeId = Id<struct SizeTag>;
using MaterialId = Id<struct MaterialTag>;
using FamilyId = Id<struct FamilyTag>;
using PortTypeId = Id<struct PortTypeTag>;
using PartId = Id<struct PartTag>;
using LossItemId = Id<struct LossItemTag>;

}  // namespace riserun::catalog

template <class Tag>
struct std::hash<riserun::catalog::Id<Tag>> {
  std::size_t operator()(riserun::catalog::Id<Tag> id) const noexcept { return std::hash<std::uint32_t>()(id.row); }
};
