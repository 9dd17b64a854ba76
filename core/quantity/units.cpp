#include "quantity/units.h"

#include "quantity/conversions.h"
#include "quantity/plain_ascii.h"

#include <algorithm>
#include <array>
#include <cassert>

namespace riserun::quantity {

namespace {

// Further units, each from NIST SP 811 appendix B and exact unless it says otherwise.
constexpr double kSquareInch = kMetresPerInch * kMetresPerInch;
constexpr double kSquareFoot = kMetresPerFoot * kMetresPerFoot;
constexpr double kCubicInch = kSquareInch * kMetresPerInch;
constexpr double kCubicFoot = kSquareFoot * kMetresPerFoot;
constexpr double kLitre = 1.0e-3;
constexpr double kGallon = kCubicMetresPerUsGallon;
constexpr double kMinute = 60.0;
constexpr double kHour = 3600.0;
constexpr double kPoundForce = kKilogramsPerPound * kStandardGravity;
constexpr double kMillimetreOfWater = kStandardGravity;  // Pa, conventional: 1000 kg/m3
constexpr double kInchOfMercury = 3386.389;              // Pa, conventional, rounded there
constexpr double kBtu = 1055.05585262;                   // J, International Table
constexpr double kHorsepower = 550.0 * kPoundForce * kMetresPerFoot;
// Pa gauge; a little below the standard atmosphere, so that -14.7 psi is read.
constexpr double kFullVacuum = -1.02e5;
constexpr double kFahrenheitOffset = kKelvinsAtZeroCelsius - 32.0 / 1.8;

constexpr std::string_view kInchOfWaterSpellings =
    "inh2o inofh2o inwater inofwater inchwater inchofwater incheswater inchesofwater incheswatercolumn inwc inchwc "
    "incheswc inwg inaq \"h2o \"wc \"water \"ofwater inchesh2o inchesofh2o inchofh2o inchh2o iwc";
constexpr std::string_view kFootOfWaterSpellings =
    "fth2o ftofh2o ftwater ftofwater feetwater feetofwater footofwater feeth2o feetofh2o ftwc";
constexpr std::string_view kMillimetreOfWaterSpellings = "mmh2o mmofh2o mmwater mmofwater mmwc mmwg mmws mmaq";
constexpr std::string_view kMetreOfWaterSpellings = "mh2o mofh2o mwater mofwater metresofwater metersofwater mwc mws";

std::vector<Unit> length_units() {
  return {
      {"in", kMetresPerInch, 0.0, "in inch inches ins \" ''"},
      {"ft", kMetresPerFoot, 0.0, "ft foot feet '"},
      {"mm", 1.0e-3, 0.0, "mm millimetre millimetres millimeter millimeters"},
      {"cm", 1.0e-2, 0.0, "cm centimetre centimetres centimeter centimeters"},
      {"m", 1.0, 0.0, "m metre metres meter meters"},
      {"um", 1.0e-6, 0.0, "um micron microns micrometre micrometres micrometer micrometers"},
      {"mil", 1.0e-3 * kMetresPerInch, 0.0, "mil mils thou"},
  };
}

std::vector<Unit> stress_units() {
  return {
      {"psi", kPascalsPerPsi, 0.0, "psi lb/in2 lbs/in2 lbf/in2 lb/sqin lbs/sqin lbf/sqin"},
      {"ksi", 1000.0 * kPascalsPerPsi, 0.0, "ksi kip/in2 kips/in2"},
      {"kPa", 1.0e3, 0.0, "kpa"},
      {"MPa", 1.0e6, 0.0, "mpa n/mm2"},
      {"GPa", 1.0e9, 0.0, "gpa"},
  };
}

std::vector<Unit> pressure_units() {
  return {
      {"psi", kPascalsPerPsi, 0.0, "psi psig psid lb/in2 lbs/in2 lbf/in2 lb/sqin lbs/sqin lbf/sqin psigauge"},
      {"inH2O", kPascalsPerInchOfWater, 0.0, kInchOfWaterSpellings},
      {"ftH2O", 12.0 * kPascalsPerInchOfWater, 0.0, kFootOfWaterSpellings},
      {"inHg", kInchOfMercury, 0.0, "inhg inofhg inmercury inchesofmercury"},
      {"bar", 1.0e5, 0.0, "bar bars barg bargauge"},
      {"mbar", 1.0e2, 0.0, "mbar mbarg"},
      {"Pa", 1.0, 0.0, "pa pascal pascals"},
      {"kPa", 1.0e3, 0.0, "kpa kpag kpagauge"},
      {"MPa", 1.0e6, 0.0, "mpa"},
      {"mmH2O", kMillimetreOfWater, 0.0, kMillimetreOfWaterSpellings},
      {"mH2O", 1000.0 * kMillimetreOfWater, 0.0, kMetreOfWaterSpellings},
      {"oz/in2", kPascalsPerPsi / 16.0, 0.0, "oz/in2 ozf/in2 oz/sqin ozpersqin osi ozin2 oz/insq"},
  };
}

std::vector<Unit> absolute_pressure_units() {
  return {
      {"psia", kPascalsPerPsi, 0.0, "psia psiabs psiabsolute"},
      {"inHg abs", kInchOfMercury, 0.0, "inhgabs inhga inhgabsolute"},
      {"bar abs", 1.0e5, 0.0, "barabs bara barabsolute"},
      {"mbar abs", 1.0e2, 0.0, "mbarabs mbara hpaabs"},
      {"kPa abs", 1.0e3, 0.0, "kpaabs kpaa kpaabsolute"},
      {"Pa abs", 1.0, 0.0, "paabs paa paabsolute"},
      {"atm", kStandardAtmosphere, 0.0, "atm atmosphere atmospheres"},
  };
}

std::vector<Unit> metric_flow_units() {
  return {
      {"L/min", kLitre / kMinute, 0.0,
       "l/min lpm lmin l/minute litres/min liters/min litre/min liter/min lpermin litersperminute litresperminute"},
      {"L/s", kLitre, 0.0, "l/s lps l/sec litres/s liters/s"},
      {"L/h", kLitre / kHour, 0.0, "l/h lph l/hr"},
      {"m3/h", 1.0 / kHour, 0.0, "m3/h m3/hr cmh"},
      {"m3/min", 1.0 / kMinute, 0.0, "m3/min"},
      {"m3/s", 1.0, 0.0, "m3/s"},
  };
}

std::vector<Unit> volume_flow_units() {
  std::vector<Unit> units = {
      {"gpm", kGallon / kMinute, 0.0, "gpm gal/min gals/min gallons/min usgpm galpermin gallonsperminute"},
      {"gph", kGallon / kHour, 0.0, "gph gal/h gal/hr gallons/hour gallonsperhour"},
      {"ft3/min", kCubicFoot / kMinute, 0.0, "ft3/min cuft/min"},
  };
  const auto metric = metric_flow_units();
  units.insert(units.end(), metric.begin(), metric.end());
  return units;
}

std::vector<Unit> air_flow_units() {
  std::vector<Unit> units = {
      {"scfm", kCubicFoot / kMinute, 0.0, "scfm cfm ft3/min cuft/min cfmfreeair fad scf/min"},
      {"scfh", kCubicFoot / kHour, 0.0, "scfh cfh ft3/h ft3/hr"},
  };
  const auto metric = metric_flow_units();
  units.insert(units.end(), metric.begin(), metric.end());
  return units;
}

std::vector<UnitTable> make_tables() {
  return {
      {Kind::length, "length", "5-1/2 in", 0.0, 1.0e4, length_units(), {{"ft", "in", 12.0}}},
      {Kind::altitude, "altitude", "600 ft", -1.0e4, 1.0e4, length_units(), {{"ft", "in", 12.0}}},
      {Kind::head,
       "head",
       "24 in",
       0.0,
       1.0e4,
       {{"in", kMetresPerInch, 0.0, "in inch inches \" ''"},
        {"ft", kMetresPerFoot, 0.0, "ft foot feet '"},
        {"mm", 1.0e-3, 0.0, "mm millimetre millimetres millimeter millimeters"},
        {"cm", 1.0e-2, 0.0, "cm centimetre centimetres centimeter centimeters"},
        {"m", 1.0, 0.0, "m metre metres meter meters"}},
       {{"ft", "in", 12.0}}},
      {Kind::area,
       "area",
       "40 in2",
       0.0,
       1.0e8,
       {{"in2", kSquareInch, 0.0, "in2 sqin squareinch squareinches inch2"},
        {"ft2", kSquareFoot, 0.0, "ft2 sqft squarefoot squarefeet"},
        {"mm2", 1.0e-6, 0.0, "mm2 sqmm"},
        {"cm2", 1.0e-4, 0.0, "cm2 sqcm"},
        {"m2", 1.0, 0.0, "m2 sqm squaremetre squaremetres squaremeter squaremeters"}},
       {}},
      {Kind::volume,
       "volume",
       "40 gal",
       0.0,
       1.0e6,
       {{"gal", kGallon, 0.0, "gal gals gallon gallons usgal usgallon usgallons"},
        {"qt", kGallon / 4.0, 0.0, "qt qts quart quarts"},
        {"in3", kCubicInch, 0.0, "in3 cuin cubicinch cubicinches"},
        {"ft3", kCubicFoot, 0.0, "ft3 cuft cubicfoot cubicfeet scf"},
        {"L", kLitre, 0.0, "l ltr litre litres liter liters"},
        {"mL", 1.0e-6, 0.0, "ml cm3 cc"},
        {"m3", 1.0, 0.0, "m3 cubicmetre cubicmetres cubicmeter cubicmeters"}},
       {}},
      {Kind::pressure, "pressure", "25 psi", kFullVacuum, 1.0e8, pressure_units(), {}},
      {Kind::absolute_pressure, "absolute pressure", "14.7 psia", 0.0, 1.0e8, absolute_pressure_units(), {}},
      {Kind::volume_flow, "flow", "12 gpm", 0.0, 1.0e3, volume_flow_units(), {}},
      {Kind::air_flow, "air flow", "3.5 scfm", 0.0, 1.0e3, air_flow_units(), {}},
      {Kind::time,
       "time",
       "2 min",
       0.0,
       1.0e9,
       {{"s", 1.0, 0.0, "s sec secs second seconds"},
        {"min", kMinute, 0.0, "min mins minute minutes m"},
        {"h", kHour, 0.0, "h hr hrs hour hours"},
        {"day", 24.0 * kHour, 0.0, "d day days"}},
       {{"min", "s", 60.0}, {"h", "min", 60.0}}},
      {Kind::velocity,
       "velocity",
       "6 ft/s",
       0.0,
       1.0e4,
       {{"ft/s", kMetresPerFoot, 0.0, "ft/s fps ft/sec feet/s feetpersecond"},
        {"ft/min", kMetresPerFoot / kMinute, 0.0, "ft/min fpm feet/min"},
        {"m/s", 1.0, 0.0, "m/s m/sec metrespersecond meterspersecond"}},
       {}},
      {Kind::mass,
       "mass",
       "13 lb",
       0.0,
       1.0e8,
       {{"lb", kKilogramsPerPound, 0.0, "lb lbs pound pounds lbm"},
        {"oz", kKilogramsPerPound / 16.0, 0.0, "oz ounce ounces"},
        {"kg", 1.0, 0.0, "kg kgs kilo kilos kilogram kilograms"},
        {"g", 1.0e-3, 0.0, "g gram grams"},
        {"t", 1.0e3, 0.0, "t tonne tonnes"}},
       {{"lb", "oz", 16.0}}},
      {Kind::density,
       "density",
       "7850 kg/m3",
       0.0,
       1.0e5,
       {{"kg/m3", 1.0, 0.0, "kg/m3"},
        {"lb/ft3", kKilogramsPerPound / kCubicFoot, 0.0, "lb/ft3 lbs/ft3 lb/cuft pcf"},
        {"lb/in3", kKilogramsPerPound / kCubicInch, 0.0, "lb/in3 lbs/in3 lb/cuin"},
        {"g/cm3", 1.0e3, 0.0, "g/cm3 g/cc g/ml kg/l"}},
       {}},
      {Kind::force,
       "force",
       "250 lbf",
       0.0,
       1.0e9,
       {{"lbf", kPoundForce, 0.0, "lbf lb lbs pounds"}, {"N", 1.0, 0.0, "n newton newtons"}, {"kN", 1.0e3, 0.0, "kn"}},
       {}},
      {Kind::temperature,
       "temperature",
       "70 degF",
       0.0,
       kKelvinsAtZeroCelsius + 2000.0,
       {{"degF", 1.0 / 1.8, kFahrenheitOffset, "degf f degreesf degreef fahrenheit degreesfahrenheit degfahrenheit"},
        {"degC", 1.0, kKelvinsAtZeroCelsius, "degc c degreesc degreec celsius degreescelsius degcelsius"},
        {"K", 1.0, 0.0, "k kelvin kelvins"}},
       {}},
      {Kind::temperature_difference,
       "temperature difference",
       "10 degF",
       -2000.0,
       2000.0,
       {{"degF", 1.0 / 1.8, 0.0, "degf f degreesf degreef fahrenheit degreesfahrenheit degfahrenheit"},
        {"degC", 1.0, 0.0, "degc c degreesc degreec celsius degreescelsius degcelsius"},
        {"K", 1.0, 0.0, "k kelvin kelvins"}},
       {}},
      {Kind::power,
       "power",
       "4.5 kW",
       0.0,
       1.0e9,
       {{"W", 1.0, 0.0, "w watt watts"},
        {"kW", 1.0e3, 0.0, "kw kilowatt kilowatts"},
        {"hp", kHorsepower, 0.0, "hp horsepower"},
        {"BTU/h", kBtu / kHour, 0.0, "btu/h btuh btu/hr btu/hour"}},
       {}},
      {Kind::energy,
       "energy",
       "300 ft-lb",
       0.0,
       1.0e12,
       {{"ft-lb", kPoundForce * kMetresPerFoot, 0.0, "ftlb ftlbs ftlbf footpound footpounds"},
        {"J", 1.0, 0.0, "j joule joules nm"},
        {"kJ", 1.0e3, 0.0, "kj kilojoule kilojoules"},
        {"MJ", 1.0e6, 0.0, "mj megajoule megajoules"},
        {"BTU", kBtu, 0.0, "btu btus"},
        {"kWh", 1.0e3 * kHour, 0.0, "kwh"}},
       {}},
      {Kind::stress, "stress", "36 ksi", 0.0, 1.0e13, stress_units(), {}},
  };
}

const std::vector<UnitTable>& tables() {
  static const std::vector<UnitTable> kTables = make_tables();
  return kTables;
}

template <class Visit>
bool any_spelling(const Unit& unit, Visit visit) {
  std::string_view rest = unit.spellings;
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find(' '), rest.size());
    if (visit(rest.substr(0, end))) return true;
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return false;
}

const Unit* find_folded(const UnitTable& table, std::string_view folded) {
  for (const Unit& unit : table.units) {
    if (any_spelling(unit, [&](std::string_view spelling) { return spelling == folded; })) return &unit;
  }
  return nullptr;
}

/// One letter missing, too many, changed, or two neighbours swapped.
bool one_slip_apart(std::string_view a, std::string_view b) {
  if (a.size() > b.size()) std::swap(a, b);
  if (b.size() - a.size() > 1 || a == b) return false;
  const auto differ = std::mismatch(a.begin(), a.end(), b.begin());
  const auto at = static_cast<std::size_t>(differ.first - a.begin());
  if (a.size() < b.size()) return a.substr(at) == b.substr(at + 1);
  if (a.substr(at + 1) == b.substr(at + 1)) return true;
  return at + 1 < a.size() && a[at] == b[at + 1] && a[at + 1] == b[at] && a.substr(at + 2) == b.substr(at + 2);
}

}  // namespace

