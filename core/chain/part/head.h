// Head lost by a chain, part by part: a part's own loss and the change of bore between two neighbours add up to what
// the whole line takes.
#pragma once

#include "chain/part/move.h"
#include "hydraulics/line.h"

#include <vector>

namespace riserun::chain {

/// Water that chains are weighed with: at 68 degF (20 degC), a shop's usual figure.
const hydraulics::Water& chain_water();

/// The part as one element of a line, or as two where its ends differ in bore; none where no bore is known.
std::vector<hydraulics::LineElement> elements_of(const Catalog& catalog, const catalog::Part& part, std::size_t enter,
                                                 std::size_t leave);

/// The same without names and sources, which only a person reads.
std::vector<hydraulics::LineElement> bare_elements_of(const Catalog& catalog, const catalog::Part& part,
                                                      std::size_t enter, std::size_t leave);
/// Nominal size of the line that a port is of, in inches: "1-1/4" is 1.25; see Catalog::line_inches.
double nominal_inches(const Catalog& catalog, PortTypeId type);
/// The same for a straight piece that is cut to that length.
std::vector<hydraulics::LineElement> elements_of_cut(const Catalog& catalog, const catalog::Part& part,
                                                     std::size_t enter, std::size_t leave, Length length);
std::int64_t head_of_cut(const Catalog& catalog, const catalog::Part& part, std::size_t enter, std::size_t leave,
                         Length length, VolumeFlow flow);

/// Nanometres of head that the move takes by itself at that flow.
std::int64_t own_head(const Catalog& catalog, const Move& move, VolumeFlow flow);
/// Nanometres of head that the step from one bore (nanometres, > 0) to the next takes.
std::int64_t change_of_bore_head(std::int64_t from_bore, std::int64_t to_bore, VolumeFlow flow);

}  // namespace riserun::chain
