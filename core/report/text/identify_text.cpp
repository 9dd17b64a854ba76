#include "report/text/identify_text.h"

#include "report/words/identify_words.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::report {

namespace {

using catalog::Candidate;
using catalog::Catalog;
using catalog::Identification;

constexpr double kWorthALine = 0.01;
constexpr std::size_t kMostUndecided = 4;
constexpr std::size_t kMostFurther = 3;
constexpr std::size_t kMostUnlikely = 12;

std::string percent(double share) {
  if (share > 0.99) return "> 99 %";
  return share < 0.01 ? "< 1 %" : fmt::format("{:.0f} %", 100.0 * share);
}

std::string measured_text(const Catalog& catalog, const Identification& found, const Style& style) {
  std::vector<std::string> parts;
  for (const catalog::Observation& seen : found.measured.seen) parts.push_back(observed(catalog, seen, style.units));
  if (found.measured.shelf == catalog::Shelf::metric) parts.emplace_back("in a shop of a metric country (--units)");
  return wrapped("Measured: ", fmt::format("{}", fmt::join(parts, "; ")), style.width);
}

std::string opinion(const Catalog& catalog, const Identification& found, const Style& style) {
  const std::string leader = shelf_name(catalog, found.candidates.front().type);
  if (found.certain) return wrapped("It is ", leader + ".", style.width);
  if (found.undecided.empty()) return wrapped("Most likely ", leader + ".", style.width);
  std::vector<std::string> others;
  for (const catalog::PortTypeId type : found.undecided)
    if (others.size() < kMostUndecided) others.push_back(catalog.written(type));
  const std::size_t more = found.undecided.size() - others.size();
  const std::string rest = more > 0 ? fmt::format(" and {} more", more) : "";
  return wrapped("Cannot tell yet: ",
                 fmt::format("most likely {}, but what was measured does not rule out {}{}.", leader,
                             fmt::join(others, ", "), rest),
                 style.width);
}

std::string candidate_lines(const Catalog& catalog, const Identification& found, const Style& style) {
  std::string text = "\n" + heading("Candidates", style);
  std::vector<std::string> unlikely;
  for (const Candidate& candidate : found.candidates) {
    if (candidate.confidence < kWorthALine) {
      unlikely.push_back(catalog.written(candidate.type));
      continue;
    }
    text += wrapped(fmt::format("{:>6}  ", percent(candidate.confidence)), shelf_name(catalog, candidate.type),
                    style.width);
    text += wrapped("        ", why(catalog, found.measured, candidate, style.units), style.width);
  }
  if (unlikely.empty()) return text;
  const std::size_t more = unlikely.size() - std::min(unlikely.size(), kMostUnlikely);
  unlikely.resize(unlikely.size() - more);
  const std::string rest = more > 0 ? fmt::format(" and {} more", more) : "";
  text += wrapped("  Less than 1 % each: ", fmt::format("{}{}", fmt::join(unlikely, ", "), rest), style.width);
  return text;
}

std::string look_alike_lines(const Catalog& catalog, const Identification& found, const Style& style) {
  const catalog::PortTypeId leader = found.candidates.front().type;
  std::string lines;
  for (const catalog::Resemblance& pair : found.look_alikes) {
    if (pair.of != leader) continue;
    lines += wrapped(
        "  - ", fmt::format("{}{}: {}", catalog.written(pair.other), pair.ruled_out ? " (ruled out)" : "", pair.reason),
        style.width);
  }
  return lines.empty() ? "" : "\n" + heading("Looks like " + catalog.written(leader) + ", and is not", style) + lines;
}

std::string next_lines(const Catalog& catalog, const Identification& found, const Style& style) {
  const std::vector<catalog::NextMeasurement> next = next_measurements(catalog, found);
  if (next.empty()) {
    if (found.certain) return "";
    return "\n" + heading("Measure next", style) +
           wrapped("  ",
                   "no further measurement at the bench would tell them apart well: compare with a known part of "
                   "each, side by side",
                   style.width);
  }
  std::string text =
      "\n" + heading("Measure next", style) + wrapped("  ", instruction(catalog, next.front()), style.width);
  for (std::size_t i = 1; i < next.size() && i <= kMostFurther; ++i)
    text += wrapped("  or  ", instruction(catalog, next[i]), style.width);
  return text;
}

std::string nothing_fits(const Catalog& catalog, const Identification& found, const Style& style) {
  std::string text =
      measured_text(catalog, found, style) +
      wrapped("", "Nothing in the catalog fits all of that within what the tools may be off. Nearest:", style.width);
  for (const Candidate& candidate : found.nearest)
    text += wrapped("  - ",
                    fmt::format("{}: {}", shelf_name(catalog, candidate.type),
                                misses(catalog, found.measured, candidate, style.units)),
                    style.width);
  return text + wrapped("", "Measure again; or it is a thread that is not known here.", style.width);
}

}  // namespace

std::string identify_text(const Catalog& catalog, const Identification& found, const Style& style) {
  if (found.candidates.empty()) return nothing_fits(catalog, found, style);
  std::string text = measured_text(catalog, found, style) + opinion(catalog, found, style);
  text += candidate_lines(catalog, found, style) + look_alike_lines(catalog, found, style);
  text += next_lines(catalog, found, style);
  return text + "\n" +
         wrapped(
             "",
             "Shares hold among the kinds of this catalog; metric, conduit and machine threads are known to it, though "
             "no part has them. Threads that look alike must not be joined: they leak or strip under pressure.",
             style.width);
}

}  // namespace riserun::report
