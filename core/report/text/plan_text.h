// The whole plan as text: what the command prints and what hangs on the wall. Each section also stands alone for the
// verb of its name. A pressure is never printed without the walls' limit and its caution beside it.
#pragma once

#include "plan/plan.h"
#include "plan/stage/riser_alone.h"
#include "report/text/text_layout.h"

#include <string>
#include <vector>

namespace riserun::report {

/// Everything, in reading order. Of a refused job not what is done by it: the steps of the leak test, list and
/// order of work.
std::string plan_text(const plan::Plan& plan, const Style& style);

/// The verdict and what matters most, in ten lines, with what is open and what mends it.
std::string summary_text(const plan::Plan& plan, const Style& style);
std::string connections_text(const plan::Plan& plan, const Style& style);
std::string riser_text(const plan::Plan& plan, const Style& style);
std::string levels_text(const plan::Plan& plan, const Style& style);
std::string transfer_text(const plan::Plan& plan, const Style& style);
std::string losses_text(const plan::Plan& plan, const Style& style);
std::string walls_text(const plan::Plan& plan, const Style& style);
/// Empty where the reservoir has no port.
std::string lid_text(const plan::Plan& plan, const Style& style);
std::string leak_test_text(const plan::Plan& plan, const Style& style);
std::string list_text(const plan::Plan& plan, const Style& style);
std::string work_text(const plan::Plan& plan, const Style& style);
std::string assumptions_text(const plan::Plan& plan, const Style& style);

/// What came of a connection with one far end, or with several, as the solver says it.
chain::Answer chain_answer(const plan::ConnectionPlan& connection);
chain::AssemblyAnswer assembly_answer(const plan::ConnectionPlan& connection);

/// A riser by itself, where there is no job.
std::string riser_text(const catalog::Catalog& catalog, const plan::RiserAlone& riser, const Style& style);
/// Assumptions as a list of sentences.
std::string assumption_rows(const std::vector<plan::Assumption>& assumptions, const Style& style);

/// A finding with its two numbers side by side and what mends it; all of a plan's, one after the other.
std::string finding_text(const plan::Finding& finding, const Style& style);
std::string all_findings(const plan::Plan& plan, const Style& style);
/// Those of that severity.
std::string findings_text(const plan::Plan& plan, plan::Severity severity, const Style& style);
/// The cautions and notes of one topic that come of what is in this job; empty when it has none.
std::string remarks_text(const plan::Plan& plan, plan::Topic topic, const Style& style);
/// What goes with every plan, under a heading of its own: the standing cautions of those topics.
std::string standing_text(const plan::Plan& plan, const std::vector<plan::Topic>& topics, const Style& style);

}  // namespace riserun::report
