#include "report/words/say.h"

#include <fmt/args.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <cctype>
#include <charconv>
#include <cmath>
#include <optional>

namespace riserun::report {

namespace {

using quantity::Price;
using quantity::Texts;
using quantity::Value;

/// A value with the units that it is to be written in, for {fmt} to ask back with the place's form.
struct InUnits {
  const Value* value = nullptr;
  UnitSystem units = UnitSystem::inch;
};

/// "thickness3" is the word "thickness" and three digits; without a number the quantity's usual digits.
struct Form {
  std::string_view word;
  std::optional<int> digits;

  explicit Form(std::string_view text) {
    const std::size_t number = std::min(text.find_first_of("0123456789"), text.size());
    word = text.substr(0, number);
    int read = 0;
    if (std::from_chars(text.data() + number, text.data() + text.size(), read).ec == std::errc()) digits = read;
  }
  int digits_or(int usual) const { return digits.value_or(usual); }
};

std::string sentence(std::string text) {
  if (text.empty()) return text;
  text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
  if (text.back() != '.') text += '.';
  return text;
}

/// 1.5 is "1-1/2".
std::string in_quarters(double number) {
  static constexpr std::array kQuarters = {"", "1/4", "1/2", "3/4"};
  const int quarters = static_cast<int>(std::lround(number * 4.0));
  const std::string part = kQuarters[static_cast<std::size_t>(quarters % 4)];
  if (part.empty()) return std::to_string(quarters / 4);
  return quarters < 4 ? part : fmt::format("{}-{}", quarters / 4, part);
}

const double kRounding = 1.0e-6;  // of a sum of lengths, in marks

/// One overload a kind of value.
class Writer {
 public:
  Writer(std::string_view text, UnitSystem units) : text_(text), form_(text), units_(units) {}

  std::string operator()(const std::string& name) const { return form_.word == "sentence" ? sentence(name) : name; }
  std::string operator()(std::int64_t count) const {
    if (text_.empty()) return std::to_string(count);
    if (text_ == "spelled") return spelled(count);
    const std::size_t bar = text_.find('|');
    if (const std::size_t last = text_.rfind('|'); last != bar) return by_number(count, bar, last);
    const std::string_view chosen = count == 1 ? text_.substr(1, bar - 1) : text_.substr(bar + 1);
    return text_.front() == '#' ? fmt::format("{} {}", count, chosen) : std::string(chosen);
  }
  std::string operator()(double number) const {
    if (form_.word == "quarters") return in_quarters(number);
    if (form_.word == "factor") return write_factor(number);
    return form_.word == "fixed" ? fmt::format("{:.{}f}", number, usual()) : quantity::write_number(number, usual());
  }
  std::string operator()(Length length) const {
    if (form_.word == "both")
      return fmt::format("{} ({})", write_length(length, UnitSystem::inch), write_length(length, UnitSystem::metric));
    if (form_.word == "thickness") return write_thickness(length, units_, form_.digits_or(4));
    if (form_.word == "bore") return write_bore(length, units_);
    if (form_.word == "long") return write_long_length(length, units_);
    if (form_.word == "tape") return by_tape(length, length);
    if (form_.word == "tape_up") return by_tape(up_to(length, inches(1.0 / 16.0)), up_to(length, millimetres(1.0)));
    if (form_.word == "no_less")  // typed as it is printed, it is enough
      return write_length(up_to(length, units_ == UnitSystem::inch ? inches(1.0 / 16.0) : millimetres(1.0)), units_);
    if (form_.word == "distance") return distance(length);
    if (form_.word == "decimal")
      return units_ == UnitSystem::inch ? fmt::format("{:.{}g} in", in_inches(length), form_.digits_or(3))
                                        : fmt::format("{:.{}g} mm", in_millimetres(length), form_.digits_or(3));
    if (form_.word == "fixed")
      return units_ == UnitSystem::inch ? fmt::format("{:.{}f} in", in_inches(length), form_.digits_or(1))
                                        : fmt::format("{:.{}f} mm", in_millimetres(length), form_.digits_or(1) - 1);
    return write_length(length, units_);
  }
  std::string operator()(GaugePressure pressure) const { return pressure_text(pressure); }
  std::string operator()(PressureDifference pressure) const { return pressure_text(pressure); }
  std::string operator()(VolumeFlow flow) const {
    return form_.word == "air" ? write_air_flow(flow, units_, usual()) : write_volume_flow(flow, units_, usual());
  }
  std::string operator()(Volume volume) const {
    return form_.word == "air" ? write_free_air(volume, units_, usual()) : write_volume(volume, units_, usual());
  }
  std::string operator()(Area area) const { return write_area(area, units_, usual()); }
  std::string operator()(Time time) const { return write_time(time, units_, form_.digits_or(2)); }
  std::string operator()(Velocity velocity) const { return write_velocity(velocity, units_, usual()); }
  std::string operator()(Mass mass) const { return write_mass(mass, units_, usual()); }
  std::string operator()(Force force) const { return write_force(force, units_, usual()); }
  std::string operator()(Energy energy) const { return write_energy(energy, units_, usual()); }
  std::string operator()(Power power) const { return write_power(power, units_, usual()); }
  std::string operator()(Stress stress) const {
    if (form_.word == "both")
      return fmt::format("{} ksi ({})", quantity::write_number(in_psi(stress) / 1000.0, usual()),
                         write_stress(stress, UnitSystem::metric, usual()));
    return write_stress(stress, units_, usual());
  }
  std::string operator()(Head head) const { return write_head(head, units_, usual()); }
  std::string operator()(TemperatureDifference t) const { return write_temperature_difference(t, units_, usual()); }
  std::string operator()(Temperature t) const { return write_temperature(t, units_, usual()); }
  std::string operator()(AbsolutePressure pressure) const { return write_absolute_pressure(pressure, units_, usual()); }
  std::string operator()(Price price) const { return form_.word == "about" ? write_about(price) : write_price(price); }
  std::string operator()(const Texts& names) const { return listed(names); }
  std::string operator()(const Facts& facts) const { return listed(say_all(facts, units_)); }

