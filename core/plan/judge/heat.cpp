#include "catalog/words/words.h"
#include "plan/judge/drain.h"
#include "plan/judge/limits.h"
#include "plan/judge/open.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <sstream>
#include <string>
#include <string_view>
#include <utility>

namespace riserun::plan {

namespace {

void judge_cooling(const Plan& plan, Open& open) {
  const WallsPlan& walls = plan.walls;
  if (!walls.cooling_vacuum || plan.job.vent.stays_open) return;
  const GaugePressure vacuum = GaugePressure() + *walls.cooling_vacuum;
  if (vacuum <= walls.vacuum_limit) return;
  open.not_yet(Topic::walls, fact("cooling_pulls_walls_in", walls.warmest, walls.coldest),
               Against{vacuum, walls.vacuum_limit}, fact("keep_vent_open_or_break_vacuum"), "worked out");
}

/// A rating goes down as the water warms, and ends where the stuff softens.
void judge_hot_parts(const Plan& plan, Temperature hottest, Open& open) {
  std::map<MaterialId, quantity::Texts> too_hot;
  const auto look_at = [&](PartId id) {
    const catalog::Part& part = plan.catalog->part(id);
    const auto& limit = plan.catalog->material(part.material).hottest;
    if (!limit || hottest <= *limit) return;
    quantity::Texts& names = too_hot[part.material];
    if (std::find(names.begin(), names.end(), part.name) == names.end()) names.push_back(part.name);
  };
  for (const Way& way : plan.ways) {
    for (const WayPart& part : way.parts) look_at(part.part);
    if (way.device) look_at(*way.device);
  }
  for (auto& [material, names] : too_hot) {
    const catalog::Material& row = plan.catalog->material(material);
    open.not_yet(Topic::connections, fact("parts_too_hot", std::move(names), row.name), Against{hottest, *row.hottest},
                 fact("parts_for_hot_water", row.name), row.source);
  }
}

/// "drained every evening" asks for something to drain it by.
void judge_drained(const Plan& plan, Open& open) {
  const std::string text = catalog::lower_case(plan.job.against_frost);
  const bool says_drained = text.find("drain") != std::string::npos || text.find("empt") != std::string::npos;
  if (!says_drained || reservoir_can_be_emptied(plan)) return;
  open.not_yet(Topic::connections, fact("drained_by_nothing"), {}, fact("drain_low_on_the_reservoir"),
               "common practice");
}

/// Two words at least that are no denial: "nothing", "no frost protection", "hope" say nothing that is done. "Guards,
/// no bare hands, mixing valve" does: what stands between commas is taken by itself.
int words_of_what_is_done(const std::string& clause) {
  constexpr std::string_view kNothing[] = {"no",   "not",     "none",   "nothing", "never",
                                           "hope", "unknown", "nobody", "ignore"};
  std::istringstream words(clause);
  int said = 0;
  for (std::string word; words >> word;) {
    if (std::find(std::begin(kNothing), std::end(kNothing), word) != std::end(kNothing)) return 0;
    said += word.size() >= 2 ? 1 : 0;
  }
  return said;
}

bool says_how(const std::string& text) {
  std::istringstream clauses(catalog::lower_case(text));
  int said = 0;
  for (std::string clause; std::getline(clauses, clause, ',');) said += words_of_what_is_done(clause);
  return said >= 2;
}

}  // namespace

void judge_heat(const Plan& plan, const Settled& settled, Open& open) {
  judge_cooling(plan, open);
  const Job& job = plan.job;
  const Temperature hottest = std::max(settled.temperature, job.hottest.value_or(settled.temperature));
  const Temperature coldest = std::min(settled.temperature, job.coldest.value_or(settled.temperature));
  if (hottest >= kScalding && !says_how(job.against_heat))
    open.not_yet(Topic::whole_job, fact("water_scalds", hottest), Against{hottest, kScalding},
                 fact("say_what_is_done_against_heat"), "Moritz and Henriques 1947");
  if (coldest < kFreezing && !says_how(job.against_frost))
    open.not_yet(Topic::whole_job, fact("water_can_freeze", coldest), Against{coldest, kFreezing},
                 fact("say_what_is_done_against_frost"), "common practice");
  else if (coldest < kFreezing)
    judge_drained(plan, open);
  judge_hot_parts(plan, hottest, open);
}

}  // namespace riserun::plan
