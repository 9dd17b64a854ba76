#include "gui/model/canvas/placing.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

namespace riserun::gui {

namespace {

constexpr float kGap = 20.0F;         // between two runs
constexpr float kBung = 9.0F;         // of a bung's length that shows
constexpr float kShortPipe = 16.0F;   // of pipe between a port and its run
constexpr float kPortPitch = 112.0F;  // between two ports whose runs stand elsewhere: their names have room
constexpr float kSupplyHigh = 100.0F;
constexpr float kPipePitch = 9.0F;   // between two pipes that run side by side
constexpr float kLeastTank = 96.0F;  // high
constexpr float kLeastRim = 44.0F;
constexpr float kLeastRise = 70.0F;  // between lid and table
constexpr float kLeastUp = 0.42F;    // of a height, to a length, in a low room
constexpr float kMargin = 48.0F;     // of the room, that fitting keeps

/// Measures of tank and table; metres.
struct Measures {
  float length, height, table_length, table_floor, rim;
};

Measures measures_of(const plan::Plan& plan) {
  const reservoir::Table& table = plan.transfer.system.table;
  const auto metre = [](Length length) { return static_cast<float>(in_metres(length)); };
  return {std::max(0.01F, metre(plan.job.reservoir.length)), std::max(0.01F, metre(plan.job.reservoir.height)),
          std::max(0.01F, metre(table.length)), metre(table.floor_height), metre(table.rim)};
}

class Placing {
 public:
  Placing(const LayoutWish& wish, double scale) : wish_(wish), m_(measures_of(wish.plan)) {
    layout_.scale = scale;
    layout_.nodes.resize(wish.sketch.nodes.size());
    layout_.pins.resize(wish.sketch.nodes.size());
    layout_.in_rows = wish.plan.connections.size() > kMostStanding;
    for (std::size_t row = 0; row < wish.plan.connections.size(); ++row) {
      standing_.push_back(standing_of(wish.plan, wish.sketch, row));
      const Standing& stands = standing_.back();
      const Stance stance =
          layout_.in_rows ? Stance{Heading::right, false, true, false}
                          : Stance{stands.heading, stands.hangs_on_lid, false, leads_off_to_supply(wish, row, stands)};
      layout_.runs.push_back(run_block(wish.plan, wish.sketch, row, wish.pictures[row], stance, scale, wish.words));
    }
    for (std::size_t vessel = 0; vessel < kVessels; ++vessel)
      layout_.pins[vessel].resize(wish.sketch.nodes[vessel].pins.size());
  }

  Layout run() {
    for (std::size_t row = 0; row < standing_.size(); ++row)
      if (!layout_.in_rows) in_zone_[static_cast<std::size_t>(standing_[row].zone)].push_back(row);
    order_columns();
    place_vessels();
    if (layout_.in_rows) {
      wrap_rows();
    } else {
      place_columns();
      place_air();
      place_rows(Zone::row);
      place_rows(Zone::shelf);
    }
    move_by_hand();
    place_pins();
    hand_over(wish_, layout_);
    return std::move(layout_);
  }

 private:
  const std::vector<std::size_t>& zone(Zone which) const { return in_zone_[static_cast<std::size_t>(which)]; }
  RunBlock& block(std::size_t row) { return layout_.runs[row]; }
  const RunBlock& block(std::size_t row) const { return layout_.runs[row]; }

  /// Runs to the table stand in the middle of the others: the eye finds the water first.
  void order_columns() {
    std::vector<std::size_t>& columns = in_zone_[static_cast<std::size_t>(Zone::column)];
    std::vector<std::size_t> fed;  // from the air supply: nearest to it
    std::vector<std::size_t> through;
    std::vector<std::size_t> others;
    for (const std::size_t row : columns)
      (standing_[row].air ? fed : standing_[row].reaches_table ? through : others).push_back(row);
    const auto middle = others.begin() + static_cast<std::ptrdiff_t>(others.size() / 2);
    columns = fed;
    columns.insert(columns.end(), others.begin(), middle);
    columns.insert(columns.end(), through.begin(), through.end());
    columns.insert(columns.end(), middle, others.end());
  }

