#include "plan/shop/table_rows.h"

#include "catalog/yaml/read_file.h"
#include "quantity/input_error.h"
#include "quantity/read.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace riserun::plan {

namespace {

using quantity::InputError;

[[noreturn]] void refuse(const std::filesystem::path& file, int line, const std::string& why) {
  throw InputError({{file.string(), line, 0, why, ""}});
}

std::string text_of(const std::filesystem::path& file) {
  catalog::Problems problems;
  std::optional<std::string> text = catalog::read_file(file, problems);
  std::move(problems).throw_if_any();
  return std::move(*text);
}

/// Records of RFC 4180, each with the line that it begins on.
struct Record {
  int line = 1;
  std::vector<std::string> fields = std::vector<std::string>(1);
};

std::vector<Record> records_of(const std::string& text) {
  std::vector<Record> records(1);
  bool quoted = false;
  int line = 1;
  for (std::size_t at = 0; at < text.size(); ++at) {
    const char c = text[at];
    std::string& field = records.back().fields.back();
    if (c == '\n') ++line;
    if (quoted && c == '"' && at + 1 < text.size() && text[at + 1] == '"')
      field += text[++at];
    else if (c == '"')
      quoted = !quoted;
    else if (c == ',' && !quoted)
      records.back().fields.emplace_back();
    else if (c == '\n' && !quoted)
      records.push_back({line});
    else if (c != '\r' || quoted)
      field += c;
  }
  return records;
}

}  // namespace

std::vector<TableRow> bought_rows(const std::filesystem::path& table) {
  const std::vector<Record> records = records_of(text_of(table));
  const std::vector<std::string>& head = records.front().fields;
  const auto column = [&](const char* name) {
    const auto found = std::find(head.begin(), head.end(), name);
    if (found == head.end()) refuse(table, 1, std::string("has no column '") + name + "': is it a list of riserun?");
    return static_cast<std::size_t>(found - head.begin());
  };
  const std::size_t what = column("what");
  const std::size_t quantity = column("quantity");
  const std::size_t id = column("id");
  std::vector<TableRow> rows;
  for (const Record& record : records) {
    if (&record == &records.front() || record.fields.size() <= std::max({what, quantity, id})) continue;
    if (record.fields[what] != "buy" || record.fields[id].empty()) continue;
    const auto count = quantity::read_count(record.fields[quantity]);
    if (!std::holds_alternative<int>(count) || std::get<int>(count) < 0 || std::get<int>(count) > 10000)
      refuse(table, record.line, "'" + record.fields[quantity] + "' is no quantity");
    rows.push_back({record.fields[id], std::get<int>(count)});
  }
  return rows;
}

}  // namespace riserun::plan
