// What it costs at least to lead on from each open end to each set of targets: the table behind search_branches.
#pragma once

#include "chain/branch_search.h"
#include "chain/tally.h"

#include <limits>
#include <queue>

namespace riserun::chain {

/// A Cost in two words; sums of dollars up to ten billions, of parts up to a million.
struct BranchSum {
  std::uint64_t first = std::numeric_limits<std::uint64_t>::max();
  std::uint64_t second = 0;
  auto operator<=>(const BranchSum&) const = default;
  bool reachable() const { return first != std::numeric_limits<std::uint64_t>::max(); }
  friend BranchSum operator+(BranchSum a, const BranchSum& b) { return {a.first + b.first, a.second + b.second}; }
};

/// Two items side by side that share a set of targets. An item is a face, or, counted on from the faces, a junction.
struct Junction {
  std::uint32_t left = 0;
  std::uint32_t right = 0;
  auto operator<=>(const Junction&) const = default;
};

struct FaceJoint {
  std::uint32_t face = 0;
  bool closing = false;
};

/// Sets of targets, with the needs met and the counted bin parts taken, are numbers of a Tally. A cell is an item, a
/// number, and whether a fixed end hangs on the item with nothing between that closes.
class BranchTable {
 public:
  /// @throws InputError where there are too many cells
  BranchTable(const Rules& rules, const BranchEnds& ends, const BranchCounts& counts, std::vector<BranchMove> moves);

  const std::vector<BranchMove>& moves() const { return moves_; }
  const BranchEnds& ends() const { return ends_; }
  const Tally& tally() const { return tally_; }
  /// The number that holds every target and every need.
  std::uint32_t needed() const { return needed_; }
  bool has_target(std::uint32_t number) const { return number % first_other_digit_ != 0; }

  bool is_face(std::uint32_t item) const { return item < faces_.size(); }
  const Junction& junction(std::uint32_t item) const { return junctions_[item - faces_.size()]; }
  std::uint32_t face_row(const Face& face) const;
  const std::vector<FaceJoint>& joints(std::uint32_t face) const { return joints_[face]; }
  std::optional<FaceJoint> joint_between(const Face& a, const Face& b) const;
  const Face& face(std::uint32_t row) const { return faces_[row]; }

  /// Moves that are entered by that face.
  const std::vector<std::uint32_t>& entering(std::uint32_t face) const { return entering_[face]; }
  /// The item that leads on from a move, and what the move adds.
  std::uint32_t tail(std::uint32_t move) const { return tails_[move]; }
  const BranchSum& move_sum(std::uint32_t move) const { return move_sums_[move]; }
  /// The number without what the move takes; nullopt: it does not hold that.
  std::optional<std::uint32_t> without(std::uint32_t number, std::uint32_t move) const;

  std::size_t cell(std::uint32_t item, std::uint32_t number, bool held) const {
    return (std::size_t{number} * 2 + (held ? 1 : 0)) * item_count_ + item;
  }
  const BranchSum& sum(std::uint32_t item, std::uint32_t number, bool held) const {
    return sums_[cell(item, number, held)];
  }

 private:
  void make_faces();
  void make_joints();
  void make_moves();
  void make_needed(const BranchCounts& counts);
  std::uint32_t junction_of(std::uint32_t left, std::uint32_t right);
  void fill(std::uint32_t number);
  void fill_junctions(std::uint32_t number);
  void reach_targets(std::uint32_t number);
  void improve(std::uint32_t number, std::uint32_t face, bool held, const BranchSum& sum);
  void enter(std::uint32_t number, std::uint32_t face, bool held, const BranchSum& sum);

  const Rules& rules_;
  const BranchEnds& ends_;
  std::vector<BranchMove> moves_;
  Tally tally_;
  std::uint32_t needed_ = 0;
  std::uint32_t first_other_digit_ = 1;  // weight of the first digit that is no target's

  std::vector<Face> faces_;  // sorted
  std::vector<Junction> junctions_;
  std::vector<std::vector<FaceJoint>> joints_;        // by face that leads on: the faces that can be entered
  std::vector<std::vector<FaceJoint>> joined_from_;   // by face that is entered
  std::vector<std::vector<std::uint32_t>> entering_;  // moves by entered face
  std::vector<std::vector<std::uint32_t>> leaving_;   // moves with one way on that take nothing, by the face that it is
  std::vector<std::uint32_t> seeds_;                  // all other moves
  std::vector<std::uint32_t> tails_;
  std::vector<std::uint32_t> taken_;  // by move: what it takes, as a number
  std::vector<BranchSum> move_sums_;
  std::vector<std::uint32_t> entered_face_;
  std::size_t item_count_ = 0;
  std::vector<BranchSum> sums_;     // by cell
  std::vector<BranchSum> entered_;  // by face and held, for the number in work
  struct Open {
    BranchSum sum;
    std::uint32_t face = 0;
    bool held = false;
    auto operator<=>(const Open&) const = default;
  };
  std::priority_queue<Open, std::vector<Open>, std::greater<>> open_;
};

}  // namespace riserun::chain
