#include "gui/model/edit/take_out.h"

#include "catalog/words/part_search.h"
#include "gui/model/edit/parts_in_words.h"
#include "gui/model/edit/places_in_text.h"
#include "gui/model/edit/take_run.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::gui {

namespace {

using catalog::PartId;

bool asks_for(const std::vector<chain::Need>& needs, PartId part) {
  return std::any_of(needs.begin(), needs.end(), [&](const chain::Need& need) {
    return std::find(need.parts.begin(), need.parts.end(), part) != need.parts.end();
  });
}

Content content_of(const TextNode& node) {
  if (node.is_list()) {
    Content::List rows;
    for (const TextNode& child : node.children) rows.push_back(content_of(child));
    return {std::move(rows)};
  }
  if (node.is_map()) {
    Content::Map keys;
    for (const TextNode& child : node.children) keys.emplace_back(child.key, content_of(child));
    return {std::move(keys)};
  }
  return {node.scalar};
}

/// Edits that follow each other, up to the first that cannot be done.
class Steps {
 public:
  explicit Steps(const JobText& text) : edited_(text) {}
  template <class Edit>
  Steps& then(const Edit& edit) {
    if (const JobText* text = std::get_if<JobText>(&edited_)) edited_ = edit(JobText(*text));
    return *this;
  }
  Edited done() { return std::move(edited_); }

 private:
  Edited edited_;
};

/// What is said of the only branch that is left is said of the connection.
Edited as_one_run(const JobText& text, const JobPath& connection, const TextNode& branch) {
  Steps steps(text);
  for (const TextNode& key : branch.children) {
    if (key.key == "name") continue;
    // Of several ends each says whether it is held; of one run both ends are said.
    const JobPath path = key.key == "held" ? connection / "held" / "to" : connection / key.key;
    steps.then([&](const JobText& now) { return now.set(path, content_of(key)); });
  }
  return steps.then([&](const JobText& now) { return now.remove(connection / "branches"); }).done();
}

Edited without_device(const JobText& text, const JobPath& connection, std::size_t end) {
  const JobPath list = connection / "branches";
  const TextNode* branches = text.find(list);
  if (branches == nullptr) return text.remove(connection);
  const std::size_t count = branches->children.size();
  if (end >= count) return CannotEdit{"That branch is not in the job any more."};
  if (count > 2) return text.remove(list / end);
  return as_one_run(text, connection, branches->children[1 - end]);
}

/// The first need under that map that names the part; nullopt: none does.
std::optional<JobPath> need_for(const JobText& text, const JobPath& map, catalog::PartSearch& search, PartId part) {
  const JobPath list = map / "need";
  const TextNode* needs = text.find(list);
  if (needs == nullptr) return std::nullopt;
  const auto names_it = [&](const std::string& words) {
    const auto called = search.find_called(words);
    const auto* parts = std::get_if<std::vector<PartId>>(&called);
    return parts != nullptr && std::find(parts->begin(), parts->end(), part) != parts->end();
  };
  if (needs->is_text()) return names_it(needs->scalar) ? std::optional(list) : std::nullopt;
  for (std::size_t row = 0; row < needs->children.size(); ++row)
    if (names_it(needs->children[row].scalar)) return list / row;
  return std::nullopt;
}

Edited without_need(const Bench& bench, const JobPath& connection, const TakeOut& act, PartId part) {
  catalog::PartSearch search(bench.catalog);
  std::vector<JobPath> maps = {connection};
  if (const TextNode* branches = bench.text.find(connection / "branches"))
    for (std::size_t row = 0; row < branches->children.size(); ++row) maps.push_back(connection / "branches" / row);
  for (const JobPath& map : maps) {
    const std::optional<JobPath> need = need_for(bench.text, map, search, part);
    if (!need) continue;
    const TextNode* list = bench.text.find(map / "need");
    const bool few = !list->is_list() || list->children.size() <= 2;
    return Steps(bench.text)
        .then([&](const JobText& now) { return now.remove(*need); })
        .then([&](const JobText& now) {
          // One need alone has no order.
          return few && now.find(map / "in order") != nullptr ? now.remove(map / "in order") : Edited(now);
        })
        .then([&](const JobText& now) { return back_to_best(now, {act.connection}); })
        .done();
  }
  return CannotEdit{
      fmt::format("'{}' does not ask for {}: exclude it instead.", act.connection, title_of(bench.catalog, act.part))};
}

}  // namespace

bool is_needed(const plan::Job& job, const std::string& connection, PartId part) {
  for (const plan::JobConnection& one : job.connections) {
    if (one.name != connection) continue;
    return asks_for(one.needs, part) || std::any_of(one.branches.begin(), one.branches.end(),
                                                    [&](const auto& branch) { return asks_for(branch.needs, part); });
  }
  return false;
}

Edited take_out(const Bench& bench, const TakeOut& act) {
  const auto path = path_of_connection(bench.text, act.connection);
  if (!path) return no_connection(act.connection);
  if (act.end) return without_device(bench.text, *path, *act.end);
  const auto part = bench.catalog.find_part(act.part);
  if (!part) return CannotEdit{fmt::format("The catalog has no part '{}'.", act.part)};
  return without_need(bench, *path, act, *part);
}

}  // namespace riserun::gui
