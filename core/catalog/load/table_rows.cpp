#include "catalog/load/table_rows.h"

#include <utility>

namespace riserun::catalog {

namespace {

// A slip in a few lists (sizes times sizes times lengths) multiplies to any number: stop before memory runs out. The
// largest table of the shipped catalog yields some hundred rows.
constexpr std::size_t kMostRows = 200000;

class RowReader {
 public:
  RowReader(Loading& loading, const FamilyTable& table) : loading_(loading), table_(table), heads_(table.heads) {}

  std::vector<Row> run() {
    for (const Value& value : table_.rows) {
      const std::vector<Value> cells = read_row(loading_, value, heads_.size());
      if (!cells.empty()) multiply(Row{value, cells, {}}, 0);
      if (rows_.size() > kMostRows) {
        report(table_.where, "the table yields more than " + std::to_string(kMostRows) + " rows");
        return {};
      }
    }
    return std::move(rows_);
  }

 private:
  void report(const Value& where, const std::string& message) {
    loading_.problems.add(where, where.path() + ": " + message);
  }

  bool multiplies(std::size_t column) const {
    return heads_[column].name != kStocked && heads_[column].name != kMadeIn;
  }

  // A list in a cell stands for one row each.
  void multiply(Row row, std::size_t from) {
    for (std::size_t column = from; column < row.cells.size(); ++column) {
      if (!row.cells[column].is_list() || !multiplies(column)) continue;
      const std::vector<Value> choices = row.cells[column].items();
      if (choices.empty()) report(row.cells[column], "an empty list yields no row");
      for (const Value& choice : choices) {
        if (!read_text(choice, loading_.problems) || rows_.size() > kMostRows) return;
        Row one = row;
        one.cells[column] = choice;
        multiply(std::move(one), column + 1);
      }
      return;
    }
    row.numbers.resize(row.cells.size());
    for (std::size_t column = 0; column < row.cells.size(); ++column)
      row.numbers[column] = number(row.cells[column], heads_[column].unit);
    rows_.push_back(std::move(row));
  }

  std::optional<double> number(const Value& cell, const std::string& unit) {
    if (unit.empty() || cell.text() == "none") return std::nullopt;
    if (unit == "usd") {
      const std::optional<double> usd = number_cell(loading_, cell);
      if (usd && *usd > kLargestPriceUsd) report(cell, "a price up to 100000 usd is expected");
      return usd;
    }
    if (unit == "psi" || unit == "bar") {
      const std::optional<double> value = number_cell(loading_, cell);
      if (!value) return std::nullopt;
      const GaugePressure pressure = unit == "psi" ? psig(*value) : bar_gauge(*value);
      check_pressure(loading_, cell, pressure, "pressure");
      return in_pascals(pressure);
    }
    const std::optional<Length> length = length_cell(loading_, cell, unit);
    if (length && *length > metres(1000.0)) report(cell, "a length up to 1000 m is expected");
    return length ? std::optional(in_metres(*length)) : std::nullopt;
  }

  Loading& loading_;
  const FamilyTable& table_;
  std::span<const Head> heads_;
  std::vector<Row> rows_;
};

}  // namespace

std::vector<Row> read_rows(Loading& loading, const FamilyTable& table) { return RowReader(loading, table).run(); }

void check_pressure(Loading& loading, const Value& where, GaugePressure pressure, std::string_view what) {
  if (pressure <= gauge_pascals(0.0) || pressure > psig(20000.0))
    loading.problems.add(where, where.path() + ": a " + std::string(what) + " lies above 0 and up to 20000 psi");
}

}  // namespace riserun::catalog
