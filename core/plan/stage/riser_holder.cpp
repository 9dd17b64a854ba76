#include "plan/stage/riser_holder.h"

#include "chain/finder.h"

namespace riserun::plan {

namespace {

/// Every joint inside is one in the air space, so few of them: a bushing, or a nipple and a reducing coupling.
constexpr int kMostHolderParts = 2;

chain::ChainRequest holder_request(const Inputs& inputs, const JobPort& bung, PortTypeId riser_thread,
                                   const RiserPlan& plan) {
  chain::ChainRequest request;
  request.from = {bung.type, bung.material, chain::Freedom::fixed, "the " + bung.name, true};
  request.to = {riser_thread, plan.material, chain::Freedom::loose, "the riser"};
  request.service = Service::air;
  request.most_parts = kMostHolderParts;
  request.banned.assign(inputs.catalog.parts().size(), false);
  for (std::size_t row = 0; row < request.banned.size(); ++row) {
    const catalog::Part& part = inputs.catalog.parts()[row];
    request.banned[row] = !part.air || part.flexible;
  }
  return request;
}

}  // namespace

void hold_riser(const Inputs& inputs, const JobPort& bung, PortTypeId riser_thread, RiserPlan& plan, Remarks& remarks) {
  reservoir::RiserRequest& request = plan.request;
  if (!bung.type.valid() || request.bung != reservoir::BungKind::full_coupling || request.lid_closed) return;
  const Catalog& catalog = inputs.catalog;
  if (catalog.port_type(bung.type).size == catalog.port_type(riser_thread).size) return;
  chain::Answer answer = chain::find_chain(catalog, holder_request(inputs, bung, riser_thread, plan));
  chain::Run* run = std::get_if<chain::Run>(&answer);
  if (run == nullptr || run->parts.empty()) return;
  // The face that the riser screws into stands that much lower, and its own thread passes nothing.
  request.holder_make_up = run->joints.front().make_up;
  request.bung_projection = request.bung_projection + run->length + request.pipe.make_up;
  request.bung_opening = request.pipe.bore;
  quantity::Texts parts;
  for (const chain::RunPart& link : run->parts) parts.push_back(part_title(catalog, link.part));
  remarks.note(Topic::riser, fact("riser_is_held_by", bung.name, parts));
  plan.holder = std::move(*run);
}

}  // namespace riserun::plan
