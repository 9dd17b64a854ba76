#include "gui/views/sheets/figures.h"

#include <fmt/format.h>

#include <cmath>

namespace riserun::views {

namespace {

using plan::Plan;
using plan::Topic;
using transfer::Transfer;

const char* const kRiserCut =
    "Inside height less bung projection, what lies under the riser and the clearance, plus the make-up in the bung. "
    "Make-up: hand-tight engagement and wrench make-up of ASME B1.20.1, plus or minus one turn.";
const char* const kTransfer =
    "Solved in time: water in reservoir and table, air in the ullage, regulator, receiver and line. Friction "
    "Colebrook-White, fittings Crane TP-410, inlet Idelchik. The range: all coefficients at one end of their published "
    "spread, and the air supply or the vent a tenth more or less.";
const char* const kWalls =
    "Each bare panel as a flat plate under uniform pressure, edges held and edges free, whichever stands less "
    "(Timoshenko "
    "and Woinowsky-Krieger), at the design stress, with the water standing on it.";
const char* const kFactor =
    "Yield over the greatest stress of any panel. California Title 8 section 3301 asks 4 at the greatest pressure that "
    "can occur when air lifts a substance.";

std::string time_range(const Transfer& transfer) {
  if (!std::isfinite(in_seconds(transfer.time_high))) return "at worst it never gets there";
  return write_range(write_time(transfer.time_low), write_time(transfer.time_high));
}

class Figures {
 public:
  Figures(const Plan& plan, UnitSystem units) : plan_(plan), units_(units) {}

  FigureGroup riser() const {
    const reservoir::Riser& riser = plan_.riser.riser;
    return {
        "Riser",
        Topic::riser,
        {{"cut length", length(riser.cut_length), "from the threaded end", kRiserCut},
         {"clearance", length(riser.clearance), write_range(length(riser.clearance_low), length(riser.clearance_high)),
          "What is left over the floor with the nominal make-up; the range is one turn of the thread either way. "
          "Common practice: 1/2 to 1 in."},
         {"make-up in the bung", length(riser.make_up), "", "ASME B1.20.1: hand-tight engagement plus wrench make-up."},
         {"gap to bore", write_number(riser.curtain_to_bore, 2), "1 or more costs little",
          "Area of the gap under the pipe, pi D c, over the area of the bore, pi D2 / 4."},
         {"heel", write_volume(plan_.levels.heel, units_), "",
          "Water below the riser's end: free floor area times the height of that end."},
         {"offcut", length(riser.offcut), "", "Stock length less the cut length and the saw's width."}}};
  }

  FigureGroup levels() const {
    const plan::Levels& levels = plan_.levels;
    const char* const area = "Free area of the box, supports taken off, times the depth.";
    return {"Water",
            Topic::levels,
            {{"charge", length(levels.charge_depth), volume(levels.charge), area},
             {"charge line below the lid", length(levels.charge_mark_below_lid), "", "Inside height less the charge."},
             {"the table needs", volume(levels.need), "", "Free area of the table times its wanted depth."},
             {"the riser can lift", volume(levels.usable), "",
              "From the charge down to one bore over the riser's end, where air begins to be drawn in."},
             {"ullage", volume(levels.ullage_at_charge),
              fmt::format("{:.0f} % of the reservoir", 100.0 * levels.ullage_fraction), "Air space over the charge."},
             {"left in the table", volume(plan_.transfer.left_in_table), "", "Below the inlet, after draining."},
             {"lift at the start", length(levels.lift_start), "", "Height between the two water surfaces."},
             {"lift when full", length(levels.lift_full), "", "Height between the two water surfaces."}}};
  }

  FigureGroup filling() const {
    const transfer::Fill& fill = plan_.transfer.fill;
    FigureGroup group{"Filling", Topic::transfer, moving(fill)};
    const auto pressure = [&](const char* label, GaugePressure value, std::string from) {
      group.figures.push_back({label, write_pressure(value, units_), limit(), std::move(from)});
    };
    pressure("set pressure", plan_.transfer.setting, plan_.transfer.setting_basis + ".");
    pressure("pressure to start", fill.pressure_to_start,
             "Density of the water times gravity times the height from the charge to the table's inlet.");
    pressure("hold pressure", fill.hold_pressure,
             "Density of the water times gravity times the lift when the table is at its depth.");
    pressure("pressure to finish", fill.pressure_to_finish, "The least setting that reaches the wanted depth.");
    pressure("highest in the tank", fill.highest_ullage_pressure, kTransfer);
    group.figures.push_back(
        {"shut the air at", length(fill.shut_off_depth), "coasts up " + length(fill.coast_up),
         "The air that is in the reservoir goes on pushing: from this depth it brings the table to the "
         "wanted depth."});
    group.figures.push_back({"water over the riser", length(fill.margin_over_riser_end), "when the table is full",
                             "Depth left in the reservoir less the height of the riser's end."});
    return group;
  }

  FigureGroup draining() const { return {"Draining", Topic::transfer, moving(plan_.transfer.drain)}; }

