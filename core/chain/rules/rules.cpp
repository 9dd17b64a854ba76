#include "chain/rules/rules.h"

#include "chain/ask/needs.h"
#include "chain/part/duty.h"
#include "chain/part/metals.h"
#include "chain/part/swing.h"

#include <algorithm>
#include <cassert>

namespace riserun::chain {

using catalog::Part;

namespace {

Closing closing_between(Freedom a, Freedom b) {
  if (!moves_along(a) && !moves_along(b)) return Closing::stays_still;
  return can_turn(a) || can_turn(b) ? Closing::none : Closing::nothing_turns;
}

}  // namespace

Rules::Rules(const Catalog& catalog, const ChainRequest& request)
    : catalog_(&catalog), request_(&request), closing_(closing_between(request.from.freedom, request.to.freedom)) {
  group_needs();
}

void Rules::group_needs() {
  static_assert(kMostNeeds <= 8, "what is met is a mask of eight bits");
  assert(request_->needs.size() <= kMostNeeds);  // check() sees to it
  int bits_used = 0;
  for (const Need& need : request_->needs) {
    std::vector<PartId> parts = need.parts;
    std::sort(parts.begin(), parts.end());
    parts.erase(std::unique(parts.begin(), parts.end()), parts.end());
    const auto bit = static_cast<std::uint8_t>(1u << bits_used++);
    auto same = std::find_if(groups_.begin(), groups_.end(), [&](const NeedGroup& g) { return g.parts == parts; });
    if (same == groups_.end()) same = groups_.insert(groups_.end(), {0, std::move(parts)});
    same->before_all = same->before_all || need.before_all;
    same->bits = static_cast<std::uint8_t>(same->bits | bit);
    group_of_need_.push_back(static_cast<std::uint8_t>(same - groups_.begin()));
    if (need.required) all_met_ = static_cast<std::uint8_t>(all_met_ | bit);
  }
  for (NeedGroup& group : groups_)
    for (std::size_t other = 0; other < groups_.size(); ++other)
      if (takes_two_parts(group.parts, groups_[other].parts))
        group.apart = static_cast<std::uint8_t>(group.apart | 1u << other);
  for (const NeedGroup& group : groups_) needed_.insert(needed_.end(), group.parts.begin(), group.parts.end());
  std::sort(needed_.begin(), needed_.end());
  needed_.erase(std::unique(needed_.begin(), needed_.end()), needed_.end());
  needed_groups_.assign(needed_.size(), 0);
  for (std::size_t g = 0; g < groups_.size(); ++g)
    for (const PartId part : groups_[g].parts) {
      const auto row = std::lower_bound(needed_.begin(), needed_.end(), part) - needed_.begin();
      needed_groups_[static_cast<std::size_t>(row)] |= static_cast<std::uint8_t>(1u << g);
    }
}

bool Rules::admits(PartId id) const {
  return catalog_->part(id).sawn_ends == 0 && admits_cut(id);  // an end without its thread joins nothing
}

bool Rules::admits_cut(PartId id) const {
  if (id.row < request_->banned.size() && request_->banned[id.row]) return false;
  if (catalog_->part(id).remnant && request_->bin.count_of(id) <= 0) return false;
  if (!stands_duty(*catalog_, id, *request_)) return false;
  return request_->service != Service::air ||
         (stands_compressed_air(*catalog_, catalog_->part(id)) && proved_pressure(*catalog_, id, Service::air, {}));
}

bool Rules::admits_way(const Part& part, std::size_t enter, std::size_t leave) const {
  if (part.arrow && !(enter == 0 && leave == 1)) return false;
  if (request_->room &&
      std::max(swing_radius(*catalog_, part, enter), swing_radius(*catalog_, part, leave)) > *request_->room)
    return false;
  const Length bore = std::min(port_bore(*catalog_, part, enter), port_bore(*catalog_, part, leave));
  if (request_->smallest_bore && bore < *request_->smallest_bore) return false;
  if (request_->order == Order::loss && bore <= Length{}) return false;  // its head cannot be worked out
  return part.dielectric || may_meet(part.material_at(enter), part.material_at(leave));
}

bool Rules::buyable(PartId id) const {
  if (id.row < request_->not_sold.size() && request_->not_sold[id.row]) return false;
  if (catalog_->part(id).remnant) return false;
  return request_->special_order || catalog_->part(id).stocked;
}

bool Rules::may_meet(MaterialId a, MaterialId b) const { return metals_may_meet(*catalog_, *request_, a, b); }

std::uint8_t Rules::groups_of(PartId part) const {
  const auto found = std::lower_bound(needed_.begin(), needed_.end(), part);
  if (found == needed_.end() || *found != part) return 0;
  return needed_groups_[static_cast<std::size_t>(found - needed_.begin())];
}

std::uint8_t Rules::advance(std::uint8_t met, std::uint8_t groups) const {
  if (request_->needs_in_order) return advance_in_order(met, groups);
  for (std::size_t g = 0; g < groups_.size(); ++g) {
    if (!(groups >> g & 1u)) continue;
    unsigned open = groups_[g].bits & ~unsigned{met};
    if (open & all_met_) open &= all_met_;  // of needs for the same parts, one that must be met comes first
    met = static_cast<std::uint8_t>(met | (open & (~open + 1u)));
  }
  return met;
}

// What is met is always the first few needs. A part that meets the next one may meet the one after it as well, unless
// that takes a part of its own beside any that this one meets.
std::uint8_t Rules::advance_in_order(std::uint8_t met, std::uint8_t groups) const {
  unsigned left = groups;
  for (std::size_t need = 0; need < group_of_need_.size(); ++need) {
    if (met >> need & 1u) continue;
    const std::uint8_t group = group_of_need_[need];
    if (!(left >> group & 1u)) break;
    left &= ~unsigned{groups_[group].apart};
    met = static_cast<std::uint8_t>(met | 1u << need);
  }
  return met;
}

bool Rules::joint_closes(const catalog::MatingRule& rule, Bow a, Bow b) const {
  switch (closing_) {
    case Closing::none:
      return true;
    case Closing::nothing_turns:
      return rule.closing || rule.turning == catalog::Turning::neither;
    case Closing::stays_still:
      return closes_in_place(rule, a, b);
  }
  return false;
}

}  // namespace riserun::chain
