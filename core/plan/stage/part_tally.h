// The parts of a job, counted as a list is written.
#pragma once

#include "plan/plan.h"

#include <map>
#include <string>
#include <utility>
#include <vector>

namespace riserun::plan {

/// Counts parts by where they come from, and keeps what each is for. The catalog must outlive it.
class PartTally {
 public:
  explicit PartTally(const Catalog& catalog) : catalog_(catalog) {}

  void add(PartId part, bool from_bin, const std::string& used_for, int quantity = 1);
  /// It is there already, and serves once more.
  void used_too(PartId part, const std::string& used_for);
  /// What is no part of the catalog. The same thing twice is one line with a quantity of two.
  void add_unlisted(ListItem item);

  /// In the order in which a store is walked: shelf by shelf, then by name and size.
  std::vector<ListItem> taken(bool from_bin) const;

 private:
  ListItem described(PartId id) const;

  const Catalog& catalog_;
  std::map<std::pair<bool, PartId>, ListItem> items_;
  std::vector<ListItem> unlisted_;
};

}  // namespace riserun::plan
