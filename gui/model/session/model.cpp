#include "gui/model/session/model.h"

#include "gui/model/session/state_folder.h"
#include "gui/model/session/workshop.h"

#include <algorithm>
#include <utility>

namespace riserun::gui {

/// The planner first and gone last: the workshop asks it.
struct Model::Threads {
  explicit Threads(const Setup& setup) : planner(setup.catalog), workshop(setup, planner) {}
  Planner planner;
  Workshop workshop;
};

namespace {

Setup completed(Setup setup) {
  if (setup.state_folder.empty()) setup.state_folder = state_folder();
  return setup;
}

}  // namespace

Model::Model(Setup setup)
    : setup_(completed(std::move(setup))),
      job_(std::make_shared<const JobState>()),
      notation_(*setup_.catalog),
      threads_(std::make_unique<Threads>(setup_)) {
  threads_->workshop.wait();
  poll();
}

Model::~Model() = default;

bool Model::poll() {
  News news = threads_->workshop.take_news();
  bool changed = news.job != nullptr || !news.notices.empty() || news.view || news.recent || news.recoveries;
  if (news.job) job_ = std::move(news.job);
  if (news.view) view_ = std::move(*news.view);
  if (news.recent) recent_ = std::move(*news.recent);
  if (news.recoveries) recoveries_ = std::move(*news.recoveries);
  notices_.insert(notices_.end(), std::make_move_iterator(news.notices.begin()),
                  std::make_move_iterator(news.notices.end()));
  changed |= take_plan();
  while (auto answer = threads_->planner.take_alternatives()) {
    std::erase_if(alternatives_, [&](const auto& known) { return known->connection == answer->connection; });
    alternatives_.push_back(std::make_unique<const Alternatives>(std::move(*answer)));
    changed = true;
  }
  return changed;
}

/// A plan of another document is none: what is shown goes with it.
bool Model::take_plan() {
  const PlanState before = plan_;
  if (plan_.plan && plan_.revision < job_->first_revision) plan_ = PlanState();
  if (auto made = threads_->planner.take_plan(); made && made->of.revision >= job_->first_revision) {
    if (made->plan) {
      plan_.plan = std::move(made->plan);
      plan_.revision = made->of.revision;
    } else {
      notices_.push_back({Notice::Kind::refused, "The job cannot be planned: " + made->failure});
    }
  }
  plan_.working = !threads_->planner.is_idle() || !threads_->workshop.is_idle();
  plan_.current = plan_.plan && job_->job && plan_.revision == job_->revision && job_->wrong_entries.empty() &&
                  plan_.plan->job.units == units();
  return plan_.plan != before.plan || plan_.current != before.current || plan_.working != before.working;
}

void Model::settle() {
  threads_->workshop.wait();
  threads_->planner.wait();
  poll();
}

quantity::UnitSystem Model::units() const {
  return view_.units.value_or(job_->job ? job_->job->units : quantity::UnitSystem::inch);
}

std::vector<Notice> Model::take_notices() { return std::exchange(notices_, {}); }

std::variant<catalog::PortTypeId, catalog::NotationError> Model::read_port(std::string_view text) const {
  return notation_.read(text);
}

void Model::perform(Act act, bool goes_on) { threads_->workshop.perform(std::move(act), goes_on); }
void Model::undo() { threads_->workshop.undo(); }
void Model::redo() { threads_->workshop.redo(); }
void Model::give_up_entry(const JobPath& at) { threads_->workshop.give_up_entry(at); }

void Model::set_view(ViewState view) {
  if (view == view_) return;
  view_ = view;
  threads_->workshop.set_view(std::move(view));
}

const Alternatives* Model::alternatives(const std::string& connection) {
  for (const auto& known : alternatives_)
    if (known->connection == connection && known->revision == plan_.revision) return known.get();
  const auto asked = asked_.find(connection);
  if (plan_.plan && (asked == asked_.end() || asked->second != plan_.revision)) {
    asked_[connection] = plan_.revision;
    threads_->planner.ask(AlternativesRequest{plan_.plan, plan_.revision, connection});
  }
  return nullptr;
}

void Model::start_new() { threads_->workshop.start_new(); }
void Model::open(const std::filesystem::path& file) { threads_->workshop.open(file); }
void Model::save() { threads_->workshop.save(); }
void Model::save_as(const std::filesystem::path& file) { threads_->workshop.save_as(file); }
void Model::reload() { threads_->workshop.reload(); }
void Model::keep_mine() { threads_->workshop.keep_mine(); }
void Model::give_up_unsaved() { threads_->workshop.give_up_unsaved(); }
void Model::recover(const Recovery& copy) { threads_->workshop.recover(copy); }
void Model::forget(const Recovery& copy) { threads_->workshop.forget(copy); }

}  // namespace riserun::gui
