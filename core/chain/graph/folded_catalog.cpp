#include "chain/graph/folded_catalog.h"

#include "chain/part/head.h"

#include <algorithm>
#include <numeric>

namespace riserun::chain {

namespace {

// Foldings by flow pile up while a person moves a slider; the oldest answers are cheap to make again.
constexpr std::size_t kMostFoldings = 16;

struct Candidate {
  std::tuple<std::uint32_t, std::uint32_t, bool, Bow, bool, std::uint32_t, std::uint32_t, std::int64_t, std::int64_t,
             std::int64_t, std::uint32_t, ShownMetal, ShownMetal>
      class_key;
  std::tuple<std::int64_t, std::int64_t, std::int64_t, std::uint32_t, std::size_t> goodness;  // smaller is better
  Way way;
};

std::int64_t first_measure(Order order, const Measures& own) {
  if (order == Order::length) return own.micrometres;
  return order == Order::loss ? own.nanometres : 0;
}

}  // namespace

FoldedCatalog::FoldedCatalog(const Catalog& catalog) : catalog_(&catalog) {
  const std::span<const catalog::Part> parts = catalog.parts();
  std::vector<std::uint32_t> by_id(parts.size());
  std::iota(by_id.begin(), by_id.end(), 0u);
  std::sort(by_id.begin(), by_id.end(), [&](auto a, auto b) { return parts[a].id < parts[b].id; });
  ranks_.resize(parts.size());
  for (std::uint32_t place = 0; place < by_id.size(); ++place) ranks_[by_id[place]] = place;
  for (std::uint32_t row = 0; row < catalog.port_types().size(); ++row) {
    const PortTypeId type{row};
    insertion_micrometres_.push_back(in_micrometres(deepest_insertion(catalog, type)));
    std::vector<std::int64_t>& make_ups = make_ups_.emplace_back();
    for (const catalog::Mate& mate : catalog.mates(type))
      make_ups.push_back(in_micrometres(make_up(catalog, type, mate.other, catalog.mating_rules()[mate.rule])));
  }
}

std::shared_ptr<const WayClasses> FoldedCatalog::classes(Folding folding) const {
  if (folding.order != Order::loss) folding.flow_m3_s = 0.0;
  if (folding.order != Order::loss && folding.order != Order::length) folding.order = Order::parts;
  const std::lock_guard lock(mutex_);
  std::shared_ptr<const WayClasses>& known = foldings_[folding];
  if (known) return known;
  std::shared_ptr<const WayClasses> made = std::make_shared<WayClasses>(fold(folding));
  known = made;
  if (foldings_.size() > kMostFoldings) {
    std::erase_if(foldings_, [&](const auto& entry) { return entry.first != folding; });
  }
  return made;
}

WayClasses FoldedCatalog::fold(const Folding& folding) const {
  std::vector<Candidate> candidates;
  const bool by_bore = folding.order == Order::loss;
  for (std::uint32_t row = 0; row < catalog_->parts().size(); ++row) {
    if (!is_plain_connector(*catalog_, catalog_->part({row}))) continue;
    for (std::uint32_t enter = 0; enter < 2; ++enter) {
      Move move = bought_move(*catalog_, {row}, enter, 1 - enter);
      if (by_bore) move.own.nanometres = own_head(*catalog_, move, cubic_metres_per_second(folding.flow_m3_s));
      const std::uint32_t none = UINT32_MAX;
      candidates.push_back(
          {{move.enter_type.row, move.leave_type.row, move.closes, move.bow, move.no_grip,
            folding.by_material ? move.enter_material.row : none, folding.by_material ? move.leave_material.row : none,
            by_bore ? move.enter_bore : 0, by_bore ? move.leave_bore : 0,
            folding.by_make ? 2 * move.own.other_kinds + (catalog_->part({row}).dielectric ? 1 : 0) : 0,
            folding.by_make ? catalog_->part({row}).material.row : none,
            folding.by_make ? shown_metal(*catalog_, {row}, enter) : ShownMetal{},
            folding.by_make ? shown_metal(*catalog_, {row}, 1 - enter) : ShownMetal{}},
           {first_measure(folding.order, move.own), move.own.cents, move.own.drawbacks, ranks_[row], enter},
           {row << 1 | enter}});
    }
  }
  std::sort(candidates.begin(), candidates.end(), [](const Candidate& a, const Candidate& b) {
    return std::tie(a.class_key, a.goodness) < std::tie(b.class_key, b.goodness);
  });
  WayClasses classes;
  for (std::size_t i = 0; i < candidates.size(); ++i) {
    if (i == 0 || candidates[i].class_key != candidates[i - 1].class_key)
      classes.first.push_back(static_cast<std::uint32_t>(i));
    classes.ways.push_back(candidates[i].way);
  }
  classes.first.push_back(static_cast<std::uint32_t>(candidates.size()));
  return classes;
}

}  // namespace riserun::chain
