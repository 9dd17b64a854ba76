#include "gui/views/scene/found.h"

#include "gui/model/edit/fields.h"
#include "gui/model/session/first_measures.h"
#include "gui/views/scene/command.h"
#include "gui/views/scene/scene.h"

#include <algorithm>
#include <cctype>

namespace riserun::views {

namespace {

std::string lower(std::string text) {
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

class Search {
 public:
  explicit Search(const std::string& words) : typed_(lower(words)) {
    for (std::size_t from = 0; from <= typed_.size();) {
      const std::size_t to = std::min(typed_.find(' ', from), typed_.size());
      if (to > from) words_.push_back(typed_.substr(from, to - from));
      from = to + 1;
    }
  }

  void offer(Found found) {
    const std::string all = lower(found.text + " " + found.beside);
    if (!std::all_of(words_.begin(), words_.end(), [&](const std::string& w) { return all.find(w) != all.npos; }))
      return;
    (lower(found.text).rfind(typed_, 0) == 0 ? begin_ : hold_).push_back(std::move(found));
  }
  /// What was offered since the last time.
  void settle(std::vector<Found>& rows) {
    for (std::vector<Found>* some : {&begin_, &hold_}) {
      for (Found& found : *some) rows.push_back(std::move(found));
      some->clear();
    }
  }

 private:
  std::string typed_;
  std::vector<std::string> words_;
  std::vector<Found> begin_;  // begin with what was typed
  std::vector<Found> hold_;
};

}  // namespace

std::vector<Found> found_by(const std::string& words, const Shown& shown, const plan::Job* job, std::size_t most) {
  std::vector<Found> rows;
  Search search(words);
  for (const CommandRow& command : commands())
    if (command.what != Do::find) search.offer({command.name, keys_of(command), command.what});
  search.settle(rows);
  for (std::size_t row = 0; row < shown.sketch.nodes.size(); ++row) {
    const gui::Node& node = shown.sketch.nodes[row];
    if (node.part)
      search.offer({shown.plan->catalog->part(*node.part).name, gui::name_of_connection(*shown.plan, node.connection),
                    ShowPart{node.key}});
  }
  search.settle(rows);
  if (job != nullptr)
    for (const gui::FieldGroup& group : gui::fields_of(*job))
      for (const gui::Field& field : group.fields)
        search.offer({field.label, group.title, ShowField{field.label, field.at}});
  if (job == nullptr)
    for (const gui::Thing& thing : gui::five_things())
      for (const gui::Measure& measure : thing.measures)
        search.offer(
            {std::string(measure.name), std::string(thing.title), ShowField{std::string(measure.name), measure.at}});
  search.settle(rows);
  if (rows.size() > most) rows.resize(most);
  return rows;
}

}  // namespace riserun::views