  /// The vessel's pins that no run stands at.
  std::vector<std::size_t> lone_pins(std::size_t vessel, bool on_side) const {
    std::vector<std::size_t> pins;
    const Node& node = wish_.sketch.nodes[vessel];
    for (std::size_t pin = 0; pin < node.pins.size(); ++pin)
      if (is_on_side(vessel, pin) == on_side && (layout_.in_rows || !stands_at(vessel, pin))) pins.push_back(pin);
    return pins;
  }

  bool is_on_side(std::size_t vessel, std::size_t pin) const {
    if (vessel == kAirSupply) return false;
    const plan::JobPort* port = plan::find_port(wish_.plan.job, wish_.sketch.nodes[vessel].pins[pin].port);
    const plan::Place usual = vessel == kReservoir ? plan::Place::lid : plan::Place::floor;
    return port != nullptr && port->place.value_or(usual) != usual;
  }

  /// Whether a run of a column, a row or a shelf, begins or ends straight at that pin.
  bool stands_at(std::size_t vessel, std::size_t pin) const {
    for (const Link& link : wish_.sketch.links)
      for (const PinAt* at : {&link.a, &link.b})
        if (at->node == vessel && at->pin == pin && vessel != kAirSupply)
          return standing_[link.connection].zone != Zone::air &&
                 (at == &link.a || standing_[link.connection].reaches_table || standing_[link.connection].hangs_on_lid);
    return false;
  }

  float width_of_columns() const {
    float width = kGap + static_cast<float>(lone_pins(kReservoir, false).size()) * kPortPitch;
    for (const std::size_t row : zone(Zone::column)) width += block(row).all.size.width + kGap;
    return width;
  }
  float width_of_air() const {
    float width = 0.0F;
    for (const std::size_t row : zone(Zone::air)) width += block(row).all.size.width + kGap;
    return std::max(width, width_of_supply());
  }
  float width_of_supply() const {
    const auto pins = static_cast<float>(wish_.sketch.nodes[kAirSupply].pins.size());
    return has_supply() ? std::max(layout_.in_rows ? 200.0F : 120.0F, 2.0F * kShoulder + (pins - 1.0F) * kOutletPitch)
                        : 0.0F;
  }
  float width_of_rows() const {
    float width = 0.0F;
    for (const Zone side : {Zone::row, Zone::shelf})
      for (const std::size_t row : zone(side)) width = std::max(width, block(row).all.size.width + 3.0F * kShortPipe);
    return width;
  }
  bool has_supply() const { return !wish_.sketch.nodes[kAirSupply].pins.empty(); }

  /// What must stand between lid and table.
  float least_rise(float tank_high) const {
    float rise = kLeastRise;
    float pipes = 0.0F;  // over the runs, to the air supply
    for (const Standing& standing : standing_)
      pipes += standing.zone == Zone::column && standing.air ? kPipePitch : 0.0F;
    for (const std::size_t row : zone(Zone::column))
      rise = std::max(rise, block(row).all.size.height + 2.0F * kShortPipe + std::min(pipes, 6.0F * kPipePitch));
    for (const std::size_t row : zone(Zone::air))
      rise = std::max(rise, block(row).all.size.height + kSupplyHigh + 5.0F * kShortPipe - tank_high);
    return rise;
  }

  void place_vessels() {
    const float columns = layout_.in_rows ? 300.0F : width_of_columns();
    const float beside = layout_.in_rows ? 0.0F : width_of_air() + width_of_rows() + 3.0F * kGap;
    const float by_height = (wish_.room.height - kMargin) / std::max(0.1F, m_.table_floor + m_.rim);
    const float longest = std::max(m_.length, m_.table_length);
    const float by_width = (wish_.room.width - kMargin - beside) / longest;
    const float wide = layout_.in_rows ? columns : std::max(columns, std::min(by_height, by_width) * m_.length);
    const float across = wide / m_.length;
    // In the job's proportions, but for a low room, which takes some height from all of it.
    const float up = layout_.in_rows ? across : std::min(across, std::max(up_for_room(by_height), kLeastUp * across));
    const float high = std::max(kLeastTank, m_.height * up);
    const float rise = std::max(least_rise(high), (m_.table_floor - m_.height) * up);
    const float rim = std::max(kLeastRim, m_.rim * up);
    const float table = m_.table_length * across;
    layout_.nodes[kReservoir] = between(0.0F, -high, wide, 0.0F);
    layout_.nodes[kTable] = between((wide - table) / 2.0F, -high - rise - rim, (wide + table) / 2.0F, -high - rise);
    if (!has_supply()) return;
    const float right = -1.5F * kGap;
    const float left = right - width_of_supply();
    layout_.nodes[kAirSupply] = between(left, -kSupplyHigh, right, 0.0F);
  }

