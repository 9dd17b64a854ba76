// Reads the branches of a connection that has several far ends.
#include "plan/job/job_reading.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::plan {

using catalog::Fields;
using catalog::Value;
using chain::askable;
using chain::Askable;
using chain::Freedom;

namespace {

void read_branch_end(JobReading& reading, Fields& fields, JobBranch& branch) {
  const Value to = fields.find("to");
  const Value ends_in = fields.find("ends in");
  const std::string& path = fields.map().path();
  if (to.exists() && ends_in.exists())
    reading.problems.add(ends_in, fmt::format("{}: a branch has 'to' or 'ends in', not both", ends_in.path()));
  if (!to.exists() && !ends_in.exists())
    reading.problems.add(fields.map(),
                         fmt::format("{}: its end is missing: 'to' names a port, 'ends in' a device", path));
  if (to.exists()) branch.to = fields.need_text("to");
  if (ends_in.exists()) branch.ends_in = read_end_device(reading, ends_in);
}

JobBranch read_branch(JobReading& reading, const Value& value) {
  JobBranch branch;
  static const std::vector<std::string_view> kKeys = with_asked_keys({"name", "to"}, chain::AskedOf::branch);
  Fields fields(value, kKeys, reading.problems);
  if (!fields.valid()) return branch;
  read_branch_end(reading, fields, branch);
  branch.name = fields.text_or("name", branch.ends_in ? branch.ends_in->words : branch.to);
  read_needs(reading, fields, branch.needs, branch.avoided);
  read_rules(reading, fields, branch);
  if (value["feeds"].exists()) branch.feeds = fields.flag_or("feeds", false);
  if (const Value held = fields.find("held"); fields.choice(held, askable("held_end").choices))
    branch.freedom = held.text() == "loose" ? Freedom::loose : Freedom::fixed;
  branch.special_order = fields.flag_or("special order", false);
  return branch;
}

/// What is said of one run between two ends says nothing of several.
void refuse_what_is_for_one_run(JobReading& reading, Fields& fields) {
  std::vector<std::string_view> keys{"to", "ends in", "hose length", "take"};
  for (const Askable& row : chain::askables())
    if (row.one_run && !row.key.empty()) keys.push_back(row.key);
  for (const std::string_view key : keys) {
    const Value value = fields.find(key);
    if (!value.exists()) continue;
    if (key == askable("order_of_needs").key)
      reading.problems.add(value, fmt::format("{}: what all branches need has no one order; with 'branches', 'need' "
                                              "and 'in order' go together in the branch that they are for",
                                              value.path()));
    else
      reading.problems.add(value, fmt::format("{}: is for a connection with one far end; with 'branches' say it "
                                              "there or leave it out",
                                              value.path()));
  }
  const Value held = fields.find("held");
  if (held.is_map() && held["to"].exists())
    reading.problems.add(held["to"], fmt::format("{}: with 'branches', each says how it is held: 'held: fixed' or "
                                                 "'held: loose'",
                                                 held["to"].path()));
  const Value order = fields.find("order");
  const auto known = [&](std::span<const std::string_view> words) {
    return std::find(words.begin(), words.end(), order.text()) != words.end();
  };
  if (order.is_text() && known(askable("order").choices) && !known(askable("order").branch_choices))
    reading.problems.add(order, fmt::format("{}: branches have no one length and no one loss; allowed are 'parts', "
                                            "'price' and 'bin'",
                                            order.path()));
}

}  // namespace

void read_branches(JobReading& reading, Fields& fields, JobConnection& connection) {
  refuse_what_is_for_one_run(reading, fields);
  const Value branches = fields.find("branches");
  for (const Value& item : catalog::read_list(branches, reading.problems))
    connection.branches.push_back(read_branch(reading, item));
  const std::size_t count = connection.branches.size();
  if (branches.is_list() && (count < chain::kFewestTargets || count > chain::kMostTargets))
    reading.problems.add(branches, fmt::format("{}: {} to {} branches are allowed, not {}", branches.path(),
                                               chain::kFewestTargets, chain::kMostTargets, count));
}

}  // namespace riserun::plan