  FigureGroup walls() const {
    const plan::WallsPlan& walls = plan_.walls;
    FigureGroup group{"Walls", Topic::walls, {}};
    group.figures.push_back({"the walls' limit", write_pressure(walls.limit, units_), weakest(), kWalls});
    group.figures.push_back({"factor at the setting", write_number(walls.factor_at_set, 2), "asked: 4", kFactor});
    group.figures.push_back({"factor at full supply", write_number(walls.factor_at_full_supply, 2),
                             "at " + write_pressure_alone(walls.full_supply, units_),
                             std::string("If the regulator fails open and nothing gives way. ") + kFactor});
    group.figures.push_back({"force on the lid", write_force(walls.lid_force, units_), "at the setting",
                             "Set pressure times the lid's area."});
    if (walls.next_stay)
      group.figures.push_back({"the stay that pays most", walls.next_stay->what,
                               "then " + write_pressure_alone(walls.next_stay->limit_after, units_), kWalls});
    return group;
  }

  FigureGroup relief() const {
    const plan::ReliefPlan& relief = plan_.relief;
    FigureGroup group{"Relief", Topic::relief, {}};
    group.figures.push_back({"relief set at", write_pressure(relief.set_pressure, units_), limit(),
                             "At or below the walls' limit, above the greatest pressure of the fill."});
    group.figures.push_back({"must pass", write_air_flow(relief.must_pass, units_), "free air",
                             "All that the supply gives through the feed with the regulator failed open."});
    if (relief.failed_regulator_pressure)
      group.figures.push_back({"failed regulator", write_pressure(*relief.failed_regulator_pressure, units_), limit(),
                               "What the feed can hold in the reservoir against the open riser."});
    if (relief.restrictor_bore)
      group.figures.push_back({"restrictor", write_thickness(*relief.restrictor_bore, units_, 2), "in the feed",
                               "The bore that keeps a failed regulator below the walls' limit."});
    return group;
  }

  FigureGroup leak_test() const {
    const plan::LeakTestPlan& test = plan_.leak_test;
    FigureGroup group{"Leak test", Topic::leak_test, {}};
    if (!test.possible) {
      group.figures.push_back({"test with air", "none", "", test.basis});
      return group;
    }
    group.figures.push_back({"test pressure", write_pressure(test.pressure, units_), limit(), test.basis});
    group.figures.push_back(
        {"stand off", write_long_length(test.energy.standoff, units_),
         write_energy(test.energy.energy, units_) + " stored",
         "ASME PCC-2 Article 501, the reservoir empty at the test pressure; never less than 30 m."});
    group.figures.push_back({"water column", length(test.water_column_leg), "each leg of a U of clear hose",
                             "The height of water that the test pressure holds."});
    return group;
  }

  std::string length(Length value) const { return write_length(value, units_); }
  std::string volume(Volume value) const { return write_volume(value, units_); }
  std::string limit() const { return "walls' limit " + write_pressure_alone(plan_.walls.limit, units_); }

 private:
  std::vector<Figure> moving(const Transfer& transfer) const {
    return {{"time", write_time(transfer.time), time_range(transfer), kTransfer},
            {"moved", volume(transfer.volume), "", kTransfer},
            {"mean flow", write_volume_flow(transfer.mean_flow, units_),
             "at most " + write_volume_flow(transfer.peak_flow, units_), kTransfer},
            {"free air", write_free_air(transfer.free_air, units_), "", kTransfer},
            {"limited by", transfer.limited_by, "", "The resistance whose removal would save the most time."}};
  }

  std::string weakest() const {
    const reservoir::WallCheck& check = plan_.walls.at_set;
    return check.weakest < check.panels.size() ? check.panels[check.weakest].panel.name : std::string();
  }

  const Plan& plan_;
  UnitSystem units_;
};

}  // namespace

std::vector<Figure> headline(const Plan& plan, UnitSystem units) {
  const Figures figures(plan, units);
  const auto& transfer = plan.transfer;
  return {{"set", write_pressure_alone(transfer.setting, units), figures.limit(), transfer.setting_basis + "."},
          {"fill", write_time(transfer.fill.time), time_range(transfer.fill), kTransfer},
          {"drain", write_time(transfer.drain.time), time_range(transfer.drain), kTransfer},
          {"cut riser", figures.length(plan.riser.riser.cut_length),
           "clearance " + figures.length(plan.riser.riser.clearance), kRiserCut},
          {"buy", write_price(plan.list.total),
           fmt::format("{} {}", plan.list.buy.size(), plan.list.buy.size() == 1 ? "line" : "lines"),
           "Indicative prices of what is not in the bin; your own price file replaces them."}};
}

std::vector<FigureGroup> figures_of(const Plan& plan, UnitSystem units) {
  const Figures figures(plan, units);
  return {figures.riser(), figures.levels(), figures.filling(),  figures.draining(),
          figures.walls(), figures.relief(), figures.leak_test()};
}

std::string verdict_of(plan::Status status) {
  switch (status) {
    case plan::Status::ok:
      return "CAN GO AHEAD";
    case plan::Status::caution:
      return "GO AHEAD WITH CARE";
    case plan::Status::refused:
      return "REFUSED";
  }
  return "";
}

}  // namespace riserun::views
