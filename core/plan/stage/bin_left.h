// What is left of the bin: a value that each stage that takes parts is given and hands on, smaller.
#pragma once

#include "plan/job/job.h"

#include <utility>

namespace riserun::plan {

class BinLeft {
 public:
  explicit BinLeft(Bin bin) : bin_(std::move(bin)) {}

  int count_of(PartId part) const { return bin_.count_of(part); }
  /// Takes one; false when there is none.
  bool take(PartId part);
  /// Takes all that an allocation gave.
  void take(const Bin& given);
  const Bin& bin() const { return bin_; }

 private:
  Bin bin_;
};

}  // namespace riserun::plan
