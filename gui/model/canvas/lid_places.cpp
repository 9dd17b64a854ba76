#include "gui/model/canvas/lid_places.h"

#include "report/drawing/section_devices.h"

#include <algorithm>
#include <numeric>

namespace riserun::gui {

namespace {

float scale_of(const plan::Plan& plan, const Layout& layout) {
  const auto length = static_cast<float>(in_metres(plan.job.reservoir.length));
  if (!layout.in_rows || length <= 0.0F) return static_cast<float>(layout.scale);
  return layout.nodes[kReservoir].size.width / length;
}

float half_of(Length across, float scale, float least) {
  return std::max(least, 0.5F * static_cast<float>(in_metres(across)) * scale);
}

}  // namespace

std::vector<float> places_on_lid(const std::vector<LidStand>& stands, float low, float high) {
  std::vector<float> places(stands.size());
  if (stands.empty()) return places;
  std::vector<std::size_t> order(stands.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return stands[a].wanted < stands[b].wanted; });
  // With what they take drawn out of their way they need only keep their order: neighbours that do not are pooled
  // (Ayer and others, 1955, for isotonic regression).
  struct Pool {
    float sum = 0.0F;
    std::size_t count = 0;
    float mean() const { return sum / static_cast<float>(count); }
  };
  std::vector<Pool> pools;
  std::vector<float> taken(order.size());
  for (std::size_t i = 0; i < order.size(); ++i) {
    const LidStand& stand = stands[order[i]];
    taken[i] = i == 0 ? stand.left : taken[i - 1] + stands[order[i - 1]].right + stand.left;
    Pool pool{stand.wanted - taken[i], 1};
    while (!pools.empty() && pools.back().mean() > pool.mean()) {
      pool = {pool.sum + pools.back().sum, pool.count + pools.back().count};
      pools.pop_back();
    }
    pools.push_back(pool);
  }
  const float most = std::max(low, high - taken.back() - stands[order.back()].right);
  std::size_t i = 0;
  for (const Pool& pool : pools)
    for (std::size_t k = 0; k < pool.count; ++k, ++i) places[order[i]] = std::clamp(pool.mean(), low, most) + taken[i];
  return places;
}

float drawn_between(std::vector<DrawnPlace> bungs, float share) {
  bungs.insert(bungs.end(), {{0.0F, 0.0F}, {1.0F, 1.0F}});
  std::stable_sort(bungs.begin(), bungs.end(),
                   [](const DrawnPlace& a, const DrawnPlace& b) { return a.share < b.share; });
  std::vector<DrawnPlace> places;  // of those at one share, one behind the other, the middle
  for (std::size_t i = 0; i < bungs.size();) {
    DrawnPlace place{bungs[i].share, 0.0F};
    std::size_t count = 0;
    for (; i < bungs.size() && bungs[i].share - place.share < 1e-4F; ++i, ++count) place.drawn += bungs[i].drawn;
    place.drawn /= static_cast<float>(count);
    if (!places.empty() && place.drawn <= places.back().drawn) return share;
    places.push_back(place);
  }
  const auto after =
      std::find_if(places.begin() + 1, places.end() - 1, [&](const DrawnPlace& place) { return place.share >= share; });
  const DrawnPlace& from = *(after - 1);
  return from.drawn + (share - from.share) / (after->share - from.share) * (after->drawn - from.drawn);
}

std::optional<float> share_of_lid(const plan::Plan& plan, const std::string& port) {
  const std::optional<double> along = report::along_lid(plan, port);
  const double length = in_metres(plan.job.reservoir.length);
  if (!along || length <= 0.0) return std::nullopt;
  return std::clamp(static_cast<float>(*along / length), 0.0F, 1.0F);
}

float half_of_bung(const plan::Plan& plan, const Layout& layout, const std::string& port) {
  Length outside;
  for (const plan::LidBung& bung : plan.lid_map.bungs)
    if (bung.port == port) outside = bung.outside;
  if (outside > Length{}) return half_of(outside, scale_of(plan, layout), 3.0F);
  return layout.in_rows ? 5.0F : 11.0F;
}

float half_of_riser(const plan::Plan& plan, const Layout& layout) {
  return half_of(plan.riser.request.pipe.outside_diameter, scale_of(plan, layout), 3.0F);
}

}  // namespace riserun::gui
