#include "catalog/load/row_reading.h"

#include "quantity/read.h"

#include <algorithm>

namespace riserun::catalog {

namespace {

std::vector<std::string_view> names_of(std::span<const Head> heads) {
  std::vector<std::string_view> names;
  for (const Head& head : heads) names.push_back(head.name);
  return names;
}

bool is_length_unit(std::string_view unit) { return unit == "in" || unit == "mm" || unit == "ft"; }

}  // namespace

std::optional<std::size_t> column_of(std::span<const Head> heads, std::string_view name) {
  const auto found = std::find_if(heads.begin(), heads.end(), [&](const Head& head) { return head.name == name; });
  if (found == heads.end()) return std::nullopt;
  return static_cast<std::size_t>(found - heads.begin());
}

Pick make_pick(Loading& loading, const Value& rule, std::span<const Head> heads) {
  if (!rule.exists() || !read_text(rule, loading.problems)) return {};
  return {rule, column_of(heads, rule.text())};
}

std::optional<Measure::Term> Measure::term(Loading& loading, const Value& rule, std::string_view text,
                                           std::size_t offset, std::span<const Head> heads) {
  Term term;
  constexpr std::string_view kHalf = "half of ";
  if (text.starts_with(kHalf)) {
    term.factor = 0.5;
    text.remove_prefix(kHalf.size());
    offset += kHalf.size();
  }
  term.column = column_of(heads, text);
  if (term.column) {
    if (is_length_unit(heads[*term.column].unit)) return term;
    loading.problems.add(rule, rule.path() + ": the column '" + std::string(text) + "' has no unit of length", offset);
    return std::nullopt;
  }
  const quantity::Reading<Length> reading = quantity::read_length(text);
  if (const Length* length = std::get_if<Length>(&reading)) {
    term.metres = in_metres(*length);
    return term;
  }
  if (!text.empty() && text.front() >= '0' && text.front() <= '9') {  // meant for a length
    const quantity::ReadError& error = std::get<quantity::ReadError>(reading);
    loading.problems.add(rule, rule.path() + ": " + error.message, offset + error.offset);
    return std::nullopt;
  }
  loading.problems.add(rule,
                       rule.path() + ": '" + std::string(text) + "' is neither a column of the table nor a length" +
                           did_you_mean(text, names_of(heads)),
                       offset);
  return std::nullopt;
}

std::optional<Measure> Measure::make(Loading& loading, const Value& rule, std::span<const Head> heads) {
  const std::optional<std::string_view> text = read_text(rule, loading.problems);
  if (!text) return std::nullopt;
  Measure measure;
  double sign = 1.0;
  for (std::size_t begin = 0;;) {
    // The blanks tell a sign from the hyphen of 1-1/4 in.
    const std::size_t end = std::min(text->find(" + ", begin), text->find(" - ", begin));
    const std::string_view part = text->substr(begin, end == std::string_view::npos ? end : end - begin);
    std::optional<Term> next = term(loading, rule, part, begin, heads);
    if (!next) return std::nullopt;
    next->factor *= sign;
    measure.terms_.push_back(*next);
    if (end == std::string_view::npos) return measure;
    sign = (*text)[end + 1] == '-' ? -1.0 : 1.0;
    begin = end + 3;
  }
}

std::optional<Length> Measure::of(const Row& row) const {
  double sum = 0.0;  // metres
  for (const Term& term : terms_) {
    const std::optional<double> value = term.column ? row.numbers[*term.column] : term.metres;
    if (!value) return std::nullopt;
    sum += term.factor * *value;
  }
  return metres(sum);
}

BoreRule make_bore_rule(Loading& loading, const Value& rule, std::span<const Head> heads) {
  BoreRule bore;
  if (!rule.is_text()) {
    if (rule.exists()) read_text(rule, loading.problems);
    return bore;
  }
  const auto table = loading.bores.find(rule.text());
  if (table != loading.bores.end()) {
    bore.table = &table->second;
    bore.table_name = table->first;
    return bore;
  }
  const bool is_measure = column_of(heads, rule.text()) || rule.text().find_first_of("0123456789") == 0 ||
                          rule.text().starts_with("half of ");
  if (is_measure) {
    bore.measure = Measure::make(loading, rule, heads);
    return bore;
  }
  std::vector<std::string_view> known = names_of(heads);
  for (const auto& [name, unused] : loading.bores) known.push_back(name);
  std::sort(known.begin(), known.end());
  loading.problems.add(rule, rule.path() + ": '" + std::string(rule.text()) +
                                 "' is neither a table of bores nor a column nor a length" +
                                 did_you_mean(rule.text(), known));
  return bore;
}

Template Template::make(Loading& loading, const Value& rule, std::span<const Head> heads) {
  Template result;
  const std::string_view text = read_text(rule, loading.problems).value_or("");
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t open = std::min(text.find('{', at), text.size());
    if (open > at) result.pieces_.push_back({std::string(text.substr(at, open - at)), {}, false});
    if (open == text.size()) break;
    const std::size_t close = text.find('}', open);
    if (close == std::string_view::npos) {
      loading.problems.add(rule, rule.path() + ": a '{' without its '}'", open);
      break;
    }
    const std::string_view name = text.substr(open + 1, close - open - 1);
    const std::optional<std::size_t> column = column_of(heads, name);
    if (!column && name != "material")
      loading.problems.add(
          rule, rule.path() + ": there is no column '" + std::string(name) + "'" + did_you_mean(name, names_of(heads)),
          open + 1);
    result.pieces_.push_back({{}, column, name == "material" && !column});
    at = close + 1;
  }
  return result;
}

bool Template::names_material() const {
  return std::any_of(pieces_.begin(), pieces_.end(), [](const Piece& piece) { return piece.material; });
}

std::string Template::of(const Row& row, std::string_view material) const {
  std::string result;
  for (const Piece& piece : pieces_) {
    if (piece.column) {
      result += row.cells[*piece.column].text();
    } else {
      result += piece.material ? material : std::string_view(piece.text);
    }
  }
  return result;
}

RowChoice RowChoice::make(Loading& loading, const Value& rule, std::span<const Head> heads) {
  RowChoice choice;
  for (const auto& [key, values] : rule.entries()) {
    const std::optional<std::size_t> column = column_of(heads, key.text());
    if (!column) {
      loading.problems.add(key, rule.path() + ": there is no column '" + std::string(key.text()) + "'" +
                                    did_you_mean(key.text(), names_of(heads)));
      continue;
    }
    choice.allowed_.push_back({*column, read_texts(values, loading.problems)});
  }
  return choice;
}

bool RowChoice::fits(const Row& row) const {
  return std::all_of(allowed_.begin(), allowed_.end(), [&](const Allowed& allowed) {
    const std::string_view cell = row.cells[allowed.column].text();
    return std::any_of(allowed.values.begin(), allowed.values.end(), [&](const Value& v) { return v.text() == cell; });
  });
}

void RowChoice::report_unused(Loading& loading, std::span<const Row> rows) const {
  for (const Allowed& allowed : allowed_)
    for (const Value& value : allowed.values) {
      const auto has = [&](const Row& row) { return row.cells[allowed.column].text() == value.text(); };
      if (!loading.so_far().find_size(value.text()) && std::none_of(rows.begin(), rows.end(), has))
        loading.problems.add(value,
                             value.path() + ": no row of the table has '" + std::string(value.text()) + "' there");
    }
}

}  // namespace riserun::catalog
