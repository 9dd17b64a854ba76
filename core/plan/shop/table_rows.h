// The rows of a list that a plan was written to as a table.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace riserun::plan {

/// Under `what` of the rows that stand in place of a list where the job is refused.
inline constexpr const char* kRefusedRow = "refused";

struct TableRow {
  std::string part;  // id
  int quantity = 0;
};

/// Those that were to be bought and that have an id.
/// @throws InputError for what is no such table, or the table of a refused job, with the line
std::vector<TableRow> bought_rows(const std::filesystem::path& table);

}  // namespace riserun::plan
