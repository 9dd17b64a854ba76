// What it costs at least to lead on from each open end to each set of targets: the table behind steiner_search.
// O(3^targets * junctions + 2^targets * moves * log(faces)), and as many times what is gathered and counted; at most
// 2^26 cells, 1 GB, beyond which it is refused.
#pragma once

#include "chain/search/mixed_radix.h"
#include "chain/tree/steiner_problem.h"

#include <map>
#include <queue>

namespace riserun::chain {

/// Two items side by side that share a set of targets, each beyond its gate. An item is a face, or, counted on from the
/// faces, a junction.
struct Junction {
  std::uint32_t left = 0;
  std::uint32_t right = 0;
  Gate left_gate;
  Gate right_gate;
  auto operator<=>(const Junction&) const = default;
};

struct FaceJoint {
  std::uint32_t face = 0;
  bool closing = false;
};

/// Sets of targets, with what was gathered on the ways to them and the counted bin parts taken, are numbers of a
/// MixedRadix; possible are those in which nothing is gathered for a target that is not there. A cell is an item, a
/// possible number, and whether a fixed end hangs on the item with nothing between that closes.
class SteinerTable {
 public:
  /// @throws InputError where there are too many cells
  SteinerTable(const Rules& rules, const BranchEnds& ends, const BranchCounts& counts, std::vector<BranchMove> moves);

  const std::vector<BranchMove>& moves() const { return moves_; }
  const BranchEnds& ends() const { return ends_; }
  const MixedRadix<std::uint32_t>& tally() const { return tally_; }
  /// The number that holds every target and every need.
  std::uint32_t needed() const { return needed_; }
  /// The splits of a possible number in two possible ones, by their first part.
  std::vector<std::uint32_t> splits_of(std::uint32_t number) const;

  bool is_face(std::uint32_t item) const { return item < faces_.size(); }
  const Junction& junction(std::uint32_t item) const { return junctions_[item - faces_.size()]; }
  /// @pre a part has that face
  std::uint32_t face_row(const Face& face) const;
  /// The base is told apart from parts' faces like it: what is put onto it makes no joint inside the run.
  std::uint32_t base_row() const { return static_cast<std::uint32_t>(faces_.size()) - 1; }
  const std::vector<FaceJoint>& joints(std::uint32_t face) const { return joints_[face]; }
  std::optional<FaceJoint> joint_between(const Face& a, const Face& b) const;
  const Face& face(std::uint32_t row) const { return faces_[row]; }

  /// What it costs to pass each face on the way to the targets of a possible number.
  const std::vector<BranchSum>& passing(std::uint32_t number) const;
  /// What it costs that the face is entered from another part and not from the base, on the way to the targets of a
  /// possible number.
  const std::vector<BranchSum>& joining(std::uint32_t number) const;
  /// The rows of the moves that are this one's like: from it up to, and without, that.
  /// @pre the move is the first of its like
  std::uint32_t alike_end(std::uint32_t move) const { return alike_end_[move]; }

  /// Moves that are entered by that face; of those alike the first.
  const std::vector<std::uint32_t>& entering(std::uint32_t face) const { return entering_[face]; }
  /// The item that leads on from a move, the gate before it, and what the move adds.
  std::uint32_t tail(std::uint32_t move) const { return tails_[move]; }
  const Gate& gate(std::uint32_t move) const { return gates_[move]; }
  const BranchSum& move_sum(std::uint32_t move) const { return move_sums_[move]; }
  const BranchSum& way_sum(std::size_t kind, std::size_t way) const { return way_sums_[kind][way]; }
  /// The target alone, with what that way to end there takes, is the number.
  bool is_end(std::uint32_t number, std::size_t kind, const TargetWay& way) const;
  /// The number holds every target.
  bool holds_all_targets(std::uint32_t number) const;
  /// The number without what the move takes; nullopt: it does not hold that.
  std::optional<std::uint32_t> without(std::uint32_t number, std::uint32_t move) const;

  /// @pre the number is possible
  std::size_t cell(std::uint32_t item, std::uint32_t number, bool held) const {
    return (std::size_t{row_of_number_[number]} * 2 + (held ? 1 : 0)) * item_count_ + item;
  }
  const BranchSum& sum(std::uint32_t item, std::uint32_t number, bool held) const {
    return sums_[cell(item, number, held)];
  }
  bool possible(std::uint32_t number) const { return row_of_number_[number] != UINT32_MAX; }
  /// The number that must lead on behind a gate; nullopt: the gate lets no such number through.
  std::optional<std::uint32_t> behind(const Gate& gate, std::uint32_t number) const {
    if ((kinds_of_[number] & ~gate.kinds) != 0) return std::nullopt;
    if (!gate.quarter_turn) return number;
    return unturned_[number] == UINT32_MAX ? std::nullopt : std::optional(unturned_[number]);
  }

 private:
  using Weigh = void (*)(const Catalog& catalog, const RunEnds& ends, PortTypeId type, Measures& measures);
  using Weighed = std::map<std::uint32_t, std::vector<BranchSum>>;  // by kinds of targets, then by face
  const std::vector<BranchSum>& weighed(Weighed& known_of, std::uint32_t number, Weigh weigh) const;
  RunEnds ends_beyond(std::uint32_t kinds) const;
  void find_alike();
  void make_faces();
  void make_joints();
  void make_moves();
  void make_numbers(const BranchCounts& counts);
  void look_at_number(const BranchCounts& counts, std::uint32_t number);
  std::uint32_t junction_of(const Junction& junction);
  void seed(std::uint32_t number, std::uint32_t move);
  void fill(std::uint32_t number);
  void fill_junctions(std::uint32_t number);
  void reach_targets(std::uint32_t number);
  void improve(std::uint32_t number, std::uint32_t face, bool held, const BranchSum& beyond);
  void enter(std::uint32_t number, std::uint32_t face, bool held, const BranchSum& with_move);

  const Rules& rules_;
  const BranchEnds& ends_;
  std::vector<BranchMove> moves_;
  std::vector<std::uint32_t> alike_end_;
  mutable Weighed passing_;
  mutable Weighed joining_;
  const std::vector<BranchSum>* passing_now_ = nullptr;  // for the number in work
  const std::vector<BranchSum>* joining_now_ = nullptr;
  MixedRadix<std::uint32_t> tally_;
  std::uint32_t needed_ = 0;
  std::uint32_t possible_count_ = 0;
  std::vector<std::uint32_t> row_of_number_;  // UINT32_MAX: not possible
  std::vector<std::uint32_t> kinds_of_;       // by number: bit by kind of target that it holds
  std::vector<std::uint32_t> unturned_;       // by number: without its quarter turns; UINT32_MAX: one is missing

  std::vector<Face> faces_;  // of the parts, sorted; then the base
  std::vector<Junction> junctions_;
  std::vector<std::vector<FaceJoint>> joints_;        // by face that leads on: the faces that can be entered
  std::vector<std::vector<FaceJoint>> joined_from_;   // by face that is entered
  std::vector<std::vector<std::uint32_t>> entering_;  // moves by entered face
  std::vector<std::vector<std::uint32_t>> leaving_;   // moves with one way on that take nothing, by the face that it is
  std::vector<std::uint32_t> seeds_;                  // all other moves
  std::vector<std::uint32_t> turning_;                // of the former, those that turn by a quarter
  std::vector<std::uint32_t> tails_;
  std::vector<Gate> gates_;
  std::vector<std::uint32_t> taken_;  // by move: what it takes, as a number
  std::vector<BranchSum> move_sums_;
  std::vector<std::vector<BranchSum>> way_sums_;  // by kind of target and way to end there
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
