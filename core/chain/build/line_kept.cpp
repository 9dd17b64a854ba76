#include "chain/build/line_kept.h"

#include "chain/part/move.h"
#include "chain/part/run_ends.h"

#include <algorithm>
#include <string_view>
#include <utility>

namespace riserun::chain {

using quantity::fact;
using quantity::Facts;

namespace {

/// What one way through a run passes.
struct Passed {
  const Catalog& catalog;
  PortTypeId from;
  PortTypeId to;
  RunEnds ends;
  std::vector<PortTypeId> ports;
  std::vector<PortTypeId> plugs;
  std::vector<std::uint32_t> joints;  // rows of mating rules

  std::string size(PortTypeId type) const { return catalog.size_name(catalog.port_type(type).size); }
  double inches(PortTypeId type) const { return catalog.line_inches(type); }
  PortTypeId smaller_end() const { return inches(to) < inches(from) ? to : from; }
  /// The narrowest port, where it is narrower than the line.
  std::optional<PortTypeId> narrow() const {
    const auto narrowest =
        std::min_element(ports.begin(), ports.end(), [&](PortTypeId a, PortTypeId b) { return inches(a) < inches(b); });
    if (narrowest == ports.end() || inches(*narrowest) >= ends.line_inches) return std::nullopt;
    return *narrowest;
  }
  /// The narrowest port, where not all that is passed has the line's size by name: a run between two ends of 1/8 that
  /// goes through 3/8 keeps no size, but it is nowhere narrower.
  std::optional<PortTypeId> narrowest_of_unlike() const {
    const auto is_unlike = [&](PortTypeId type) { return size(type) != size(smaller_end()); };
    if (std::none_of(ports.begin(), ports.end(), is_unlike)) return std::nullopt;
    return *std::min_element(ports.begin(), ports.end(), [&](PortTypeId a, PortTypeId b) {
      const auto wide = [&](PortTypeId type) {
        return std::pair(inches(type), catalog.nominal_inches(catalog.port_type(type).size));
      };
      return wide(a) < wide(b);
    });
  }
  /// Some joint is of that kind on both sides: copper solder is soldered, and else it is mere tube.
  bool is_joined(catalog::KindId kind) const {
    return std::any_of(joints.begin(), joints.end(), [&](std::uint32_t row) {
      const catalog::MatingRule& rule = catalog.mating_rules()[row];
      return rule.kind_a == kind && rule.kind_b == kind;
    });
  }
  /// Names of the kinds that neither end has, and of those that an end has.
  quantity::Texts other_kinds(bool foreign) const {
    quantity::Texts names;
    const auto add = [&](PortTypeId type) {
      const catalog::JointKind& kind = catalog.kind(catalog.port_type(type).kind);
      Measures measures;
      add_plugging(catalog, ends, type, measures);
      if (measures.other_kinds == 0 || (measures.foreign_threads > 0) != foreign) return;
      const catalog::PortType& port = catalog.port_type(type);
      const std::string& name =
          port.end == catalog::End::male && !is_joined(port.kind) && !kind.threaded ? kind.male_notation : kind.name;
      if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    };
    for (const PortTypeId type : ports) add(type);
    if (foreign)
      for (const PortTypeId type : plugs) add(type);
    return names;
  }
  quantity::Texts own_kinds() const {
    quantity::Texts names{catalog.kind(catalog.port_type(from).kind).name};
    const std::string& last = catalog.kind(catalog.port_type(to).kind).name;
    if (last != names.front()) names.push_back(last);
    return names;
  }
};

Passed passed_on(const Catalog& catalog, const ChainRequest& request, const Chain& way) {
  const PortTypeId from = way.base.type;
  const PortTypeId to = way.ends.front().port.type;
  Passed passed{catalog, from, to, run_ends(catalog, request, from, to), {}, {}, {}};
  for (const RunJoint& joint : way.joints) passed.joints.push_back(joint.rule);
  for (const RunPart& link : way.parts) {
    const catalog::Part& part = catalog.part(link.part);
    passed.ports.push_back(part.ports[link.enter].type);
    passed.ports.push_back(part.ports[link.leave()].type);
    for (const Follower& plug : link.plugs()) passed.plugs.push_back(catalog.part(plug.plug).ports[0].type);
  }
  return passed;
}

Facts kept_on(const Passed& passed, Order order, bool is_best) {
  Facts facts;
  const quantity::Texts own = passed.own_kinds();
  const std::string line = passed.size(passed.smaller_end());
  const std::optional<PortTypeId> narrow = passed.narrow();
  if (narrow && is_best) facts.push_back(fact("narrows_for_want_of", passed.size(*narrow), line));
  if (narrow && !is_best) facts.push_back(fact("narrows_below_the_line", passed.size(*narrow), line));
  const quantity::Texts foreign = passed.other_kinds(true);
  const quantity::Texts others = passed.other_kinds(false);
  const auto takes = [&](const quantity::Texts& kinds, bool nothing_else) {
    if (kinds.empty()) return;
    if (!is_best) return facts.push_back(fact("takes_other_kinds", kinds));
    facts.push_back(nothing_else ? fact("takes_for_want_of", kinds, own) : fact("takes_to_buy_less", kinds));
  };
  takes(foreign, true);
  takes(others, order == Order::line);
  const bool keeps_kinds = foreign.empty() && others.empty();
  const bool keeps_size = passed.ends.line_inches > 0.0 && !narrow;
  const std::optional<PortTypeId> narrowest = keeps_size ? passed.narrowest_of_unlike() : std::nullopt;
  if (narrowest && passed.size(*narrowest) == line) facts.push_back(fact("nowhere_under", line));
  if (narrowest && passed.size(*narrowest) != line)
    facts.push_back(fact("nowhere_narrower", passed.catalog.written(*narrowest)));
  if (keeps_size && !narrowest)
    facts.push_back(keeps_kinds ? fact("keeps_size_and_kinds", line, own) : fact("keeps_size", line));
  else if (keeps_kinds)
    facts.push_back(fact("keeps_kinds", own));
  return facts;
}

}  // namespace

bool keeps_all(const quantity::Facts& kept) {
  constexpr std::string_view kAll[] = {"keeps_size_and_kinds", "keeps_kinds", "nowhere_under", "nowhere_narrower",
                                       "keeps_every_way"};
  return std::all_of(kept.begin(), kept.end(), [&](const quantity::Fact& one) {
    return std::find(std::begin(kAll), std::end(kAll), one.code) != std::end(kAll);
  });
}

quantity::Facts line_kept(const Catalog& catalog, const ChainRequest& request, const Run& run, bool is_best) {
  if (run.parts.empty()) return {};
  if (run.ends.size() == 1) return kept_on(passed_on(catalog, request, way_to(run, 0)), request.order, is_best);
  Facts facts;
  for (std::size_t end = 0; end < run.ends.size(); ++end) {
    const Facts way = kept_on(passed_on(catalog, request, way_to(run, end)), request.order, is_best);
    if (!keeps_all(way)) facts.push_back(fact("kept_to_end", run.ends[end].port.called, way));
  }
  if (facts.empty()) facts.push_back(fact("keeps_every_way"));
  return facts;
}

}  // namespace riserun::chain
