#include "chain/refusal/enough.h"

#include "chain/part/move.h"
#include "chain/part/swing.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace riserun::chain {

namespace {

using quantity::fact;

constexpr double kRounded = 1e-9;  // of a step: what sums of lengths are off by, and less

/// In steps, ascending; each is enough for some part.
std::vector<std::int64_t> rooms_above(const Catalog& catalog, Length asked) {
  std::set<std::int64_t> steps;
  for (const catalog::Part& part : catalog.parts())
    for (std::size_t port = 0; port < part.ports.size(); ++port)
      if (const Length radius = swing_radius(catalog, part, port); radius > asked)
        steps.insert(static_cast<std::int64_t>(std::ceil((radius / step_of_figures()).value() - kRounded)));
  return {steps.begin(), steps.end()};
}

/// In steps, descending; each is a bore of some part, or a little less.
std::vector<std::int64_t> bores_below(const Catalog& catalog, Length asked) {
  std::set<std::int64_t, std::greater<>> steps;
  for (const catalog::Part& part : catalog.parts())
    for (std::size_t port = 0; port < part.ports.size(); ++port)
      if (const Length bore = port_bore(catalog, part, port); bore < asked)
        steps.insert(static_cast<std::int64_t>(std::floor((bore / step_of_figures()).value() + kRounded)));
  steps.erase(0);
  return {steps.begin(), steps.end()};
}

/// The first of the steps that does, those behind it doing likewise.
std::optional<Length> first_that_does(const std::vector<std::int64_t>& steps, const std::function<bool(Length)>& does) {
  const auto length = [](std::int64_t step) { return Length(step_of_figures() * static_cast<double>(step)); };
  const auto found =
      std::partition_point(steps.begin(), steps.end(), [&](std::int64_t step) { return !does(length(step)); });
  return found == steps.end() ? std::nullopt : std::optional(length(*found));
}

}  // namespace

Facts move_to_enough(const Catalog& catalog, const ChainRequest& asked, std::string_view rule, const AsGood& as_good,
                     ChainRequest& lifted) {
  const bool is_room = rule == "room";
  if (!is_room && rule != "smallest_bore") return {};
  std::optional<Length> RunRules::*const figure = is_room ? &RunRules::room : &RunRules::smallest_bore;
  ChainRequest tried = lifted;
  const std::optional<Length> enough = first_that_does(
      is_room ? rooms_above(catalog, *(asked.*figure)) : bores_below(catalog, *(asked.*figure)), [&](Length length) {
        tried.*figure = length;
        return as_good(tried);
      });
  if (!enough) return {};
  lifted.*figure = enough;
  return {is_room ? fact("room_that_is_enough", *enough) : fact("bore_that_is_kept", *enough)};
}

}  // namespace riserun::chain
