#include "catalog/words/words.h"
#include "plan/judge/limits.h"
#include "plan/judge/open.h"
#include "plan/sold.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace riserun::plan {

namespace {

catalog::Role role_of(const Catalog& catalog, const WayPart& part) {
  return catalog.family(catalog.part(part.part).family).role;
}

auto of_role(const Catalog& catalog, catalog::Role role) {
  return [&catalog, role](const WayPart& part) { return role_of(catalog, part) == role; };
}

/// The range of the regulator that sets the reservoir's pressure, if one stands in the air's way.
std::optional<GaugePressure> range_of_part(const Plan& plan) {
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::feed) continue;
    const auto part = last_regulator(*plan.catalog, way);
    if (part != way.parts.end()) return plan.catalog->part(part->part).full_scale;
  }
  return std::nullopt;
}

bool is_the_same_mark(GaugePressure a, GaugePressure b) {
  constexpr double kShare = 0.05;  // one dial is sold as 15 psi and as 1 bar
  return std::abs(in_pascals(a) - in_pascals(b)) <= kShare * in_pascals(a);
}

/// The key and the part speak of one regulator.
void judge_range_of_key(const Plan& plan, Open& open) {
  const auto& key = plan.job.air.regulator_range;
  if (!key) return;
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::feed) continue;
    const auto regulator = last_regulator(*plan.catalog, way);
    if (regulator == way.parts.end()) continue;
    const catalog::Part& part = plan.catalog->part(regulator->part);
    if (!part.full_scale || is_the_same_mark(*part.full_scale, *key)) continue;
    Finding& finding = open.not_yet(
        Topic::connections, fact("regulator_of_another_range", *key, way.connection, part.name, *part.full_scale), {},
        fact("range_of_the_regulator", *part.full_scale), "common practice");
    finding.ways_to_mend = {{{"air.regulator range", *part.full_scale}}};
    finding.or_else = {{fact("take_regulator_with_range", *key), {}, {{{kRegulatorOfRange, *key}}}}};
  }
}

/// A regulator before the last one takes the supply down for it: it gives at least twice the last one's setting, which
/// then holds it (common practice).
void judge_first_stages(const Plan& plan, Open& open) {
  const GaugePressure least = gauge_pascals(kFirstStage * in_pascals(plan.transfer.setting));
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::feed) continue;
    const auto last = last_regulator(*plan.catalog, way);
    const auto is_regulator = of_role(*plan.catalog, catalog::Role::regulator);
    for (auto part = way.parts.begin(); part != last && last != way.parts.end(); ++part) {
      const catalog::Part& stage = plan.catalog->part(part->part);
      if (!is_regulator(*part) || !stage.full_scale || quantity::at_most(least, *stage.full_scale)) continue;
      open.not_yet(
          Topic::connections,
          fact("first_stage_gives_too_little", way.connection, stage.name, *stage.full_scale, plan.transfer.setting),
          {}, fact("first_stage_of_range", least), "common practice");
    }
  }
}

void judge_range(const Plan& plan, const Settled& settled, Open& open) {
  const GaugePressure setting = plan.transfer.setting;
  const std::optional<GaugePressure> of_part = range_of_part(plan);
  const GaugePressure range = of_part.value_or(settled.regulator_range);
  if (quantity::at_most(in_pascals(range), kWidestRange / kAsPrinted * in_pascals(setting))) return;
  const GaugePressure right = regulator_range_for(*plan.catalog, setting);
  Finding& finding = open.not_yet(
      Topic::transfer, fact("regulator_range_too_wide", range, setting, kWidestRange), {},
      fact("take_regulator_with_range", right), "common practice",
      Purchase{"regulator", "air regulator", fact("reads_to", right), regulator_of_range(*plan.catalog, right)});
  // One that stands in the run is changed for another part, whatever the key says.
  if (of_part)
    finding.ways_to_try = {{{kRegulatorOfRange, right}}};
  else
    finding.ways_to_mend = {{{"air.regulator range", right}}};
}

bool is_the_same_hole(Length a, Length b) {
  constexpr double kShare = 0.05;  // one hole is written as 1/16 in, 0.06 in and 1.6 mm
  return std::abs(in_metres(a - b)) <= kShare * in_metres(std::max(a, b));
}

