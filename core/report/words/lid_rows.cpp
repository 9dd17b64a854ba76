#include "report/words/lid_rows.h"

#include "report/words/say.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <tuple>

namespace riserun::report {

namespace {

using plan::LidBung;
using plan::LidOpenings;
using plan::Place;

/// `in the right end, 5 in from the front, 1-1/4 in over the floor`
std::string in_side(const LidBung& bung, UnitSystem units) {
  const std::string along = write_length(bung.on_side->along, units);
  return fmt::format("in the {}, {} from the {}, {} over the floor", bung.on_side->in_front ? "front" : "right end",
                     along, bung.on_side->in_front ? "left" : "front", write_length(*bung.over_floor, units));
}

std::string remark_of(const LidBung& bung, UnitSystem units) {
  if (bung.on_side) return in_side(bung, units) + ", proposed";
  if (bung.over_floor) return fmt::format("in a side, {} over the floor", write_length(*bung.over_floor, units));
  if (bung.place == Place::side) return "in a side";
  if (bung.place == Place::floor) return "in the floor";
  if (bung.proposed) return "proposed";
  if (bung.at) return "";
  return bung.is_there ? "the job does not say where" : "no free place found";
}

std::string under_it(const LidOpenings& openings) {
  switch (openings.over) {
    case LidOpenings::Over::posts:
      return "posts";
    case LidOpenings::Over::lid_bars:
      return "bars of the lid";
    case LidOpenings::Over::uprights:
      return "uprights, " + openings.wall;
    case LidOpenings::Over::baffles:
      return "baffles";
  }
  return "";
}

/// Of pieces of one row that differ in length, which of them: `; in bays 1 and 4 of their row ...`
std::string bays_of(const LidOpenings& openings, UnitSystem units) {
  for (const quantity::Fact& place : openings.places)
    if (place.code.starts_with("bays_from")) return "; " + say(place, units);
  return "";
}

HoleRow opening_row(const LidOpenings& openings, UnitSystem units) {
  const auto written = [&](Length length) { return write_length(length, units); };
  std::vector<std::string> where;
  if (openings.apart > Length{}) where.push_back(written(openings.apart) + " or less from middle to middle");
  if (openings.open_to > Length{}) where.push_back("edges bevelled to " + written(openings.open_to) + " at the top");
  where.push_back(fill("{0:; }", {openings.places}, units));
  const bool round = !(openings.length > Length{});
  HoleRow row;
  row.across = round ? openings.width : openings.length;
  row.size = (round ? "" : written(openings.length) + " x ") + written(openings.width);
  row.where = fmt::format("{}", fmt::join(where, "; "));
  row.used_for = under_it(openings);
  row.count = openings.count;
  row.in_short = round ? "plug hole" : "slot";
  row.what = row.in_short + " in the lid";
  row.in_short_where = openings.apart > Length{} ? written(openings.apart) + " apart"
                       : round                   ? "over each"
                                                 : "in from the wall";
  if (openings.open_to > Length{}) row.in_short_where += ", bevelled";
  row.in_short_where += bays_of(openings, units);
  if (!round) row.width = openings.width;
  return row;
}

/// Rows that would read alike on a card say there, too, where they are: baffles across and baffles along.
void tell_apart(std::vector<HoleRow>& holes, std::size_t from, const std::vector<LidOpenings>& openings,
                UnitSystem units) {
  const auto said = [](const HoleRow& row) { return std::tuple(row.size, row.in_short_where, row.used_for); };
  std::vector<std::size_t> alike;
  for (std::size_t a = from; a < holes.size(); ++a)
    for (std::size_t b = from; b < holes.size(); ++b)
      if (a != b && said(holes[a]) == said(holes[b])) {
        alike.push_back(a);
        break;
      }
  for (const std::size_t row : alike)
    holes[row].in_short_where += "; " + fill("{0:; }", {openings[row - from].places}, units);
}

std::string if_any(Length length, UnitSystem units) { return length > Length{} ? write_length(length, units) : ""; }

}  // namespace

std::vector<LidRow> lid_rows(const plan::Plan& plan, UnitSystem units) {
  std::vector<LidRow> rows;
  std::size_t number = 0;
  for (const LidBung& bung : plan.lid_map.bungs) {
    LidRow row;
    row.port = bung.port;
    if (bung.at) {
      row.number = fmt::format("{}", ++number);
      row.from_left = write_length(bung.at->from_left, units);
      row.from_front = write_length(bung.at->from_front, units);
    }
    row.hole = if_any(bung.hole, units);
    row.boss = if_any(bung.outside, units);
    row.room = if_any(bung.turning, units);
    row.remark = remark_of(bung, units);
    rows.push_back(std::move(row));
  }
  return rows;
}

std::string lid_datum(const plan::Plan& plan, UnitSystem units) {
  return fmt::format(
      "Of each bung's axis, from the inside of the left end and of the front side; from the edges of a lid that lies "
      "flush on the walls {} more. The hole leaves {} all round the boss (ASME B16.11 class 3000; the gap is common "
      "practice). 'wrench': radius that must be free to screw in what goes into it.",
      write_thickness(plan.lid_map.wall, units), units == UnitSystem::inch ? "1/32 in" : "0.8 mm");
}

std::vector<HoleRow> holes_to_cut(const plan::Plan& plan, UnitSystem units) {
  const std::vector<LidRow> rows = lid_rows(plan, units);
  std::vector<HoleRow> holes;
  for (std::size_t row = 0; row < rows.size(); ++row) {
    const LidBung& bung = plan.lid_map.bungs[row];
    if (!bung.to_weld || rows[row].hole.empty()) continue;
    const std::string where = bung.on_side                  ? in_side(bung, units)
                              : rows[row].from_left.empty() ? rows[row].remark
                                                            : place_words(rows[row]);
    holes.push_back({bung.hole, rows[row].hole, where + (bung.proposed ? " (proposed)" : ""), bung.port});
  }
  const std::size_t bungs = holes.size();
  for (const plan::LidOpenings& openings : plan.lid_map.openings) holes.push_back(opening_row(openings, units));
  tell_apart(holes, bungs, plan.lid_map.openings, units);
  return holes;
}

std::string place_words(const LidRow& row) {
  if (row.from_left.empty()) return "";
  return fmt::format("{} from the left, {} from the front", row.from_left, row.from_front);
}

}  // namespace riserun::report
