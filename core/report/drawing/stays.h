// What holds the flat walls of the reservoir, as it is seen from the front: baffles, posts, and bars at lid, floor and
// sides, each as what it is.
#pragma once

#include "plan/plan.h"
#include "report/drawing/drawing.h"

#include <string>
#include <vector>

namespace riserun::report {

enum class StayKind : std::uint8_t {
  baffle,  // a plate from floor to lid, behind the water: one broken line
  post,    // a single stay from floor to lid, with its thickness
  bar,     // at a wall, with its measures
};

/// From the inside of the left end and the inside floor; metres.
struct StayInSight {
  StayKind kind = StayKind::baffle;
  double left = 0.0, bottom = 0.0, right = 0.0, top = 0.0;
};

/// Each place once, however many stand one behind the other, from the left. Bars that no size of the table does, which
/// the plan refuses, are drawn as high as they are thick.
std::vector<StayInSight> stays_in_sight(const plan::Plan& plan);

/// As lines and outlines: a baffle is named "baffle", a post "post", a bar "bar".
std::vector<Shape> stay_shapes(const plan::Plan& plan);

/// What stands in the reservoir beside baffles, by count: "8 posts, 12 bars at the walls"; empty: nothing.
std::string posts_and_bars(const plan::Plan& plan);

/// Into how many bays the job has them divide the walls: "lid 5 x 3, long sides 5 x 1"; empty: it says nothing of bays.
std::string bays_of_stays(const plan::Plan& plan);

}  // namespace riserun::report
