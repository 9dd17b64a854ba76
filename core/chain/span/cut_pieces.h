// Pieces that are cut to measure, as moves: how short and how long each can be, and what it costs at each length.
#pragma once

#include "chain/graph/port_graph.h"

#include <vector>

namespace riserun::chain {

/// Least length end to end. Threaded pipe: its two threads and an inch to hold it by (common practice). Tube: what the
/// deepest joint at each end takes in and leaves bare for nut, collar and tool (Seal::bare). Hose: what its joints take
/// in, and one bore free between its two barbs (common practice).
Length shortest_cut(const Catalog& catalog, const catalog::Part& part);
/// Least room of a hose or a tube that is cut and put in last between two ends which stand still, both joints included,
/// micrometres: it is bowed out of the line, no tighter than its least radius, till its end comes over the shallower of
/// the two (bow.h); 0: it is never put in so.
std::int64_t room_to_bow(const Catalog& catalog, const catalog::Part& part);
/// Rigid tube cut to length, both of whose ends are of the kind of an end of the run (copper on, from copper); pipe
/// that takes threads is none, as its threads are those of every fitting.
bool is_tube_of_an_end(const Catalog& catalog, const ChainRequest& request, const catalog::Part& part);
/// Hose or tube off the reel, both of whose ends are of the kind of an end of the run: there the line is of it already
/// (air tube on, to a thread), and that it bends says nothing against it.
bool is_line_of_an_end(const Catalog& catalog, const ChainRequest& request, const catalog::Part& part);
/// Greatest length end to end: of threaded pipe the stick it is cut from, of a remnant its own, of rigid tube 10 ft,
/// the usual length on a rack (common practice), of hose 100 ft.
Length longest_cut(const Catalog& catalog, const catalog::Part& part);

/// A hose between two barbs that look at each other takes an offset in two bends, one after the other, of one radius.
/// Each turns by no more than a right angle, and no bend is tighter than six bores (common practice).
struct HoseRun {
  std::int64_t in_joints = 0;  // micrometres that its two joints take in, at the deepest
  std::int64_t aside = 0;      // micrometres of offset
  std::int64_t bore = 0;       // micrometres
  double slack = 0.0;          // share of its length between the joints; rigid pieces have none

  /// Least room along the axes, its ends on the barbs included.
  std::int64_t least_room() const;
  /// Radius that no bend is under.
  std::int64_t tightest() const;
  /// The greatest offset that its bends make in that room; 0: none.
  std::int64_t most_aside(std::int64_t room) const;
  /// Length of the hose that fills that room, with slack for its bend, and without.
  std::int64_t length(std::int64_t room) const;
  std::int64_t taut(std::int64_t room) const;
  /// Radius of its bends in that room; 0 where it lies straight.
  double radius(std::int64_t room) const;
};
HoseRun hose_run(const Catalog& catalog, const catalog::Part& part, std::int64_t aside);
/// Length of the piece that fills that room: of a hose more than the room, of one that comes made up always its own.
std::int64_t piece_length(const Catalog& catalog, const Move& move, std::int64_t aside, std::int64_t room);

/// Head lost in the piece at that length, nanometres.
std::int64_t head_when_cut(const Catalog& catalog, const Move& move, std::int64_t micrometres, VolumeFlow flow);

/// All pieces to cut, and made-up hoses, that the rules admit. The hoses in one move that takes up what is left over,
/// and in one that lies straight beside such a one. The pieces in one move for each number of catalog pieces that their
/// length takes, so that each move has one price; of rigid tube, and of threaded pipe for which no nipple is let in,
/// the stub besides, as short as it can be. `own` holds the least room that the move takes, `stretch` what it can take
/// beyond.
/// @param asked  rules of the request as it was asked, whose nipples count where `rules` keep to parts that were taken
/// @param most  micrometres of room that no piece needs to exceed
std::vector<Move> cut_moves(const FoldedCatalog& folded, const Rules& rules, const Rules& asked,
                            const std::vector<bool>& counted, std::int64_t aside, std::int64_t most);

}  // namespace riserun::chain
