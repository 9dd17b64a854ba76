// Reads the reservoir, the table and the riser of a job.
#include "catalog/words/words.h"
#include "plan/job/job_reading.h"
#include "quantity/sheet_gauge.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

namespace riserun::plan {

using catalog::Fields;
using catalog::Value;

namespace {

const Length kSmallestBox = inches(2.0);
const Length kLargestBox = feet(40.0);
const Length kHighestTable = feet(60.0);

auto box_length() { return ranged(read_length, kSmallestBox, kLargestBox); }
auto share() { return ranged(read_number, 0.0, 0.5); }

/// `3/16 in mild steel`: where the metal's words begin; the end when there are none. A gauge number and its metal are
/// read together, as gauges differ by metal, and then the metal begins after `ga` or `gauge`.
std::size_t start_of_metal(std::string_view text) {
  const std::size_t unit = text.find_first_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ\"");
  if (unit == std::string_view::npos) return text.size();
  const std::size_t space = text.find(' ', unit);
  return space == std::string_view::npos ? text.size() : text.find_first_not_of(' ', space);
}

bool is_gauge(std::string_view text) { return text.find_first_of("gG") < std::min(start_of_metal(text), text.size()); }

/// Reads the thickness; the metal that stands after it is read_metal's.
quantity::Reading<Length> read_thickness(const quantity::Written& written) {
  const std::string_view text = written.text;
  std::string_view own = is_gauge(text) ? text : text.substr(0, std::min(start_of_metal(text), text.size()));
  while (own.ends_with(' ')) own.remove_suffix(1);
  const quantity::Range<Length> allowed{inches(0.02), inches(2.0)};
  return quantity::within(quantity::read_sheet(written.with(own)), allowed, written.with(own));
}

constexpr std::string_view kMetals[] = {"steel", "galvanized", "stainless", "aluminium", "commercial steel sheet",
                                        "a36",   "S235",       "HRPO",      "316",       "6061",
                                        "3003"};

std::optional<std::string> read_metal(JobReading& reading, const Value& where, std::string_view words) {
  if (reservoir::find_sheet_metal(words)) return std::string(words);
  const std::string found = words.empty() ? "the metal is missing after the thickness"
                                          : fmt::format("'{}' is not a sheet metal that is known", words);
  reading.problems.add(where, fmt::format("{}: {}; allowed are {}{}", where.path(), found, catalog::either_of(kMetals),
                                          catalog::did_you_mean(words, kMetals)));
  return std::nullopt;
}

std::string_view without_blanks_behind(std::string_view text) {
  while (text.ends_with(' ')) text.remove_suffix(1);
  return text;
}

/// Whole, it can be a gauge as well.
bool is_whole(std::string_view number) { return number.find_first_of("/.,") == std::string_view::npos; }

/// The unit that goes behind a thickness without one, before a metal or plate: a fraction is inches wherever it is
/// said, another number is in the job's unit, where that leaves one way to read it.
std::string_view unit_of_thickness(std::string_view number, std::optional<UnitSystem> units) {
  if (number.find('/') != std::string_view::npos) return " in";
  if (units == UnitSystem::metric) return " mm";
  return units == UnitSystem::inch && !is_whole(number) ? " in" : "";
}

/// As it is said at the bench, written out: `3/16 plate` is `3/16 in steel`, `1/4 aluminium plate` `1/4 in aluminium`,
/// and in a metric job `5 plate` is `5 mm steel`. Plate without a metal is steel (common practice).
std::string sheet_written_out(const quantity::Written& written) {
  const std::string_view text = written.text;
  const std::size_t behind = std::min(text.find_first_not_of("0123456789./- "), text.size());
  const std::string_view number = without_blanks_behind(text.substr(0, behind));
  std::string_view rest = without_blanks_behind(text.substr(behind));
  bool is_plate = false;
  for (const std::string_view word : {"plate", "sheet"})
    if (rest.ends_with(word) && !reservoir::find_sheet_metal(rest)) {
      rest = without_blanks_behind(rest.substr(0, rest.size() - word.size()));
      is_plate = true;
    }
  const bool bare = !number.empty() && (rest.empty() ? is_plate : reservoir::find_sheet_metal(rest).has_value());
  const std::string_view unit = bare ? unit_of_thickness(number, written.units) : "";
  if (!is_plate && unit.empty()) return std::string(text);
  const std::string out = fmt::format("{}{}{}{}", number, unit, rest.empty() ? "" : " ", rest);
  return start_of_metal(out) >= out.size() && !is_gauge(out) ? out + " steel" : out;
}

std::optional<Sheet> read_sheet_field(JobReading& reading, const Value& value, const Value& metal_value) {
  std::optional<std::string> metal;
  if (metal_value.exists()) {
    const auto words = catalog::read_text(metal_value, reading.problems);
    if (words) metal = read_metal(reading, metal_value, *words);
    if (!metal) return std::nullopt;
  }
  const auto read = [&](const quantity::Written& text) {
    const std::string written = sheet_written_out(text);
    // A gauge number is read with the metal that stands in its own key.
    const bool needs_metal = metal && is_gauge(written) && start_of_metal(written) >= written.size();
    const std::string whole = needs_metal ? written + " " + *metal : written;
    return read_thickness(text.with(whole));
  };
  const std::optional<Length> thickness = catalog::read_with(value, read, reading.problems);
  if (!thickness) return std::nullopt;
  if (!metal) {
    const std::string written = sheet_written_out(value.written());
    metal =
        read_metal(reading, value, std::string_view(written).substr(std::min(start_of_metal(written), written.size())));
  }
  if (!metal) return std::nullopt;
  const std::string written = sheet_written_out(value.written());
  std::optional<Length> least = quantity::least_of_gauge(written);
  if (!least) least = quantity::least_of_gauge(written + " " + *metal);
  return Sheet{std::string(value.text()), *thickness, least, *metal};
}

/// `3 x 2`: bays along and across.
std::optional<reservoir::WallBays> read_bays(JobReading& reading, const Value& value) {
  if (!value.exists()) return std::nullopt;
  const auto text = catalog::read_text(value, reading.problems);
  if (!text) return std::nullopt;
  const std::size_t x = text->find('x');
  const auto trimmed = [](std::string_view word) {
    while (!word.empty() && word.front() == ' ') word.remove_prefix(1);
    while (!word.empty() && word.back() == ' ') word.remove_suffix(1);
    return word;
  };
  const auto count = [&](std::string_view word) {
    const auto result = quantity::read_count(trimmed(word));
    const int* n = std::get_if<int>(&result);
    return n != nullptr && *n >= 1 && *n <= 50 ? *n : 0;
  };
  const int along = x == std::string_view::npos ? 0 : count(text->substr(0, x));
  const int across = x == std::string_view::npos ? 0 : count(text->substr(x + 1));
  if (along == 0 || across == 0) {
    reading.problems.add(value, fmt::format("{}: '{}' is not a number of bays along and across, such as 3 x 2; "
                                            "allowed is 1 to 50 each way",
                                            value.path(), *text));
    return std::nullopt;
  }
  return reservoir::WallBays{along, across};
}

std::optional<reservoir::BarePanel> read_bare_panel(JobReading& reading, const Value& value) {
  if (!value.exists()) return std::nullopt;
  Fields fields(value, {"length", "width", "in"}, reading.problems);
  if (!fields.valid()) return std::nullopt;
  const auto side = ranged(read_length, inches(1.0), kLargestBox);
  const auto length = fields.need_with("length", side);
  const auto width = fields.need_with("width", side);
  const auto lid_only = fields.choice<bool>(fields.find("in"), {{"lid", true}, {"any wall", false}});
  if (!length || !width) return std::nullopt;
  return reservoir::BarePanel{std::max(*length, *width), std::min(*length, *width), lid_only.value_or(false)};
}

/// `3 stays across`, `stays across: 3`: said at the bench of ribs of the full height and of stays on the lid alone,
/// which hold quite unlike pressures; a mistake that names both.
bool refuse_stays_of_either_kind(JobReading& reading, const Value& where, std::string_view words) {
  const std::string lower = catalog::lower_case(words);
  const auto says = [&lower](std::string_view word) { return lower.find(word) != std::string::npos; };
  if (!says("stay") && !says("rib")) return false;
  const std::size_t digit = lower.find_first_of("0123456789");
  const auto reading_of_count = quantity::read_count(
      digit == std::string::npos
          ? std::string_view("0")
          : std::string_view(lower).substr(digit, lower.find_first_not_of("0123456789", digit) - digit));
  const int* said = std::get_if<int>(&reading_of_count);
  const int count = said == nullptr ? 0 : *said;
  const bool along = says("along");
  const std::string bays = along ? fmt::format("1 x {}", count + 1) : fmt::format("{} x 1", count + 1);
  reading.problems.add(
      where, fmt::format("{}'{}' can be read in two ways, say which: 'baffles {}: {}', ribs of the box's full height "
                         "from floor to lid, or 'lid bays: {}', stays on the lid alone",
                         catalog::at_path(where), words, along ? "along" : "across", count, bays));
  return true;
}

/// @return whether one was refused
bool refuse_stays_of_either_kind(JobReading& reading, const Value& supports) {
  if (supports.is_text()) return refuse_stays_of_either_kind(reading, supports, supports.text());
  bool any = false;
  for (const auto& [key, value] : supports.entries())
    if (key.text() != "lid stays")
      any |= refuse_stays_of_either_kind(reading, key, fmt::format("{}: {}", key.text(), value.text()));
  return any;
}

Supports read_supports(JobReading& reading, const Value& value) {
  Supports supports;
  if (!value.exists() || refuse_stays_of_either_kind(reading, value)) return supports;
  Fields fields(value,
                {"widest bare panel", "baffles across", "baffles along", "lid bays", "floor bays", "long side bays",
                 "short side bays", "lid stays", "floor carried", "solid share", "passages"},
                reading.problems);
  if (!fields.valid()) return supports;
  reservoir::SupportLayout layout;
  layout.bare = read_bare_panel(reading, fields.find("widest bare panel"));
  layout.baffles_across = fields.find_with("baffles across", ranged(read_count, 0, 50)).value_or(0);
  layout.baffles_along = fields.find_with("baffles along", ranged(read_count, 0, 50)).value_or(0);
  layout.lid = read_bays(reading, fields.find("lid bays"));
  layout.floor = read_bays(reading, fields.find("floor bays"));
  layout.long_side = read_bays(reading, fields.find("long side bays"));
  layout.short_side = read_bays(reading, fields.find("short side bays"));
  layout.lid_stays_are_posts =
      fields.choice<bool>(fields.find("lid stays"), {{"posts", true}, {"rows", false}}).value_or(false);
  if (value["floor carried"].exists()) supports.floor_carried = fields.flag_or("floor carried", false);
  layout.floor_carried = supports.floor_carried.value_or(false);
  supports.solid_fraction = fields.find_with("solid share", share());
  if (value["passages"].exists()) supports.passages = fields.flag_or("passages", true);
  if (layout.lid_stays_are_posts && !layout.floor_carried && layout.lid && layout.floor && *layout.lid != *layout.floor)
    reading.problems.add(value["floor bays"],
                         fmt::format("{}: posts stand on the floor where they hold the lid, so its bays are the lid's; "
                                     "allowed is {} x {}, or no 'floor bays'",
                                     value["floor bays"].path(), layout.lid->along, layout.lid->across));
  supports.layout = layout;
  constexpr std::string_view kDivideTheLid[] = {"baffles across", "baffles along", "lid bays", "lid stays"};
  const bool divided = std::any_of(std::begin(kDivideTheLid), std::end(kDivideTheLid),
                                   [&](std::string_view key) { return value[key].exists(); });
  if (value["widest bare panel"].exists() && divided)
    reading.problems.add(
        value, fmt::format("{}: give the widest bare panel or how the walls are divided, not both", value.path()));
  return supports;
}

/// Only boxes so far: another shape is named as such, not taken for a mistake in spelling.
void refuse_other_shapes(JobReading& reading, Fields& fields) {
  const Value shape = fields.find("shape");
  if (!shape.exists()) return;
  const auto text = catalog::read_text(shape, reading.problems);
  if (text && *text != "box")
    reading.problems.add(
        shape, fmt::format("{}: Riserun plans for a flat-sided box; '{}' is not worked out", shape.path(), *text));
}

}  // namespace

