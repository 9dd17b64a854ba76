// From the bytes of a file to the values of a Document, through yaml-cpp's events. The events, and not its node tree:
// the tree forgets repeated keys and how a text was written, and costs several times as much.
#pragma once

#include "catalog/yaml/document_data.h"
#include "catalog/yaml/problems.h"

namespace riserun::catalog::detail {

/// Fills `data.nodes` from `data.text`, whose bytes are checked (text_checks.h), within the bounds of limits.h.
void parse_yaml(DocumentData& data, Problems& problems);

}  // namespace riserun::catalog::detail
