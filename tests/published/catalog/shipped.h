// The shipped catalog, loaded once for all tests of this program, and short ways to name what is in it.
#pragma once

#include "catalog/load/load.h"

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace riserun::catalog {

constexpr double kPrintedExactly = 1e-9;  // the catalog's figures are those of the table

inline const Catalog& shipped() {
  static const Catalog catalog = load_catalog(std::filesystem::path(RISERUN_SOURCE_DIR) / "catalog");
  return catalog;
}

/// Not valid when the catalog has no such end.
inline PortTypeId shipped_port(std::string_view kind, std::string_view size, End end) {
  const std::optional<KindId> kind_id = shipped().find_kind(kind);
  const std::optional<SizeId> size_id = shipped().find_size(size);
  if (!kind_id || !size_id) return {};
  return shipped().find_port_type({*kind_id, *size_id, end}).value_or(PortTypeId{});
}

/// nullptr when the catalog has no such kind or size.
inline const JointSize* shipped_joint(std::string_view kind, std::string_view size) {
  const std::optional<KindId> kind_id = shipped().find_kind(kind);
  const std::optional<SizeId> size_id = shipped().find_size(size);
  return kind_id && size_id ? shipped().joint_size({*kind_id, *size_id, End::male}) : nullptr;
}

/// nullptr when there is no such part.
inline const Part* shipped_part(std::string_view id) {
  const std::optional<PartId> part = shipped().find_part(id);
  return part ? &shipped().part(*part) : nullptr;
}

inline std::vector<std::string> size_names(std::string_view kind) {
  std::vector<std::string> names;
  for (const JointSize& size : shipped().kind(*shipped().find_kind(kind)).sizes)
    names.push_back(shipped().size_name(size.size));
  return names;
}

}  // namespace riserun::catalog