void read_reservoir(JobReading& reading, const Value& value, Job& job) {
  Fields fields(value,
                {"shape", "inside", "sheet", "metal", "yield", "ultimate", "corrosion allowance", "supports", "charge",
                 "under the riser", "lid", "ports"},
                reading.problems);
  if (!fields.valid()) return;
  JobReservoir& reservoir = job.reservoir;
  refuse_other_shapes(reading, fields);
  if (const Value inside = fields.need("inside"); inside.exists()) {
    Fields box(inside, {"length", "width", "height"}, reading.problems);
    if (box.valid()) {
      reservoir.length = box.need_with("length", box_length()).value_or(metres(0));
      reservoir.width = box.need_with("width", box_length()).value_or(metres(0));
      reservoir.height = box.need_with("height", box_length()).value_or(metres(0));
    }
  }
  if (const Value sheet = fields.need("sheet"); sheet.exists())
    reservoir.sheet = read_sheet_field(reading, sheet, fields.find("metal")).value_or(Sheet{});
  const auto strength = ranged(read_stress, megapascals(20.0), megapascals(2000.0));
  reservoir.yield = fields.find_with("yield", strength);
  reservoir.ultimate = fields.find_with("ultimate", strength);
  reservoir.corrosion_allowance =
      fields.find_with("corrosion allowance", ranged(read_length, metres(0.0), inches(0.5)));
  reservoir.supports = read_supports(reading, fields.find("supports"));
  reservoir.charge = fields.find_with("charge", ranged(read_length, inches(0.5), kLargestBox));
  reservoir.obstacle_height = fields.find_with("under the riser", ranged(read_length, metres(0.0), kLargestBox));
  reservoir.lid_closed = fields.choice<bool>(fields.find("lid"), {{"open", false}, {"welded", true}});
  reservoir.ports = read_ports(reading, fields.find("ports"), Vessel::reservoir);
}

