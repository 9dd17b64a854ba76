#include "catalog/load/loading.h"

#include "quantity/read.h"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>

namespace riserun::catalog {

namespace {

constexpr std::string_view kLengthUnits[] = {"in", "mm", "ft"};
constexpr std::string_view kUnits[] = {"in", "mm", "ft", "psi", "bar", "usd"};

std::string in_quotes(std::string_view text) { return "'" + std::string(text) + "'"; }

void report_unknown(Loading& loading, const Value& where, std::string_view what, std::string_view name,
                    std::span<const std::string_view> known) {
  constexpr std::size_t kFewEnoughToList = 12;  // as many as are read in one look; the rest has did_you_mean
  std::string message =
      at_path(where) + "unknown " + std::string(what) + " " + in_quotes(name) + did_you_mean(name, known);
  if (known.size() <= kFewEnoughToList && !known.empty()) message += " (known: " + either_of(known) + ")";
  loading.problems.add(where, std::move(message));
}

double metres_per(std::string_view unit) {
  if (unit == "in") return in_metres(inches(1.0));
  if (unit == "ft") return in_metres(feet(1.0));
  return in_metres(millimetres(1.0));
}

/// A plain decimal, read fast; most cells are that.
std::optional<double> plain_decimal(std::string_view text) {
  double value = 0.0;
  const auto [end, failed] = std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
  if (failed != std::errc() || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

}  // namespace

std::optional<KindId> named_kind(Loading& loading, const Value& where, std::string_view name) {
  if (const std::optional<KindId> kind = loading.so_far().find_kind(name)) return kind;
  std::vector<std::string_view> known;
  for (const JointKind& kind : loading.so_far().kinds()) known.push_back(kind.id);
  report_unknown(loading, where, "kind of joint", name, known);
  return std::nullopt;
}

std::optional<End> named_end(Loading& loading, const Value& where, std::string_view name) {
  for (const End end : {End::male, End::female, End::neither})
    if (name == end_name(end)) return end;
  constexpr std::string_view kKnown[] = {"male", "female", "neither"};
  report_unknown(loading, where, "end", name, kKnown);
  return std::nullopt;
}

bool check_end(Loading& loading, const Value& where, KindId kind, End end) {
  if (!loading.so_far().notation(kind, end).empty()) return true;
  std::vector<std::string_view> has;
  for (const End other : {End::male, End::female, End::neither})
    if (!loading.so_far().notation(kind, other).empty()) has.push_back(end_name(other));
  loading.problems.add(where, at_path(where) + "the kind " + in_quotes(loading.so_far().kind(kind).id) +
                                  " has no end " + in_quotes(end_name(end)) + ", only " + either_of(has));
  return false;
}

std::optional<MaterialId> named_material(Loading& loading, const Value& where) {
  const std::optional<std::string_view> name = read_text(where, loading.problems);
  if (!name) return std::nullopt;
  if (const std::optional<MaterialId> material = loading.so_far().find_material(*name)) return material;
  std::vector<std::string_view> known;
  for (const Material& material : loading.so_far().materials()) {
    known.push_back(material.id);
    if (material.name != material.id) known.push_back(material.name);
    known.insert(known.end(), material.aliases.begin(), material.aliases.end());
  }
  report_unknown(loading, where, "material", *name, known);
  return std::nullopt;
}

std::optional<LossItemId> named_loss(Loading& loading, const Value& where, std::string_view name) {
  if (name == "none") return LossItemId{};
  const std::span<const LossItem> items = loading.so_far().loss_items();
  for (std::uint32_t row = 0; row < items.size(); ++row)
    if (items[row].name == name) return LossItemId{row};
  std::vector<std::string_view> known;
  for (const LossItem& item : items) known.push_back(item.name);
  report_unknown(loading, where, "loss item", name, known);
  return std::nullopt;
}

std::optional<SizeId> size_of_kind(Loading& loading, const Value& where, KindId kind, std::string_view name) {
  const JointKind& joint = loading.so_far().kind(kind);
  const std::optional<SizeId> size = loading.so_far().find_size(name);
  const auto is_it = [&](const JointSize& row) { return size && row.size == *size; };
  if (std::any_of(joint.sizes.begin(), joint.sizes.end(), is_it)) return size;
  if (joint.sizes.empty()) return std::nullopt;  // reported where its sizes should be
  std::vector<std::string_view> known;
  for (const JointSize& row : joint.sizes) known.push_back(loading.so_far().size_name(row.size));
  loading.problems.add(where, at_path(where) + in_quotes(name) + " is not a size of " + in_quotes(joint.id) +
                                  " (it has " + either_of(known) + ")");
  return std::nullopt;
}

std::optional<Length> length_cell(Loading& loading, const Value& cell, std::string_view unit) {
  const std::string_view text = cell.text();
  if (const std::optional<double> value = plain_decimal(text); value && *value >= 0.0 && *value < 1e5)
    return metres(*value * metres_per(unit));
  return read_with(
      cell, [&](std::string_view t) { return quantity::read_length(std::string(t) + " " + std::string(unit)); },
      loading.problems);
}

std::optional<double> number_cell(Loading& loading, const Value& cell) {
  if (const std::optional<double> value = plain_decimal(cell.text()); value && *value >= 0.0) return value;
  const std::optional<double> value = read_with(cell, quantity::read_number, loading.problems);
  if (!value || *value >= 0.0) return value;
  loading.problems.add(cell, at_path(cell) + "must not be negative");
  return std::nullopt;
}

std::vector<Head> read_heads(Loading& loading, const Value& list) {
  std::vector<Head> heads;
  for (const Value& value : read_list(list, loading.problems)) {
    const std::string_view text = read_text(value, loading.problems).value_or("");
    Head head{std::string(text), {}, value};
    if (const std::size_t open = text.rfind(" ("); open != std::string_view::npos && text.ends_with(')')) {
      head.name = text.substr(0, open);
      head.unit = text.substr(open + 2, text.size() - open - 3);
      if (std::find(std::begin(kUnits), std::end(kUnits), head.unit) == std::end(kUnits))
        report_unknown(loading, value, "unit", head.unit, kUnits);
    }
    const auto same = [&](const Head& other) { return other.name == head.name; };
    if (std::any_of(heads.begin(), heads.end(), same))
      loading.problems.add(value, at_path(value) + "the column " + in_quotes(head.name) + " stands here twice");
    heads.push_back(std::move(head));
  }
  return heads;
}

std::vector<Value> read_row(Loading& loading, const Value& row, std::size_t heads) {
  std::vector<Value> cells = read_list(row, loading.problems);
  if (!row.is_list()) return {};
  for (const Value& cell : cells)
    if (!cell.is_text() && !cell.is_list()) {
      loading.problems.add(cell, at_path(cell) + "a cell holds a text or a list; write 'none' for what is not stated");
      return {};
    }
  if (cells.size() == heads) return cells;
  loading.problems.add(row, at_path(row) + "the row has " + std::to_string(cells.size()) + " cells, but there are " +
                                std::to_string(heads) + " columns");
  return {};
}

std::string as_id_text(std::string_view text) {
  std::string result;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text.substr(i, 3) == " x ") {
      result += 'x';
      i += 2;
      continue;
    }
    const auto c = static_cast<unsigned char>(text[i]);
    if (std::isalnum(c) || c == '.') {
      result += static_cast<char>(std::tolower(c));
    } else if (c < 0x80 && c != '"' && c != '\'' && !result.empty() && result.back() != '-') {
      result += '-';
    }
  }
  while (!result.empty() && result.back() == '-') result.pop_back();
  return result;
}

}  // namespace riserun::catalog