const UnitTable& unit_table(Kind kind) {
  const auto found =
      std::find_if(tables().begin(), tables().end(), [&](const UnitTable& table) { return table.kind == kind; });
  assert(found != tables().end());
  return *found;
}

std::string folded_unit(std::string_view written) {
  // A millipascal is not a megapascal: this one spelling keeps its case and so is not found.
  if (written.substr(0, 3) == "mPa") return std::string(written);
  std::string folded;
  for (std::size_t i = 0; i < written.size(); ++i) {
    const char c = written[i];
    const bool inner_hyphen =
        c == '-' && i > 0 && i + 1 < written.size() && is_letter(written[i - 1]) && is_letter(written[i + 1]);
    if (c == ' ' || c == '.' || c == '^' || inner_hyphen) continue;
    folded += lower(c);
  }
  return folded;
}

const Unit* find_unit(const UnitTable& table, std::string_view written) {
  return find_folded(table, folded_unit(written));
}

const Unit* find_symbol(const UnitTable& table, std::string_view symbol) {
  const auto found =
      std::find_if(table.units.begin(), table.units.end(), [&](const Unit& unit) { return unit.symbol == symbol; });
  return found == table.units.end() ? nullptr : &*found;
}

const UnitTable* find_other_kind(Kind asked, std::string_view written) {
  const std::string folded = folded_unit(written);
  for (const UnitTable& table : tables()) {
    if (table.kind != asked && find_folded(table, folded) != nullptr) return &table;
  }
  return nullptr;
}

std::optional<std::string_view> nearest_symbol(const UnitTable& table, std::string_view written) {
  const std::string folded = folded_unit(written);
  if (folded.size() < 2) return std::nullopt;  // any single letter is near any other
  for (const Unit& unit : table.units) {
    const auto near = [&](std::string_view spelling) {
      return spelling.size() > 1 && one_slip_apart(folded, spelling);
    };
    if (any_spelling(unit, near)) return unit.symbol;
  }
  return std::nullopt;
}

std::string symbols(const UnitTable& table) {
  std::string list;
  for (const Unit& unit : table.units) {
    if (!list.empty()) list += ", ";
    list += unit.symbol;
  }
  return list;
}

}  // namespace riserun::quantity
