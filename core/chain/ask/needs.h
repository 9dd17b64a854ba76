// Needs as they are asked for, and as a search takes them.
#pragma once

#include "chain/ask/assembly.h"
#include "chain/ask/request.h"

#include <vector>

namespace riserun::chain {

/// Of two needs, given as their parts in order and each once, the one is within the other or the same: each takes a
/// part of its own. Needs of which neither is the narrower (`brass`, `ball valve`) may be met by one part.
bool takes_two_parts(const std::vector<PartId>& a, const std::vector<PartId>& b);

/// Needs that name two parts are met by two: of `valve` and `ball valve` the second is no other word for the first. In
/// order a search sees to it itself. In any order it lets one part meet every need that it matches, but of needs for
/// the same parts one only; so a need is asked for once more for each of the others that is narrower, which takes one
/// of its parts. Exact where any two needs that share a part are one within the other, as Hall's theorem has it.
std::vector<Need> told_apart(std::vector<Need> needs, bool in_order);

/// What the words mean in a run that can come under vacuum, or cannot: where it cannot, `hose` is no suction hose,
/// unless nothing else is called so.
std::vector<Need> as_meant(const Catalog& catalog, std::vector<Need> needs, bool vacuum);

/// It stops, sets or cleans what passes, and so is meant for all that lies beyond: a shut-off valve, a check valve, a
/// regulator, a strainer; two ports, and no relief valve or gauge, which stand at the side (common practice).
bool acts_on_what_is_beyond(const Catalog& catalog, PartId part);

/// Needs of a whole assembly, of which those whose every part acts on what is beyond it are to stand before all
/// targets: a regulator for a manifold goes in before the tee (common practice). What one branch alone is to have is
/// asked for there.
std::vector<Need> before_all_targets(const Catalog& catalog, std::vector<Need> needs);

/// The same of an assembly as it is asked for: where a branch feeds the others, all that passes comes through it, and
/// what acts on all stands there.
void put_before_all(const Catalog& catalog, AssemblyRequest& request);

/// Who asks for a part that keeps metals apart, and for nothing else in its place, means that none meet that should
/// not: a galvanized nipple on the brass half of a dielectric union undoes it (common practice). Where an end's metal
/// is known that is for the request to say: plastic would be taken to part what the union is asked for.
Galvanic galvanic_meant(const Catalog& catalog, const ChainRequest& request);

}  // namespace riserun::chain
