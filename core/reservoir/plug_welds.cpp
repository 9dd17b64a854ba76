#include "reservoir/plug_welds.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace riserun::reservoir {
namespace {

const Length kOverThickness = inches(5.0 / 16.0);
const Length kSixteenth = inches(1.0 / 16.0);
const Length kQuarter = inches(1.0 / 4.0);
constexpr double kRounding = 1e-9;

Length quarters_down(Length length) {
  return std::max(kQuarter, kQuarter * std::floor((length / kQuarter).value() + kRounding));
}

}  // namespace

Length plug_hole(Force load, Length lid, WeldMetal metal) {
  const double allowed = in_pascals(weld_shear(metal));
  const Length of_load = metres(std::sqrt(4.0 * in_newtons(load) / (std::numbers::pi * allowed)));
  return kSixteenth * std::ceil((std::max(of_load, lid + kOverThickness) / kSixteenth).value() - kRounding);
}

Length slot_width(Length lid, Length under) {
  const Length marks = kSixteenth * std::floor((under / kSixteenth).value() + kRounding);
  return std::min(marks > Length() ? marks : under, plug_hole(Force(), lid, WeldMetal::steel));
}

Length baffle_plate(Length sheet) {
  constexpr double kSame = 1.0 + 1e-6;
  return slot_width(sheet, sheet) * kSame < kNarrowestSlot ? kThinnestBar : sheet;
}

bool is_bevelled(Length slot, Length lid) {
  constexpr double kSame = 1.0 - 1e-6;
  return slot < bevelled_to(lid) && (slot < (lid - kSixteenth) * kSame || lid * kSame > kQuarter);
}

Length bevelled_to(Length lid) { return plug_hole(Force(), lid, WeldMetal::steel); }

SlotRow slots_along(const SlotLoad& load, Length lid, Length under, WeldMetal metal) {
  constexpr double kLongest = 10.0;   // times the lid's thickness
  constexpr double kFarthest = 24.0;  // times the lid's thickness
  SlotRow slots;
  slots.width = slot_width(lid, under);
  slots.length = quarters_down(std::min(lid * kLongest, inches(2.0)));
  Length apart = std::min(lid * kFarthest, inches(12.0));
  const double newtons_a_slot = in_pascals(weld_shear(metal)) * in_square_metres(slots.width * slots.length);
  if (load.along.value() > 0.0) apart = std::min(apart, metres(newtons_a_slot / load.along.value()));
  if (load.widest > Length()) apart = std::min(apart, load.widest);
  slots.apart = quarters_down(apart);
  return slots;
}

int slots_in(Length run, const SlotRow& slots) {
  return std::max(1, static_cast<int>(std::ceil((run / slots.apart).value() - kRounding)));
}

}  // namespace riserun::reservoir
