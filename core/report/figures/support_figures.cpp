#include "report/figures/support_figures.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace riserun::report {

namespace {

constexpr const char* kVacuum =
    "The plates as above, bent inward by the atmosphere, the reservoir empty, a carried floor too; stays and baffles "
    "are taken to stand the push.";
constexpr const char* kCooling =
    "p = (p_atm - ps1) T2/T1 + ps2: the air shrinks and its vapour condenses (ideal gas; saturation IAPWS R7-97).";
constexpr const char* kLoads = "The pressure times what lies halfway to the neighbours on both sides.";
constexpr const char* kSeam = "A panel's load goes to its nearest edge: half of its shorter side's (from memory).";
constexpr const char* kThroat =
    "On the throat 0.30 of the strength of a 60 ksi electrode (AWS D1.1), with aluminium 11.5 ksi of filler 4043 over "
    "1.95 "
    "(Aluminum Design Manual), both from memory; the least fillet by thickness: 1/8 in leg on sheet to 1/4 in (AWS "
    "D1.1:2025 Table 7.7), along the edge of thinner sheet its thickness, and four legs long (AISC J2.2b).";
constexpr const char* kSpacing =
    "Fewest single stays between lid and floor and upright stiffeners on the sides, each wall as a plate and the grid "
    "by "
    "the stayed-surface rule.";
constexpr const char* kPassage =
    "Common practice: 1 to 1-1/2 in at the floor and 1/2 to 3/4 in at the lid, at the floor twice the riser's bore in "
    "all.";

Force on_an_inch(reservoir::ForcePerLength weld) { return newtons(weld.value() * kMetresPerInch); }

void add_vacuum(const plan::WallsPlan& walls, std::vector<Figure>& figures) {
  figures.push_back({.key = "vacuum_limit",
                     .label = "vacuum the walls stand",
                     .value = walls.vacuum_limit,
                     .form = "alone",
                     .beside = {"below the atmosphere, empty", {}},
                     .source = {kVacuum, {}}});
  if (!walls.cooling_vacuum) return;
  figures.push_back({.key = "cooling_vacuum",
                     .label = "vacuum if shut to cool",
                     .value = *walls.cooling_vacuum,
                     .form = "alone",
                     .beside = {"its moist air from {0} to {1}, all shut", {walls.warmest, walls.coldest}},
                     .source = {kCooling, {}}});
}

/// Of posts on the cut list the fillet all round each on the floor; of stays of the job's own, whose section it does
/// not say, how long a weld each takes.
void add_weld_of_post(const plan::WallsPlan& walls, Length sheet, std::vector<Figure>& figures) {
  const reservoir::WeldMetal metal = walls.metal.weld_metal;
  const auto ties = std::find_if(walls.bars.begin(), walls.bars.end(),
                                 [](const reservoir::StayBars& bars) { return bars.wall == reservoir::kTies; });
  if (ties == walls.bars.end()) {
    const Length leg = reservoir::fillet_leg({}, sheet);
    figures.push_back({.key = "weld_of_post",
                       .label = "weld of a single stay",
                       .value = reservoir::weld_length(walls.loads.each_post, leg, metal),
                       .form = "fixed2",
                       .beside = {"or more, of {0} fillet", {leg}},
                       .source = {kThroat, {}}});
    return;
  }
  const Length round = 4.0 * ties->thickness;
  const Length throat = reservoir::weld_throat(ties->load / round, metal);
  figures.push_back(
      {.key = "post_weld_leg",
       .label = "weld of a post on the floor",
       .value = reservoir::fillet_leg(throat, std::min(sheet, ties->thickness)),
       .form = sheet < reservoir::kLeastFillet ? "thickness2" : "",
       .beside = {"fillet leg or more, all round its {0}; a throat of {1:thickness2} would carry it", {round, throat}},
       .source = {kThroat, {}}});
}

void add_loads(const plan::WallsPlan& walls, std::vector<Figure>& figures) {
  const reservoir::SupportLoads& loads = walls.loads;
  const auto add = [&](const char* key, const char* label, Force load, Phrase beside, const char* source) {
    if (load > newtons(0.0))
      figures.push_back(
          {.key = key, .label = label, .value = load, .beside = std::move(beside), .source = {source, {}}});
  };
  const Phrase at = {"at {0:alone}", {walls.loads_at}};
  const Phrase on_each_inch = {"on each {0:decimal3}, at {1:alone}", {inches(1.0), walls.loads_at}};
  add("row_across", "each row across carries", loads.each_row_across, at, kLoads);
  add("row_along", "each row along carries", loads.each_row_along, at, kLoads);
  add("post", "each single stay carries", loads.each_post, at, kLoads);
  add("weld_of_row", "weld of a row carries", on_an_inch(loads.weld_of_row()), on_each_inch, kLoads);
  add("weld_of_edge", "seam of the lid carries", on_an_inch(loads.weld_of_edge), on_each_inch, kSeam);
  const Length sheet = walls.panels.empty() ? inches(0.25) : walls.panels.front().thickness;
  figures.push_back({.key = "weld_leg",
                     .label = "fillet of those welds",
                     .value = reservoir::fillet_leg(walls.weld_throat, sheet),
                     .form = sheet < reservoir::kLeastFillet ? "thickness2" : "",
                     .beside = {"leg or more, the least that is welded; a throat of {0:thickness2} would carry it",
                                {walls.weld_throat}},
                     .source = {kThroat, {}}});
  if (loads.each_post > newtons(0.0)) add_weld_of_post(walls, sheet, figures);
}

void add_spacing(const char* key, const char* label, const std::optional<reservoir::StaySpacing>& spacing,
                 std::vector<Figure>& figures) {
  if (!spacing) return;
  figures.push_back({.key = key,
                     .label = label,
                     .value = spacing->limit,
                     .form = "alone",
                     .beside = {"{0}", {reservoir::facts_of(*spacing)}},
                     .source = {kSpacing, {}}});
}

}  // namespace

void add_support_figures(const plan::WallsPlan& walls, std::vector<Figure>& figures) {
  add_spacing("stays_for_use", "stays that would do", walls.stays_for_use, figures);
  add_spacing("stays_for_four", "stays for 4 to 1", walls.stays_for_four, figures);
  add_vacuum(walls, figures);
  add_loads(walls, figures);
  if (!walls.passages) return;
  const Phrase beside = {walls.passages->assumed ? "cropped, each leg; assumed" : "cropped, each leg", {}};
  for (const auto& [key, label, leg] :
       {std::tuple{"passage_at_floor", "baffle corners, floor", walls.passages->at_floor},
        std::tuple{"passage_at_lid", "baffle corners, lid", walls.passages->at_lid}})
    figures.push_back({.key = key, .label = label, .value = leg, .beside = beside, .source = {kPassage, {}}});
}

}  // namespace riserun::report
