#include "gui/model/session/model.h"

#include "gui/model/session/state_folder.h"
#include "gui/model/session/workshop.h"

#include <algorithm>
#include <utility>

namespace riserun::gui {

/// The planner first and gone last: the workshop asks it.
struct Model::Threads {
  explicit Threads(const Setup& setup) : planner(setup.catalog), workshop(setup.catalog, setup.state_folder, planner) {}
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
  plan_.current = plan_.plan && job_->job && plan_.revision == job_->revision && job_->wrong_entries.empty();
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

std::variant<catalog::MadePort, catalog::NotationError> Model::read_port(std::string_view text) const {
  return notation_.read_made(text);
}

void Model::post(Command command) {
  if (const auto* set = std::get_if<SetView>(&command)) {
    if (set->view == view_) return;
    view_ = set->view;
  }
  threads_->workshop.post(std::move(command));
}

void Model::work_out_alternatives(const std::string& connection) {
  const auto asked = asked_.find(connection);
  if (!plan_.plan || (asked != asked_.end() && asked->second == plan_.revision)) return;
  asked_[connection] = plan_.revision;
  threads_->planner.ask(AlternativesRequest{plan_.plan, plan_.revision, connection});
}

const Alternatives* Model::alternatives(const std::string& connection) const {
  for (const auto& known : alternatives_)
    if (known->connection == connection && known->revision == plan_.revision) return known.get();
  return nullptr;
}

}  // namespace riserun::gui
