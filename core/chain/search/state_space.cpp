#include "chain/search/state_space.h"

namespace riserun::chain {

StateSpace::StateSpace(const Rules& rules, const PortGraph& graph, const SearchLimits& limits)
    : rules_(rules),
      graph_(graph),
      limits_(limits),
      digits_(rules.request().bin, graph.moves()),
      counts_(limits.most_parts || limits.most_bushings || graph.counts_the_bin()),
      first_arcs_(graph.arcs_from(rules, rules.request().from)) {}

std::optional<SearchState> StateSpace::after(const SearchState& before, const Arc& arc) const {
  const std::optional<Progress> progress = chain::after(rules_, before.progress, arc);
  if (!progress) return std::nullopt;
  SearchState state = before;
  state.node = arc.to;
  state.progress = *progress;
  if (!counts_) return state;
  const Move& move = graph_.moves()[arc.move];
  if (limits_.most_parts) {
    const std::int64_t parts = state.parts + move.own.parts;
    if (parts > *limits_.most_parts) return std::nullopt;
    state.parts = static_cast<std::uint16_t>(parts);
  }
  if (limits_.most_bushings && move.bushing && ++state.bushings > *limits_.most_bushings) return std::nullopt;
  if (!digits_.spend(state.spent, move)) return std::nullopt;
  return state;
}

std::optional<LastJoint> StateSpace::last_joint(const SearchState& state) const {
  if (!rules_.satisfied(state.progress.met)) return std::nullopt;
  const ChainRequest& request = rules_.request();
  const Node open = is_start(state) ? PortGraph::start_of(request) : graph_.nodes()[state.node];
  std::optional<LastJoint> last = graph_.last_joint(rules_, open, request.to);
  if (last && !state.progress.closed && !last->closes) last.reset();
  return last;
}

}  // namespace riserun::chain
