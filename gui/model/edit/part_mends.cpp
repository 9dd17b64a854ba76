#include "gui/model/edit/part_mends.h"

#include "catalog/words/part_search.h"
#include "gui/model/edit/parts_in_words.h"
#include "gui/model/edit/places_in_text.h"
#include "report/words/say.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <string_view>

namespace riserun::gui {

namespace {

using catalog::Catalog;
using catalog::PartId;
using catalog::Role;
using quantity::GaugePressure;
using quantity::Length;
using quantity::UnitSystem;

constexpr std::array kPartMends = {plan::kReliefSetting, plan::kRegulatorOfRange, plan::kPortIntoLid,
                                   plan::kPortIntoFloor, plan::kTableHigher,      plan::kRiserInBushing,
                                   plan::kDeviceOf,      plan::kSpecialOrderIn};

constexpr std::array kNotWritten = {plan::kLineLeftOut, plan::kNeedOf, plan::kNeedLeftOut, plan::kRestrictorInRun,
                                    plan::kDeviceOfBranch};

bool is_one_of(std::span<const char* const> keys, const std::string& key) {
  return std::any_of(keys.begin(), keys.end(), [&](const char* each) { return key == each; });
}

const std::string& name_in(const plan::Change& change) { return std::get<std::string>(change.value); }

/// A part's mark, as it is printed in either system of units.
bool is_marked(const std::optional<GaugePressure>& mark, GaugePressure wanted) {
  constexpr double kShare = 0.01;
  return mark && std::abs(in_pascals(*mark) - in_pascals(wanted)) <= kShare * in_pascals(*mark);
}

/// Edits the text in place, as long as each edit can be made.
class Writing {
 public:
  Writing(const Bench& bench, const JobText& text) : bench_(bench), text_(text), words_(bench.catalog) {}

  Edited change(const plan::Change& change, UnitSystem units) {
    if (change.key == plan::kReliefSetting)
      change_relief_valves(std::get<GaugePressure>(change.value), units);
    else if (change.key == plan::kRegulatorOfRange)
      change_regulators(std::get<GaugePressure>(change.value), units);
    else if (change.key == plan::kDeviceOf)
      change_device(name_in(change), *change.part);
    else if (change.key == plan::kSpecialOrderIn)
      order_specially(name_in(change));
    else if (change.key == plan::kTableHigher)
      raise_table(std::get<Length>(change.value), units);
    else if (change.key == plan::kPortIntoLid)
      move_into_lid(at("reservoir") / "ports" / name_in(change));
    else if (change.key == plan::kPortIntoFloor)
      move_into_floor(name_in(change));
    else
      hang_in_bushing(at("reservoir") / "ports" / name_in(change));
    return refused_ ? Edited(*refused_) : Edited(text_);
  }

 private:
  void take(Edited edited) {
    if (refused_) return;
    if (auto* why = std::get_if<CannotEdit>(&edited))
      refused_ = std::move(*why);
    else
      text_ = std::get<JobText>(std::move(edited));
  }
  void refuse(std::string why) {
    if (!refused_) refused_ = CannotEdit{std::move(why)};
  }
  void set(const JobPath& path, const std::string& value) {
    if (!refused_) take(set_value(text_, path, value));
  }
  void leave_out(const JobPath& path) {
    if (!refused_ && text_.find(path) != nullptr) take(text_.remove(path));
  }
  std::string scalar_at(const JobPath& path) const {
    const TextNode* node = text_.find(path);
    return node == nullptr ? "" : node->scalar;
  }
  std::size_t rows_at(const JobPath& path) const {
    const TextNode* list = text_.find(path);
    return list == nullptr ? 0 : list->children.size();
  }

