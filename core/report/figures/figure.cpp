#include "report/figures/figure.h"

#include "report/words/say.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>

namespace riserun::report {

namespace {

std::string written_as(std::string_view form, const quantity::Value& value, UnitSystem units) {
  return fill(fmt::format("{{0:{}}}", form), {value}, units);
}

bool never_comes(const quantity::Value& value) {
  const Time* time = std::get_if<Time>(&value);
  return time != nullptr && !std::isfinite(in_seconds(*time));
}

std::string range_of(const Figure& figure, UnitSystem units) {
  if (!figure.low) return "";
  if (never_comes(*figure.high)) return "at worst it never gets there";
  return write_range(written_as(figure.form, *figure.low, units), written_as(figure.form, *figure.high, units));
}

}  // namespace

std::string said(const Phrase& phrase, UnitSystem units) { return fill(phrase.text, phrase.values, units); }

const Figure* FigureGroup::find(std::string_view figure) const {
  const auto row = std::find_if(figures.begin(), figures.end(), [&](const Figure& each) { return each.key == figure; });
  return row != figures.end() ? &*row : nullptr;
}

const Figure& FigureGroup::operator[](std::string_view figure) const {
  const Figure* found = find(figure);
  assert(found != nullptr);
  return *found;
}

std::string written(const Figure& figure, UnitSystem units) { return written_as(figure.form, figure.value, units); }

std::string written_with_range(const Figure& figure, UnitSystem units) {
  const std::string value = written(figure, units);
  if (!figure.low) return value;
  if (never_comes(*figure.high)) return fmt::format("{} ({})", value, range_of(figure, units));
  return write_with_range(value, written_as(figure.form, *figure.low, units),
                          written_as(figure.form, *figure.high, units));
}

std::string written_limit(const Figure& figure, UnitSystem units) {
  return figure.limit ? "walls' limit " + write_pressure_alone(*figure.limit, units) : std::string();
}

std::string written_with_limit(const Figure& figure, UnitSystem units) {
  return fmt::format("{}   ({})", written(figure, units), written_limit(figure, units));
}

std::string written_also(const Figure& figure, UnitSystem units) {
  return figure.also ? written_as("", *figure.also, units) : std::string();
}

std::string written_beside(const Figure& figure, UnitSystem units) {
  std::string text;
  for (const std::string& piece :
       {range_of(figure, units), written_limit(figure, units), written_also(figure, units), said(figure.beside, units)})
    if (!piece.empty()) text += (text.empty() ? "" : ", ") + piece;
  return text;
}

}  // namespace riserun::report
