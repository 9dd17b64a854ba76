#include "gui/model/edit/mend.h"

#include "gui/model/edit/parts_in_words.h"
#include "gui/model/edit/places_in_text.h"
#include "report/words/say.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

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

/// The next mark of a tape, a sixteenth or a millimetre.
quantity::Length up_to_mark(quantity::Length length, UnitSystem units) {
  constexpr double kLast = 1e-6;  // of a mark: what a sum may be off by
  return units == UnitSystem::inch ? quantity::inches(std::ceil(quantity::in_inches(length) * 16.0 - kLast) / 16.0)
                                   : quantity::millimetres(std::ceil(quantity::in_millimetres(length) - kLast));
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

/// A female thread of the part's size: its own, or the one that takes it.
std::string port_for(const Catalog& catalog, PartId part) {
  const catalog::PortTypeId own = catalog.part(part).ports[0].type;
  for (const catalog::Mate& mate : catalog.mates(own))
    if (catalog.port_type(mate.other).end == catalog::End::female) return catalog.written(mate.other);
  return catalog.written(own);
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

Edited with_part(const Bench& bench, const JobText& text, PartId part) {
  const std::string called = plain_name(bench.catalog, part);
  const JobPath ports = at("reservoir") / "ports";
  const std::string bung =
      free_name(called + " bung", [&](const std::string& name) { return text.find(ports / name) != nullptr; });
  Edited with_port = text.set(ports / bung, Content(Content::Map{{"port", Content(port_for(bench.catalog, part))},
                                                                 {"where", Content("lid")},
                                                                 {"bung", Content("half coupling")},
                                                                 {"welded in", Content("no")}}));
  if (std::holds_alternative<CannotEdit>(with_port)) return with_port;
  const std::string name = free_name(called, [&](const std::string& taken) { return has_connection(text, taken); });
  return std::get<JobText>(with_port).append(at("connections"),
                                             Content(Content::Map{{"name", Content(name)},
                                                                  {"from", Content(bung)},
                                                                  {"ends in", Content(words_for(bench.catalog, part))},
                                                                  {"special order", Content("yes")},
                                                                  {"carries", Content("air")}}));
}

Edited with_change(const Bench& bench, const JobText& text, const plan::Change& change, UnitSystem units) {
  if (change.part) return with_part(bench, text, *change.part);
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

std::string title_of_mend(const Catalog& catalog, const plan::Changes& changes, UnitSystem units) {
  std::string title;
  for (const plan::Change& change : changes) {
    if (change.spot) {
      title += fmt::format("{}Move {} to {}", title.empty() ? "" : ", ", std::get<std::string>(change.value),
                           written_spot(*change.spot, units));
      continue;
    }
    std::string key = change.key;
    std::replace(key.begin(), key.end(), '.', ' ');
    const std::string value = change.part ? "" : written(change, units);
    title += title.empty() ? "" : ", ";
    title += change.part     ? fmt::format("Add a {}", catalog.part(*change.part).name)
             : value.empty() ? fmt::format("Leave out {}", key)
                             : fmt::format("Set {} to {}", key, value);
  }
  return title;
}

}  // namespace riserun::gui
