#include "gui/model/edit/act_edits.h"

#include "gui/model/edit/bin_edits.h"
#include "gui/model/edit/mend.h"
#include "gui/model/edit/parts_in_words.h"
#include "gui/model/edit/places_in_text.h"
#include "gui/model/edit/take_out.h"
#include "gui/model/edit/take_run.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::gui {

namespace {

using catalog::Catalog;
using catalog::PartId;

const char* key_of(WishKind kind) { return kind == WishKind::need ? "need" : "avoid"; }

const char* key_of(PortOwner owner) {
  switch (owner) {
    case PortOwner::reservoir:
      return "reservoir";
    case PortOwner::table:
      return "table";
    case PortOwner::air:
      return "air";
  }
  return "";
}

std::string trimmed(const std::string& text) {
  const std::size_t first = text.find_first_not_of(" \t\r\n");
  if (first == std::string::npos) return "";
  return text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

/// The rows of a wish list; a lone text counts as one row.
std::vector<std::string> wishes_of(const TextNode& connection, WishKind kind) {
  const TextNode* list = connection.child(key_of(kind));
  std::vector<std::string> wishes;
  if (list == nullptr) return wishes;
  if (list->is_text()) wishes.push_back(list->scalar);
  for (const TextNode& row : list->children) wishes.push_back(row.scalar);
  return wishes;
}

class Editing {
 public:
  explicit Editing(const Bench& bench) : bench_(bench), text_(bench.text) {}

  Edited operator()(const SetValue& act) const {
    const std::string written = trimmed(act.written);
    const JobPath path = as_written(text_, act.at);
    if (written.empty()) return text_.find(path) == nullptr ? Edited(text_) : text_.remove(path);
    if (written.find_first_of("\n\r") != std::string::npos) return CannotEdit{"A value stands on one line."};
    return set_value(text_, path, written);
  }

  Edited operator()(const RemoveValue& act) const { return text_.remove(as_written(text_, act.at)); }

  Edited operator()(const SetText&) const { return CannotEdit{"A text as a whole is no edit."}; }

  Edited operator()(const NeverUse& act) const {
    const auto part = bench_.catalog.find_part(act.part);
    if (!part) return no_part(act.part);
    return wish_for_part(act.connection, *part, WishKind::avoid, WishKind::need);
  }

  Edited operator()(const UsePart& act) const {
    const auto part = bench_.catalog.find_part(act.part);
    if (!part) return no_part(act.part);
    return wish_for_part(act.connection, *part, WishKind::need, WishKind::avoid);
  }

  Edited operator()(const AddWish& act) const {
    const auto path = path_of_connection(text_, act.connection);
    if (!path) return no_connection(act.connection);
    const std::string words = trimmed(act.words);
    if (words.empty()) return CannotEdit{"Nothing was asked for."};
    return text_.append(*path / key_of(act.kind), Content(words));
  }

  Edited operator()(const DropWish& act) const {
    const auto path = path_of_connection(text_, act.connection);
    if (!path) return no_connection(act.connection);
    const JobPath list = *path / key_of(act.kind);
    const std::vector<std::string> wishes = wishes_of(*text_.find(list.parent()), act.kind);
    const auto found = std::find(wishes.begin(), wishes.end(), act.words);
    if (found == wishes.end()) return CannotEdit{fmt::format("'{}' does not ask for '{}'.", act.connection, act.words)};
    return text_.remove(as_written(text_, list / static_cast<std::size_t>(found - wishes.begin())));
  }

  Edited operator()(const CountInBin& act) const { return count_in_bin(bench_, act); }

  Edited operator()(const Connect& act) const {
    if (trimmed(act.to).empty() == trimmed(act.ends_in).empty())
      return CannotEdit{"A connection goes to a port or ends in a device: one of the two is needed."};
    Content::Map keys;
    if (!act.name.empty()) keys.emplace_back("name", Content(act.name));
    keys.emplace_back("from", Content(act.from));
    keys.emplace_back(act.to.empty() ? "ends in" : "to", Content(act.to.empty() ? trimmed(act.ends_in) : act.to));
    return text_.append(at("connections"), Content(std::move(keys)));
  }

  Edited operator()(const Disconnect& act) const {
    const auto path = path_of_connection(text_, act.connection);
    if (!path) return no_connection(act.connection);
    return text_.remove(*path);
  }

  Edited operator()(const AddPort& act) const {
    const std::string name = trimmed(act.name);
    if (name.empty()) return CannotEdit{"A port needs a name."};
    const JobPath path = at(key_of(act.owner)) / "ports" / name;
    if (text_.find(path) != nullptr) return CannotEdit{fmt::format("There is a port called '{}' already.", name)};
    return text_.set(path, Content(trimmed(act.notation)));
  }

  Edited operator()(const SwapPart& act) const { return swap_part(bench_, act); }
  Edited operator()(const TakeRun& act) const { return take_run(bench_, act); }
  Edited operator()(const BackToBest& act) const { return back_to_best(text_, act); }
  Edited operator()(const TakeOut& act) const { return take_out(bench_, act); }
  Edited operator()(const FollowMend& act) const { return follow_mend(bench_, act); }
  Edited operator()(const MendAll& act) const { return mend_all(bench_, act); }

 private:
  static CannotEdit no_part(const std::string& id) { return {fmt::format("The catalog has no part '{}'.", id)}; }

  /// Asks for the part on one list, and takes it from the other where it stands there by itself. A run that was taken
  /// before, and is at odds with that, is let go.
  Edited wish_for_part(const std::string& connection, PartId part, WishKind wish, WishKind other) const {
    const auto path = path_of_connection(text_, connection);
    if (!path) return no_connection(connection);
    JobText text = text_;
    const std::vector<std::string> others = wishes_of(*text.find(*path), other);
    for (std::size_t i = others.size(); i-- > 0;) {
      if (!mean_only(bench_.catalog, others[i], part)) continue;
      Edited without = text.remove(as_written(text, *path / key_of(other) / i));
      if (std::holds_alternative<CannotEdit>(without)) return without;
      text = std::get<JobText>(std::move(without));
    }
    const std::vector<std::string> taken = taken_ids(text, *path);
    const bool held = std::find(taken.begin(), taken.end(), bench_.catalog.part(part).id) != taken.end();
    if (!taken.empty() && held == (wish == WishKind::avoid)) {
      Edited free = back_to_best(text, {connection});
      if (std::holds_alternative<CannotEdit>(free)) return free;
      text = std::get<JobText>(std::move(free));
    }
    return text.append(*path / key_of(wish), Content(words_for(bench_.catalog, part)));
  }

  const Bench& bench_;
  const JobText& text_;
};

/// `gap of 'water up'`, `port 'drain'`, `table depth`.
std::string label_of(const JobPath& path, const JobText* text) {
  const std::vector<PathStep>& steps = path.steps();
  std::size_t from = 0;
  std::string whose;
  const auto key = [&](std::size_t i) {
    const auto* name = i < steps.size() ? std::get_if<std::string>(&steps[i]) : nullptr;
    return name != nullptr ? *name : std::string();
  };
  if (key(0) == "connections" && steps.size() >= 2 && text != nullptr) {
    const TextNode* node = text->find(JobPath({steps[0], steps[1]}));
    if (node != nullptr) whose = fmt::format("'{}'", connection_name(*node));
    from = 2;
  } else if (key(1) == "ports" && steps.size() >= 3) {
    whose = fmt::format("port '{}'", key(2));
    from = 3;
  }
  std::string what;
  for (std::size_t i = from; i < steps.size(); ++i) {
    const auto* place = std::get_if<std::size_t>(&steps[i]);
    what += (what.empty() ? "" : " ") + (place != nullptr ? std::to_string(*place + 1) : key(i));
  }
  if (whose.empty()) return what;
  return what.empty() ? whose : what + " of " + whose;
}

class Naming {
 public:
  Naming(const Catalog& catalog, const JobText* text) : catalog_(catalog), text_(text) {}

  std::string operator()(const SetValue& act) const {
    const std::string label = label_of(act.at, text_);
    return trimmed(act.written).empty() ? "Leave out " + label : "Set " + label + " to " + trimmed(act.written);
  }
  std::string operator()(const RemoveValue& act) const { return "Take out " + label_of(act.at, text_); }
  std::string operator()(const SetText&) const { return "Edit the text"; }
  std::string operator()(const NeverUse& act) const {
    return fmt::format("Never use {} in '{}'", title_of(catalog_, act.part), act.connection);
  }
  std::string operator()(const UsePart& act) const {
    return fmt::format("Use {} in '{}'", title_of(catalog_, act.part), act.connection);
  }
  std::string operator()(const SwapPart& act) const {
    return fmt::format("Use {} for {} in '{}'", title_of(catalog_, act.other), title_of(catalog_, act.part),
                       act.connection);
  }
  std::string operator()(const TakeRun& act) const {
    return fmt::format("Take another run for '{}', of {} {}", act.connection, act.run.size(),
                       act.run.size() == 1 ? "part" : "parts");
  }
  std::string operator()(const BackToBest& act) const {
    return fmt::format("Back to the best run for '{}'", act.connection);
  }
  std::string operator()(const CountInBin& act) const {
    return fmt::format("Have {} of {} in the bin", act.count, title_of(catalog_, act.part));
  }
  std::string operator()(const AddWish& act) const {
    return fmt::format("{} {} in '{}'", act.kind == WishKind::need ? "Ask for" : "Avoid", act.words, act.connection);
  }
  std::string operator()(const DropWish& act) const {
    return fmt::format("No longer {} {} in '{}'", act.kind == WishKind::need ? "ask for" : "avoid", act.words,
                       act.connection);
  }
  std::string operator()(const Connect& act) const {
    return fmt::format("Connect '{}' to {}", act.from, act.to.empty() ? act.ends_in : "'" + act.to + "'");
  }
  std::string operator()(const Disconnect& act) const { return fmt::format("Take out '{}'", act.connection); }
  std::string operator()(const TakeOut& act) const {
    return fmt::format("Remove {} from '{}'", title_of(catalog_, act.part), act.connection);
  }
  std::string operator()(const MendAll&) const { return "Mend all that can be mended"; }
  std::string operator()(const AddPort& act) const {
    return fmt::format("Add port '{}', {}, to the {}", act.name, act.notation,
                       act.owner == PortOwner::air ? "air supply" : key_of(act.owner));
  }
  std::string operator()(const FollowMend& act) const { return title_of_mend(catalog_, act.changes, act.units); }

 private:
  const Catalog& catalog_;
  const JobText* text_;
};

}  // namespace

Edited edit_for(const Act& act, const Bench& bench) { return std::visit(Editing(bench), act); }

std::string name_of(const Act& act, const Catalog& catalog, const JobText* text) {
  return std::visit(Naming(catalog, text), act);
}

}  // namespace riserun::gui
