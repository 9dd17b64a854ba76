// The sentences about measurements that the text and the JSON of `identify` share.
#include "report/words/identify_words.h"

#include <fmt/format.h>

#include <cmath>

namespace riserun::report {

namespace {

using catalog::Catalog;
using catalog::End;
using catalog::Evidence;
using catalog::Question;
using catalog::SeatShape;
using catalog::Tool;

std::string tool_name(Tool tool) {
  switch (tool) {
    case Tool::tape:
      return "by tape";
    case Tool::rule:
      return "by rule";
    case Tool::caliper:
      return "by caliper";
    case Tool::string:
      break;
  }
  return "by a string round it";
}

/// Whether a tape's marks show that length, or decimals must.
bool on_a_mark(Length value, UnitSystem units) {
  constexpr double kOff = 1e-6;
  const double marks = units == UnitSystem::inch ? in_inches(value) * 32.0 : in_millimetres(value);
  return std::abs(marks - std::round(marks)) < kOff;
}

std::string seat_text(SeatShape shape) {
  switch (shape) {
    case SeatShape::none:
      return "no cone";
    case SeatShape::cone_37:
      return "a 37 degree cone";
    case SeatShape::cone_45:
      return "a 45 degree cone";
    case SeatShape::cone:
      break;
  }
  return "a cone";
}

std::string mark_text(const Catalog& catalog, const catalog::MarkSeen& mark) {
  std::vector<std::string> names;
  for (const catalog::KindId kind : mark.kinds) names.push_back(catalog.kind(kind).name);
  std::string text = "marked";
  if (mark.pitched)
    text += " " + mark.pitched->text;
  else if (mark.size)
    text += " " + catalog.size_name(*mark.size);
  if (!names.empty()) text += fmt::format(" as {}", fmt::join(names, " or "));
  // A class, a grade or a maker's name: said, so that nobody takes it for read.
  if (!mark.unread.empty()) text += fmt::format(" (nothing is read from {})", fmt::join(mark.unread, ", "));
  return text;
}

struct Observed {
  const Catalog& catalog;
  UnitSystem units;

  std::string operator()(const catalog::DiameterReading& reading) const {
    const bool marks = reading.tool != Tool::caliper && on_a_mark(reading.across, units);
    const std::string across = marks ? write_length(reading.across, units, quantity::TapeMark::thirty_second)
                                     : write_thickness(reading.across, units);
    return fmt::format("{} across the {} {}", across, reading.inside ? "inside" : "outside", tool_name(reading.tool));
  }
  std::string operator()(const catalog::ThreadCount& count) const {
    const std::string over =
        count.over > Length{} ? fmt::format(" (counted over {})", write_length(count.over, units)) : "";
    return fmt::format("{} threads per inch{}", write_number(count.threads_per_inch), over);
  }
  std::string operator()(const catalog::TaperSeen& taper) const { return taper.tapered ? "taper" : "no taper"; }
  std::string operator()(const catalog::WasherSeen& washer) const {
    return washer.there ? "a washer or gasket" : "no washer or gasket";
  }
  std::string operator()(const catalog::SwivelSeen& swivel) const {
    return swivel.turns ? "a nut that turns by itself" : "no nut that turns by itself";
  }
  std::string operator()(const catalog::SeatSeen& seat) const { return seat_text(seat.shape); }
  std::string operator()(const catalog::FlankSeen& flank) const {
    return fmt::format("a {} degree thread gauge", flank.degrees);
  }
  std::string operator()(const catalog::MarkSeen& mark) const { return mark_text(catalog, mark); }
  std::string operator()(const catalog::OriginKnown& origin) const {
    return origin.shelf == catalog::Shelf::inch ? "made where sizes are in inches" : "made where sizes are metric";
  }
  std::string operator()(const catalog::HandTrial& trial) const {
    return fmt::format("{} turns by hand with a {}", write_number(trial.turns), catalog.written(trial.known));
  }
  std::string operator()(const catalog::MaterialSeen& made) const {
    return "made of " + catalog.material(made.material).name;
  }
};

std::string band_text(catalog::LengthBand band, UnitSystem units) {
  return write_range(write_thickness(band.low, units), write_thickness(band.high, units));
}

/// What the candidate should show for a measurement that has a number.
std::string expected_text(const Evidence& evidence, UnitSystem units) {
  if (evidence.expected) return band_text(*evidence.expected, units);
  return write_number(*evidence.expected_number);
}

bool has_number(const Evidence& evidence) { return evidence.expected || evidence.expected_number; }

}  // namespace

std::vector<std::string> other_names(const Catalog& catalog, catalog::PortTypeId type) {
  const catalog::PortType& port = catalog.port_type(type);
  const catalog::JointKind& kind = catalog.kind(port.kind);
  if (!kind.recognition || port.end == End::neither) return {};
  return port.end == End::male ? kind.recognition->male_names : kind.recognition->female_names;
}

std::string shelf_name(const Catalog& catalog, catalog::PortTypeId type) {
  std::vector<std::string> also = other_names(catalog, type);
  for (const catalog::PortTypeId twin : same_thread(catalog, type)) also.push_back(catalog.written(twin));
  const std::string& name = catalog.kind(catalog.port_type(type).kind).name;
  const std::string written = catalog.written(type);
  if (written.find(name) == std::string::npos) also.insert(also.begin(), name);
  return also.empty() ? written : fmt::format("{} ({})", written, fmt::join(also, ", "));
}

std::string observed(const Catalog& catalog, const catalog::Observation& seen, UnitSystem units) {
  return std::visit(Observed{catalog, units}, seen);
}

std::string verdict_of(const Catalog& catalog, const catalog::Observation& seen, const Evidence& evidence,
                       UnitSystem units) {
  const std::string what = observed(catalog, seen, units);
  if (!has_number(evidence)) return fmt::format("{} {}", what, evidence.agrees ? "fits" : "speaks against it");
  const std::string expected = expected_text(evidence, units);
  if (evidence.miss == 0.0) return fmt::format("{} fits ({})", what, expected);
  if (evidence.agrees) return fmt::format("{} fits within the tool ({})", what, expected);
  return fmt::format("{} is off ({})", what, expected);
}

std::string why(const Catalog& catalog, const catalog::Measurements& measured, const catalog::Candidate& candidate,
                UnitSystem units) {
  std::string text;
  for (std::size_t i = 0; i < measured.seen.size(); ++i)
    text += (i == 0 ? "" : "; ") + verdict_of(catalog, measured.seen[i], candidate.evidence[i], units);
  return text;
}

std::string misses(const Catalog& catalog, const catalog::Measurements& measured, const catalog::Candidate& candidate,
                   UnitSystem units) {
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < measured.seen.size(); ++i) {
    const Evidence& evidence = candidate.evidence[i];
    if (evidence.agrees || !has_number(evidence)) continue;
    const std::string what = observed(catalog, measured.seen[i], units);
    const std::string expected = expected_text(evidence, units);
    if (evidence.expected)
      parts.push_back(fmt::format("{} misses {} by {}", what, expected, write_thickness(evidence.miss_length, units)));
    else
      parts.push_back(fmt::format("{} where it has {}", what, expected));
  }
  return fmt::format("{}", fmt::join(parts, "; "));
}

