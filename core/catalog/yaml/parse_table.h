// From the bytes of a table, as a spreadsheet writes it (RFC 4180), to the values of a Document: a list with a map for
// each row, whose keys are the heads of the columns.
#pragma once

#include "catalog/yaml/document_data.h"
#include "catalog/yaml/problems.h"

#include <string_view>

namespace riserun::catalog::detail {

/// Whether a file of that name is read as a table: it ends in `.csv`, in either case.
bool is_table_name(std::string_view name);

/// Fills `data.nodes` from `data.text`, whose bytes are checked (text_checks.h), within the bounds of limits.h. Cells
/// are separated by commas, semicolons or tabs, whichever of them the first line has most of. Heads are read in lower
/// case, blanks around a cell count for nothing, a cell without text is not there, and neither is an empty row. A
/// column without a head is not read.
void parse_table(DocumentData& data, Problems& problems);

}  // namespace riserun::catalog::detail
