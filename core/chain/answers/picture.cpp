#include "chain/answers/picture.h"

#include "chain/search/potentials.h"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/graphviz.hpp>

#include <algorithm>
#include <map>
#include <sstream>

namespace riserun::chain {

namespace {

struct DrawnEnd {
  std::string name;
  bool outer = false;  // one of the two ports asked for
};

struct DrawnPart {
  std::string name;  // empty: the last joint
  bool in_answer = false;
};

using Drawing = boost::adjacency_list<boost::vecS, boost::vecS, boost::directedS, DrawnEnd, DrawnPart>;

/// A part between two open ends, by the rows of their port types; the goal's row is one more than the last.
struct Link {
  std::uint32_t from = 0;
  std::uint32_t to = 0;
  PartId part;  // invalid: the last joint
  int parts = 0;
  auto operator<=>(const Link&) const = default;
};

class Picture {
 public:
  Picture(const FoldedCatalog& folded, const ChainRequest& request, const Chain* answer)
      : catalog_(folded.catalog()),
        request_(request),
        goal_(static_cast<std::uint32_t>(catalog_.port_types().size())),
        answer_(answer ? links_of(*answer) : std::vector<Link>{}),
        most_parts_(answer ? answer->part_count : 0) {
    add_links(folded);
  }

  std::string text() const;

 private:
  std::vector<Link> links_of(const Chain& chain) const;
  void add_links(const FoldedCatalog& folded);
  std::vector<Link> near() const;
  std::string name_of(std::uint32_t end) const;

  const Catalog& catalog_;
  const ChainRequest& request_;
  const std::uint32_t goal_;
  const std::vector<Link> answer_;
  const int most_parts_;
  std::vector<Link> links_;  // each once
};

std::vector<Link> Picture::links_of(const Chain& chain) const {
  std::vector<Link> links;
  for (std::size_t i = 0; i < chain.parts.size(); ++i)
    links.push_back({chain.joints[i].a.row, chain.joints[i + 1].a.row, chain.parts[i].part,
                     1 + static_cast<int>(chain.parts[i].plugs().size())});
  links.push_back({chain.joints.back().a.row, goal_, {}, 0});
  return links;
}

void Picture::add_links(const FoldedCatalog& folded) {
  const Rules rules(catalog_, request_);
  GraphExtras extras;
  extras.counted.assign(request_.bin.items.size(), false);
  const PortGraph graph(folded, rules, extras);
  const auto add = [&](PortTypeId open, const Arc& arc) {
    for (std::uint32_t row = arc.move; row < graph.alike_end(arc.move); ++row) {
      const Move& move = graph.moves()[row];
      links_.push_back({open.row, move.leave_type.row, move.part, static_cast<int>(move.own.parts)});
    }
  };
  for (const Arc& arc : graph.arcs_from(rules, request_.from)) add(request_.from.type, arc);
  for (std::uint32_t node = 0; node < graph.nodes().size(); ++node)
    for (const Arc& arc : graph.arcs(node)) add(graph.nodes()[node].type, arc);
  for (const GoalJoint& last : graph.last_joints(rules, request_.to))
    links_.push_back({graph.nodes()[last.node].type.row, goal_, {}, 0});
  if (graph.last_joint(rules, PortGraph::start_of(request_), request_.to))
    links_.push_back({request_.from.type.row, goal_, {}, 0});
  links_.insert(links_.end(), answer_.begin(), answer_.end());  // a piece that is cut to measure is in no graph
  std::sort(links_.begin(), links_.end());
  links_.erase(std::unique(links_.begin(), links_.end()), links_.end());
}

std::vector<Link> Picture::near() const {
  const RowGraph<StepEdge> onward(goal_ + 1, [&](auto emit) {
    for (const Link& link : links_) emit(link.from, StepEdge{link.to, link.parts});
  });
  const RowGraph<StepEdge> back(goal_ + 1, [&](auto emit) {
    for (const Link& link : links_) emit(link.to, StepEdge{link.from, link.parts});
  });
  const std::uint32_t start[] = {request_.from.type.row};
  const std::uint32_t goal[] = {goal_};
  const std::vector<int> from_start = fewest_steps(onward, start);
  const std::vector<int> to_goal = fewest_steps(back, goal);
  const auto is_near = [&](const Link& link) {
    if (answer_.empty()) return from_start[link.from] == 0 || to_goal[link.to] == 0;
    return from_start[link.from] + link.parts + to_goal[link.to] <= most_parts_ ||
           std::find(answer_.begin(), answer_.end(), link) != answer_.end();
  };
  std::vector<Link> found;
  std::copy_if(links_.begin(), links_.end(), std::back_inserter(found), is_near);
  return found;
}

std::string Picture::name_of(std::uint32_t end) const {
  return catalog_.written(end == goal_ ? request_.to.type : PortTypeId{end});
}

std::string Picture::text() const {
  Drawing drawing;
  std::map<std::uint32_t, Drawing::vertex_descriptor> drawn;
  const auto vertex = [&](std::uint32_t end) {
    const auto [known, is_new] = drawn.try_emplace(end, num_vertices(drawing));
    if (is_new) add_vertex(DrawnEnd{name_of(end), end == goal_ || end == request_.from.type.row}, drawing);
    return known->second;
  };
  vertex(request_.from.type.row);
  for (const Link& link : near())
    add_edge(vertex(link.from), vertex(link.to),
             DrawnPart{link.part.valid() ? catalog_.part(link.part).name : "",
                       std::find(answer_.begin(), answer_.end(), link) != answer_.end()},
             drawing);
  vertex(goal_);
  const auto quoted = [](const std::string& name) { return boost::escape_dot_string(name); };
  std::ostringstream out;
  boost::write_graphviz(
      out, drawing,
      [&](std::ostream& to, Drawing::vertex_descriptor at) {
        to << "[label=" << quoted(drawing[at].name) << (drawing[at].outer ? ", shape=box" : "") << "]";
      },
      [&](std::ostream& to, const Drawing::edge_descriptor& at) {
        to << "[label=" << quoted(drawing[at].name) << (drawing[at].name.empty() ? ", arrowhead=none" : "")
           << (drawing[at].in_answer ? ", style=bold" : "") << "]";
      },
      [](std::ostream& to) { to << "rankdir=LR;\n"; });
  return out.str();
}

}  // namespace

std::string picture_of(const FoldedCatalog& folded, const ChainRequest& request, const Chain* answer) {
  return Picture(folded, request, answer).text();
}

}  // namespace riserun::chain