  /// Points a metre of height, so that all fits when the runs want more between lid and table than their share of it.
  float up_for_room(float proportional) const {
    const float rise = least_rise(m_.height * proportional);
    if (rise <= (m_.table_floor - m_.height) * proportional) return proportional;
    return (wish_.room.height - kMargin - rise) / (m_.height + m_.rim);
  }

  void place_columns() {
    const Box& tank = layout_.nodes[kReservoir];
    const std::vector<std::size_t>& columns = zone(Zone::column);
    lone_left_ = kPortPitch * static_cast<float>(count_lone_air());
    const float lone_right = kPortPitch * static_cast<float>(lone_pins(kReservoir, false).size()) - lone_left_;
    const float spare = tank.size.width - width_of_columns();
    const float extra = columns.empty() ? 0.0F : spare / static_cast<float>(columns.size() + 1);
    float x = tank.corner.x + kGap + lone_left_ + std::max(0.0F, extra / 2.0F);
    for (const std::size_t row : columns) {
      RunBlock& one = block(row);
      const bool hangs = one.heading == Heading::down;
      const float y = one.stands_on_end ? tank.corner.y - kBung - one.faces[0].where.y
                      : hangs           ? layout_.nodes[kTable].bottom() + kBung
                                        : tank.corner.y - kBung;
      one.move({x - one.all.corner.x, y});
      if (standing_[row].reaches_table)
        span_to(one, hangs ? tank.corner.y - kBung : layout_.nodes[kTable].bottom() + kBung);
      x = one.all.right() + kGap + std::max(0.0F, extra);
    }
    lone_right_from_ = tank.right() - lone_right;
  }

  /// A run that leads straight on to another port makes all of the way there.
  void span_to(RunBlock& one, float y) const {
    if (one.faces.size() != 1 || std::abs(one.faces[0].where.x - one.base.where.x) > 1.0F) return;
    lengthen(one, std::abs(y - one.base.where.y) - std::abs(one.faces[0].where.y - one.base.where.y), wish_.words);
  }

  /// Ports of the lid that air comes to from the left.
  std::size_t count_lone_air() const {
    std::size_t count = 0;
    for (const Link& link : wish_.sketch.links)
      if (standing_[link.connection].zone == Zone::air)
        for (const PinAt& at : {link.a, link.b})
          count += at.node == kReservoir && !is_on_side(kReservoir, at.pin) ? 1 : 0;
    return count;
  }

  /// From the right to the left, each on the supply.
  void place_air() {
    const std::vector<std::size_t>& rows = zone(Zone::air);
    if (!has_supply()) return;
    Box& supply = layout_.nodes[kAirSupply];
    float x = supply.right();
    for (auto row = rows.rbegin(); row != rows.rend(); ++row) {
      RunBlock& one = block(*row);
      const float base =
          one.heading == Heading::up ? supply.corner.y - kBung : supply.corner.y - kBung - one.all.bottom();
      one.move({x - one.all.right(), base});
      x = one.all.corner.x - kGap;
    }
    if (!rows.empty()) {
      const float axis = block(rows.front()).base.where.x;
      supply = between(axis - 44.0F, supply.corner.y, std::max(axis + 100.0F, block(rows.back()).base.where.x + 44.0F),
                       0.0F);
    }
  }

