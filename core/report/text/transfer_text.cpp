#include "plan/judge/drain.h"
#include "report/text/figure_rows.h"
#include "report/text/plan_text.h"
#include "report/words/say.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace riserun::report {

namespace {

using hydraulics::ElementLoss;
using plan::Plan;
using transfer::Stop;
using transfer::WalkAway;

std::string stop_sentence(Stop stop, bool filling) {
  switch (stop) {
    case Stop::goal_reached:
      return filling ? "reaches the wanted depth" : "the table runs down to its inlet";
    case Stop::riser_uncovered:
      return "the riser uncovers first: air would blow through into the table";
    case Stop::pressures_balance:
      return "the pressures balance before that: the water stands still";
    case Stop::table_overflows:
      return "the table overflows first";
    case Stop::time_limit:
      return "takes longer than the time limit";
    case Stop::reservoir_full:
      return "the reservoir is full first: water would stand at its lid";
  }
  return "";
}

/// What slows it most, and how long it would take without each of the resistances that count.
std::string limits_cell(const transfer::Transfer& transfer) {
  constexpr double kWorthNaming = 0.99;  // of the time
  std::string ladder;
  for (const transfer::Limit& limit : transfer.limits)
    if (limit.time_without < transfer.time * kWorthNaming)
      ladder +=
          fmt::format("{}without the {} {}", ladder.empty() ? "" : ", ", limit.name, write_time(limit.time_without));
  return ladder.empty() ? transfer.limited_by : fmt::format("{} ({})", transfer.limited_by, ladder);
}

void add_missing_run(const Plan& plan, FigureRows& rows) {
  if (plan.transfer.missing_run.empty()) return;
  rows.line("only as if",
            fmt::format("plain pipe stood for '{}', which does not go together", plan.transfer.missing_run));
}

/// Of a table that most of the water stays in, what stays stands below.
std::string drain_ends(const Plan& plan) {
  const Stop stop = plan.transfer.drain.stop;
  if (stop != Stop::goal_reached || plan::drains_by_line(plan)) return stop_sentence(stop, false);
  const auto& siphon = plan.transfer.siphon;
  return siphon && !siphon->covered ? "the mouth of the line is out of the water: nothing runs back"
                                    : "the water is down to the inlet: what is under it stays";
}

void add_common_rows(const transfer::Transfer& transfer, const std::string& ends, FigureRows& rows) {
  rows.line("ends because", ends);
  rows.figure("time");
  rows.figure("moved");
  rows.line("flow", fmt::format("{} on average, {} at most", rows.value("mean_flow"), rows.value("peak_flow")));
  rows.figure("free_air");
  rows.line(rows.label("limited_by"), limits_cell(transfer));
}

std::string walk_away_sentence(const transfer::Fill& fill, UnitSystem units) {
  switch (fill.walk_away) {
    case WalkAway::water_stops_below_rim:
      return "the water stops by itself below the rim";
    case WalkAway::table_overflows:
      return fmt::format("the table overflows: {} over the rim", write_volume(fill.walk_away_spill, units));
    case WalkAway::air_blows_through:
      return "the riser uncovers and air blows up into the table";
  }
  return "";
}

/// A coast-up below the tape's smallest mark is nothing to shut the air early for.
std::string coast_up_sentence(const transfer::Fill& fill, const FigureRows& rows, UnitSystem units) {
  if (fill.coast_up < inches(1.0 / 32.0)) return "the table rises by less than the tape shows";
  return fmt::format("the table rises another {}: shut the air at {}", write_length(fill.coast_up, units),
                     rows.value("shut_off_depth"));
}

/// Each place on the way of the air with the pressure before and behind it.
std::string air_table(const Plan& plan, const Style& style) {
  if (plan.air.places.empty()) return "";
  std::vector<std::vector<std::string>> rows = {{"air, at its greatest flow", "bore", "before", "behind"}};
  for (const plan::AirPlace& place : plan.air.places)
    rows.push_back({place.name, place.bore > metres(0.0) ? write_thickness(place.bore, style.units) : "",
                    write_pressure_alone(place.before, style.units), write_pressure_alone(place.behind, style.units)});
  return table(rows, "  ", {1, 2, 3}, style.width);
}

/// Against the rim that it may go over.
std::string jet_words(const Plan& plan, UnitSystem units) {
  if (!plan.transfer.jet) return "";
  const plan::JetPlan& jet = *plan.transfer.jet;
  return fmt::format(" over the inlet; the rim stands {} over it{}", write_length(jet.rim, units),
                     jet.most > jet.rim ? ": turn it aside by a deflector or an elbow" : "");
}

std::string filling(const Plan& plan, const Style& style) {
  const transfer::Fill& fill = plan.transfer.fill;
  FigureRows rows(filling_figures(plan), style);
  add_missing_run(plan, rows);
  add_common_rows(fill, stop_sentence(fill.stop, true), rows);
  rows.figure_if_any("refill_time");
  rows.figure("set_pressure", "", ": " + say(plan.transfer.setting_basis, style.units));
  rows.figure_if_any("first_stage");
  rows.figure("pressure_to_start");
  rows.figure_if_any("hold_pressure");
  if (const auto nothing = nothing_to_hold(plan.transfer)) rows.line("hold pressure", say(*nothing, style.units));
  for (const char* key : {"pressure_to_finish", "highest_ullage_pressure"}) rows.figure(key);
  rows.figure_if_any("setting_for_wish", "set ");
  rows.line("after the air is shut", coast_up_sentence(fill, rows, style.units));
  rows.figure("margin_over_riser_end", "", " left at the end");
  rows.figure_if_any("riser_dip", "", " over its end, in quiet water");
  rows.figure_if_any("riser_submergence", "",
                     " over it; between the two air may be drawn, and a cross in the mouth helps");
  rows.figure_if_any("jet_height", "", jet_words(plan, style.units));
  rows.figure("rise_per_tenth_psi", "", " deeper in the table");
  rows.figure_if_any("time_per_tenth_psi", "", " shorter");
  rows.figure_if_any("measured_time", "", " by the clock");
  rows.line("if nobody shuts it off", walk_away_sentence(fill, style.units));
  rows.figure_if_any("self_limiting_pressure", "", ": below the rim");
  rows.figure("pressure_left_alone");
  return heading("Filling", style) + rows.text() + air_table(plan, style);
}

std::string draining(const Plan& plan, const Style& style) {
  FigureRows rows(draining_figures(plan), style);
  add_missing_run(plan, rows);
  add_common_rows(plan.transfer.drain, drain_ends(plan), rows);
  rows.figure_if_any("time_to_thinnest_film", "", " on a floor that is well wetted");
  rows.figure_if_any("film", "", " over the inlet");
  rows.figure_if_any("siphon_crest", "",
                     plan.transfer.siphon && plan.transfer.siphon->covered
                         ? ": it must be full of water to start"
                         : ": its mouth is out of the water, and nothing runs back");
  rows.figure_if_any("siphon_mouth", "", ", where its mouth uncovers");
  rows.figure("left_in_table");
  for (const plan::DrainPlan& drain : plan.drains)
    if (drain.time)
      rows.line(
          fmt::format("'{}' empties the {}", plan.ways[drain.way].connection, drain.of_table ? "table" : "reservoir"),
          drain.stays_at < drain.left_at ? fill("in {0}, to {1} over its floor, then slower to {2} ({3} stays)",
                                                {*drain.time, drain.left_at, drain.stays_at, drain.left}, style.units)
                                         : fill("in {0}, to {1} over its floor ({2} stays)",
                                                {*drain.time, drain.left_at, drain.left}, style.units));
  return heading("Draining", style) + rows.text();
}

/// The sources of a table, each printed once under it and pointed at by its number.
class Sources {
 public:
  std::string mark(const std::string& source) {
    if (source.empty()) return "";
    const auto found = std::find(sources_.begin(), sources_.end(), source);
    if (found == sources_.end()) sources_.push_back(source);
    return fmt::format("[{}]", std::find(sources_.begin(), sources_.end(), source) - sources_.begin() + 1);
  }
  std::string text(const Style& style) const {
    std::string result;
    for (std::size_t i = 0; i < sources_.size(); ++i)
      result += wrapped(fmt::format("  [{}] ", i + 1), sources_[i], style.width);
    return result;
  }

