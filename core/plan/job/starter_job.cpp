// It is read and solved by a test like any other job.
#include "plan/job/starter_job.h"

#include <cassert>
#include <string_view>
#include <utility>

namespace riserun::plan {

namespace {

constexpr std::string_view kInch = R"(# A job for riserun. Change it to your measures, then run:   riserun plan FILE
#
# Write measures as you would say them: 5-1/2 in, 1'1-11/16", 14 cm, 25 psi, 1.7 bar, 40 gal, 3.5 scfm, 10 ga steel.
# Heights count from the reservoir's inside floor. Lines that start with # are not read: take the # away to use them.
# Whatever is left out is assumed, and the plan lists every assumption. Five things must be there: the two boxes, the
# wanted depth, the height between them, the sheet with its stays or its widest bare panel, and the compressor's plate.
name: My water table
units: inch                      # or metric: what the plan is written in; you may write either

reservoir:                       # the closed box under the table, inside measures
  inside: {length: 44 in, width: 22 in, height: 13 in}
  sheet: 10 ga steel             # or 3/16 in steel, 2.5 mm stainless, 1/8 in aluminium
  # yield: 36 ksi                # of the sheet, if you know it: 10 ga steel counts as commercial sheet of 30 ksi
  # corrosion allowance: 0.02 in # of its thickness
  supports:                      # what holds the flat walls: either how they are divided ...
    baffles across: 3            # upright plates across the length, welded to lid, floor and long sides
    baffles along: 1
    # passages: no               # cropped corners let water and air from bay to bay; tight baffles need saying
    # lid bays: 3 x 2            # where stays divide the lid otherwise: along x across; also floor bays, long side bays
    # floor carried: yes         # it lies flat on what bears it all over; left out, it stands on legs
    # widest bare panel: {length: 22 in, width: 15 in}   # ... or, instead of all that, the widest between the stays;
    #                              in: lid where they hold the lid alone. Sides count as bare without bays of their own
  # charge: 9 in                 # depth of the water put in
  # under the riser: 1 in        # an angle or a stay on the floor there counts as the floor
  # lid: open                    # or welded
  ports:                         # welded in: no puts a bung on the list, and its hole; leave it out where it is there
    # projects: how far its lower end reaches into the reservoir, under the lid's inside. The riser is cut for it
    riser bung: {port: 1 FNPT, bung: full coupling, where: lid, projects: 3/4 in, welded in: no}
    air bung: {port: 1/2 FNPT, bung: half coupling, where: lid, welded in: no}
    gauge bung: {port: 1/4 FNPT, bung: half coupling, where: lid, welded in: no}
    relief bung: {port: 3/4 FNPT, bung: half coupling, where: lid, welded in: no}
    vent bung: {port: 1/2 FNPT, bung: half coupling, where: lid, welded in: no}
    # drain: 3/4 FNPT            # the short way to write a port

table:                           # the open table over it
  inside: {length: 48 in, width: 24 in}
  rim: 5 in
  floor height: 30 in            # of the table's floor above the reservoir's inside floor
  depth: 3-1/2 in                # wanted
  ports:
    inlet: {port: 1 FNPT, where: floor, opens at: 0 in}     # where: floor, side or over rim (with its crest)

air:                             # what the plate says
  delivery: 4 scfm               # free air that the compressor delivers
  receiver: 10 gal
  # receiver pressure: 100 psi
  regulator range: 10 psi        # more than ten times the setting is too coarse
  regulator repeatability: 0.05 psi     # what it comes back to, from the maker's sheet
  # set pressure: 2 psi          # leave it out and one is worked out
  # rated flow: 20 scfm          # of the regulator, wide open; its lock up and droop stand on its sheet too
  # lock up: 0.3 psi
  # feed bore: 1/4 in            # smallest bore between the receiver and the regulator
  # restrictor: 1/16 in          # a drilled hole right before the regulator
  # check valve opens at: 0.5 psi
  ports:
    shop air: 1/4 FNPT           # the end of the shop's hose

relief valve: {tolerance: 0.1 psi, rise: 0.2 psi}   # of the relief valve, from the maker's sheet

# riser: {clearance: 5/8 in, headroom: 14 in, foot valve: no}
# vent: {bore: 1/2 in, count: 1, stays open: yes, purged: yes}   # the last two where aluminium or magnesium is cut

connections:                     # from port to port; the fittings between are worked out
  - name: water up
    from: riser bung
    to: inlet
    carries: water               # or air
    need: [hose]                 # must be in it: ball valve, union, check valve ...; a hose takes up the gap
    held: {from: fixed, to: fixed}     # fixed, sliding, spinning or loose
    # avoid: [bushing]             # hex, face and PVC bushings alike; [just bushing] for that family alone
    # gap: 15 in                 # between the two faces; offset: 1 in; hose length: 14 in; order: price
  - name: air in
    from: shop air
    to: air bung
    carries: air
    # The restrictor caps what a failed regulator gives, the check valve keeps water out of it.
    need: [1/16 in hole restrictor, 0 to 10 psi air regulator, light spring check valve]
    in order: yes
    special order: yes           # low ranges are not on every shelf
  - {name: gauge, from: gauge bung, ends in: 5 psi gauge, special order: yes, carries: air}
  # Which relief valve suits the setting is worked out; one that is there is called by what it is set to as well.
  - {name: relief valve, from: relief bung, ends in: 3/4 relief valve, special order: yes, carries: air}
  - {name: vent, from: vent bung, ends in: 1/2 brass ball valve, carries: air}

# bin:                           # what the shop has: free, each as often as it is there
#   - {part: 1 x 4 nipple black iron, count: 2}
#   - {part: 1 rubber hose, length: 36 in}   # a piece; two short ones never make a long one
# measured:                      # a part in the hand beats the catalog
#   - {part: 1 union black iron, length: 2-1/4 in}
# wishes: {fill time: 2 min, cost cap: 80 usd, order: line}   # order: line, parts, price, loss, length or bin
# water temperature: 68 degF     # hottest: 150 degF and coldest: 20 degF where it gets so, and how that is handled:
# against frost: drained every evening
# against heat: guarded, gloves
# altitude: 500 ft
# cutting: [steel]               # aluminium and magnesium make hydrogen in the closed air space
# liquid: water                  # or: water with 4 % soluble oil
# test pressure: 1.5 psi
# measured fill time: 150 s      # by the clock, to set beside the plan's
)";

/// What stands in the text above and what stands there in metric, in its order.
constexpr std::pair<std::string_view, std::string_view> kInMetric[] = {
    {"units: inch                      # or metric", "units: metric                    # or inch"},
    {"length: 44 in, width: 22 in, height: 13 in", "length: 1100 mm, width: 550 mm, height: 330 mm"},
    {"10 ga steel             # or 3/16 in steel, 2.5 mm stainless, 1/8 in aluminium",
     "3.5 mm steel            # or 5 mm steel, 2.5 mm stainless, 10 ga steel"},
    {"yield: 36 ksi                # of the sheet, if you know it: 10 ga steel counts as commercial sheet of 30 ksi",
     "yield: 235 MPa               # of the sheet, if you know it: steel counts as commercial sheet of 207 MPa"},
    {"corrosion allowance: 0.02 in", "corrosion allowance: 0.5 mm "},
    {"length: 22 in, width: 15 in", "length: 550 mm, width: 380 mm"},
    {"charge: 9 in                 #", "charge: 230 mm               #"},
    {"under the riser: 1 in        #", "under the riser: 25 mm       #"},
    {"projects: 3/4 in", "projects: 20 mm"},
    {"length: 48 in, width: 24 in", "length: 1200 mm, width: 600 mm"},
    {"rim: 5 in", "rim: 130 mm"},
    {"floor height: 30 in            #", "floor height: 760 mm           #"},
    {"depth: 3-1/2 in                #", "depth: 90 mm                   #"},
    {"opens at: 0 in", "opens at: 0 mm"},
    {"delivery: 4 scfm               # free air", "delivery: 110 L/min            # free air"},
    {"receiver: 10 gal\n", "receiver: 40 L\n"},
    {"receiver pressure: 100 psi", "receiver pressure: 7 bar"},
    {"regulator repeatability: 0.05 psi     #", "regulator repeatability: 3.5 mbar     #"},
    {"set pressure: 2 psi          #", "set pressure: 0.14 bar       #"},
    {"rated flow: 20 scfm          #", "rated flow: 560 L/min        #"},
    {"lock up: 0.3 psi", "lock up: 20 mbar"},
    {"feed bore: 1/4 in            #", "feed bore: 6 mm              #"},
    {"restrictor: 1/16 in          #", "restrictor: 1.5 mm           #"},
    {"check valve opens at: 0.5 psi", "check valve opens at: 35 mbar"},
    {"tolerance: 0.1 psi, rise: 0.2 psi", "tolerance: 7 mbar, rise: 14 mbar"},
    {"clearance: 5/8 in, headroom: 14 in", "clearance: 16 mm, headroom: 350 mm"},
    {"bore: 1/2 in, count", "bore: 13 mm, count"},
    {"gap: 15 in                 # between the two faces; offset: 1 in; hose length: 14 in;",
     "gap: 380 mm                # between the two faces; offset: 25 mm; hose length: 350 mm;"},
    {"length: 36 in}", "length: 900 mm}"},
    {"length: 2-1/4 in}", "length: 57 mm}"},
    {"water temperature: 68 degF     # hottest: 150 degF and coldest: 20 degF",
     "water temperature: 20 degC     # hottest: 65 degC and coldest: -5 degC"},
    {"altitude: 500 ft", "altitude: 150 m"},
    {"test pressure: 1.5 psi", "test pressure: 0.1 bar"},
};

std::string in_metric() {
  std::string text(kInch);
  std::size_t at = 0;
  for (const auto& [inch, metric] : kInMetric) {
    at = text.find(inch, at);
    assert(at != std::string::npos && "the starter has no such measure any more");
    text.replace(at, inch.size(), metric);
    at += metric.size();
  }
  return text;
}

}  // namespace

const std::string& starter_job(quantity::UnitSystem units) {
  static const std::string inch(kInch);
  static const std::string metric = in_metric();
  return units == quantity::UnitSystem::metric ? metric : inch;
}

}  // namespace riserun::plan
