// Random YAML files in the many ways in which people write them, with comments and blank lines, for the property tests.
#pragma once

#include "catalog/edit/job_text.h"

#include <random>
#include <string>
#include <vector>

namespace riserun::catalog::testing {

/// A map with maps, lists and texts in it, each written in a style of its own.
std::string random_yaml(std::mt19937& random);

/// The paths of all that is in the tree, the root first.
std::vector<JobPath> all_paths(const TextNode& root);

}  // namespace riserun::catalog::testing