  /// How high the axis of a run stands over the floor of the reservoir whose side it begins at: as the job says, else
  /// low, as a drain does.
  float over_floor(std::size_t row) const {
    constexpr float kLow = 0.12F;  // of the height
    const Box& vessel = layout_.nodes[kReservoir];
    const plan::JobPort* port = plan::find_port(wish_.plan.job, wish_.plan.connections[row].from);
    const Length height = wish_.plan.job.reservoir.height;
    const bool said = port != nullptr && port->face_height && height > Length{};
    const float share = said ? static_cast<float>(static_cast<double>(*port->face_height / height)) : kLow;
    return std::clamp(share, 0.0F, 1.0F) * vessel.size.height;
  }

  /// One over the other, each as high as its port where the one below it leaves room.
  void place_rows(Zone side) {
    const Box& vessel = layout_.nodes[side == Zone::row ? kReservoir : kTable];
    const auto& rows = zone(side);
    int lane = 0;
    std::optional<float> below;
    for (auto row = rows.rbegin(); row != rows.rend(); ++row) {
      RunBlock& one = block(*row);
      const float wanted = side == Zone::row ? vessel.bottom() - over_floor(*row) - one.base.where.y
                                             : vessel.bottom() + kGap - one.all.bottom();
      const float down = below ? std::min(wanted, *below - one.all.bottom()) : wanted;
      one.move({vessel.right() + kBung + 9.0F * static_cast<float>(lane++) - one.base.where.x, down});
      below = one.all.corner.y - kGap / 2.0F;
    }
  }

  /// Rows of one height and width beside the elevation, as many columns of them as suit the room.
  void wrap_rows() {
    Size cell;
    for (const RunBlock& one : layout_.runs) {
      cell.width = std::max(cell.width, one.all.size.width + 2.0F * kGap);
      cell.height = std::max(cell.height, one.all.size.height + kGap);
    }
    const auto count = layout_.runs.size();
    const float left = std::max(layout_.nodes[kReservoir].right(), layout_.nodes[kTable].right()) + 2.0F * kGap;
    const float beside = left - layout_.nodes[kAirSupply].corner.x;
    std::size_t best = 1;
    float most = 0.0F;
    for (std::size_t columns = 1; columns <= count; ++columns) {
      const auto rows = (count + columns - 1) / columns;
      const float zoom = std::min(wish_.room.width / (beside + cell.width * static_cast<float>(columns)),
                                  wish_.room.height / (cell.height * static_cast<float>(rows)));
      if (zoom <= most) continue;
      most = zoom;
      best = columns;
    }
    const float top = layout_.nodes[kTable].corner.y;
    for (std::size_t i = 0; i < count; ++i) {
      RunBlock& one = layout_.runs[i];
      const std::size_t column = i % best;
      const std::size_t row = i / best;
      const Point corner{left + cell.width * static_cast<float>(column), top + cell.height * static_cast<float>(row)};
      one.move({corner.x - one.all.corner.x, corner.y - one.all.corner.y});
      one.all.size = {cell.width - kGap, cell.height - kGap / 2.0F};
    }
  }

  void move_by_hand() {
    for (RunBlock& one : layout_.runs) {
      const auto moved = wish_.moved.find("run " + wish_.plan.connections[one.connection].name);
      if (moved != wish_.moved.end()) one.move(moved->second);
    }
    const auto moved = wish_.moved.find(wish_.sketch.nodes[kAirSupply].key);
    if (moved != wish_.moved.end()) layout_.nodes[kAirSupply] = layout_.nodes[kAirSupply].at(moved->second);
  }

  /// Where a pin of a vessel is wanted by the run that begins or ends there; nullptr: nowhere.
  const PlacedPin* wanted_at(std::size_t vessel, std::size_t pin) const {
    for (const Link& link : wish_.sketch.links) {
      if (link.a.node == vessel && link.a.pin == pin) return &layout_.runs[link.connection].base;
      if (link.b.node == vessel && link.b.pin == pin) return &face_of(wish_.plan, layout_, link);
    }
    return nullptr;
  }

