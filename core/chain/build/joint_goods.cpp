#include "chain/build/joint_goods.h"

#include <algorithm>

namespace riserun::chain {

namespace {

// Two bands of half an inch, a quarter of an inch from the hose's end and from each other (common practice).
const Length kRoomForTwoClamps = inches(1.5);

std::optional<PartId> clamp_of(const Catalog& catalog, catalog::SizeId hose) {
  for (std::uint32_t row = 0; row < catalog.parts().size(); ++row) {
    const catalog::Part& part = catalog.part({row});
    if (catalog.family(part.family).role == catalog::Role::hose_clamp && part.stocked &&
        catalog.port_type(part.ports[0].type).size == hose)
      return PartId{row};
  }
  return std::nullopt;
}

void add(JointGood good, std::vector<JointGood>& goods) {
  const auto known = std::find_if(goods.begin(), goods.end(), [&](const JointGood& each) {
    return each.what == good.what && each.size == good.size;
  });
  if (known == goods.end())
    goods.push_back(std::move(good));
  else
    known->count += good.count;
}

}  // namespace

void add_joint_goods(const Catalog& catalog, Run& run) {
  for (const RunJoint& joint : run.joints) {
    const catalog::Seal* seal = catalog.seal(catalog.mating_rules()[joint.rule].seal);
    if (seal == nullptr || seal->consumable.empty() || seal->hot || seal->tape_per_joint > Length{}) continue;
    const catalog::SizeId size = catalog.port_type(joint.a).size;
    JointGood good{seal->consumable, catalog.size_name(size), 1, std::nullopt};
    if (seal->clamped) {
      good.part = clamp_of(catalog, size);
      good.count = joint.make_up >= kRoomForTwoClamps ? 2 : 1;
    }
    add(std::move(good), run.goods);
  }
}

}  // namespace riserun::chain
