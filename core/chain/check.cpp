#include "chain/check.h"

#include "chain/ask/askable.h"
#include "quantity/input_error.h"

#include <fmt/format.h>

#include <algorithm>

namespace riserun::chain {

namespace {

/// Gathers all that is wrong.
class Checking {
 public:
  explicit Checking(const Catalog& catalog) : catalog_(catalog) {}

  void look_at(const ChainRequest& request);
  void look_at(const Span& span);
  void look_at(const AssemblyRequest& request);
  void count_needs(std::size_t needs, bool of_branches);
  void finish() const {
    if (!problems_.empty()) throw quantity::InputError(problems_);
  }

 private:
  void say(std::string message) { problems_.push_back({"", 0, 0, std::move(message), ""}); }
  template <class Rules>
  void look_at_ranges(const Rules& rules, const std::string& where);
  void look_at_needs(const std::vector<Need>& needs, const std::string& where);
  void look_at_rows(const std::vector<bool>& rows, const char* what);
  void look_at_branch(const BranchRules& branch, const std::string& where);

  const Catalog& catalog_;
  std::vector<quantity::Problem> problems_;
};

template <class Rules>
void Checking::look_at_ranges(const Rules& rules, const std::string& where) {
  for (const Askable& row : askables())
    if (const auto wrong = out_of_range(rules, row))
      say(fmt::format("{}{}: {}", where, row.key.empty() ? row.code : row.key, wrong->message));
}

void Checking::look_at_needs(const std::vector<Need>& needs, const std::string& where) {
  for (const Need& need : needs)
    if (need.parts.empty()) say(fmt::format("{}no part is a '{}', which must be in it", where, need.words));
}

void Checking::look_at_rows(const std::vector<bool>& rows, const char* what) {
  if (!rows.empty() && rows.size() != catalog_.parts().size())
    say(fmt::format("{}: {} parts are told of, the catalog has {}", what, rows.size(), catalog_.parts().size()));
}

void Checking::look_at(const ChainRequest& request) {
  look_at_ranges(static_cast<const RunRules&>(request), "");
  look_at_needs(request.needs, "");
  look_at_rows(request.banned, "what is ruled out");
  look_at_rows(request.not_sold, "what is not sold");
}

void Checking::look_at(const Span& span) {
  look_at_ranges(span, "");
  if (span.offset <= Length{} && span.roll > Length{})
    say("a second offset, at right angles to the first, asks for the first");
}

void Checking::count_needs(std::size_t needs, bool of_branches) {
  if (needs > kMostNeeds)
    say(fmt::format("at most {} needs{}, not {}", kMostNeeds, of_branches ? ", those of single branches included" : "",
                    needs));
}

void Checking::look_at_branch(const BranchRules& branch, const std::string& where) {
  look_at_ranges(static_cast<const WayRules&>(branch), where);
  look_at_needs(branch.needs, where);
  look_at_rows(branch.banned, "what a branch is to avoid");
}

void Checking::look_at(const AssemblyRequest& request) {
  look_at(request.rules);
  const std::size_t count = request.targets.size();
  if (count < kFewestTargets || count > kMostTargets)
    say(fmt::format("an assembly joins one port to {} to {} others, not to {}", kFewestTargets, kMostTargets, count));
  if (request.rules.order == Order::length || request.rules.order == Order::loss)
    say("an assembly has no one length and no one head to be weighed by, as each branch has its own; allowed orders: "
        "line, parts, price, bin");
  for (const Askable& row : askables())
    if (row.one_run && is_asked(request.rules, row))
      say(fmt::format("{}: is for a run with one far end, not for an assembly", row.key));
  std::size_t needs = request.rules.needs.size();
  for (std::size_t row = 0; row < request.branches.size(); ++row) {
    look_at_branch(request.branches[row], fmt::format("branch {}: ", row + 1));
    needs += request.branches[row].needs.size();
  }
  count_needs(needs, true);
  const auto known = [](const PortEnd& end) { return end.freedom == Freedom::loose || end.freedom == Freedom::fixed; };
  if (!known(request.rules.from) || !std::all_of(request.targets.begin(), request.targets.end(), known))
    say("an end of an assembly is loose or fixed; sliding and spinning ends are for chains");
}

}  // namespace

void check(const Catalog& catalog, const ChainRequest& request) {
  Checking checking(catalog);
  checking.look_at(request);
  checking.count_needs(request.needs.size(), false);
  checking.finish();
}

void check(const Catalog& catalog, const ChainRequest& request, const Span& span) {
  Checking checking(catalog);
  checking.look_at(request);
  checking.count_needs(request.needs.size(), false);
  checking.look_at(span);
  checking.finish();
}

void check(const Catalog& catalog, const AssemblyRequest& request) {
  Checking checking(catalog);
  checking.look_at(request);
  checking.finish();
}

}  // namespace riserun::chain
