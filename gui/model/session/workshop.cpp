#include "gui/model/session/workshop.h"

#include <chrono>
#include <utility>

namespace riserun::gui {

namespace {

constexpr std::chrono::milliseconds kRest{500};  // between two looks at the disk

const SetValue* value_set_by(const Command& command) {
  const auto* perform = std::get_if<Perform>(&command);
  return perform != nullptr ? std::get_if<SetValue>(&perform->act) : nullptr;
}

/// Whether the second goes on with the hand movement of the first.
bool is_same_movement(const Command& first, const Command& second) {
  const SetValue* before = value_set_by(first);
  const SetValue* after = value_set_by(second);
  return before != nullptr && after != nullptr && before->at == after->at && std::get<Perform>(second).goes_on;
}

}  // namespace

Workshop::Workshop(std::shared_ptr<const catalog::Catalog> catalog, std::filesystem::path state, Planner& planner)
    : state_(std::move(state)), planner_(planner), job_(std::move(catalog), state_), thread_([this] { run(); }) {}

Workshop::~Workshop() {
  {
    const std::lock_guard lock(mutex_);
    stopping_ = true;
  }
  changed_.notify_all();
  thread_.join();
}

void Workshop::post(Command command) {
  {
    const std::lock_guard lock(mutex_);
    commands_.push_back(std::move(command));
  }
  changed_.notify_all();
}

News Workshop::take_news() {
  const std::lock_guard lock(mutex_);
  return std::exchange(news_, News());
}

bool Workshop::is_idle() const {
  const std::lock_guard lock(mutex_);
  return !busy_ && commands_.empty();
}

void Workshop::wait() const {
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [this] { return !busy_ && commands_.empty(); });
}

// ---- on the thread

struct Workshop::CarryOut {
  Workshop& shop;
  OpenJob& job = shop.job_;

  void operator()(const Perform& command) const {
    const Outcome outcome = job.editor().perform(command.act, command.goes_on);
    // A wrong entry is told beside its field, and one that is right is seen there; so is what is typed as a text.
    const bool in_sight = std::holds_alternative<SetValue>(command.act) || std::holds_alternative<SetText>(command.act);
    if (in_sight) return;
    shop.tell(outcome, "");
    const JobState state = job.editor().state();
    if (outcome.done && state.undo_name)
      shop.tell_act(*state.undo_name + ": done. Ctrl+Z brings back what was before.");
  }
  void operator()(const Undo&) const {
    const std::optional<std::string> name = job.editor().state().undo_name;
    if (job.editor().undo() && name) shop.tell_act("Taken back: " + *name + ". Ctrl+Shift+Z does it again.");
  }
  void operator()(const Redo&) const { job.editor().redo(); }
  void operator()(const GiveUpEntry& command) const { job.editor().give_up_entry(command.at); }
  void operator()(const SetView& command) const { shop.view_ = command.view; }

  /// What would be lost is not: it must be saved or discarded in so many words.
  bool would_lose_work(bool discard) const {
    if (discard || !job.is_unsaved()) return false;
    shop.tell({false, "The job holds work that is not saved: save it or discard it first."}, "");
    return true;
  }
  void operator()(const StartNew& command) const {
    if (would_lose_work(command.discard)) return;
    shop.save_view();
    job.start_new(command.text);
    shop.show_document();
  }
  void operator()(const Open& command) const {
    if (would_lose_work(command.discard)) return;
    shop.save_view();
    const Outcome outcome = job.open(command.file);
    shop.tell(outcome, "");
    if (outcome.done) shop.show_document();
  }
  void operator()(const Save&) const {
    const std::string name = job.file_state().path.filename().string();
    shop.tell(job.save(), "Saved " + name);
    shop.save_view();
  }
  void operator()(const SaveAs& command) const {
    shop.tell(job.save_as(command.file), "Saved " + command.file.filename().string());
    shop.save_view();
    shop.tell_files();
  }
  void operator()(const Reload&) const { shop.tell(job.reload(), "Read again what is on disk"); }
  void operator()(const KeepMine&) const { job.keep_mine(); }
  void operator()(const GiveUpUnsaved&) const { job.give_up_unsaved(); }