void read_table(JobReading& reading, const Value& value, Job& job) {
  Fields fields(value, {"inside", "depth", "floor height", "rim", "solid share", "ports"}, reading.problems);
  if (!fields.valid()) return;
  JobTable& table = job.table;
  if (const Value inside = fields.need("inside"); inside.exists()) {
    Fields box(inside, {"length", "width"}, reading.problems);
    if (box.valid()) {
      table.length = box.need_with("length", box_length()).value_or(metres(0));
      table.width = box.need_with("width", box_length()).value_or(metres(0));
    }
  }
  const auto depth = ranged(read_length, inches(0.125), feet(10.0));
  table.depth = fields.need_with("depth", depth).value_or(metres(0));
  table.floor_height =
      fields.need_with("floor height", ranged(read_length, kSmallestBox, kHighestTable)).value_or(metres(0));
  table.rim = fields.find_with("rim", depth);
  table.solid_fraction = fields.find_with("solid share", share());
  table.ports = read_ports(reading, fields.find("ports"), Vessel::table);
}

void read_riser(JobReading& reading, const Value& value, Job& job) {
  Fields fields(value, {"bung", "pipe", "material", "clearance", "headroom", "foot valve"}, reading.problems);
  if (!fields.valid()) return;
  if (fields.find("bung").exists()) job.riser.bung = fields.need_text("bung");
  job.riser.pipe_size = fields.find_with("pipe", read_size_name);
  job.riser.material = read_material(reading, fields.find("material"));
  job.riser.clearance = fields.find_with("clearance", ranged(read_length, inches(1.0 / 16.0), kLargestBox));
  job.riser.foot_valve = fields.flag_or("foot valve", false);
  job.riser.headroom = fields.find_with("headroom", ranged(read_length, metres(0.0), kHighestTable));
}

}  // namespace riserun::plan
