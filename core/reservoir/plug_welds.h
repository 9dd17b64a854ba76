// Holes and slots in a lid over what ends at it below: through them it is welded to that from outside, filled flush.
// None is wider than what stands under it, so that the weld has something to fill against.
#pragma once

#include "quantity/quantities.h"
#include "reservoir/metals.h"
#include "reservoir/support_loads.h"

namespace riserun::reservoir {

/// Diameter of the plug hole over a post: no less than the lid's thickness and 5/16 in (AWS D1.1 2.4.3, from memory),
/// and of an area that carries the post's load at a fillet's stress; to the next sixteenth.
Length plug_hole(Force load, Length lid, WeldMetal metal);

/// Of a slot over a bar or a plate: as wide as that is thick, to the sixteenth below, up to the width of a plug hole.
Length slot_width(Length lid, Length under);

/// Least thickness of a bar on edge, so that it can be welded on both sides (common practice).
inline const Length kThinnestBar = inches(3.0 / 16.0);

/// Narrower than that no slot is cut and filled to its foot (common practice: a cutting disc, a cutter's kerf and a
/// welding wire with its tip).
inline const Length kNarrowestSlot = inches(1.0 / 8.0);

/// Thickness of baffles that are welded through slots: that of the sheet, or of the thinnest bar (stay_bars.h) where
/// slots over the sheet's edge would be narrower than kNarrowestSlot.
/// @param sheet  nominal thickness of lid and walls
Length baffle_plate(Length sheet);

/// A slot that is narrower than the lid is thick is reached to its foot by no torch, and in a lid over 1/4 in none with
/// square edges (AWS D1.1's joint B-L1a, square edges on a backing: up to 1/4 in, as far apart as it is thick, 1/16 in
/// less at the most; from memory).
bool is_bevelled(Length slot, Length lid);
/// How wide it is at the top then.
Length bevelled_to(Length lid);

/// Slots in a row along what stands below.
struct SlotRow {
  Length width{};
  Length length{};
  Length apart{};  // from middle to middle, at most
};

/// What a row of slots has to hold of the lid.
struct SlotLoad {
  ForcePerLength along{};  // the row
  Length widest{};         // from middle to middle that still holds the lid's panel along its edge; zero: any
};

/// No slot longer than ten times the lid's thickness (AWS D1.1 2.4.5, from memory) or 2 in (common practice), no
/// farther apart than 24 times that thickness or 12 in (AISC 360 J3.5, from memory), than their load asks at a
/// fillet's stress, and than what still holds the panel beside them; all in quarters of an inch.
SlotRow slots_along(const SlotLoad& load, Length lid, Length under, WeldMetal metal);

/// How many of them such a length takes; at least one.
int slots_in(Length run, const SlotRow& slots);

}  // namespace riserun::reservoir