  std::vector<PartId> called(const std::string& words) {
    auto found = words_.find_called(words);
    auto* parts = std::get_if<std::vector<PartId>>(&found);
    return parts == nullptr ? std::vector<PartId>() : std::move(*parts);
  }
  bool are_of(const std::vector<PartId>& parts, Role role) const {
    return !parts.empty() && std::all_of(parts.begin(), parts.end(), [&](PartId part) {
      return bench_.catalog.family(bench_.catalog.part(part).family).role == role;
    });
  }
  template <class Fits>
  std::vector<PartId> parts_that(Fits fits) const {
    std::vector<PartId> parts;
    for (std::uint32_t row = 0; row < bench_.catalog.parts().size(); ++row)
      if (fits(bench_.catalog.part({row}))) parts.push_back({row});
    return parts;
  }
  /// The words where they mean nothing but these parts, else one of them, the cheapest.
  std::string words_or_one(const std::string& words, const std::vector<PartId>& parts) {
    const std::vector<PartId> meant = called(words);
    const auto is_one = [&](PartId part) { return std::find(parts.begin(), parts.end(), part) != parts.end(); };
    if (!meant.empty() && std::all_of(meant.begin(), meant.end(), is_one)) return words;
    return words_for(bench_.catalog, *std::min_element(parts.begin(), parts.end(), [&](PartId a, PartId b) {
                       return bench_.catalog.part(a).price < bench_.catalog.part(b).price;
                     }));
  }

  /// The same valve with another spring: of its family, metal and thread.
  bool change_relief_valve(const JobPath& line, GaugePressure opens) {
    const std::vector<PartId> old = called(scalar_at(line / "ends in"));
    if (!are_of(old, Role::relief_valve)) return false;
    const std::vector<PartId> sold = parts_that([&](const catalog::Part& part) {
      return is_marked(part.opens_at, opens) && std::any_of(old.begin(), old.end(), [&](PartId id) {
               const catalog::Part& was = bench_.catalog.part(id);
               return part.family == was.family && part.material == was.material &&
                      part.ports[0].type == was.ports[0].type;
             });
    });
    if (sold.empty()) return false;
    set(line / "ends in", words_or_one("", sold));
    set(line / "special order", "yes");
    return true;
  }
  void change_relief_valves(GaugePressure opens, UnitSystem units) {
    bool any = false;
    const JobPath lines = at("connections");
    for (std::size_t row = 0; row < rows_at(lines); ++row) {
      any = change_relief_valve(lines / row, opens) || any;
      for (std::size_t branch = 0; branch < rows_at(lines / row / "branches"); ++branch)
        any = change_relief_valve(lines / row / "branches" / branch, opens) || any;
    }
    if (!any)
      refuse(report::fill("No relief valve of the job is sold with a setting of {0:mark} and the same thread.", {opens},
                          units));
  }

  /// Of several in a row the last one before the reservoir sets its pressure.
  bool change_regulator(const JobPath& line, const std::string& words, const std::vector<PartId>& sold,
                        bool from_supply) {
    const JobPath needs = line / "need";
    const TextNode* list = text_.find(needs);
    if (list == nullptr) return false;
    std::optional<JobPath> found;
    if (list->is_text()) {
      if (are_of(called(list->scalar), Role::regulator)) found = needs;
    } else {
      for (std::size_t row = 0; row < list->children.size(); ++row)
        if (are_of(called(list->children[row].scalar), Role::regulator) && (from_supply || !found)) found = needs / row;
    }
    if (!found) return false;
    set(*found, words_or_one(words, sold));
    return true;
  }
  void change_regulators(GaugePressure range, UnitSystem units) {
    const std::vector<PartId> sold = parts_that([&](const catalog::Part& part) {
      return bench_.catalog.family(part.family).role == Role::regulator && is_marked(part.full_scale, range);
    });
    if (sold.empty()) return refuse(report::fill("No regulator of 0 to {0:mark} is sold.", {range}, units));
    const std::string family = bench_.catalog.family(bench_.catalog.part(sold.front()).family).name;
    const std::string words = report::fill("0 to {0:mark} " + family, {range}, units);
    bool any = false;
    const JobPath lines = at("connections");
    for (std::size_t row = 0; row < rows_at(lines); ++row) {
      const JobPath line = lines / row;
      const bool from_supply = text_.find(at("air") / "ports" / scalar_at(line / "from")) != nullptr;
      bool here = change_regulator(line, words, sold, from_supply);
      for (std::size_t branch = 0; branch < rows_at(line / "branches"); ++branch)
        here = change_regulator(line / "branches" / branch, words, sold, from_supply) || here;
      if (here) set(line / "special order", "yes");
      any = any || here;
    }
    if (!any) refuse("No connection of the job needs a regulator by name: name one in the air line's 'need'.");
  }