/// A restrictor that is a key alone is counted on, and stands in no run that anybody builds.
void judge_restrictor_key(const Plan& plan, Open& open) {
  const auto& bore = plan.job.air.restrictor;
  if (!bore) return;
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::feed) continue;
    const auto part =
        std::find_if(way.parts.begin(), way.parts.end(), of_role(*plan.catalog, catalog::Role::restrictor));
    if (part != way.parts.end()) {
      const Length built_in = part->bore.value_or(Length());
      if (is_the_same_hole(built_in, *bore)) continue;
      open.not_yet(Topic::connections, fact("restrictor_of_another_hole", *bore, way.connection, built_in), {},
                   fact("hole_of_the_restrictor", built_in), "common practice")
          .ways_to_mend = {{{"air.restrictor", built_in}}};
      continue;
    }
    const Length hole = next_drill_down(*bore);
    open.not_yet(Topic::connections, fact("restrictor_in_no_run", way.connection, *bore), {},
                 fact("name_restrictor_in_need", hole), "common practice");
  }
}

/// A feed narrower than any air line's end is a restrictor by another name.
void judge_feed_bore(const Plan& plan, Open& open) {
  const auto& bore = plan.job.air.feed_bore;
  if (!bore || !quantity::more_than(kNarrowestFeed, *bore)) return;
  const auto is_restrictor = of_role(*plan.catalog, catalog::Role::restrictor);
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::feed) continue;
    const auto restrictor = std::find_if(way.parts.begin(), way.parts.end(), is_restrictor);
    if (restrictor == way.parts.end()) continue;
    // Its hole may have been taken for the feed's, by the drill that is nearest; what is narrower still is nobody's
    // line.
    constexpr double kNextDrill = 0.9;  // 1.5 mm for 1/16 in
    const Length built_in = restrictor->bore.value_or(Length{});
    if (quantity::more_than(kNextDrill * built_in, *bore))
      open.not_yet(Topic::whole_job, fact("feed_narrower_than_restrictor", *bore, built_in), {},
                   fact("bore_of_the_narrowest_fitting"), "common practice");
    return;
  }
  const Length hole = next_drill_down(*bore);
  open.not_yet(Topic::connections, fact("feed_narrower_than_any_line", *bore), {},
               fact("name_restrictor_in_need", hole), "common practice",
               Purchase{"restrictor", "restrictor", fact("hole_no_larger_than", hole)});
}

/// Where there is no regulator at all that has its own finding.
void judge_restrictors(const Plan& plan, Open& open) {
  const Catalog& catalog = *plan.catalog;
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::feed) continue;
    const auto restrictor =
        std::find_if(way.parts.begin(), way.parts.end(), of_role(catalog, catalog::Role::restrictor));
    if (restrictor == way.parts.end() ||
        std::none_of(way.parts.begin(), way.parts.end(), of_role(catalog, catalog::Role::regulator)) ||
        std::any_of(restrictor, way.parts.end(), of_role(catalog, catalog::Role::regulator)))
      continue;
    open.not_yet(Topic::connections, fact("restrictor_behind_regulator", way.connection), {},
                 fact("restrictor_before_regulator"), "common practice");
  }
}

/// A check valve before the regulator keeps no water out of it.
void judge_check_before_regulator(const Plan& plan, Open& open) {
  const Catalog& catalog = *plan.catalog;
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::feed) continue;
    const auto regulator = last_regulator(catalog, way);
    if (regulator == way.parts.end()) continue;
    const auto is_check = of_role(catalog, catalog::Role::check_valve);
    const auto check = std::find_if(way.parts.begin(), regulator, is_check);
    if (check == regulator || std::any_of(regulator, way.parts.end(), is_check)) continue;
    open.not_yet(Topic::connections,
                 fact("check_valve_before_regulator", way.connection, catalog.part(check->part).name), {},
                 fact("check_valve_behind_regulator"), "common practice");
  }
}

/// A gas or a vapour that is no air, by the names that shops have for it: what they say anywhere in a name, short ones
/// as words of their own. What is called air and a torch's or a welder's is the air for that.
bool says_another_gas(const std::string& name) {
  constexpr std::string_view kGases[] = {"oxygen",      "acetylene", "propane",  "butane",        "methane",
                                         "natural gas", "hydrogen",  "nitrogen", "argon",         "carbon dioxide",
                                         "helium",      "propylene", "steam",    "nitrous oxide", "ammonia"};
  constexpr std::string_view kShortNames[] = {"oxy", "o2",  "n2",  "co2", "h2",  "he",  "ar",   "n2o",  "lpg",
                                              "lng", "cng", "gas", "c2",  "c10", "c25", "mapp", "r134a"};
  constexpr std::string_view kUses[] = {"torch", "mig", "tig"};
  const std::string lower = catalog::lower_case(name);
  if (std::any_of(std::begin(kGases), std::end(kGases),
                  [&](std::string_view gas) { return lower.find(gas) != std::string::npos; }))
    return true;
  std::vector<std::string> words{""};
  for (const char letter : lower)
    if (std::isalnum(static_cast<unsigned char>(letter)) != 0)
      words.back() += letter;
    else if (!words.back().empty())
      words.emplace_back();
  const auto any_of = [&](const auto& table) {
    return std::any_of(words.begin(), words.end(), [&](const std::string& word) {
      return std::find(std::begin(table), std::end(table), word) != std::end(table);
    });
  };
  const bool is_air = std::find(words.begin(), words.end(), "air") != words.end();
  return any_of(kShortNames) || (!is_air && any_of(kUses));
}

