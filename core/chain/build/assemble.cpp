#include "chain/build/assemble.h"

#include "chain/build/build_order.h"
#include "chain/build/cautions.h"
#include "chain/build/line_elements.h"
#include "chain/build/span_texts.h"
#include "chain/part/head.h"

#include <algorithm>
#include <limits>

namespace riserun::chain {

using catalog::Part;

namespace {

/// Hands the bin out along the chain: first come, first served, as often as a part is there.
class BinHandout {
 public:
  explicit BinHandout(const catalog::Bin& bin) : left_(bin.items) {}
  bool take(PartId part, int pieces = 1) {
    const auto item = std::find_if(left_.begin(), left_.end(), [&](const auto& i) { return i.part == part; });
    if (item == left_.end() || item->count < pieces) return false;
    item->count -= pieces;
    return true;
  }

 private:
  std::vector<catalog::BinItem> left_;
};

void add_parts(const ChainRequest& request, const std::vector<Move>& moves, Chain& chain) {
  BinHandout bin(request.bin);
  for (const Move& move : moves) {
    ChainPart& link = chain.parts.emplace_back();
    link.part = move.part;
    link.enter = move.enter;
    link.leave = move.leave;
    link.pieces = move.pieces;
    if (move.cut_micrometres > 0) link.cut_length = metres(static_cast<double>(move.cut_micrometres) * 1e-6);
    // A piece to cut that the search bought leaves the bin to another one.
    link.from_bin = !(move.cut && move.own.buy > 0) && bin.take(move.part, move.pieces);
    link.plugs = move.plugs;
    for (const PartId plug : move.plugs) link.plug_from_bin.push_back(bin.take(plug));
  }
}

void add_joint(const Catalog& catalog, PortTypeId a, PortTypeId b, Chain& chain) {
  const catalog::MatingRule* rule = catalog.mating_rule(a, b);
  const auto row = static_cast<std::uint32_t>(rule - catalog.mating_rules().data());
  chain.joints.push_back({a, b, row, make_up(catalog, a, b, *rule), make_up_tolerance(catalog, a, b, *rule)});
}

void add_joints(const Catalog& catalog, const ChainRequest& request, Chain& chain) {
  PortTypeId open = request.from.type;
  for (const ChainPart& link : chain.parts) {
    const Part& part = catalog.part(link.part);
    add_joint(catalog, open, part.ports[link.enter].type, chain);
    open = part.ports[link.leave].type;
  }
  add_joint(catalog, open, request.to.type, chain);
}

void count(const Catalog& catalog, PartId id, bool from_bin, int pieces, Chain& chain) {
  const Part& part = catalog.part(id);
  const bool air = part.air && catalog.material(part.material).compressed_air &&
                   (!part.far_material || catalog.material(*part.far_material).compressed_air);
  chain.part_count += 1;
  chain.rating = std::min(chain.rating, part.rating);
  chain.air = chain.air && air;
  if (from_bin) return;
  chain.buy_count += 1;
  chain.price += part.price * pieces;
}

void add_sums(const Catalog& catalog, const ChainRequest& request, Chain& chain) {
  chain.rating = gauge_pascals(std::numeric_limits<double>::infinity());
  for (const ChainPart& link : chain.parts) {
    count(catalog, link.part, link.from_bin, link.pieces, chain);
    for (std::size_t i = 0; i < link.plugs.size(); ++i) count(catalog, link.plugs[i], link.plug_from_bin[i], 1, chain);
    chain.length += link.cut_length.value_or(body_length(catalog, catalog.part(link.part), link.enter, link.leave));
  }
  for (const ChainJoint& joint : chain.joints) {
    chain.length -= joint.make_up;
    chain.length_tolerance += joint.make_up_tolerance;
  }
  std::vector<hydraulics::LineElement> elements = line_elements(catalog, chain);
  if (elements.empty() || in_cubic_metres_per_second(request.flow) <= 0.0) return;
  const hydraulics::LineEnd no_end{0.0, 0.0, 0.0, {}};
  const hydraulics::Line line(std::move(elements), no_end, no_end);
  chain.head = line.head_loss(request.flow, hydraulics::Direction::forward, chain_water());
}

}  // namespace

Chain assemble(const Catalog& catalog, const ChainRequest& request, const std::vector<Move>& moves) {
  Chain chain;
  add_parts(request, moves, chain);
  add_joints(catalog, request, chain);
  add_sums(catalog, request, chain);
  add_cutting_steps(catalog, chain);
  add_build_order(catalog, request, chain);
  add_cautions(catalog, request, chain);
  return chain;
}

std::vector<PartId> bought_parts(const Chain& chain) {
  std::vector<PartId> bought;
  for (const ChainPart& link : chain.parts) {
    if (!link.from_bin) bought.push_back(link.part);
    for (std::size_t i = 0; i < link.plugs.size(); ++i)
      if (!link.plug_from_bin[i]) bought.push_back(link.plugs[i]);
  }
  return bought;
}

}  // namespace riserun::chain
