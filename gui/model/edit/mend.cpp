#include "gui/model/edit/mend.h"

#include "gui/model/edit/part_mends.h"
#include "gui/model/edit/parts_in_words.h"
#include "gui/model/edit/places_in_text.h"
#include "report/words/say.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <sstream>

namespace riserun::gui {

namespace {

using catalog::Catalog;
using catalog::PartId;
using quantity::UnitSystem;

JobPath path_of_key(const std::string& key) {
  JobPath path;
  for (std::size_t from = 0; from <= key.size();) {
    const std::size_t dot = std::min(key.find('.', from), key.size());
    path = std::move(path) / key.substr(from, dot - from);
    from = dot + 1;
  }
  return path;
}

/// As it is typed; the map's places stand on a tape's marks, so that this is no other.
std::string written_spot(const plan::LidSpot& spot, UnitSystem units) {
  return fmt::format("{}, {}", quantity::write_length(spot.from_left, units),
                     quantity::write_length(spot.from_front, units));
}

/// As it is typed: rounded to the side that still mends.
std::string written(const plan::Change& change, UnitSystem units) {
  std::string_view form = "{0}";
  if (std::holds_alternative<quantity::GaugePressure>(change.value) ||
      std::holds_alternative<quantity::PressureDifference>(change.value))
    form = "{0:alone}";
  if (std::holds_alternative<quantity::VolumeFlow>(change.value)) form = "{0:air}";
  if (const auto* length = std::get_if<quantity::Length>(&change.value)) {
    if (change.key != "air.restrictor") return quantity::write_length(up_to_mark(*length, units), units);
    form = "{0:thickness3}";
  }
  return report::fill(form, {change.value}, units);
}

/// The name, or the name with a number behind it, that none of the taken has.
template <class IsTaken>
std::string free_name(const std::string& wanted, IsTaken is_taken) {
  std::string name = wanted;
  for (int number = 2; is_taken(name); ++number) name = fmt::format("{} {}", wanted, number);
  return name;
}

/// What a person calls it: "relief valve", "gauge", "ball valve".
std::string plain_name(const Catalog& catalog, PartId part) {
  const catalog::Family& family = catalog.family(catalog.part(part).family);
  return family.role == catalog::Role::device ? family.name : std::string(catalog::role_name(family.role));
}

bool has_connection(const JobText& text, const std::string& name) {
  const TextNode* list = text.find(at("connections"));
  return list != nullptr && std::any_of(list->children.begin(), list->children.end(), [&](const TextNode& row) {
           const TextNode* own = row.child("name");
           return own != nullptr && own->scalar == name;
         });
}

/// A connection of the part alone, on that port; empty: on a bung that is welded in for it.
Edited with_part(const Bench& bench, const JobText& text, PartId part, std::string bung) {
  const std::string called = plain_name(bench.catalog, part);
  const JobPath ports = at("reservoir") / "ports";
  Edited with_port = text;
  if (bung.empty()) {
    bung = free_name(called + " bung", [&](const std::string& name) { return text.find(ports / name) != nullptr; });
    with_port = text.set(ports / bung, Content(Content::Map{{"port", Content(port_for(bench.catalog, part))},
                                                            {"where", Content("lid")},
                                                            {"bung", Content("half coupling")},
                                                            {"welded in", Content("no")}}));
  }
  if (std::holds_alternative<CannotEdit>(with_port)) return with_port;
  const std::string name = free_name(called, [&](const std::string& taken) { return has_connection(text, taken); });
  return std::get<JobText>(with_port).append(at("connections"),
                                             Content(Content::Map{{"name", Content(name)},
                                                                  {"from", Content(bung)},
                                                                  {"ends in", Content(words_for(bench.catalog, part))},
                                                                  {"special order", Content("yes")},
                                                                  {"carries", Content("air")}}));
}

std::string bays_in_words(const reservoir::WallBays& bays) { return fmt::format("{} x {}", bays.along, bays.across); }

/// How the walls are divided, key by key; an empty text leaves the key out.
std::vector<std::pair<std::string, std::string>> keys_of(const reservoir::SupportLayout& layout) {
  const auto count = [](int baffles) { return baffles > 0 ? std::to_string(baffles) : std::string(); };
  const auto bays = [](const std::optional<reservoir::WallBays>& of) {
    return of ? bays_in_words(*of) : std::string();
  };
  return {{"baffles across", count(layout.baffles_across)},
          {"baffles along", count(layout.baffles_along)},
          {"lid bays", bays(layout.lid)},
          {"floor bays", bays(layout.floor)},
          {"long side bays", bays(layout.long_side)},
          {"short side bays", bays(layout.short_side)},
          {"lid stays", layout.lid_stays_are_posts ? "posts" : ""}};
}

/// As the finding's layout has it: what divides the walls otherwise goes.
Edited with_supports(JobText text, const reservoir::SupportLayout& layout) {
  const JobPath supports = at("reservoir") / "supports";
  std::vector<std::pair<std::string, std::string>> keys = keys_of(layout);
  if (!layout.bare) keys.emplace_back("widest bare panel", "");
  for (const auto& [key, value] : keys) {
    const JobPath path = supports / key;
    if (value.empty() && text.find(path) == nullptr) continue;
    Edited changed = value.empty() ? text.remove(path) : text.set(path, Content(value));
    if (std::holds_alternative<CannotEdit>(changed)) return changed;
    text = std::get<JobText>(std::move(changed));
  }
  return text;
}

/// The sheet of the job with another thickness, its metal as it is written there.
std::string sheet_of(const JobText& text, quantity::Length thickness, UnitSystem units) {
  static const std::vector<std::string> kNoMetal = {"ga", "gauge", "in", "inch", "mm", "thick"};
  const TextNode* sheet = text.find(at("reservoir") / "sheet");
  std::string words = quantity::write_length(up_to_mark(thickness, units), units);
  std::istringstream written(sheet == nullptr ? "" : sheet->scalar);
  for (std::string word; written >> word;)
    if (word.find_first_of("0123456789") == std::string::npos &&
        std::find(kNoMetal.begin(), kNoMetal.end(), word) == kNoMetal.end())
      words += " " + word;
  return words;
}

std::string title_of_supports(const reservoir::SupportLayout& layout) {
  std::string title;
  for (const auto& [key, value] : keys_of(layout))
    if (!value.empty()) title += (title.empty() ? "Set " : ", ") + key + " to " + value;
  return title.empty() ? "Leave out what divides the walls" : title;
}

Edited with_change(const Bench& bench, const JobText& text, const plan::Change& change, UnitSystem units) {
  if (is_part_mend(change)) return with_part_mend(bench, text, change, units);
  if (change.supports) return with_supports(text, *change.supports);
  if (change.key == plan::kSheetThickness)
    return text.set(at("reservoir") / "sheet",
                    Content(sheet_of(text, std::get<quantity::Length>(change.value), units)));
  if (change.part) {
    const bool on_port = change.key == plan::kDeviceOn;
    return with_part(bench, text, *change.part, on_port ? std::get<std::string>(change.value) : std::string());
  }
  if (change.spot) {
    const JobPath place = at("reservoir") / "ports" / std::get<std::string>(change.value) / "at";
    return set_value(text, place, written_spot(*change.spot, units));
  }
  const JobPath path = path_of_key(change.key);
  const std::string value = written(change, units);
  if (value.empty()) return text.find(path) == nullptr ? Edited(text) : text.remove(path);
  return text.set(path, Content(value));
}

}  // namespace

Edited follow_mend(const Bench& bench, const FollowMend& act) {
  JobText text = bench.text;
  for (const plan::Change& change : act.changes) {
    Edited changed = with_change(bench, text, change, act.units);
    if (std::holds_alternative<CannotEdit>(changed)) return changed;
    text = std::get<JobText>(std::move(changed));
  }
  return text;
}

std::vector<plan::Changes> ways_to_follow(const plan::Finding& finding) {
  std::vector<plan::Changes> ways = finding.ways_to_mend;
  // Where what is offered is not all, the plan's other ways are written where the job has words for them.
  for (const plan::Changes& way : finding.ways_to_try) {
    const bool written = std::all_of(way.begin(), way.end(), can_be_written);
    if (written && !way.empty()) ways.push_back(way);
  }
  return ways;
}

namespace {

/// How much is open: what refuses the plan counts before what is not there yet.
std::pair<std::ptrdiff_t, std::size_t> open_in(const plan::Plan& plan) {
  return {std::count_if(plan.findings.begin(), plan.findings.end(),
                        [](const plan::Finding& one) { return one.severity == plan::Severity::refused; }),
          plan.findings.size()};
}

/// The text after the first mend that leaves less open; nullopt: none does.
std::optional<JobText> one_step(const Bench& bench, const JobText& text, UnitSystem units,
                                std::shared_ptr<const plan::Plan>& plan) {
  for (const plan::Finding& finding : plan->findings) {
    const std::vector<plan::Changes> ways = ways_to_follow(finding);
    if (ways.empty()) continue;
    const Bench here{text, bench.catalog, bench.shipped, bench.plan_of};
    Edited edited = follow_mend(here, {ways.front(), units});
    JobText* after = std::get_if<JobText>(&edited);
    if (after == nullptr) continue;
    std::shared_ptr<const plan::Plan> planned = bench.plan_of(*after);
    if (planned == nullptr || open_in(*planned) >= open_in(*plan)) continue;
    plan = std::move(planned);
    return std::move(*after);
  }
  return std::nullopt;
}

}  // namespace

Edited mend_all(const Bench& bench, const MendAll& act) {
  constexpr int kMostSteps = 20;  // each leaves less open, so there is an end to them anyway
  std::shared_ptr<const plan::Plan> plan = bench.plan();
  if (plan == nullptr) return CannotEdit{"The job has no plan as it stands: its entries must be mended first."};
  JobText text = bench.text;
  int steps = 0;
  for (; steps < kMostSteps && !plan->findings.empty(); ++steps) {
    std::optional<JobText> after = one_step(bench, text, act.units, plan);
    if (!after) break;
    text = std::move(*after);
  }
  if (steps == 0)
    return CannotEdit{"Nothing that is open can be mended by a change of the job alone: see each reason."};
  return text;
}

namespace {

std::string added_in_words(const Catalog& catalog, const plan::Change& change) {
  const std::string& part = catalog.part(*change.part).name;
  return change.key == plan::kDeviceOn ? fmt::format("Add a {} on {}", part, std::get<std::string>(change.value))
                                       : fmt::format("Add a {}", part);
}

}  // namespace

std::string title_of_mend(const Catalog& catalog, const plan::Changes& changes, UnitSystem units) {
  std::string title;
  for (const plan::Change& change : changes) {
    if (is_part_mend(change)) {
      title += (title.empty() ? "" : ", ") + title_of_part_mend(catalog, change, units);
      continue;
    }
    if (change.supports) {
      title += (title.empty() ? "" : ", ") + title_of_supports(*change.supports);
      continue;
    }
    if (change.key == plan::kSheetThickness) {
      const auto thickness = up_to_mark(std::get<quantity::Length>(change.value), units);
      title += fmt::format("{}et sheet to {}", title.empty() ? "S" : ", s", quantity::write_length(thickness, units));
      continue;
    }
    if (change.spot) {
      title += fmt::format("{}Move {} to {}", title.empty() ? "" : ", ", std::get<std::string>(change.value),
                           written_spot(*change.spot, units));
      continue;
    }
    std::string key = change.key;
    std::replace(key.begin(), key.end(), '.', ' ');
    const std::string value = change.part ? "" : written(change, units);
    title += title.empty() ? "" : ", ";
    title += change.part     ? added_in_words(catalog, change)
             : value.empty() ? fmt::format("Leave out {}", key)
                             : fmt::format("Set {} to {}", key, value);
  }
  return title;
}

}  // namespace riserun::gui