std::string question_name(Question question) {
  switch (question) {
    case Question::threads:
      return "count the threads";
    case Question::diameter:
      return "measure across by tape";
    case Question::caliper:
      return "measure across by caliper";
    case Question::taper:
      return "look for taper";
    case Question::swivel:
      return "see whether a nut turns by itself";
    case Question::washer:
      return "look for a washer";
    case Question::seat:
      return "look for a cone";
    case Question::flank:
      return "hold a thread gauge to it";
    case Question::hand_trial:
      return "try a known part by hand";
    case Question::origin:
      return "ask where it was made";
    case Question::material:
      break;
  }
  return "look at what it is made of";
}

std::string instruction(const Catalog& catalog, const catalog::NextMeasurement& next) {
  switch (next.question) {
    case Question::threads:
      return "count the threads against a rule, crest to crest over 1 in or as many as there are (--tpi N, or "
             "--threads N --over L)";
    case Question::diameter:
      return next.inside ? "measure across the inside, from crest to crest at the mouth (--id L)"
                         : "measure across the outside, over the crests (--od L)";
    case Question::caliper:
      return fmt::format("measure across the {} again, with a caliper ({} L --tool caliper)",
                         next.inside ? "inside" : "outside", next.inside ? "--id" : "--od");
    case Question::taper:
      return "lay a straight edge along the crests: a pipe taper falls away 1/32 in over 1/2 in of thread "
             "(--taper yes or no)";
    case Question::swivel:
      return "see whether the thread is on a nut that turns by itself (--swivel yes or no)";
    case Question::washer:
      return "look for a washer or gasket, or the flat place for one (--washer yes or no)";
    case Question::seat:
      return "look for a cone at the end, or inside the nut, and gauge its angle (--seat none, cone, 37 or 45)";
    case Question::flank:
      return "hold thread gauges of 55 and 60 degrees to it against the light (--flank 55 or 60)";
    case Question::hand_trial:
      return fmt::format(
          "try it by hand, dry and without force, with a part known to be {}: count the turns until it "
          "stops, and feel whether it rocks (--turns N --into \"{}\")",
          catalog.written(*next.known), catalog.written(*next.known));
    case Question::origin:
      return "ask where it, or the machine it came on, was made (--made inch or metric)";
    case Question::material:
      break;
  }
  return "look at what it is made of (--material WORD)";
}

}  // namespace riserun::report
