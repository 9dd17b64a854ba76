// The keys of the four files that a catalog folder begins with, as tables: joints, materials, losses and bores.
#pragma once

#include "catalog/yaml/file_keys.h"

#include <vector>

namespace riserun::catalog {

/// joints.yaml: seals, kinds of joint, what mates and what only looks so. Made once, as the next.
const std::vector<FileKey>& joints_keys();

/// materials.yaml: metals and the rest, and when two metals are kept apart.
const std::vector<FileKey>& materials_keys();

/// losses.yaml: head lost in fittings.
const std::vector<FileKey>& losses_keys();

/// pipe.yaml: tables of bores by size.
const std::vector<FileKey>& bores_keys();

}  // namespace riserun::catalog
