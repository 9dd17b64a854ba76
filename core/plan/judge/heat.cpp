#include "catalog/words/words.h"
#include "plan/judge/limits.h"
#include "plan/judge/open.h"

#include <algorithm>
#include <iterator>
#include <sstream>
#include <string>
#include <string_view>

namespace riserun::plan {

namespace {

/// With the water's way open the riser lets air in long before the walls feel a vacuum.
bool water_can_be_shut(const Plan& plan) {
  if (plan.job.riser.foot_valve || !plan.water_connection) return true;
  const std::string& water = plan.connections[*plan.water_connection].name;
  const auto shuts = [&](const WayPart& part) {
    const catalog::Role role = plan.catalog->family(plan.catalog->part(part.part).family).role;
    return role == catalog::Role::device || role == catalog::Role::check_valve;
  };
  return std::any_of(plan.ways.begin(), plan.ways.end(), [&](const Way& way) {
    return way.connection == water && std::any_of(way.parts.begin(), way.parts.end(), shuts);
  });
}

void judge_cooling(const Plan& plan, Open& open) {
  const WallsPlan& walls = plan.walls;
  const GaugePressure vacuum = GaugePressure() + walls.cooling_vacuum;
  if (vacuum <= walls.vacuum_limit || plan.job.vent.stays_open || !water_can_be_shut(plan)) return;
  open.not_yet(Topic::walls, fact("cooling_pulls_walls_in", walls.warmest, walls.coldest),
               Against{vacuum, walls.vacuum_limit}, fact("keep_vent_open_or_break_vacuum"), "worked out");
}

/// Two words at least, and none of them a denial: "nothing", "no frost protection", "hope" say nothing that is done.
bool says_how(const std::string& text) {
  constexpr std::string_view kNothing[] = {"no",   "not",     "none",   "nothing", "never",
                                           "hope", "unknown", "nobody", "ignore"};
  std::istringstream words(catalog::lower_case(text));
  int said = 0;
  for (std::string word; words >> word;) {
    if (std::find(std::begin(kNothing), std::end(kNothing), word) != std::end(kNothing)) return false;
    said += word.size() >= 2 ? 1 : 0;
  }
  return said >= 2;
}

}  // namespace

void judge_heat(const Plan& plan, const Settled& settled, Open& open) {
  judge_cooling(plan, open);
  const Job& job = plan.job;
  const Temperature hottest = std::max(settled.temperature, job.hottest.value_or(settled.temperature));
  const Temperature coldest = std::min(settled.temperature, job.coldest.value_or(settled.temperature));
  if (hottest > kScalding && !says_how(job.against_heat))
    open.not_yet(Topic::whole_job, fact("water_scalds", hottest), Against{hottest, kScalding},
                 fact("say_what_is_done_against_heat"), "Moritz and Henriques 1947");
  if (coldest < kFreezing && !says_how(job.against_frost))
    open.not_yet(Topic::whole_job, fact("water_can_freeze", coldest), Against{coldest, kFreezing},
                 fact("say_what_is_done_against_frost"), "common practice");
}

}  // namespace riserun::plan
