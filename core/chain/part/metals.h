// Which metals may meet in a run, and whether its two ends must be parted.
#pragma once

#include "chain/ask/request.h"

namespace riserun::chain {

/// Two metals in one run. Nothing carries the current where it is dry, compressed air included: there they may be half
/// a volt apart in the galvanic series (MIL-STD-889 practice, from memory), as a brass fitting is from an air filter of
/// aluminium, and less is not worth a word.
catalog::GalvanicVerdict verdict_in(const Catalog& catalog, bool dry, MaterialId a, MaterialId b);

/// The two metals may touch in what the run carries; always so unless the request avoids bad pairs. Invalid ids: not
/// known, so yes.
bool metals_may_meet(const Catalog& catalog, const ChainRequest& request, MaterialId a, MaterialId b);

/// Bad pairs are avoided, and the two ends are one: then what parts metals is at home in the run. Between ends that are
/// not both known a run of one metal avoids them as well, and a fitter puts no plastic in (common practice).
bool must_part_its_ends(const Catalog& catalog, const ChainRequest& request);

}  // namespace riserun::chain