  /// The connection ends in the part alone, on a bung of the part's size.
  void change_device(const std::string& name, PartId part) {
    const auto line = path_of_connection(text_, name);
    if (!line) return refuse(no_connection(name).reason);
    set(*line / "ends in", words_for(bench_.catalog, part));
    leave_out(*line / "need");
    leave_out(*line / "take");
    set(*line / "special order", "yes");
    const JobPath port = at("reservoir") / "ports" / scalar_at(*line / "from");
    if (text_.find(port) == nullptr) return;
    set(as_written(text_, port / "port"), port_for(bench_.catalog, part));
    leave_out(port / "bung part");
    leave_out(port / "bung length");
  }

  void order_specially(const std::string& name) {
    const auto line = path_of_connection(text_, name);
    if (!line) return refuse(no_connection(name).reason);
    set(*line / "special order", "yes");
  }

  void move_into_lid(const JobPath& port) {
    set(port / "where", "lid");
    leave_out(port / "face height");
  }

  /// From the floor it looks down, so the face that it had above that is no longer its own.
  void move_into_floor(const std::string& name) {
    const JobPath port = at("table") / "ports" / name;
    const std::shared_ptr<const plan::Plan> plan = bench_.plan();
    const plan::JobPort* was = plan == nullptr ? nullptr : plan::port_named(plan->job.table.ports, name);
    set(port / "where", "floor");
    if (was == nullptr || (was->face_height && *was->face_height > plan->job.table.floor_height))
      leave_out(port / "face height");
    leave_out(port / "opens at");
    leave_out(port / "crest");
  }

  void raise_table(Length by, UnitSystem units) {
    const std::shared_ptr<const plan::Plan> plan = bench_.plan();
    if (plan == nullptr) return refuse("The job has no plan as it stands: its entries must be mended first.");
    const auto written = [&](Length length) { return quantity::write_length(up_to_mark(length, units), units); };
    set(at("table") / "floor height", written(plan->job.table.floor_height + by));
    for (const plan::JobPort& port : plan->job.table.ports)
      if (port.face_height) set(at("table") / "ports" / port.name / "face height", written(*port.face_height + by));
  }

  void hang_in_bushing(const JobPath& port) {
    set(port / "bung", "double-tapped bushing");
    leave_out(port / "bung part");
    leave_out(port / "bung length");
  }

  const Bench& bench_;
  JobText text_;
  catalog::PartSearch words_;
  std::optional<CannotEdit> refused_;
};

}  // namespace

bool is_part_mend(const plan::Change& change) { return is_one_of(kPartMends, change.key); }

bool can_be_written(const plan::Change& change) { return !is_one_of(kNotWritten, change.key); }

Edited with_part_mend(const Bench& bench, const JobText& text, const plan::Change& change, UnitSystem units) {
  return Writing(bench, text).change(change, units);
}

std::string title_of_part_mend(const Catalog& catalog, const plan::Change& change, UnitSystem units) {
  const std::string_view key = change.key;
  if (key == plan::kReliefSetting) return report::fill("Take a relief valve set {0:mark}", {change.value}, units);
  if (key == plan::kRegulatorOfRange) return report::fill("Take a regulator of 0 to {0:mark}", {change.value}, units);
  if (key == plan::kDeviceOf) return fmt::format("End {} in a {}", name_in(change), catalog.part(*change.part).name);
  if (key == plan::kTableHigher)
    return fmt::format("Raise the table by {}",
                       quantity::write_length(up_to_mark(std::get<Length>(change.value), units), units));
  if (key == plan::kSpecialOrderIn) return fmt::format("Allow special order in '{}'", name_in(change));
  if (key == plan::kPortIntoLid) return fmt::format("Put {} into the lid", name_in(change));
  if (key == plan::kPortIntoFloor) return fmt::format("Put {} into the table's floor", name_in(change));
  return fmt::format("Hang the riser in a bushing in {}", name_in(change));
}

Length up_to_mark(Length length, UnitSystem units) {
  constexpr double kLast = 1e-6;  // of a mark: what a sum may be off by
  return units == UnitSystem::inch ? quantity::inches(std::ceil(quantity::in_inches(length) * 16.0 - kLast) / 16.0)
                                   : quantity::millimetres(std::ceil(quantity::in_millimetres(length) - kLast));
}

std::string port_for(const Catalog& catalog, PartId part) {
  const catalog::PortTypeId own = catalog.part(part).ports[0].type;
  for (const catalog::Mate& mate : catalog.mates(own))
    if (catalog.port_type(mate.other).end == catalog::End::female) return catalog.written(mate.other);
  return catalog.written(own);
}

}  // namespace riserun::gui
