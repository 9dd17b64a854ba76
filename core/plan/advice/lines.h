// Mends that change what a connection is made of, or whether it is there.
#pragma once

#include "plan/job/job.h"

#include <string>

namespace riserun::plan {

/// The connection is left out, of a branched one all its ways to the table but the first. Ports of reservoir and table
/// that nothing is on then, and something was before, end in plugs where the catalog has one.
void leave_line_out(const Catalog& catalog, Job& job, const std::string& name);

/// The connection needs the part, too: of a row in order, on the reservoir's side of its regulator, and what turns it
/// aside at the reservoir.
void add_need(const Catalog& catalog, Job& job, const quantity::Value& name, PartId part);

}  // namespace riserun::plan