  void place_pins() {
    place_lid_and_floor();
    const std::vector<std::size_t> supply = lone_pins(kAirSupply, false);
    const Box& box = layout_.nodes[kAirSupply];
    std::vector<const PlacedPin*> wanted;
    for (const std::size_t pin : supply) wanted.push_back(layout_.in_rows ? nullptr : wanted_at(kAirSupply, pin));
    const std::vector<float> outlets = outlets_of(box, wanted);
    for (std::size_t i = 0; i < supply.size(); ++i)
      layout_.pins[kAirSupply][supply[i]] = {{outlets[i], box.corner.y}, {0.0F, -1.0F}};
    for (const std::size_t vessel : {kReservoir, kTable}) place_side(vessel);
  }

  void place_lid_and_floor() {
    const Box& tank = layout_.nodes[kReservoir];
    const Box& table = layout_.nodes[kTable];
    for (const std::size_t vessel : {kReservoir, kTable}) {
      const Box& box = layout_.nodes[vessel];
      const float y = vessel == kReservoir ? tank.corner.y : table.bottom();
      const Point out{0.0F, vessel == kReservoir ? -1.0F : 1.0F};
      const std::vector<std::size_t> lone = lone_pins(vessel, false);
      for (std::size_t i = 0; i < lone.size(); ++i) layout_.pins[vessel][lone[i]] = {{lone_x(vessel, i, lone), y}, out};
      for (std::size_t pin = 0; pin < layout_.pins[vessel].size(); ++pin) {
        if (is_on_side(vessel, pin) || std::find(lone.begin(), lone.end(), pin) != lone.end()) continue;
        const PlacedPin* wanted = wanted_at(vessel, pin);
        const float x = wanted != nullptr ? wanted->where.x : box.middle().x;
        layout_.pins[vessel][pin] = {{std::clamp(x, box.corner.x + 8.0F, box.right() - 8.0F), y}, out};
      }
    }
  }

  /// Ports that air comes to stand at the left, the others without a run at the right.
  float lone_x(std::size_t vessel, std::size_t i, const std::vector<std::size_t>& lone) const {
    const Box& box = layout_.nodes[vessel];
    if (vessel == kTable || layout_.in_rows)
      return box.corner.x + box.size.width * (static_cast<float>(i) + 0.5F) / static_cast<float>(lone.size());
    // The run furthest left leaves highest and comes down furthest right: so their pipes do not cross.
    std::size_t left = 0;
    std::size_t right = 0;
    for (std::size_t k = 0; k < lone.size(); ++k) {
      const bool fed = wanted_at(vessel, lone[k]) != nullptr;
      if (k < i) (fed ? left : right) += 1;
    }
    if (wanted_at(vessel, lone[i]) != nullptr)
      return box.corner.x + lone_left_ - (static_cast<float>(left) + 0.5F) * kPortPitch;
    return lone_right_from_ + (static_cast<float>(right) + 0.15F) * kPortPitch;  // its name stands right of it
  }

  void place_side(std::size_t vessel) {
    const Box& box = layout_.nodes[vessel];
    std::vector<std::size_t> pins;
    std::vector<double> wanted;
    for (std::size_t pin = 0; pin < layout_.pins[vessel].size(); ++pin) {
      if (!is_on_side(vessel, pin)) continue;
      const PlacedPin* at = layout_.in_rows ? nullptr : wanted_at(vessel, pin);
      pins.push_back(pin);
      wanted.push_back(at != nullptr ? at->where.y : box.middle().y);
    }
    const auto places = report::spread(wanted, 20.0, box.corner.y + 16.0, box.bottom() - 10.0);
    for (std::size_t i = 0; i < pins.size(); ++i)
      layout_.pins[vessel][pins[i]] = {{box.right(), static_cast<float>(places[i])}, {1.0F, 0.0F}};
  }

  const LayoutWish& wish_;
  Measures m_;
  Layout layout_;
  std::vector<Standing> standing_;
  std::vector<std::size_t> in_zone_[4];
  float lone_left_ = 0.0F;        // of the lid's breadth, for ports that air comes to
  float lone_right_from_ = 0.0F;  // where those without a run begin
};

}  // namespace

Layout placed_at(const LayoutWish& wish, double scale) { return Placing(wish, scale).run(); }

}  // namespace riserun::gui
