// What thread is this, in words: names off the shelf, what was seen, what that says, how to look next.
#pragma once

#include "catalog/identify/identify.h"
#include "quantity/write.h"

#include <string>
#include <vector>

namespace riserun::report {

/// `3/4 MNPT (also MIP, MPT, male pipe thread; in plastic 3/4 MNPT plastic)`: as the shelf has it, with its synonyms.
std::string shelf_name(const catalog::Catalog& catalog, catalog::PortTypeId type);
std::vector<std::string> other_names(const catalog::Catalog& catalog, catalog::PortTypeId type);

/// What was measured, as a short phrase: `1-1/16 in across the outside by tape`.
std::string observed(const catalog::Catalog& catalog, const catalog::Observation& seen, UnitSystem units);
/// What that says of the candidate: `1.05 in by tape: 1.013 to 1.055 in, fits`.
std::string verdict_of(const catalog::Catalog& catalog, const catalog::Observation& seen,
                       const catalog::Evidence& evidence, UnitSystem units);
/// All of the candidate's evidence in one sentence.
std::string why(const catalog::Catalog& catalog, const catalog::Measurements& measured,
                const catalog::Candidate& candidate, UnitSystem units);
/// By how much a candidate misses each measurement that it does not fit; for what is nearest when nothing fits.
std::string misses(const catalog::Catalog& catalog, const catalog::Measurements& measured,
                   const catalog::Candidate& candidate, UnitSystem units);
/// How that measurement is made, and with which option it is told.
std::string instruction(const catalog::Catalog& catalog, const catalog::NextMeasurement& next);
std::string question_name(catalog::Question question);

}  // namespace riserun::report
