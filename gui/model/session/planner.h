// Works plans out on a thread of its own: the newest request wins, and what is asked meanwhile is worked out next.
#pragma once

#include "gui/model/session/alternatives.h"
#include "gui/model/session/job_state.h"
#include "plan/planning.h"

#include <condition_variable>
#include <cstdint>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <vector>

namespace riserun::gui {

struct PlanRequest {
  std::uint64_t revision = 0;
  std::uint64_t first_revision = 0;
  std::shared_ptr<const plan::Job> job;
};

struct PlanResult {
  PlanRequest of;
  std::shared_ptr<const plan::Plan> plan;  // nullptr: it could not be made
  std::string failure;                     // then, why
};

struct AlternativesRequest {
  std::shared_ptr<const plan::Plan> plan;
  std::uint64_t revision = 0;
  std::string connection;
};

class Planner {
 public:
  explicit Planner(std::shared_ptr<const catalog::Catalog> catalog);
  /// Waits for the plan that is being worked out; what was asked after it is left.
  ~Planner();
  Planner(const Planner&) = delete;
  Planner& operator=(const Planner&) = delete;

  // Any thread; none of these waits for a plan.
  void ask(PlanRequest request);
  void ask(AlternativesRequest request);
  /// The newest plan that has not been taken yet. One of a document that was left meanwhile is not among them.
  std::optional<PlanResult> take_plan();
  std::optional<Alternatives> take_alternatives();
  bool is_idle() const;
  /// Waits until nothing is asked any more.
  void wait() const;

 private:
  void run();
  void answer(const AlternativesRequest& request);
  PlanResult make(const PlanRequest& request);

  plan::Planning planning_;  // of its thread
  mutable std::mutex mutex_;
  mutable std::condition_variable changed_;
  std::optional<PlanRequest> wanted_;
  std::vector<AlternativesRequest> questions_;  // the newest of each connection
  std::optional<PlanResult> made_;
  std::vector<Alternatives> answers_;
  std::uint64_t first_revision_ = 0;  // of the document that was asked for last
  bool busy_ = false;
  bool stopping_ = false;
  std::thread thread_;  // last: everything it uses is there when it starts
};

}  // namespace riserun::gui