void refuse_gas(const std::string& name, Open& open) {
  open.refuse(Topic::whole_job, fact("gas_that_is_no_air", name), {}, fact("use_shop_air"),
              "29 CFR 1910.253(a)(2) of oxygen, from memory; of the others, that they burn, choke or scald");
}

/// What the air comes out of: it stands compressed air, and it is air.
void judge_supply_port(const Plan& plan, Open& open) {
  for (const JobPort& port : plan.job.air.ports) {
    if (port.material && !plan.catalog->material(*port.material).compressed_air)
      open.not_yet(Topic::connections,
                   fact("supply_of_what_shatters", port.name, plan.catalog->material(*port.material).name), {},
                   fact("supply_of_metal"), plan.catalog->material(*port.material).source);
    if (says_another_gas(port.name)) refuse_gas(port.name, open);
  }
  for (const JobConnection& connection : plan.job.connections)
    if (port_named(plan.job.air.ports, connection.from) != nullptr && says_another_gas(connection.name) &&
        !says_another_gas(connection.from))
      refuse_gas(connection.name, open);
}

/// Without a regulator the supply's whole pressure goes into the reservoir.
void judge_regulator(const Plan& plan, Open& open) {
  if (std::any_of(plan.connections.begin(), plan.connections.end(), [](const ConnectionPlan& connection) {
        return connection.service == Service::air && connection.run() == nullptr;
      }))
    return;
  const GaugePressure range = regulator_range_for(*plan.catalog, plan.transfer.setting);
  const Purchase regulator{"regulator", "air regulator", fact("reads_to", range),
                           regulator_of_range(*plan.catalog, range)};
  bool fed = false;
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::feed) continue;
    fed = true;
    if (std::none_of(way.parts.begin(), way.parts.end(), of_role(*plan.catalog, catalog::Role::regulator)))
      open.not_yet(Topic::connections, fact("no_regulator", way.connection), {},
                   fact("take_regulator_with_range", range), "common practice", regulator);
  }
  if (!fed)
    open.not_yet(Topic::connections, fact("no_air_line"), {}, fact("connect_the_air", range), "common practice",
                 regulator);
}

/// Of compressed air; nullopt: nothing is proved.
std::optional<GaugePressure> stands_of_air(const Catalog& catalog, PartId part) {
  const catalog::Duty* duty = catalog.duty(part);
  if (duty == nullptr || duty->under_air == catalog::UnderAir::not_proved) return std::nullopt;
  const GaugePressure rating = catalog.part(part).rating;
  return duty->under_air == catalog::UnderAir::limited ? std::min(rating, duty->air_limit) : rating;
}

/// Up to the last regulator, itself included, the parts stand what the supply can give: a first stage may fail.
void judge_supply(const Plan& plan, Open& open) {
  const Catalog& catalog = *plan.catalog;
  const GaugePressure supply = plan.transfer.system.air.receiver_pressure;
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::feed) continue;
    const auto last = last_regulator(catalog, way);
    for (const WayPart& part : way.parts) {
      const auto stands = stands_of_air(catalog, part.part);
      if (stands && *stands < supply) {
        open.refuse(Topic::connections,
                    fact("part_below_supply", way.connection, catalog.part(part.part).name, *stands, supply), {},
                    fact("lower_supply_or_stronger_part"), "worked out");
        break;
      }
      if (last != way.parts.end() && &part == &*last) break;
    }
  }
}

}  // namespace

/// What relief valve and restrictor are sized for is the supply of one feed.
void judge_feeds(const Plan& plan, Open& open) {
  quantity::Texts feeds;
  for (const Way& way : plan.ways)
    if (way.use == WayUse::feed) feeds.push_back(way.branched ? way.end : way.connection);
  if (feeds.size() > 1)
    open.not_yet(Topic::connections, fact("air_comes_in_twice", std::move(feeds)), {}, fact("one_feed_alone"),
                 "common practice");
}

void judge_air(const Plan& plan, const Settled& settled, Open& open) {
  judge_feeds(plan, open);
  judge_regulator(plan, open);
  judge_supply(plan, open);
  judge_range(plan, settled, open);
  judge_range_of_key(plan, open);
  judge_first_stages(plan, open);
  judge_restrictors(plan, open);
  judge_restrictor_key(plan, open);
  judge_feed_bore(plan, open);
  judge_check_before_regulator(plan, open);
  judge_supply_port(plan, open);
}

}  // namespace riserun::plan
