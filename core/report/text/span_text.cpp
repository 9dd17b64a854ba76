#include "report/text/span_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace riserun::report {

namespace {

using chain::Chain;
using chain::SpanFit;
using chain::SpanMake;

// As far as one counts in words.
std::string in_words(int count) {
  static const char* const kWords[] = {"no",    "one",   "two",  "three", "four",   "five",  "six",
                                       "seven", "eight", "nine", "ten",   "eleven", "twelve"};
  return count >= 0 && count <= 12 ? kWords[count] : std::to_string(count);
}

// Less than half a sixteenth, or half a millimetre, cannot be read off a tape.
bool on_the_mark(Length miss, UnitSystem units) {
  return std::abs(in_millimetres(miss)) < (units == UnitSystem::inch ? 25.4 / 32.0 : 0.5);
}

std::string landing(Length miss, UnitSystem units) {
  if (on_the_mark(miss, units)) return "lands on the mark";
  return fmt::format("lands {} {}", write_length(miss < Length{} ? -miss : miss, units),
                     miss < Length{} ? "short" : "long");
}

std::string band(const SpanFit& fit, UnitSystem units) {
  if (fit.band <= Length{}) return "the joints have no play";
  return fmt::format("{} joint{} give{} plus or minus {} (likely {})", in_words(fit.joints), fit.joints == 1 ? "" : "s",
                     fit.joints == 1 ? "s" : "", write_length(fit.band, units), write_length(fit.likely_band, units));
}

std::string how_made(const SpanFit& fit) {
  switch (fit.make) {
    case SpanMake::stock_near:
      return " Stock pieces make it.";
    case SpanMake::stock:
      return " Stock pieces make it if most joints fall the same way: dry-fit it before sealing, and tighten each "
             "joint a little less or more.";
    case SpanMake::cut_pipe:
    case SpanMake::hose:
    case SpanMake::moving_end:
      break;
  }
  return "";
}

/// By the threads that are cut on the piece.
constexpr const char* kThreaded[] = {"", " end to end, from a threaded end, and thread the sawn one",
                                     " end to end and thread both ends"};

std::string cuts(const catalog::Catalog& catalog, const Chain& chain, UnitSystem units) {
  std::string text;
  for (const chain::SpanPiece& piece : chain.span->pieces) {
    if (!piece.cut) continue;
    const catalog::Part& part = catalog.part(chain.parts[piece.part].part);
    text +=
        fmt::format(" Cut part {}, {}, to {}{}.", piece.part + 1, part.flexible ? "the hose" : "from the " + part.name,
                    write_length(piece.length, units), kThreaded[threads_to_cut(part)]);
  }
  return text;
}

std::string elbows(const SpanFit& fit, UnitSystem units) {
  if (fit.bend_degrees <= 0.0) return "";
  const double angle = fit.bend_degrees * std::acos(-1.0) / 180.0;
  std::string text = fmt::format(" Two {:g} degree bends: set {}, travel {} and run {}, centre to centre.",
                                 std::round(fit.bend_degrees * 10.0) / 10.0, write_length(fit.lands_aside, units),
                                 write_length(fit.travel, units), write_length(fit.travel * std::cos(angle), units));
  if (fit.wanted.roll > Length{})
    text += fmt::format(" It rolls: {} one way and {} at right angles make a set of {}.",
                        write_length(fit.wanted.offset, units), write_length(fit.wanted.roll, units),
                        write_length(fit.wanted.aside(), units));
  text += " Both lie in the plane of the two ports' axes; the second faces the way the first port does.";
  if (!on_the_mark(fit.miss_aside(), units))
    text += fmt::format(" The set {}; its joints give plus or minus {}.", landing(fit.miss_aside(), units),
                        write_length(fit.band_aside, units));
  return text;
}

std::string bent_hose(const Chain& chain, UnitSystem units) {
  const SpanFit& fit = *chain.span;
  if (fit.hose_radius <= Length{}) return "";
  const bool is_cut =
      std::any_of(fit.pieces.begin(), fit.pieces.end(), [](const chain::SpanPiece& piece) { return piece.cut; });
  if (!is_cut)
    return fmt::format(
        " As it comes it is {} longer than what it fills: let it hang in a bow, no bend under {} radius.",
        write_length(chain.length - fit.lands, units), write_length(fit.hose_radius, units));
  return fmt::format(" The hose takes the offset of {} in two bends of {} radius.",
                     write_length(fit.wanted.aside(), units), write_length(fit.hose_radius, units));
}

}  // namespace

std::string span_sentences(const catalog::Catalog& catalog, const Chain& chain, UnitSystem units) {
  const SpanFit& fit = *chain.span;
  if (fit.make == SpanMake::moving_end) {
    std::string text = fmt::format("An end moves along its axis, so {} is only a guide: the run is {} long and {}",
                                   write_length(fit.wanted.along, units), write_length(fit.lands, units),
                                   on_the_mark(fit.miss(), units) ? "lands on the mark." : "");
    if (on_the_mark(fit.miss(), units)) return text;
    return text + fmt::format("{}; move the end {} {}.", landing(fit.miss(), units),
                              write_length(fit.miss() < Length{} ? -fit.miss() : fit.miss(), units),
                              fit.miss() < Length{} ? "in" : "out");
  }
  std::string text = fmt::format("Spans {}: ", write_length(fit.wanted.along, units));
  text += fit.make == SpanMake::hose ? "the hose takes up what is left over" : landing(fit.miss(), units);
  text += "; " + band(fit, units) + ".";
  return text + how_made(fit) + cuts(catalog, chain, units) + elbows(fit, units) + bent_hose(chain, units);
}

}  // namespace riserun::report
