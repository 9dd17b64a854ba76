#include "report/text/plan_text.h"

#include "report/figures/figures.h"
#include "report/text/assembly_text.h"
#include "report/text/chain_text.h"
#include "report/words/remark_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace riserun::report {

using plan::Plan;
using plan::Topic;

std::string finding_text(const plan::Finding& finding, const Style& style) {
  return wrapped(fmt::format("  {:<9} ", title_of(finding.severity)), sentences_of(finding, style.units), style.width);
}

std::string caution_text(const plan::Caution& caution, const Style& style) {
  return wrapped(
      "  CAUTION: ", fmt::format("{} [{}] [{}]", say(caution.fact, style.units), caution.source, caution.fact.code),
      style.width);
}

std::string findings_text(const Plan& plan, plan::Severity severity, const Style& style) {
  std::string text;
  for (const plan::Finding& finding : plan.findings)
    if (finding.severity == severity)
      text += wrapped(fmt::format("  {:<9} ", title_of(finding.severity)),
                      fmt::format("{} [{}]", sentences_of(finding, style.units), finding.reason.code), style.width);
  return text;
}

std::string all_findings(const Plan& plan, const Style& style) {
  return findings_text(plan, plan::Severity::refused, style) + findings_text(plan, plan::Severity::not_yet, style);
}

std::string remarks_text(const Plan& plan, Topic topic, const Style& style) {
  std::string text;
  for (const plan::Caution& caution : plan.cautions)
    if (caution.where == topic && !caution.standing) text += caution_text(caution, style);
  for (const plan::Note& note : plan.notes)
    if (note.where == topic) text += wrapped("  Note: ", say(note.fact, style.units), style.width);
  return text;
}

std::string standing_text(const Plan& plan, const std::vector<Topic>& topics, const Style& style) {
  std::string text = heading("With every plan", style);
  for (const plan::Caution& caution : plan.cautions)
    if (caution.standing && std::find(topics.begin(), topics.end(), caution.where) != topics.end())
      text += caution_text(caution, style);
  return text;
}

chain::Answer chain_answer(const plan::ConnectionPlan& connection) {
  if (connection.run() == nullptr) return *connection.none();
  return *connection.run();
}

chain::AssemblyAnswer assembly_answer(const plan::ConnectionPlan& connection) {
  if (connection.run() == nullptr) return *connection.no_assembly();
  return *connection.run();
}

/// The run with its hoses at the length that the plan cuts them to, so that one length is said everywhere. A run that
/// makes a span has said so itself.
void cut_hoses_of(const catalog::Catalog& catalog, const plan::ConnectionPlan& connection, chain::Chain& chain) {
  if (!connection.hose_length || chain.span) return;
  for (chain::RunPart& link : chain.parts) {
    const catalog::Part& part = catalog.part(link.part);
    if (!part.cut_to_length || link.cut_length) continue;
    Length piece{};
    for (const catalog::Port& port : part.ports) piece += port.reach;
    link.cut_length = connection.hose_length;
    if (!part.remnant && piece > Length{})
      link.pieces = std::max(1, static_cast<int>(std::ceil((*link.cut_length / piece).value() - 1e-9)));
    if (!link.from_bin) chain.price += part.price * (link.pieces - 1);
  }
  chain.length = connection.run_length;
}

/// In a plan the order of work has the steps of all runs.
template <class Answer>
Answer without_steps(Answer answer) {
  if (chain::Run* run = std::get_if<chain::Run>(&answer)) run->steps.clear();
  return answer;
}

std::string connection_text(const Plan& plan, const plan::ConnectionPlan& connection, const Style& style) {
  const std::string title = fmt::format("{}: {} to {} ({})", connection.name, connection.from, connection.to,
                                        connection.service == chain::Service::air ? "air" : "water");
  if (connection.branched)
    return wrapped("", title, style.width) +
           assembly_text(*plan.catalog, *connection.branched, without_steps(assembly_answer(connection)), style);
  // The plan has gathered the chain's own cautions with the job's: they are printed once, below the sums.
  chain::Answer answer = without_steps(chain_answer(connection));
  if (chain::Chain* chain = std::get_if<chain::Chain>(&answer)) {
    chain->cautions = connection.cautions;
    cut_hoses_of(*plan.catalog, connection, *chain);
  }
  return title + "\n" + chain_text(*plan.catalog, connection.request, answer, style);
}

