#include "plan/stage/ways.h"

#include "chain/finder.h"
#include "quantity/write.h"

#include <fmt/format.h>

namespace riserun::plan {

Length feed_bore(const Inputs& inputs, const std::vector<ConnectionPlan>& connections, Remarks& remarks) {
  Length feed = inputs.settled.air.feed_bore;
  for (const ConnectionPlan& plan : connections) {
    if (plan.service != Service::air || plan.assembly() == nullptr) continue;
    for (std::size_t row = 0; row < plan.ends.size(); ++row) {
      if (!plan.assembly()->ends[row].feeds) continue;
      const auto bore = chain::bore_of_way(inputs.catalog, *plan.assembly(), row);
      if (!bore || *bore >= feed) continue;
      remarks.note(Topic::connections,
                   fmt::format("The feed through '{}' is {} at its narrowest; that is what the fill and the failed "
                               "regulator are worked out with, not {}.",
                               plan.ends[row], write_thickness(*bore, inputs.job.units, 3),
                               write_thickness(feed, inputs.job.units, 3)));
      feed = *bore;
    }
  }
  return feed;
}

}  // namespace riserun::plan
