// Bungs that stand too near to each other, to a wall or to what is welded to the lid's inside.
#include "plan/judge/open.h"

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

}  // namespace

void judge_lid(const Plan& plan, const Settled& /*settled*/, Open& open) {
  const LidMap& map = plan.lid_map;
  if (map.without_place > 0)
    open.not_yet(Topic::walls, fact("bungs_without_place", map.without_place), {},
                 fact("fewer_bungs_or_a_side", map.without_place), "common practice");
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