 private:
  /// The next mark of the tape; a length on it but for rounding stays.
  static Length up_to(Length length, Length mark) { return mark * std::ceil((length / mark).value() - kRounding); }
  std::string by_tape(Length in_inch, Length in_metric) const {
    const std::string metric = write_length(in_metric, UnitSystem::metric);
    return units_ == UnitSystem::metric ? metric
                                        : fmt::format("{} ({})", write_length(in_inch, UnitSystem::inch), metric);
  }
  /// How far to stay away: up to the next ten feet, and to the next metre.
  std::string distance(Length length) const {
    const std::string metric = fmt::format("{:.0f} m", std::ceil(in_metres(length) - kRounding));
    if (units_ == UnitSystem::metric) return metric;
    return fmt::format("{:.0f} ft ({})", std::ceil(in_feet(length) / 10.0 - kRounding) * 10.0, metric);
  }
  template <class Pressure>
  std::string pressure_text(Pressure pressure) const {
    const std::string alone = write_pressure_alone(pressure, units_, usual());
    if ((form_.word == "mark" || form_.word == "dial") && units_ == UnitSystem::metric)
      return fmt::format("{} ({})", alone, write_pressure_alone(pressure, UnitSystem::inch, usual()));
    return form_.word == "alone" || form_.word == "mark" ? alone : write_pressure(pressure, units_, usual());
  }
  static std::string spelled(std::int64_t count) {
    static constexpr std::array kNumbers = {"no",    "one",   "two",  "three", "four",   "five",  "six",
                                            "seven", "eight", "nine", "ten",   "eleven", "twelve"};
    const bool known = count >= 0 && count < static_cast<std::int64_t>(kNumbers.size());
    return known ? kNumbers[static_cast<std::size_t>(count)] : std::to_string(count);
  }
  /// "no part|no more than one part|no more than # parts".
  std::string by_number(std::int64_t count, std::size_t bar, std::size_t last) const {
    if (count == 0) return std::string(text_.substr(0, bar));
    if (count == 1) return std::string(text_.substr(bar + 1, last - bar - 1));
    std::string text(text_.substr(last + 1));
    return text.replace(text.find('#'), 1, std::to_string(count));
  }
  std::string listed(const std::vector<std::string>& rows) const {
    if (text_ != "and") return fmt::format("{}", fmt::join(rows, between()));
    std::string text;
    for (std::size_t row = 0; row < rows.size(); ++row)
      text += (row == 0 ? "" : row + 1 == rows.size() ? " and " : ", ") + rows[row];
    return text;
  }
  int usual() const { return form_.digits_or(quantity::kUsualDigits); }
  std::string_view between() const { return text_.empty() ? ", " : text_; }

  std::string_view text_;
  Form form_;
  UnitSystem units_;
};

std::string_view text_of(std::string_view code) {
  for (const std::span<const Words> table : word_tables()) {
    const auto row = std::find_if(table.begin(), table.end(), [&](const Words& words) { return words.code == code; });
    if (row != table.end()) return row->text;
  }
  assert(false && "a fact without words");
  return code;
}

}  // namespace

std::span<const std::span<const Words>> word_tables() {
  static const std::vector<std::span<const Words>> kTables{
      build_words(),     caution_words(), connection_words(), finding_words(), heat_words(),
      leak_test_words(), line_words(),    plan_words(),       refusal_words(), relief_words(),
      riser_words(),     taken_words(),   work_words()};
  return kTables;
}

std::string say(const Fact& fact, UnitSystem units) { return fill(text_of(fact.code), fact.values, units); }

std::vector<std::string> say_all(const Facts& facts, UnitSystem units) {
  std::vector<std::string> sentences;
  sentences.reserve(facts.size());
  for (const Fact& fact : facts) sentences.push_back(say(fact, units));
  return sentences;
}

std::string kept_sentence(const chain::Run& run, UnitSystem units) {
  return run.kept.empty() ? "" : sentence(fmt::format("{}", fmt::join(say_all(run.kept, units), "; ")));
}

}  // namespace riserun::report

template <>
struct fmt::formatter<riserun::report::InUnits> {
  constexpr auto parse(fmt::format_parse_context& context) {
    const auto* end = std::find(context.begin(), context.end(), '}');
    form = std::string_view(context.begin(), static_cast<std::size_t>(end - context.begin()));
    return end;
  }
  auto format(const riserun::report::InUnits& value, fmt::format_context& context) const {
    const std::string text = std::visit(riserun::report::Writer(form, value.units), *value.value);
    return std::copy(text.begin(), text.end(), context.out());
  }
  std::string_view form;
};

namespace riserun::report {

std::string fill(std::string_view text, const std::vector<quantity::Value>& values, UnitSystem units) {
  fmt::dynamic_format_arg_store<fmt::format_context> arguments;
  for (const Value& value : values) arguments.push_back(InUnits{&value, units});
  return fmt::vformat(text, arguments);
}

std::string write_factor(double factor) {
  const double step = factor < 10.0 ? 10.0 : 1.0;
  return fmt::format("{:.4g}", std::floor(factor * step + 1e-9) / step);
}

}  // namespace riserun::report
