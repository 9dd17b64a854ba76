// What a family's rule takes from a row of its table: a text that stands in a column or in the rule itself, a measure
// such as `half of length`, a bore by table, a title with places for cells. Names are looked up once for a table; a row
// then only picks. For core/catalog's own files only.
#pragma once

#include "catalog/load/loading.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace riserun::catalog {

/// One row with every list cell replaced by one of its items, and its numbers in SI.
struct Row {
  Value where;
  std::vector<Value> cells;
  std::vector<std::optional<double>> numbers;  // of columns with a unit: metres, pascals, dollars
};

/// A text of the rule that may be a column's name: then each row's cell counts, else the text itself.
struct Pick {
  Value rule;
  std::optional<std::size_t> column;
  bool given() const { return rule.exists(); }
  const Value& where(const Row& row) const { return column ? row.cells[*column] : rule; }
  std::string_view text(const Row& row) const { return where(row).text(); }
};

std::optional<std::size_t> column_of(std::span<const Head> heads, std::string_view name);
Pick make_pick(Loading& loading, const Value& rule, std::span<const Head> heads);

/// `half of length - 0.25 in`: columns with a length unit and lengths, added up.
class Measure {
 public:
  static std::optional<Measure> make(Loading& loading, const Value& rule, std::span<const Head> heads);
  /// Nothing when a cell that it needs says `none`.
  std::optional<Length> of(const Row& row) const;

 private:
  struct Term {
    double factor = 1.0;
    std::optional<std::size_t> column;
    double metres = 0.0;
  };
  static std::optional<Term> term(Loading& loading, const Value& rule, std::string_view text, std::size_t offset,
                                  std::span<const Head> heads);
  std::vector<Term> terms_;
};

/// A bore by the table of that name at the port's size, or a measure.
struct BoreRule {
  const BoreTable* table = nullptr;
  std::string_view table_name;
  std::optional<Measure> measure;
  bool given() const { return table != nullptr || measure.has_value(); }
};
/// A rule that is missing gives a rule that is not given.
BoreRule make_bore_rule(Loading& loading, const Value& rule, std::span<const Head> heads);

/// `{large} x {small} reducing coupling`
class Template {
 public:
  static Template make(Loading& loading, const Value& rule, std::span<const Head> heads);
  std::string of(const Row& row, std::string_view material) const;
  bool names_material() const;

 private:
  struct Piece {
    std::string text;
    std::optional<std::size_t> column;
    bool material = false;
  };
  std::vector<Piece> pieces_;
};

/// `{column: [values]}`: the rows for which every column has one of its values.
class RowChoice {
 public:
  static RowChoice make(Loading& loading, const Value& rule, std::span<const Head> heads);
  bool fits(const Row& row) const;
  /// Values that stand in no row and are no size either, so were mistyped.
  void report_unused(Loading& loading, std::span<const Row> rows) const;

 private:
  struct Allowed {
    std::size_t column = 0;
    std::vector<Value> values;
  };
  std::vector<Allowed> allowed_;
};

}  // namespace riserun::catalog
