#include "gui/model/session/planner.h"

#include "chain/finder.h"
#include "plan/run_cost.h"

#include <algorithm>
#include <exception>
#include <functional>
#include <utility>

namespace riserun::gui {

namespace {

constexpr std::size_t kMostRows = 8;  // alternatives side by side

void mark_in_use(const plan::ConnectionPlan& connection, Alternatives& answer) {
  answer.taken = connection.request.taken.has_value();
  answer.in_use = answer.rows.size();
  if (connection.chain() == nullptr) return;
  const auto run = taken_parts(*connection.chain());
  const auto row = std::find_if(answer.rows.begin(), answer.rows.end(),
                                [&](const chain::Alternative& each) { return taken_parts(each.chain) == run; });
  answer.in_use = static_cast<std::size_t>(row - answer.rows.begin());
  if (row != answer.rows.end()) return;
  if (!answer.taken) answer.in_use = 0;
  answer.rows.insert(answer.taken ? answer.rows.end() : answer.rows.begin(), {*connection.chain(), {}});
}

Alternatives alternatives_of(const AlternativesRequest& request) {
  Alternatives answer;
  answer.connection = request.connection;
  answer.revision = request.revision;
  answer.catalog = request.plan->catalog;
  for (const plan::ConnectionPlan& connection : request.plan->connections) {
    if (connection.name != request.connection) continue;
    if (connection.chain() == nullptr && !connection.request.taken) continue;
    const chain::Finder finder(*answer.catalog);
    answer.rows = connection.span ? finder.alternatives(connection.request, *connection.span, kMostRows)
                                  : finder.alternatives(connection.request, kMostRows);
    mark_in_use(connection, answer);
  }
  return answer;
}

Comes comes_of(const plan::Plan& plan, const std::string& connection) {
  Comes comes{plan::cost_of(plan.list, connection), {}};
  if (plan.transfer.missing_run.empty() && plan.transfer.fill.stop == transfer::Stop::goal_reached)
    comes.fill = plan.transfer.fill.time;
  return comes;
}

plan::Job with_run(plan::Job job, const std::string& connection, const chain::Chain& run) {
  for (plan::JobConnection& each : job.connections)
    if (each.name == connection) each.take = taken_parts(run);
  return job;
}

/// The whole job planned with each of the rows. False: given up, as something newer is wanted.
bool work_out(const AlternativesRequest& request, Alternatives& answer, plan::Planning& planning,
              const std::function<bool()>& is_overtaken) {
  const plan::Plan& now = *request.plan;
  for (std::size_t row = 0; row < answer.rows.size(); ++row) {
    if (is_overtaken()) return false;
    const bool planned = row == answer.in_use;
    answer.comes.push_back(
        comes_of(planned ? now : planning.plan(with_run(now.job, request.connection, answer.rows[row].chain)),
                 request.connection));
  }
  return true;
}

}  // namespace

Planner::Planner(std::shared_ptr<const catalog::Catalog> catalog)
    : planning_(std::move(catalog)), thread_([this] { run(); }) {}

Planner::~Planner() {
  {
    const std::lock_guard lock(mutex_);
    stopping_ = true;
  }
  changed_.notify_all();
  thread_.join();
}

void Planner::ask(PlanRequest request) {
  {
    const std::lock_guard lock(mutex_);
    if (request.first_revision != first_revision_) made_.reset();
    first_revision_ = request.first_revision;
    wanted_ = std::move(request);
  }
  changed_.notify_all();
}

void Planner::ask(AlternativesRequest request) {
  {
    const std::lock_guard lock(mutex_);
    std::erase_if(questions_, [&](const auto& other) { return other.connection == request.connection; });
    questions_.push_back(std::move(request));
  }
  changed_.notify_all();
}

std::optional<PlanResult> Planner::take_plan() {
  const std::lock_guard lock(mutex_);
  return std::exchange(made_, std::nullopt);
}

std::optional<Alternatives> Planner::take_alternatives() {
  const std::lock_guard lock(mutex_);
  if (answers_.empty()) return std::nullopt;
  Alternatives answer = std::move(answers_.front());
  answers_.erase(answers_.begin());
  return answer;
}

bool Planner::is_idle() const {
  const std::lock_guard lock(mutex_);
  return !busy_ && !wanted_ && questions_.empty();
}

void Planner::wait() const {
  std::unique_lock lock(mutex_);
  changed_.wait(lock, [this] { return !busy_ && !wanted_ && questions_.empty(); });
}

PlanResult Planner::make(const PlanRequest& request) {
  PlanResult result{request, nullptr, ""};
  try {
    result.plan = std::make_shared<const plan::Plan>(planning_.plan(*request.job));
  } catch (const std::exception& error) {
    result.failure = error.what();
  }
  return result;
}

/// The rows as soon as they are there, then the same with what the job comes to with each.
void Planner::answer(const AlternativesRequest& request) {
  Alternatives answer = alternatives_of(request);
  {
    const std::lock_guard lock(mutex_);
    answers_.push_back(answer);
  }
  const auto is_overtaken = [this] {
    const std::lock_guard lock(mutex_);
    return stopping_ || wanted_.has_value();
  };
  if (!work_out(request, answer, planning_, is_overtaken)) return;
  const std::lock_guard lock(mutex_);
  answers_.push_back(std::move(answer));
}

void Planner::run() {
  std::unique_lock lock(mutex_);
  while (true) {
    busy_ = false;
    changed_.notify_all();
    changed_.wait(lock, [this] { return stopping_ || wanted_ || !questions_.empty(); });
    if (stopping_) return;
    busy_ = true;
    if (wanted_) {
      const PlanRequest request = *std::exchange(wanted_, std::nullopt);
      lock.unlock();
      PlanResult result = make(request);
      lock.lock();
      if (request.first_revision == first_revision_) made_ = std::move(result);
    } else {
      const AlternativesRequest request = std::move(questions_.front());
      questions_.erase(questions_.begin());
      lock.unlock();
      answer(request);
      lock.lock();
    }
  }
}

}  // namespace riserun::gui