std::string connections_text(const Plan& plan, const Style& style) {
  std::string text = heading("Connections", style);
  if (plan.connections.empty()) text += "  The job names none.\n";
  for (const plan::ConnectionPlan& connection : plan.connections)
    text += (&connection == plan.connections.data() ? "" : "\n") + connection_text(plan, connection, style);
  return text + remarks_text(plan, Topic::connections, style);
}

/// A row of the table of levels: depth and volume each in its column, whichever of them the figure is.
std::vector<std::string> level_row(const Figure& figure, UnitSystem units) {
  const std::string remark = said(figure.beside, units);
  const bool depth = std::holds_alternative<Length>(figure.value);
  if (!depth) return {std::string(figure.label), "", written(figure, units), remark};
  return {std::string(figure.label), written(figure, units), written_also(figure, units), remark};
}

std::string levels_text(const Plan& plan, const Style& style) {
  const FigureGroup levels = levels_figures(plan);
  const UnitSystem units = style.units;
  std::vector<std::vector<std::string>> rows = {{"", "depth", "volume", ""}};
  for (const char* key : {"charge_depth", "air_space_depth", "table_depth", "usable", "reservoir_depth_up",
                          "heel_depth", "rim", "left_in_table"})
    rows.push_back(level_row(levels[key], units));
  rows[1].back() = fmt::format("mark it {} below the lid's inside", written(levels["charge_mark_below_lid"], units));
  std::string text = heading("Levels", style) + table(rows, "  ", {1, 2}, style.width);
  text += wrapped("  ",
                  fmt::format("Lift between the two water surfaces: {} at the start, {} with the table full.",
                              written(levels["lift_start"], units), written(levels["lift_full"], units)),
                  style.width);
  text += wrapped(
      "  ",
      fmt::format("Top up when the water, all of it down, stands below {}.", written(levels["top_up_mark"], units)),
      style.width);
  if (const Figure* charge = levels.find("self_limiting_charge"))
    text += wrapped("  ",
                    fmt::format("The riser can lift more than the table holds to its rim. A charge of {} or less "
                                "cannot overflow it.",
                                written(*charge, units)),
                    style.width);
  return text + remarks_text(plan, Topic::levels, style);
}

std::string assumption_rows(const std::vector<plan::Assumption>& assumptions, const Style& style) {
  if (assumptions.empty()) return "  Nothing.\n";
  std::string text;
  for (const plan::Assumption& assumption : assumptions) {
    const SaidAssumption said = say(assumption, style.units);
    text += wrapped("  - ", fmt::format("{}: {} ({})", said.what, said.value, said.why), style.width);
  }
  return text;
}

std::string assumptions_text(const Plan& plan, const Style& style) {
  return heading("Assumed, because the job does not say", style) + assumption_rows(plan.assumptions, style);
}

std::string plan_text(const Plan& plan, const Style& style) {
  std::vector<std::string> sections = {
      summary_text(plan, style),  connections_text(plan, style), riser_text(plan, style), levels_text(plan, style),
      transfer_text(plan, style), losses_text(plan, style),      walls_text(plan, style), lid_text(plan, style)};
  sections.push_back(leak_test_text(plan, style));
  if (plan.verdict != plan::Verdict::refused) {
    sections.push_back(list_text(plan, style));
    sections.push_back(work_text(plan, style));
  }
  sections.push_back(assumptions_text(plan, style));
  sections.push_back(
      standing_text(plan, {Topic::whole_job, Topic::walls, Topic::relief, Topic::leak_test, Topic::care}, style) +
      remarks_text(plan, Topic::care, style));
  return fmt::format("{}", fmt::join(sections, "\n"));
}

}  // namespace riserun::report
