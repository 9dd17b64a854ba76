#include "chain/part/head.h"

#include <algorithm>
#include <cmath>

namespace riserun::chain {

using catalog::LossItem;
using catalog::Part;
using hydraulics::Line;
using hydraulics::LineElement;
using hydraulics::LineEnd;

namespace {

// Metres; beyond it all chains are as bad, and sums of nanometres stay well inside 64 bits.
constexpr double kMostHead = 1.0e6;

// The ends of a chain belong to what it is screwed to.
const LineEnd kNoEnd{0.0, 0.0, 0.0, {}};

std::int64_t head_of_elements(std::vector<LineElement> elements, VolumeFlow flow) {
  if (elements.empty() || in_cubic_metres_per_second(flow) <= 0.0) return 0;
  const Line line(std::move(elements), kNoEnd, kNoEnd);
  const Head head = line.head_loss(flow, hydraulics::Direction::forward, chain_water());
  return std::llround(std::min(in_metres(head), kMostHead) * 1e9);
}

bool goes_straight_through(const Part& part, std::size_t enter, std::size_t leave) {
  const double angle = std::abs(part.ports[enter].heading_degrees - part.ports[leave].heading_degrees);
  return std::abs(std::fmod(angle, 360.0) - 180.0) < 1.0;
}

const LossItem* loss_of(const Catalog& catalog, const Part& part, std::size_t enter, std::size_t leave) {
  const bool by_branch = part.branch_loss.valid() && !goes_straight_through(part, enter, leave);
  const catalog::LossItemId id = by_branch ? part.branch_loss : part.loss;
  return id.valid() ? &catalog.loss_item(id) : nullptr;
}

void add_loss(LineElement& element, const LossItem& loss, bool with_words) {
  element.crane_n = loss.crane_n;
  element.darby_k1 = loss.darby_k1;
  element.darby_ki = loss.darby_ki;
  element.darby_kd = loss.darby_kd;
  element.scatter = loss.scatter;
  element.dirty = loss.dirty;
  if (with_words) element.source = loss.source;
}

LineElement bare_bore(std::int64_t nanometres) {
  LineElement element;
  element.bore = metres(static_cast<double>(nanometres) * 1e-9);
  return element;
}

}  // namespace

const hydraulics::Water& chain_water() {
  static const hydraulics::Water water = *hydraulics::water_at(degrees_celsius(20.0));
  return water;
}

namespace {

/// Of a made-up hose the end fittings narrow the water's way, and the hose between them has all of its length.
void widen_between(Length bore, Length run, std::vector<LineElement>& elements) {
  LineElement hose = elements.front();
  hose.bore = bore;
  hose.length = run;
  LineElement last = elements.back();
  elements.front().length = last.length = Length{};
  elements.resize(1);
  elements.push_back(std::move(hose));
  elements.push_back(std::move(last));
}

std::vector<LineElement> make_elements(const Catalog& catalog, const Part& part, std::size_t enter, std::size_t leave,
                                       bool with_words) {
  const Length bores[] = {port_bore(catalog, part, enter), port_bore(catalog, part, leave)};
  const std::size_t ports[] = {enter, leave};
  const LossItem* loss = loss_of(catalog, part, enter, leave);
  // What goes into a neighbour is the neighbour's length already. A published fitting loss holds the wall friction.
  const Length inserted = insertion(catalog, part.ports[enter].type) + insertion(catalog, part.ports[leave].type);
  const Length run = std::max(Length{}, body_length(catalog, part, enter, leave) - inserted);
  const bool one_bore = in_nanometres(bores[0]) == in_nanometres(bores[1]);
  const std::size_t narrow = bores[1] < bores[0] ? 1 : 0;
  std::vector<LineElement> elements;
  for (std::size_t side = 0; side < (one_bore ? 1u : 2u); ++side) {
    if (bores[side] <= Length{}) continue;
    LineElement element;
    if (with_words) element.name = part.name;
    element.bore = bores[side];
    element.length = loss ? Length{} : (one_bore ? run : run / 2.0);
    element.roughness = catalog.material(part.material_at(ports[side])).roughness;
    element.nominal_inches = nominal_inches(catalog, part.ports[ports[side]].type);
    if (loss && (one_bore || side == narrow)) add_loss(element, *loss, with_words);
    elements.push_back(std::move(element));
  }
  if (part.hose_bore > std::max(bores[0], bores[1]) && !elements.empty()) widen_between(part.hose_bore, run, elements);
  return elements;
}

}  // namespace

std::vector<LineElement> elements_of(const Catalog& catalog, const Part& part, std::size_t enter, std::size_t leave) {
  return make_elements(catalog, part, enter, leave, true);
}

std::vector<LineElement> bare_elements_of(const Catalog& catalog, const Part& part, std::size_t enter,
                                          std::size_t leave) {
  return make_elements(catalog, part, enter, leave, false);
}

double nominal_inches(const Catalog& catalog, PortTypeId type) { return catalog.line_inches(type); }

std::vector<LineElement> elements_of_cut(const Catalog& catalog, const Part& part, std::size_t enter, std::size_t leave,
                                         Length length) {
  Part piece = part;
  for (catalog::Port& port : piece.ports) port.reach = length / 2.0;
  return elements_of(catalog, piece, enter, leave);
}

std::int64_t head_of_cut(const Catalog& catalog, const Part& part, std::size_t enter, std::size_t leave, Length length,
                         VolumeFlow flow) {
  return head_of_elements(elements_of_cut(catalog, part, enter, leave, length), flow);
}

std::int64_t own_head(const Catalog& catalog, const Move& move, VolumeFlow flow) {
  return head_of_elements(bare_elements_of(catalog, catalog.part(move.part), move.enter, move.leave), flow);
}

std::int64_t change_of_bore_head(std::int64_t from_bore, std::int64_t to_bore, VolumeFlow flow) {
  if (from_bore == to_bore || from_bore <= 0 || to_bore <= 0) return 0;
  return head_of_elements({bare_bore(from_bore), bare_bore(to_bore)}, flow);
}

}  // namespace riserun::chain
