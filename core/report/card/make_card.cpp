#include "report/card/make_card.h"

#include "report/card/card_parts.h"
#include "report/words/remark_words.h"
#include "report/words/say.h"

#include <fmt/format.h>

namespace riserun::report {

namespace {

using plan::Plan;
using plan::Severity;
using plan::Verdict;

constexpr std::size_t kMostToWatch = 2;  // of what can hurt nobody

std::string verdict_words(const Plan& plan) {
  switch (plan.verdict) {
    case Verdict::ready:
      return "READY";
    case Verdict::not_yet:
      return fmt::format("NOT YET: {} open", plan.findings.size());
    case Verdict::refused:
      break;
  }
  return "REFUSED";
}

CardFinding card_finding(const plan::Finding& finding, Verdict verdict, UnitSystem units) {
  const SaidFinding said = say(finding, units);
  CardFinding row{said.reason, said.mend};
  // Where something is refused, what is only open yet is told apart.
  if (verdict == Verdict::refused && finding.severity == Severity::not_yet) row.reason = "Open too: " + row.reason;
  if (!said.asked.empty()) row.reason += fmt::format(" ({} asked, {} allowed)", said.asked, said.allowed);
  return row;
}

/// Pressure, and what the shop does over the water. Of the walls the cautions say how they were worked out.
bool can_hurt(plan::Topic topic) {
  return topic == plan::Topic::relief || topic == plan::Topic::whole_job || topic == plan::Topic::leak_test ||
         topic == plan::Topic::care;
}

/// In short, as the card has it.
std::string short_caution(const quantity::Fact& caution, UnitSystem units) {
  if (caution.code == "air_blows_through_if_left")
    return "Left open, the air throws a slug up the riser: splash plate over the inlet.";
  return say(caution, units);
}

void add_watch(const Plan& plan, UnitSystem units, Card& card) {
  const auto add = [&](const plan::Caution& caution) { card.watch.push_back(short_caution(caution.fact, units)); };
  for (const plan::Caution& caution : plan.cautions)
    if (!caution.standing && can_hurt(caution.where)) add(caution);
  const std::size_t most = card.watch.size() + kMostToWatch;
  for (const plan::Caution& caution : plan.cautions) {
    if (caution.standing || can_hurt(caution.where) || caution.where == plan::Topic::walls) continue;
    if (card.watch.size() < most)
      add(caution);
    else
      ++card.more_to_watch;
  }
  card.watch.emplace_back("Air in a flat tank can kill: a competent person and local codes come first.");
}

}  // namespace

Card card_of(const Plan& plan, UnitSystem units) {
  Card card;
  card.title = plan.job.name.empty() ? "Plan" : plan.job.name;
  card.verdict = plan.verdict;
  card.verdict_words = verdict_words(plan);
  for (const plan::Finding& finding : plan.findings)
    card.findings.push_back(card_finding(finding, plan.verdict, units));
  add_watch(plan, units, card);
  if (plan.verdict == Verdict::refused) return card;
  add_card_settings(plan, units, card);
  add_card_lists(plan, units, card);
  add_card_work(plan, units, card);
  return card;
}

}  // namespace riserun::report
