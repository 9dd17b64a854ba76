#include "gui/model/canvas/placing.h"

#include "gui/model/canvas/lid_places.h"
#include "gui/model/canvas/rows.h"
#include "gui/model/canvas/table_side.h"

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
constexpr float kBesideLone = 16.0F;  // ... of it left of such a port
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
      // Under a low one there is the floor; over it there is room.
      const bool low = stands.zone == Zone::row && share_over_floor(wish.plan, row) < 0.5F;
      const Stance stance = layout_.in_rows ? Stance{Heading::right, false, true, false, false}
                                            : Stance{stands.heading, stands.hangs_on_lid, false,
                                                     leads_off_to_supply(wish, row, stands), low};
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
      wrap_rows(wish_.room, layout_);
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

  /// Where the plan has no places, runs to the table stand in the middle of the others: the eye finds the water first.
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

  bool is_on_side(std::size_t vessel, std::size_t pin) const { return gui::is_on_side(wish_, vessel, pin); }

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
    constexpr float kAmongRows = 160.0F;
    const auto pins = static_cast<float>(wish_.sketch.nodes[kAirSupply].pins.size());
    if (!has_supply()) return 0.0F;
    return layout_.in_rows ? kAmongRows : std::max(120.0F, 2.0F * kShoulder + (pins - 1.0F) * kOutletPitch);
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
    return rise + under_table();
  }

  /// Room for what leads out under the table, past its end.
  float under_table() const {
    for (const std::size_t row : zone(Zone::column))
      if (leads_outside(wish_, row)) return kUnderTable;
    return 0.0F;
  }

  void place_vessels() {
    const float columns = layout_.in_rows ? 220.0F : width_of_columns();
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

  /// Each run, and each port that none stands at, where the plan has its bung on the lid, as nearly as words let it.
  void place_columns() {
    const Box& tank = layout_.nodes[kReservoir];
    const std::vector<std::size_t>& columns = zone(Zone::column);
    const std::vector<std::size_t> lone = lone_pins(kReservoir, false);
    std::vector<LidStand> stands;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      const RunBlock& one = block(columns[i]);
      const float axis = on_lid(columns[i]).where.x;
      const float share = (static_cast<float>(i) + 0.5F) / static_cast<float>(columns.size());
      stands.push_back({wanted_x(port_on_lid(columns[i]), share), axis - one.all.corner.x + kGap / 2.0F,
                        one.all.right() - axis + kGap / 2.0F});
    }
    // Without a place ports that air comes to stand at the left, the others at the right.
    for (const std::size_t pin : lone) {
      const float share = wanted_at(kReservoir, pin) != nullptr ? 0.0F : 1.0F;
      stands.push_back({wanted_x(wish_.sketch.nodes[kReservoir].pins[pin].port, share), kBesideLone,
                        kPortPitch - kBesideLone});  // its name stands right of it
    }
    const std::vector<float> places = places_on_lid(stands, tank.corner.x, tank.right());
    for (std::size_t i = 0; i < columns.size(); ++i) {
      RunBlock& one = block(columns[i]);
      const bool hangs = one.heading == Heading::down;
      const float y = one.stands_on_end ? tank.corner.y - kBung - one.faces[0].where.y
                      : hangs           ? layout_.nodes[kTable].bottom() + kBung
                                        : tank.corner.y - kBung - hangs_below(one);
      one.move({places[i] - on_lid(columns[i]).where.x, y});
      if (standing_[columns[i]].reaches_table)
        span_to(one, hangs ? tank.corner.y - kBung
                           : layout_.nodes[kTable].bottom() + (leads_outside(wish_, columns[i]) ? kUnderTable : kBung));
    }
    for (std::size_t i = 0; i < lone.size(); ++i) lone_at_[lone[i]] = places[columns.size() + i];
  }

  /// How far arms of an upright run hang lower than the lid lets them: so much higher it is drawn.
  static float hangs_below(const RunBlock& one) {
    constexpr float kClear = 4.0F;
    float lowest = 0.0F;
    for (const PlacedNode& node : one.nodes)
      if (node.box.corner.x > one.base.where.x || node.box.right() < one.base.where.x)
        lowest = std::max(lowest, node.box.bottom() - one.base.where.y);
    return lowest > 0.0F ? std::max(0.0F, lowest - kBung + kClear) : 0.0F;
  }

  std::string port_on_lid(std::size_t row) const {
    const Link* link = link_to_lid(wish_, row);
    if (link == nullptr) return {};
    const PinAt& at = link->a.node == kReservoir ? link->a : link->b;
    return wish_.sketch.nodes[kReservoir].pins[at.pin].port;
  }
  /// Where that run meets the lid; else where it begins.
  const PlacedPin& on_lid(std::size_t row) const {
    const Link* link = link_to_lid(wish_, row);
    return link == nullptr || link->a.node == kReservoir ? block(row).base : face_of(wish_.plan, layout_, *link);
  }
  float wanted_x(const std::string& port, float otherwise) const {
    const Box& tank = layout_.nodes[kReservoir];
    return tank.corner.x + share_of_lid(wish_.plan, port).value_or(otherwise) * tank.size.width;
  }

  /// A run that leads straight on to another port makes all of the way there.
  void span_to(RunBlock& one, float y) const {
    if (one.faces.size() != 1 || std::abs(one.faces[0].where.x - one.base.where.x) > 1.0F) return;
    lengthen(one, std::abs(y - one.base.where.y) - std::abs(one.faces[0].where.y - one.base.where.y), wish_.words);
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

  /// One over the other, each as high as its port where the one below it leaves room.
  void place_rows(Zone side) {
    const Box& vessel = layout_.nodes[side == Zone::row ? kReservoir : kTable];
    const auto& rows = zone(side);
    int lane = 0;
    std::optional<float> below;
    for (auto row = rows.rbegin(); row != rows.rend(); ++row) {
      RunBlock& one = block(*row);
      const float wanted = side == Zone::row ? vessel.bottom() - share_over_floor(wish_.plan, *row) * vessel.size.height
                                             : vessel.bottom() + kGap - one.all.bottom();
      const float down = below ? std::min(wanted, *below - one.all.bottom()) : wanted;
      one.move({vessel.right() + kBung + 9.0F * static_cast<float>(lane++) - one.base.where.x, down});
      below = one.all.corner.y - kGap / 2.0F;
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
    wanted.reserve(supply.size());
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

  float lone_x(std::size_t vessel, std::size_t i, const std::vector<std::size_t>& lone) const {
    const Box& box = layout_.nodes[vessel];
    const float share = (static_cast<float>(i) + 0.5F) / static_cast<float>(lone.size());
    if (vessel == kTable) return box.corner.x + share * box.size.width;
    return layout_.in_rows ? wanted_x(wish_.sketch.nodes[vessel].pins[lone[i]].port, share) : lone_at_.at(lone[i]);
  }

  void place_side(std::size_t vessel) {
    const Box& box = layout_.nodes[vessel];
    std::vector<std::size_t> pins;
    std::vector<double> wanted;
    for (std::size_t pin = 0; pin < layout_.pins[vessel].size(); ++pin) {
      if (!is_on_side(vessel, pin)) continue;
      if (vessel == kTable && place_over_rim(pin)) continue;
      const PlacedPin* at = layout_.in_rows || vessel == kTable ? nullptr : wanted_at(vessel, pin);
      pins.push_back(pin);
      wanted.push_back(at != nullptr      ? at->where.y
                       : vessel == kTable ? box.bottom() - height_at_side(wish_.plan, box, name_of(kTable, pin))
                                          : box.middle().y);
    }
    const double high = std::max(0.0F, box.size.height - 26.0F);
    const double pitch = std::min(20.0, high / static_cast<double>(std::max<std::size_t>(2, pins.size()) - 1));
    const auto places = report::spread(wanted, pitch, box.corner.y + 16.0, box.bottom() - 10.0);
    for (std::size_t i = 0; i < pins.size(); ++i)
      layout_.pins[vessel][pins[i]] = {{box.right(), static_cast<float>(places[i])}, {1.0F, 0.0F}};
  }

  const std::string& name_of(std::size_t vessel, std::size_t pin) const {
    return wish_.sketch.nodes[vessel].pins[pin].port;
  }

  /// The pin of a pipe over the rim, where that is what it is.
  bool place_over_rim(std::size_t pin) {
    std::vector<Point> pipe = pipe_over_rim(wish_.plan, layout_.nodes[kTable], name_of(kTable, pin));
    if (pipe.empty()) return false;
    layout_.pins[kTable][pin] = {pipe.front(), {1.0F, 0.0F}};
    layout_.over_rim[pin] = std::move(pipe);
    return true;
  }

  const LayoutWish& wish_;
  Measures m_;
  Layout layout_;
  std::vector<Standing> standing_;
  std::vector<std::size_t> in_zone_[4];
  std::map<std::size_t, float> lone_at_;  // axes of the lid's ports that no run stands at, by their pins
};

}  // namespace

Layout placed_at(const LayoutWish& wish, double scale) { return Placing(wish, scale).run(); }

}  // namespace riserun::gui
