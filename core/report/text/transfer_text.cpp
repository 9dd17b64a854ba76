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

void add_common_rows(const transfer::Transfer& transfer, bool filling, FigureRows& rows) {
  rows.line("ends because", stop_sentence(transfer.stop, filling));
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

std::string filling(const Plan& plan, const Style& style) {
  const transfer::Fill& fill = plan.transfer.fill;
  FigureRows rows(filling_figures(plan), style.units);
  add_common_rows(fill, true, rows);
  rows.figure("set_pressure", "", ": " + say(plan.transfer.setting_basis, style.units));
  for (const char* key : {"pressure_to_start", "hold_pressure", "pressure_to_finish", "highest_ullage_pressure"})
    rows.figure(key);
  rows.figure_if_any("setting_for_wish", "set ");
  rows.line("after the air is shut", coast_up_sentence(fill, rows, style.units));
  rows.figure("margin_over_riser_end", "", " left at the end");
  rows.line("if nobody shuts it off", walk_away_sentence(fill, style.units));
  rows.figure_if_any("self_limiting_pressure", "", ": below the rim");
  return heading("Filling", style) + rows.text();
}

std::string draining(const Plan& plan, const Style& style) {
  FigureRows rows(draining_figures(plan), style.units);
  add_common_rows(plan.transfer.drain, false, rows);
  rows.figure("left_in_table");
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
  std::string text() const {
    std::string result;
    for (std::size_t i = 0; i < sources_.size(); ++i) result += wrapped(fmt::format("  [{}] ", i + 1), sources_[i]);
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
  return columns(rows, "  ", {1, 2, 3, 4});
}

}  // namespace

std::string transfer_text(const Plan& plan, const Style& style) {
  return filling(plan, style) + remarks_text(plan, plan::Topic::transfer, style.units) + "\n" + draining(plan, style);
}

std::string losses_text(const Plan& plan, const Style& style) {
  const transfer::Fill& fill = plan.transfer.fill;
  Sources sources;
  std::string text = heading("Where the head is lost", style);
  text += loss_table("filling", fill.losses_at_mean, fill.losses_at_peak, sources, style) + "\n";
  text += loss_table("draining", plan.transfer.drain.losses_at_mean, {}, sources, style);
  return text + sources.text();
}

}  // namespace riserun::report