 private:
  std::vector<std::string> sources_;
};

Head total_of(const std::vector<ElementLoss>& losses) {
  Head total;
  for (const ElementLoss& loss : losses) total = total + loss.head;
  return total;
}

/// A row an element that takes at least a hundredth of the head; the rest together. `at_peak` may be empty.
std::string loss_table(const std::string& title, const std::vector<ElementLoss>& at_mean,
                       const std::vector<ElementLoss>& at_peak, Sources& sources, const Style& style) {
  constexpr double kWorthARow = 0.01;
  const bool peak = at_peak.size() == at_mean.size();
  const auto head = [&](Head value) { return write_head(value, style.units, 2); };
  const Head total = total_of(at_mean);
  std::vector<std::vector<std::string>> rows = {{title, "K", "velocity", "head, mean flow", peak ? "peak flow" : ""}};
  Head rest;
  Head rest_at_peak;
  long rest_count = 0;
  for (std::size_t i = 0; i < at_mean.size(); ++i) {
    const ElementLoss& loss = at_mean[i];
    if (loss.head < total * kWorthARow) {
      rest = rest + loss.head;
      if (peak) rest_at_peak = rest_at_peak + at_peak[i].head;
      ++rest_count;
      continue;
    }
    rows.push_back({loss.element, write_number(loss.k, 2), write_velocity(loss.velocity, style.units, 2),
                    head(loss.head), peak ? head(at_peak[i].head) : "", sources.mark(loss.source)});
  }
  if (rest_count > 0)
    rows.push_back(
        {counted(rest_count, "smaller one", "smaller ones"), "", "", head(rest), peak ? head(rest_at_peak) : ""});
  rows.push_back({"together", "", "", head(total), peak ? head(total_of(at_peak)) : ""});
  return table(rows, "  ", {1, 2, 3, 4}, style.width);
}

}  // namespace

std::string transfer_text(const Plan& plan, const Style& style) {
  return filling(plan, style) + remarks_text(plan, plan::Topic::transfer, style) + "\n" + draining(plan, style);
}

std::string losses_text(const Plan& plan, const Style& style) {
  const transfer::Fill& fill = plan.transfer.fill;
  Sources sources;
  std::string text = heading("Where the head is lost", style);
  text += loss_table("filling", fill.losses_at_mean, fill.losses_at_peak, sources, style) + "\n";
  text += loss_table("draining", plan.transfer.drain.losses_at_mean, {}, sources, style);
  return text + sources.text(style);
}

}  // namespace riserun::report
