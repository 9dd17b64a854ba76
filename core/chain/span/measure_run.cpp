// What a run measures along its axes and across them.
#include "chain/span/span_search.h"

#include <cmath>

namespace riserun::chain {

namespace {

std::int64_t times(std::int64_t length, double factor) { return std::llround(static_cast<double>(length) * factor); }

/// Adds up the legs as parts and joints come.
class Tape {
 public:
  explicit Tape(RunLengths& lengths) : lengths_(lengths) {}
  void add(std::int64_t length) { (travels_ ? lengths_.travel : lengths_.along) += length; }
  void add_joint(std::int64_t make_up, std::int64_t tolerance) {
    add(-make_up);
    (travels_ ? lengths_.travel_tolerance : lengths_.along_tolerance) += tolerance;
    (travels_ ? lengths_.travel_square : lengths_.along_square) +=
        static_cast<double>(tolerance) * static_cast<double>(tolerance);
  }
  void turn() { travels_ = !travels_; }

 private:
  RunLengths& lengths_;
  bool travels_ = false;
};

}  // namespace

std::int64_t RunLengths::lands() const { return along + times(travel, std::cos(bend)); }
std::int64_t RunLengths::lands_aside() const { return times(travel, std::sin(bend)); }
std::int64_t RunLengths::band() const { return along_tolerance + times(travel_tolerance, std::cos(bend)); }
std::int64_t RunLengths::band_aside() const { return times(travel_tolerance, std::sin(bend)); }

RunLengths measure_run(const Catalog& catalog, const ChainRequest& request, const std::vector<Move>& moves) {
  RunLengths lengths;
  Tape tape(lengths);
  PortTypeId open = request.from.type;
  const auto join = [&](PortTypeId other) {
    const catalog::MatingRule& rule = *catalog.mating_rule(open, other);
    tape.add_joint(in_micrometres(make_up(catalog, open, other, rule)),
                   in_micrometres(make_up_tolerance(catalog, open, other, rule)));
  };
  for (const Move& move : moves) {
    join(move.enter_type);
    if (move.bend == 0) {
      tape.add(move.own.micrometres);
    } else {
      tape.add(move.before_bend);
      tape.turn();
      tape.add(move.after_bend);
      lengths.bend = move.bend * kRadiansOfThousandth;
    }
    open = move.leave_type;
  }
  join(request.to.type);
  return lengths;
}

}  // namespace riserun::chain
