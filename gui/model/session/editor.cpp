#include "gui/model/session/editor.h"

#include "gui/model/edit/act_edits.h"
#include "gui/model/edit/places_in_text.h"

#include <algorithm>
#include <iterator>

namespace riserun::gui {

namespace {

constexpr std::size_t kMostSteps = 2000;

void gather(const JobText& text, const TextNode& node, const JobPath& path, std::map<JobPath, WrittenValue>& values) {
  if (node.is_text()) {
    const WrittenValue value{node.scalar, node.line, node.column};
    values[path] = value;
    const std::vector<PathStep>& steps = path.steps();
    const bool port = steps.size() == 3 && steps[1] == PathStep("ports");
    if (port) values[path / "port"] = value;  // written short
    const bool wish = steps.size() == 3 && (steps[2] == PathStep("need") || steps[2] == PathStep("avoid"));
    if (wish) values[path / std::size_t{0}] = value;
  }
  if (node.is_list() && is_place_in_lid(path)) {
    std::string both;
    for (const TextNode& child : node.children) both += (both.empty() ? "" : ", ") + child.scalar;
    values[path] = {both, node.line, node.column};
  }
  for (std::size_t i = 0; i < node.children.size(); ++i)
    gather(text, node.children[i], node.is_map() ? path / node.children[i].key : path / i, values);
}

bool is_new(const quantity::Problem& problem, const std::vector<quantity::Problem>& known) {
  return std::none_of(known.begin(), known.end(),
                      [&](const quantity::Problem& other) { return other.message == problem.message; });
}

/// What is moved by hand, where acts of that kind can go on; empty: they cannot.
std::string movement_of(const Act& act) {
  if (const auto* value = std::get_if<SetValue>(&act)) return "value " + value->at.text();
  return std::holds_alternative<SetText>(act) ? "text" : "";
}

}  // namespace

Editor::Editor(std::shared_ptr<const catalog::Catalog> catalog) : catalog_(std::move(catalog)), planning_(catalog_) {}

Editor::Reading Editor::read(std::string text) const {
  Reading reading;
  auto tree = JobText::read(text, file_.string());
  reading.text = std::move(text);
  if (JobText* good = std::get_if<JobText>(&tree)) {
    reading.tree = std::move(*good);
    read_job_of(reading);
  } else {
    reading.problems = std::get<std::vector<quantity::Problem>>(std::move(tree));
  }
  return reading;
}

Editor::Reading Editor::read(JobText tree) const {
  Reading reading;
  reading.text = tree.text();
  reading.tree = std::move(tree);
  read_job_of(reading);
  return reading;
}

void Editor::read_job_of(Reading& reading) const {
  try {
    reading.job = std::make_shared<const plan::Job>(plan::read_job(*catalog_, reading.text, file_, before_));
  } catch (const quantity::InputError& error) {
    reading.problems = error.problems();
  }
}

void Editor::start(std::string text, std::filesystem::path file) {
  file_ = std::move(file);
  reading_ = read(std::move(text));
  steps_ = {{reading_.text, "", ""}};
  step_ = 0;
  wrong_entries_.clear();
  first_revision_ = ++revision_;
}

void Editor::rename(std::filesystem::path file) {
  file_ = std::move(file);
  reading_ = read(reading_.text);
  ++revision_;
}

std::vector<quantity::Problem> Editor::problems_as(const std::filesystem::path& file) const {
  try {
    plan::read_job(*catalog_, reading_.text, file, before_);
    return {};
  } catch (const quantity::InputError& error) {
    return error.problems();
  }
}

void Editor::replace_text(std::string text, std::string name) { keep(read(std::move(text)), std::move(name), ""); }

std::shared_ptr<const plan::Plan> Editor::plan_of(const Reading& reading) const {
  return reading.job ? std::make_shared<const plan::Plan>(planning_.plan(*reading.job)) : nullptr;
}

Edited Editor::edited(const Act& act) const {
  const catalog::Catalog& own = reading_.job && reading_.job->own_catalog ? *reading_.job->own_catalog : *catalog_;
  return edit_for(act, {*reading_.tree, own, *catalog_, [this](const JobText& text) {
                          return plan_of(text.text() == reading_.text ? reading_ : read(text));
                        }});
}

/// A wrong entry is kept beside its field until it is set right.
Outcome Editor::refuse(const Act& act, Outcome outcome) {
  if (const auto* value = std::get_if<SetValue>(&act)) {
    const std::string reason = outcome.problems.empty() ? outcome.reason : outcome.problems.front().message;
    wrong_entries_[value->at] = {value->written, reason};
  }
  return outcome;
}

/// Those that stand at the value that the act sets; none of another act.
std::vector<quantity::Problem> Editor::wrong_with_value(const Act& act, const Reading& after) {
  const auto* set = std::get_if<SetValue>(&act);
  const TextNode* value = set == nullptr || !after.tree ? nullptr : after.tree->find(as_written(*after.tree, set->at));
  std::vector<quantity::Problem> wrong;
  if (value == nullptr) return wrong;
  const auto stands_at = [](const TextNode& node, const quantity::Problem& problem) {
    // It may point at a place within a text: at what is missing behind a number.
    const int within = node.is_text() ? static_cast<int>(node.end - node.begin) : 0;
    return problem.line == node.line && problem.column >= node.column && problem.column <= node.column + within;
  };
  std::copy_if(after.problems.begin(), after.problems.end(), std::back_inserter(wrong), [&](const auto& problem) {
    return stands_at(*value, problem) || std::any_of(value->children.begin(), value->children.end(),
                                                     [&](const TextNode& child) { return stands_at(child, problem); });
  });
  return wrong;
}

/// Whether a job that does not load may become what the act makes of it: one lack after another is filled, but by no
/// value that is wrong itself.
bool Editor::leads_on(const Act& act, const Reading& after) const {
  if (reading_.job) return false;
  return std::holds_alternative<SetValue>(act) ? after.tree && wrong_with_value(act, after).empty()
                                               : after.problems.size() < reading_.problems.size();
}

Outcome Editor::perform(const Act& act, bool goes_on) {
  const std::string name =
      name_of(act, reading_.job && reading_.job->own_catalog ? *reading_.job->own_catalog : *catalog_,
              reading_.tree ? &*reading_.tree : nullptr);
  // A movement that begins ends any other of the same field.
  const std::string movement = movement_of(act);
  if (!goes_on && step_ > 0) steps_[step_].movement.clear();
  if (const auto* whole = std::get_if<SetText>(&act)) {
    keep(read(whole->text), name, movement);
    return {true, ""};
  }
  if (!reading_.tree) return refuse(act, {false, "The text of the job must be mended first.", reading_.problems});
  Edited edit = edited(act);
  if (const auto* why = std::get_if<CannotEdit>(&edit)) return refuse(act, {false, why->reason});
  Reading after = read(std::get<JobText>(std::move(edit)));
  if (after.job == nullptr && !leads_on(act, after)) {
    // What is wrong with the value itself comes before what else the job lacks.
    std::vector<quantity::Problem> problems = wrong_with_value(act, after);
    if (problems.empty()) problems = std::move(after.problems);
    std::stable_partition(problems.begin(), problems.end(),
                          [&](const quantity::Problem& problem) { return is_new(problem, reading_.problems); });
    std::string reason = problems.front().message;
    return refuse(act, {false, std::move(reason), std::move(problems)});
  }
  if (const auto* value = std::get_if<SetValue>(&act)) wrong_entries_.erase(value->at);
  if (after.text != reading_.text) keep(std::move(after), name, movement);
  return {true, ""};
}

void Editor::keep(Reading reading, std::string name, std::string movement) {
  reading_ = std::move(reading);
  // One hand movement is one step: the text before it stays the one that undo goes back to.
  const bool same_movement = !movement.empty() && step_ > 0 && steps_[step_].movement == movement;
  steps_.resize(same_movement ? step_ : step_ + 1);
  steps_.push_back({reading_.text, std::move(name), std::move(movement)});
  if (steps_.size() > kMostSteps) steps_.erase(steps_.begin());
  step_ = steps_.size() - 1;
  ++revision_;
}

void Editor::go_to(std::size_t step) {
  steps_[step_].movement.clear();
  step_ = step;
  steps_[step_].movement.clear();
  reading_ = read(steps_[step].text);
  wrong_entries_.clear();
  ++revision_;
}

bool Editor::undo() {
  if (step_ == 0) return false;
  go_to(step_ - 1);
  return true;
}

bool Editor::redo() {
  if (step_ + 1 >= steps_.size()) return false;
  go_to(step_ + 1);
  return true;
}

JobState Editor::state() const {
  JobState state;
  state.revision = revision_;
  state.first_revision = first_revision_;
  state.text = reading_.text;
  state.job = reading_.job;
  state.problems = reading_.problems;
  if (reading_.tree) gather(*reading_.tree, reading_.tree->root(), {}, state.values);
  state.wrong_entries = wrong_entries_;
  if (step_ > 0) state.undo_name = steps_[step_].name;
  if (step_ + 1 < steps_.size()) state.redo_name = steps_[step_ + 1].name;
  state.file.path = file_;
  return state;
}

}  // namespace riserun::gui
