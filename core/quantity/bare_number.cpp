#include "quantity/bare_number.h"

#include <fmt/format.h>

#include <string>

namespace riserun::quantity {

namespace {

using Symbols = std::vector<std::string_view>;

/// `5 s or 5 min`
std::string each_way(std::string_view number, const Symbols& units) {
  std::string all;
  for (const std::string_view unit : units) all += fmt::format("{}{} {}", all.empty() ? "" : " or ", number, unit);
  return all;
}

/// A fraction of a length is one of an inch wherever it is said, and of a millimetre where nobody says so.
Symbols could_be(const Number& number, const PlainText& text, const UnitTable& table, UnitSystem system) {
  const bool fraction = text.plain.substr(0, number.end).find('/') != std::string::npos;
  if (fraction && table.kind == Kind::length && system == UnitSystem::metric) return {"in", "mm"};
  return bare_units(table.kind, system);
}

}  // namespace

std::vector<std::string_view> bare_units(Kind kind, UnitSystem system) {
  const auto either = [system](Symbols inch, Symbols metric) { return system == UnitSystem::inch ? inch : metric; };
  switch (kind) {
    case Kind::length:
      return either({"in"}, {"mm"});
    case Kind::altitude:
      return either({"ft"}, {"m"});
    case Kind::head:
      return either({"in", "ft"}, {"mm", "m"});
    case Kind::area:
      return either({"in2", "ft2"}, {"mm2", "m2"});
    case Kind::volume:
      return either({"gal"}, {"L"});
    case Kind::pressure:
      return either({"psi"}, {"bar"});
    case Kind::absolute_pressure:
      return either({"psia"}, {"bar abs"});
    case Kind::volume_flow:
      return either({"gpm"}, {"L/min"});
    case Kind::air_flow:
      return either({"scfm"}, {"L/min"});
    case Kind::time:
      return {"s", "min"};
    case Kind::velocity:
      return either({"ft/s"}, {"m/s"});
    case Kind::mass:
      return either({"lb"}, {"kg"});
    case Kind::density:
      return either({"lb/ft3"}, {"kg/m3"});
    case Kind::force:
      return either({"lbf"}, {"N"});
    case Kind::temperature:
    case Kind::temperature_difference:
      return either({"degF"}, {"degC"});
    case Kind::power:
      return {"W", "kW"};
    case Kind::energy:
      return either({"ft-lb"}, {"J"});
    case Kind::stress:
      return either({"psi", "ksi"}, {"MPa"});
  }
  return {};
}

std::variant<const Unit*, ReadError> unit_of_bare(const PlainText& text, const Number& number, const UnitTable& table) {
  const auto refused = [&](const std::string& problem) {
    return read_error(text, text.plain.size(), problem, mistake::kNoUnit);
  };
  const std::string_view written = text.written_for(0, number.end);
  if (text.units) {
    const Symbols units = could_be(number, text, table, *text.units);
    if (units.size() == 1) return find_symbol(table, units.front());
    return refused(fmt::format("no unit; it can be {}", each_way(written, units)));
  }
  const std::string takes = fmt::format("no unit; {} takes {}", table.name, symbols(table));
  const Symbols inch = bare_units(table.kind, UnitSystem::inch);
  if (text.settled_by.empty() || inch.size() != 1) return refused(takes);
  return refused(fmt::format("{}; '{}' would make it {} {}", takes, text.settled_by, written, inch.front()));
}

}  // namespace riserun::quantity