  void operator()(const Recover& command) const {
    if (would_lose_work(command.discard)) return;
    shop.save_view();
    const Outcome outcome = job.recover(command.copy);
    shop.tell(outcome, "Recovered " + command.copy.name);
    if (outcome.done) shop.show_document();
  }
  void operator()(const Forget& command) const {
    remove(command.copy);
    shop.tell_files();
  }
};

void Workshop::tell(const Outcome& outcome, const std::string& done) {
  if (outcome.done && done.empty()) return;
  const std::lock_guard lock(mutex_);
  news_.notices.push_back({outcome.done ? Notice::Kind::done : Notice::Kind::refused,
                           outcome.done ? done : outcome.reason, outcome.problems});
}

/// A line that stands for as long as the job stays as the act has left it.
void Workshop::tell_act(std::string text) {
  const std::lock_guard lock(mutex_);
  news_.notices.push_back({Notice::Kind::done, std::move(text), {}, job_.editor().state().revision});
}

/// Another document is open: it has a view of its own, or begins one with the user's habits. Units that its file names
/// beat those that were chosen for another one; the starter job, which is nobody's yet, follows the habit.
void Workshop::show_document() {
  const JobState job = state_of(job_);
  ViewState fresh = habits_;
  if (!job.file.path.empty() && job.values.contains(at("units"))) fresh.units.reset();
  view_ = job_.load_view().value_or(std::move(fresh));
  view_.looks = habits_.looks;  // of the shop's light and not of a job
  saved_view_ = view_;
  {
    const std::lock_guard lock(mutex_);
    news_.view = view_;
  }
  tell_files();
}

void Workshop::tell_files() {
  std::vector<std::filesystem::path> recent = recent_files(state_);
  std::vector<Recovery> copies = recoveries(state_);
  const std::lock_guard lock(mutex_);
  news_.recent = std::move(recent);
  news_.recoveries = std::move(copies);
}

/// Beside the job; and, for jobs that have no side file, what the user likes in general.
void Workshop::save_view() {
  job_.save_view(view_);
  if (view_.units != saved_view_.units || view_.looks != saved_view_.looks) {
    if (view_.units) habits_.units = view_.units;
    habits_.looks = view_.looks;
    note_habits(state_, habits_);
  }
  saved_view_ = view_;
}

void Workshop::publish() {
  auto state = std::make_shared<const JobState>(state_of(job_));
  if (state->job && planned_ != state->revision) {
    planned_ = state->revision;
    planner_.ask(PlanRequest{state->revision, state->first_revision, state->job});
  }
  const std::lock_guard lock(mutex_);
  news_.job = std::move(state);
}

/// The next command; entries of one hand movement that have piled up are joined into the last.
Command Workshop::next() {
  Command command = std::move(commands_.front());
  commands_.pop_front();
  while (!commands_.empty() && is_same_movement(command, commands_.front())) {
    std::get<Perform>(command).act = std::move(std::get<Perform>(commands_.front()).act);
    commands_.pop_front();
  }
  return command;
}

/// What is done when nothing is asked.
void Workshop::rest() {
  const bool changed = job_.look_at_disk();
  job_.keep_copy();
  if (view_ != saved_view_) save_view();
  if (changed) publish();
}

void Workshop::run() {
  habits_ = habits(state_);
  show_document();
  publish();
  std::unique_lock lock(mutex_);
  while (true) {
    busy_ = false;
    changed_.notify_all();
    const bool asked = changed_.wait_for(lock, kRest, [this] { return stopping_ || !commands_.empty(); });
    if (commands_.empty() && stopping_) break;
    busy_ = asked;
    std::optional<Command> command;
    if (asked) command = next();
    lock.unlock();
    if (!command) {
      rest();
    } else {
      std::visit(CarryOut{*this}, *command);
      publish();
    }
    lock.lock();
  }
  lock.unlock();
  rest();
}

}  // namespace riserun::gui
