#include "gui/model/edit/lead.h"

#include <algorithm>
#include <array>

namespace riserun::gui {

namespace {

using catalog::PartId;
using chain::Chain;
using chain::ChainRequest;
using chain::Finder;
using chain::Order;

constexpr std::size_t kMostNeeds = 8;  // that a request may hold
constexpr int kMostRounds = 12;        // of asking again with what still differs
constexpr std::array kOrders = {Order::parts, Order::price, Order::loss, Order::length, Order::bin};

/// What `a` has and `b` has not, with how often.
PartRow beyond(PartRow a, PartRow b) {
  std::sort(a.begin(), a.end());
  std::sort(b.begin(), b.end());
  PartRow rest;
  std::set_difference(a.begin(), a.end(), b.begin(), b.end(), std::back_inserter(rest));
  return rest;
}

bool contains(const PartRow& row, PartId part) { return std::find(row.begin(), row.end(), part) != row.end(); }

ChainRequest with(const Finder& finder, ChainRequest request, const Lead& lead) {
  if (lead.order) request.order = *lead.order;
  for (const PartId part : lead.needs) {
    request.needs.push_back({std::to_string(part.row), {part}});
    if (!request.banned.empty()) request.banned[part.row] = false;
  }
  if (request.banned.empty()) request.banned.resize(finder.catalog().parts().size(), false);
  for (const PartId part : lead.avoids) request.banned[part.row] = true;
  if (lead.most_parts) request.most_parts = lead.most_parts;
  return request;
}

class LeadSearch {
 public:
  LeadSearch(const Finder& finder, const ChainRequest& request, const PartRow& target,
             const std::function<bool(const Lead&)>& accept)
      : finder_(finder), request_(request), target_(target), accept_(accept) {}

  bool run(bool may_reorder) {
    const std::optional<Chain> now = ask({});
    const PartRow chain = now ? parts_of(*now) : PartRow();
    if (may_reorder && any_order()) return true;
    if (any_single(beyond(target_, chain), beyond(chain, target_))) return true;
    if (by_rounds({})) return true;
    for (const Order order : kOrders) {
      Lead lead;
      lead.order = order;
      if (may_reorder && order != request_.order && by_rounds(lead)) return true;
    }
    return false;
  }

 private:
  std::optional<Chain> ask(const Lead& lead) const {
    if (request_.needs.size() + lead.needs.size() > kMostNeeds) return std::nullopt;
    chain::Answer answer = finder_.find(with(finder_, request_, lead));
    Chain* chain = std::get_if<Chain>(&answer);
    return chain != nullptr ? std::optional(std::move(*chain)) : std::nullopt;
  }

  bool leads(const Lead& lead) const {
    const std::optional<Chain> chain = ask(lead);
    return chain && parts_of(*chain) == target_;
  }

  bool any_order() {
    for (const Order order : kOrders) {
      Lead lead;
      lead.order = order;
      if (order != request_.order && leads(lead) && accept_(lead)) return true;
    }
    return false;
  }

  bool any_single(const PartRow& missing, const PartRow& unwanted) {
    for (const PartId part : missing)
      if (const Lead lead{{}, {part}, {}, {}}; leads(lead) && accept_(lead)) return true;
    for (const PartId part : unwanted)
      if (const Lead lead{{}, {}, {part}, {}}; !contains(target_, part) && leads(lead) && accept_(lead)) return true;
    return false;
  }

  /// Asks again and again with what the answer lacks and has too much of, until it is the chain.
  bool by_rounds(Lead lead) {
    for (int round = 0; round < kMostRounds; ++round) {
      const std::optional<Chain> chain = ask(lead);
      if (!chain) return false;
      const PartRow row = parts_of(*chain);
      if (row == target_) return accept_(smallest(lead)) || accept_(lead);
      if (!add_differences(lead, row)) return false;
    }
    return false;
  }

  bool add_differences(Lead& lead, const PartRow& row) const {
    const std::size_t before = lead.size();
    for (const PartId part : beyond(row, target_))
      if (!contains(target_, part) && !contains(lead.avoids, part)) lead.avoids.push_back(part);
    for (const PartId part : beyond(target_, row)) add_need(lead, part);
    if (lead.size() == before && row.size() > target_.size() && !lead.most_parts)
      lead.most_parts = static_cast<int>(target_.size());
    return lead.size() > before;
  }

  /// As often as the chain has the part.
  void add_need(Lead& lead, PartId part) const {
    const auto asked = std::count(lead.needs.begin(), lead.needs.end(), part);
    const auto wanted = std::count(target_.begin(), target_.end(), part);
    if (asked < wanted && request_.needs.size() + lead.needs.size() < kMostNeeds) lead.needs.push_back(part);
  }

  /// Drops each wish that is not needed.
  Lead smallest(Lead lead) const {
    const auto drop_from = [&](std::vector<PartId> Lead::*list) {
      for (std::size_t i = (lead.*list).size(); i-- > 0;) {
        Lead less = lead;
        (less.*list).erase((less.*list).begin() + static_cast<std::ptrdiff_t>(i));
        if (leads(less)) lead = std::move(less);
      }
    };
    drop_from(&Lead::avoids);
    drop_from(&Lead::needs);
    return lead;
  }

  const Finder& finder_;
  const ChainRequest& request_;
  const PartRow& target_;
  const std::function<bool(const Lead&)>& accept_;
};

}  // namespace

PartRow parts_of(const Chain& chain) {
  PartRow row;
  for (const chain::RunPart& part : chain.parts) row.push_back(part.part);
  return row;
}

bool find_lead(const Finder& finder, const ChainRequest& request, const PartRow& target, bool may_reorder,
               const std::function<bool(const Lead&)>& accept) {
  return LeadSearch(finder, request, target, accept).run(may_reorder);
}

}  // namespace riserun::gui
