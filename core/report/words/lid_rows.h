// The lid map as rows: where each bung stands, and the hole that it is set into.
#pragma once

#include "plan/plan.h"

#include <string>
#include <vector>

namespace riserun::report {

/// A bung; what is not known is empty.
struct LidRow {
  std::string number;  // in the drawing
  std::string port;
  std::string from_left;
  std::string from_front;
  std::string hole;
  std::string boss;
  std::string room;    // radius that the wrench needs
  std::string remark;  // "proposed", "in the side"
};

std::vector<LidRow> lid_rows(const plan::Plan& plan, UnitSystem units);

/// A hole in the reservoir's walls, for a bung that is still to be welded in.
struct HoleRow {
  Length across{};
  std::string size;   // the same as it is written
  std::string where;  // "6 in from the left, 3 in from the front (proposed)"
  std::string port;
};

std::vector<HoleRow> holes_to_cut(const plan::Plan& plan, UnitSystem units);

/// From where the places are measured, and what the hole takes in.
std::string lid_datum(const plan::Plan& plan, UnitSystem units);

/// `24 in from the left, 10 in from the front`; empty where no place is known.
std::string place_words(const LidRow& row);

}  // namespace riserun::report
