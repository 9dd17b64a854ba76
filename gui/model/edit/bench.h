// What an act is carried out on.
#pragma once

#include "catalog/catalog.h"
#include "gui/model/text/job_texts.h"
#include "plan/plan.h"

#include <functional>
#include <memory>

namespace riserun::gui {

struct Bench {
  const JobText& text;
  const catalog::Catalog& catalog;  // the job's own where it has one
  const catalog::Catalog& shipped;
  /// The plan of a text; nullptr: the job does not load.
  std::function<std::shared_ptr<const plan::Plan>(const JobText&)> plan_of;

  std::shared_ptr<const plan::Plan> plan() const { return plan_of(text); }
};

}  // namespace riserun::gui
