// Bungs that stand too near to each other, to a wall or to what is welded to the lid's inside.
#include "plan/judge/open.h"

#include <algorithm>
#include <iterator>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>

namespace riserun::plan {

namespace {

/// Moves the bung in the map to the free spot that is nearest.
Mend moved_in(LidMap& map, std::size_t row) {
  const std::string& port = map.bungs[row].port;
  const auto free = nearest_free_spot(map, row);
  if (!free) return {fact("lid_has_no_room", port)};
  map.bungs[row].at = free;
  Change change{kBungAt, port};
  change.spot = free;
  return {fact("move_bung_to", port, free->from_left, free->from_front), {{change}}};
}

/// Only what stands over the water goes into a side: the riser never does.
void judge_without_place(const Plan& plan, Open& open) {
  const std::vector<std::string>& without = plan.lid_map.without_place;
  if (without.empty()) return;
  const auto of_riser = std::find(without.begin(), without.end(), plan.riser.bung);
  quantity::Texts others;
  std::copy_if(without.begin(), without.end(), std::back_inserter(others),
               [&](const std::string& port) { return port != plan.riser.bung; });
  if (of_riser != without.end())
    open.not_yet(Topic::walls, fact("bungs_without_place", quantity::Texts{*of_riser}), {}, fact("bay_for_the_riser"),
                 "common practice");
  if (!others.empty())
    open.not_yet(Topic::walls, fact("bungs_without_place", std::move(others)), {}, fact("fewer_bungs_or_a_side"),
                 "common practice");
}

}  // namespace

void judge_lid(const Plan& plan, const Settled& /*settled*/, Open& open) {
  const LidMap& map = plan.lid_map;
  judge_without_place(plan, open);
  LidMap mended = map;          // so that the mends may all be followed together
  std::set<std::string> moved;  // a mend that moves one of two lifts what is said of both
  for (std::size_t row = 0; row < map.bungs.size(); ++row) {
    const LidBung& bung = map.bungs[row];
    if (!bung.at || bung.proposed || bung.is_there) continue;
    std::optional<Mend> mend;
    std::set<std::string_view> said;
    for (Fact& near : too_near(map, bung, *bung.at, row)) {
      // One line and one mend for all baffles, or all stays, that the bung is too near to.
      if (near.code != "bungs_too_near" && !said.insert(near.code).second) continue;
      if (near.code == "bungs_too_near" && moved.contains(std::get<std::string>(near.values[1]))) continue;
      moved.insert(bung.port);
      if (!mend) mend = moved_in(mended, row);
      open.not_yet(Topic::walls, std::move(near), {}, mend->fact, "common practice").ways_to_mend = mend->ways_to_mend;
    }
  }
}

}  // namespace riserun::plan
