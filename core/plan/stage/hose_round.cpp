#include "plan/stage/hose_round.h"

#include "plan/job/facing.h"
#include "quantity/nearly.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::plan {

namespace {

const Length kLeastBetweenBarbs = inches(1.0);  // of hose: common practice

Length to_next_inch(Length length) {
  return inches(1.0) * std::ceil((length / inches(1.0)).value() - quantity::kSameShare);
}

/// From under the table, which stands in the middle over the reservoir, to its nearest edge: from where the bung
/// stands, or from the middle, where it is proposed.
Length out_to_edge(const Job& job, const std::string& bung) {
  const JobPort* port = port_named(job.reservoir.ports, bung);
  const JobReservoir& tank = job.reservoir;
  const LidSpot at = port != nullptr && port->at ? *port->at : LidSpot{tank.length / 2.0, tank.width / 2.0};
  const auto out = [](Length place, Length side, Length table) {
    const Length off = place < side / 2.0 ? side / 2.0 - place : place - side / 2.0;
    return std::max(Length(), table / 2.0 - off);
  };
  const bool alike = (tank.length < tank.width) == (job.table.length < job.table.width);
  return std::min(out(at.from_left, tank.length, alike ? job.table.length : job.table.width),
                  out(at.from_front, tank.width, alike ? job.table.width : job.table.length));
}

/// To an inlet of the table that does not look down.
std::optional<HoseRise> up_to_table(const Job& job, const RiserPlan& riser, const JobConnection& connection,
                                    Length radius) {
  const bool turned = port_named(job.table.ports, connection.from) != nullptr;
  const JobPort* inlet = port_named(job.table.ports, turned ? connection.from : connection.to);
  const std::string& bung = turned ? connection.to : connection.from;
  if (inlet == nullptr || bung != riser.bung || facing_of(job, bung) != Facing::up) return std::nullopt;
  Length over_floor{};
  if (inlet->place == Place::side)
    over_floor = inlet->face_height ? *inlet->face_height - job.table.floor_height : inlet->opens_at.value_or(Length());
  else if (inlet->place == Place::over_rim)
    over_floor = inlet->crest.value_or(job.table.rim.value_or(job.table.depth));
  else
    return std::nullopt;
  const Length face = find_port(job, bung)->face_height.value_or(job.reservoir.height + riser.bung_face);
  const Length rise = job.table.floor_height + over_floor - face;
  if (!(rise > Length())) return std::nullopt;
  // A quarter turn is shorter than its corner, and there are three: out from under the table, up, and back in.
  constexpr double kTurns = 3.0;
  const Length cut_off = radius * ((2.0 - std::numbers::pi / 2.0) * kTurns);
  const Length corners = rise + out_to_edge(job, bung) + radius * 2.0;
  return HoseRise{rise, to_next_inch(corners - cut_off)};
}

/// Out of a wall and back into it so far along: two quarter turns and what is straight between them; where there is
/// no room for two of that radius, a loop that swings out to either side first (plane geometry of three arcs).
Length round_into_one_wall(Length apart, Length radius) {
  const double share = (apart / radius).value();
  if (share >= 2.0) return apart + radius * (std::numbers::pi - 2.0);
  const double swing = std::acos((share + 2.0) / 4.0);
  return radius * (std::numbers::pi + 4.0 * swing);
}

bool is_elbow(const Catalog& catalog, const chain::RunPart& link) {
  const catalog::Part& part = catalog.part(link.part);
  return !part.flexible && turn_between(part, link.enter, link.leave()) > 1.0;
}

/// Of a run that turns: what is left for its one hose between two elbows that are set to look at each other; nullopt:
/// it turns otherwise, or leaves less than a hose bends in.
std::optional<Length> between_elbows(const Catalog& catalog, const chain::Chain& chain, Length apart, Length barbs) {
  const auto turned = [&](const chain::RunPart& link) { return is_elbow(catalog, link); };
  const std::vector<chain::RunPart>& parts = chain.parts;
  const auto first = std::find_if(parts.begin(), parts.end(), turned);
  const auto last = std::find_if(parts.rbegin(), parts.rend(), turned).base() - 1;
  if (std::count_if(parts.begin(), parts.end(), turned) != 2) return std::nullopt;
  Length left =
      apart - catalog.part(first->part).ports[first->leave()].reach - catalog.part(last->part).ports[last->enter].reach;
  int hoses = 0;
  for (auto link = first + 1; link != last; ++link) {
    const catalog::Part& part = catalog.part(link->part);
    if (part.flexible) ++hoses;
    if (!part.cut_to_length) left -= part.ports[link->enter].reach + part.ports[link->leave()].reach;
  }
  const auto row_of = [&](auto link) { return static_cast<std::size_t>(link - parts.begin()); };
  for (const chain::RunJoint& joint : chain.joints)
    if (joint.inner >= row_of(first) && joint.inner < row_of(last)) left = left + joint.make_up;
  return hoses == 1 && left > barbs + kLeastBetweenBarbs ? std::optional(left) : std::nullopt;
}

/// Between two ports in the reservoir's sides.
std::optional<HoseRise> along_a_wall(const Catalog& catalog, const Job& job, const JobConnection& connection,
                                     const chain::Chain& chain, Length radius, Length barbs) {
  const JobPort* from = port_named(job.reservoir.ports, connection.from);
  const JobPort* to = port_named(job.reservoir.ports, connection.to);
  const auto in_side = [](const JobPort* port) {
    return port != nullptr && port->place == Place::side && port->face_height;
  };
  if (!in_side(from) || !in_side(to) || !(radius > Length())) return std::nullopt;
  const Length apart = *from->face_height > *to->face_height ? *from->face_height - *to->face_height
                                                             : *to->face_height - *from->face_height;
  const bool turned = std::any_of(chain.parts.begin(), chain.parts.end(),
                                  [&](const chain::RunPart& link) { return is_elbow(catalog, link); });
  const auto hose = turned ? between_elbows(catalog, chain, apart, barbs)
                           : std::optional(to_next_inch(round_into_one_wall(apart, radius) + barbs));
  if (!hose) return std::nullopt;
  HoseRise rise{apart, *hose};
  rise.same_wall = true;
  return rise;
}

}  // namespace

std::optional<HoseRise> rise_of(const Catalog& catalog, const Job& job, const RiserPlan& riser,
                                const JobConnection& connection, const chain::Chain& chain, Length radius,
                                Length barbs) {
  const auto up = up_to_table(job, riser, connection, radius);
  return up ? up : along_a_wall(catalog, job, connection, chain, radius, barbs);
}

}  // namespace riserun::plan
