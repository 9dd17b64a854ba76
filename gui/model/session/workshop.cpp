#include "gui/model/session/workshop.h"

#include <chrono>
#include <utility>

namespace riserun::gui {

namespace {

constexpr std::chrono::milliseconds kRest{500};  // between two looks at the disk

bool is_same_movement(const std::optional<SetValue>& value, bool goes_on, const std::optional<SetValue>& before) {
  return goes_on && value && before && value->at == before->at;
}

}  // namespace

Workshop::Workshop(const Setup& setup, Planner& planner)
    : setup_(setup), planner_(planner), job_(setup.catalog, setup.state_folder), thread_([this] { run(); }) {}

Workshop::~Workshop() {
  {
    const std::lock_guard lock(mutex_);
    stopping_ = true;
  }
  changed_.notify_all();
  thread_.join();
}

void Workshop::ask(Command command) {
  {
    const std::lock_guard lock(mutex_);
    commands_.push_back(std::move(command));
  }
  changed_.notify_all();
}

void Workshop::perform(Act act, bool goes_on) {
  Command command;
  if (auto* value = std::get_if<SetValue>(&act)) {
    command.value = std::move(*value);
    command.goes_on = goes_on;
  } else {
    command.run = [this, act = std::move(act), goes_on] { perform_now(act, goes_on); };
  }
  ask(std::move(command));
}

void Workshop::undo() {
  ask({{}, false, [this] { job_.editor().undo(); }});
}

void Workshop::redo() {
  ask({{}, false, [this] { job_.editor().redo(); }});
}

void Workshop::give_up_entry(JobPath at) {
  ask({{}, false, [this, at = std::move(at)] { job_.editor().give_up_entry(at); }});
}

void Workshop::set_view(ViewState view) {
  ask({{}, false, [this, view = std::move(view)] { view_ = view; }});
}

void Workshop::start_new() {
  ask({{}, false, [this] {
         save_view();
         job_.start_new();
         show_document();
       }});
}

void Workshop::open(std::filesystem::path file) {
  ask({{}, false, [this, file = std::move(file)] {
         save_view();
         const Outcome outcome = job_.open(file);
         tell(outcome, "");
         if (outcome.done) show_document();
       }});
}

void Workshop::save() {
  ask({{}, false, [this] {
         const std::string name = job_.file_state().path.filename().string();
         tell(job_.save(), "Saved " + name);
         save_view();
       }});
}

void Workshop::save_as(std::filesystem::path file) {
  ask({{}, false, [this, file = std::move(file)] {
         tell(job_.save_as(file), "Saved " + file.filename().string());
         save_view();
         tell_files();
       }});
}

void Workshop::reload() {
  ask({{}, false, [this] { tell(job_.reload(), "Read again what is on disk"); }});
}

void Workshop::keep_mine() {
  ask({{}, false, [this] { job_.keep_mine(); }});
}

void Workshop::give_up_unsaved() {
  ask({{}, false, [this] { job_.give_up_unsaved(); }});
}

void Workshop::recover(Recovery copy) {
  ask({{}, false, [this, copy = std::move(copy)] {
         save_view();
         const Outcome outcome = job_.recover(copy);
         tell(outcome, "Recovered " + copy.name);
         if (outcome.done) show_document();
       }});
}

void Workshop::forget(Recovery copy) {
  ask({{}, false, [this, copy = std::move(copy)] {
         remove(copy);
         tell_files();
       }});
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

void Workshop::tell(const Outcome& outcome, const std::string& done) {
  if (outcome.done && done.empty()) return;
  const std::lock_guard lock(mutex_);
  news_.notices.push_back({outcome.done ? Notice::Kind::done : Notice::Kind::refused,
                           outcome.done ? done : outcome.reason, outcome.problems});
}

/// Another document is open: it has a view of its own, or begins one with the user's habits.
void Workshop::show_document() {
  ViewState fresh;
  fresh.units = view_.units;
  fresh.looks = view_.looks;
  view_ = saved_view_ = job_.load_view().value_or(std::move(fresh));
  {
    const std::lock_guard lock(mutex_);
    news_.view = view_;
  }
  tell_files();
}

void Workshop::tell_files() {
  std::vector<std::filesystem::path> recent = recent_files(setup_.state_folder);
  std::vector<Recovery> copies = recoveries(setup_.state_folder);
  const std::lock_guard lock(mutex_);
  news_.recent = std::move(recent);
  news_.recoveries = std::move(copies);
}

/// Beside the job; and, for jobs that have no side file, what the user likes in general.
void Workshop::save_view() {
  job_.save_view(view_);
  if (view_.units != saved_view_.units || view_.looks != saved_view_.looks) note_habits(setup_.state_folder, view_);
  saved_view_ = view_;
}

void Workshop::perform_now(const Act& act, bool goes_on) {
  const Outcome outcome = job_.editor().perform(act, goes_on);
  // A wrong entry is told beside its field.
  if (!std::holds_alternative<SetValue>(act)) tell(outcome, "");
}

void Workshop::publish() {
  auto state = std::make_shared<const JobState>(state_of(job_));
  const bool replan = state->job && (!asked_ || asked_->revision != state->revision || asked_->units != view_.units);
  if (replan) {
    asked_ = PlanRequest{state->revision, state->first_revision, state->job, view_.units};
    planner_.ask(*asked_);
  }
  const std::lock_guard lock(mutex_);
  news_.job = std::move(state);
}

/// The next command; entries of one hand movement that have piled up are joined into the last.
Workshop::Command Workshop::next() {
  Command command = std::move(commands_.front());
  commands_.pop_front();
  while (!commands_.empty() && is_same_movement(commands_.front().value, commands_.front().goes_on, command.value)) {
    command.value = std::move(commands_.front().value);
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
  view_ = habits(setup_.state_folder);
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
      if (command->value) perform_now(std::move(*command->value), command->goes_on);
      if (command->run) command->run();
      publish();
    }
    lock.lock();
  }
  lock.unlock();
  rest();
}

}  // namespace riserun::gui
