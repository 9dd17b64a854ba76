#include "report/words/plan_keys.h"

namespace riserun::report {

std::string_view key_of(plan::Topic topic) {
  switch (topic) {
    case plan::Topic::whole_job:
      return "whole_job";
    case plan::Topic::connections:
      return "connections";
    case plan::Topic::riser:
      return "riser";
    case plan::Topic::levels:
      return "levels";
    case plan::Topic::transfer:
      return "transfer";
    case plan::Topic::walls:
      return "walls";
    case plan::Topic::relief:
      return "relief";
    case plan::Topic::leak_test:
      return "leak_test";
    case plan::Topic::list:
      return "list";
    case plan::Topic::care:
      return "care";
  }
  return "";
}

std::string_view key_of(plan::Verdict verdict) {
  switch (verdict) {
    case plan::Verdict::ready:
      return "ready";
    case plan::Verdict::not_yet:
      return "not yet";
    case plan::Verdict::refused:
      return "refused";
  }
  return "";
}

std::string_view key_of(plan::Place place) {
  switch (place) {
    case plan::Place::lid:
      return "lid";
    case plan::Place::side:
      return "side";
    case plan::Place::floor:
      return "floor";
    case plan::Place::over_rim:
      return "over rim";
  }
  return "";
}

std::string_view key_of(plan::Severity severity) { return severity == plan::Severity::refused ? "refused" : "not yet"; }

std::string name_and_verdict(const plan::Plan& plan) {
  return (plan.job.name.empty() ? "" : plan.job.name + ": ") + std::string(key_of(plan.verdict));
}

}  // namespace riserun::report
