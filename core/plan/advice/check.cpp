#include "plan/advice/check.h"

#include "plan/advice/change.h"

#include <algorithm>
#include <deque>
#include <optional>
#include <utility>

namespace riserun::plan {

namespace {

constexpr int kMostTogether = 4;  // changes that are named as one mend: more is another job

/// The same thing is open: numbers may have moved, what it is said of has not.
bool same(const Finding& a, const Finding& b) {
  const auto said_of = [](const Finding& finding) {
    const auto& values = finding.reason.values;
    return !values.empty() && std::holds_alternative<std::string>(values.front())
               ? std::get<std::string>(values.front())
               : std::string();
  };
  return a.where == b.where && a.reason.code == b.reason.code && said_of(a) == said_of(b);
}

bool has(const std::vector<Finding>& findings, const Finding& wanted) {
  return std::any_of(findings.begin(), findings.end(), [&](const Finding& finding) { return same(finding, wanted); });
}

/// What is open after each way that was followed: several findings may be mended alike.
class Followed {
 public:
  Followed(Job job, const Catalog& catalog, const PlanAgain& plan_again)
      : job_(std::move(job)), catalog_(catalog), plan_again_(plan_again) {}

  const std::vector<Finding>& after(const Changes& way) {
    const auto known = std::find_if(ways_.begin(), ways_.end(), [&](const auto& one) { return one.first == way; });
    if (known != ways_.end()) return known->second;
    return ways_.emplace_back(way, plan_again_(changed(catalog_, job_, way))).second;
  }

 private:
  const Job job_;
  const Catalog& catalog_;
  const PlanAgain& plan_again_;
  std::deque<std::pair<Changes, std::vector<Finding>>> ways_;
};

/// What a finding asks beyond what is allowed, of pressures; zero: they are none.
PressureDifference beyond(const Finding& finding) {
  if (!finding.numbers || !finding.numbers->allowed) return {};
  const auto* asked = std::get_if<GaugePressure>(&finding.numbers->asked);
  const auto* allowed = std::get_if<GaugePressure>(&*finding.numbers->allowed);
  return asked == nullptr || allowed == nullptr ? PressureDifference() : *asked - *allowed;
}

/// It was there already, and the walls would see more than before: a higher relief valve where one is too high.
bool is_worse(const std::vector<Finding>& before, const Finding& left) {
  constexpr double kSettled = 0.01;  // psi: what the sums move by
  return std::any_of(before.begin(), before.end(), [&](const Finding& was) {
    return same(was, left) && beyond(left) > beyond(was) + psi(kSettled) && beyond(left) > PressureDifference();
  });
}

/// It was not there, or not so bad, and is as grave as the one that is mended.
bool takes_its_place(const std::vector<Finding>& before, const Finding& mended, const Finding& left) {
  return left.severity <= mended.severity && (!has(before, left) || is_worse(before, left));
}

bool mends(const std::vector<Finding>& before, const Finding& finding, const std::vector<Finding>& after) {
  return !has(after, finding) && std::none_of(after.begin(), after.end(), [&](const Finding& left) {
    return takes_its_place(before, finding, left);
  });
}

std::vector<Mend> mends_of(const Finding& finding) {
  std::vector<Mend> mends;
  if (finding.mend) mends.push_back({*finding.mend, finding.ways_to_mend, finding.ways_to_try});
  mends.insert(mends.end(), finding.or_else.begin(), finding.or_else.end());
  return mends;
}

bool can_be_tried(const Mend& mend) { return !mend.ways_to_mend.empty() || !mend.ways_to_try.empty(); }

/// The one way to follow it; nullptr: there is none, or there are several.
const Changes* only_way(const Mend& mend) {
  if (mend.ways_to_mend.size() + mend.ways_to_try.size() != 1) return nullptr;
  return mend.ways_to_mend.empty() ? &mend.ways_to_try.front() : &mend.ways_to_mend.front();
}

/// Changes that are made together, each with its sentence.
class Together {
 public:
  /// What changes the same as one before takes its place.
  void add(const Mend& mend) {
    std::erase_if(steps_, [&](const Mend& step) { return changes_the_same(step, mend); });
    steps_.push_back(mend);
  }
  Changes changes() const {
    Changes all;
    for (const Mend& step : steps_) all.insert(all.end(), only_way(step)->begin(), only_way(step)->end());
    return all;
  }
  Mend as_one() const {
    if (steps_.size() == 1) return steps_.front();
    quantity::Facts said;
    for (const Mend& step : steps_) said.push_back(step.fact);
    Mend mend{fact("mends_together", std::move(said))};
    const bool keyed =
        std::all_of(steps_.begin(), steps_.end(), [](const Mend& step) { return !step.ways_to_mend.empty(); });
    (keyed ? mend.ways_to_mend : mend.ways_to_try).push_back(changes());
    return mend;
  }

 private:
  static bool changes_the_same(const Mend& a, const Mend& b) {
    const Changes& others = *only_way(b);
    return std::any_of(only_way(a)->begin(), only_way(a)->end(), [&](const Change& one) {
      return std::any_of(others.begin(), others.end(),
                         [&](const Change& other) { return one.key == other.key && one.part == other.part; });
    });
  }

  std::vector<Mend> steps_;
};

class Advice {
 public:
  /// @param before  what is open in the job
  Advice(std::vector<Finding> before, Job job, const Catalog& catalog, const PlanAgain& plan_again)
      : before_(std::move(before)), followed_(std::move(job), catalog, plan_again) {}

  /// The finding with a mend that was followed and helps, with one that cannot be tried, or with none.
  Finding checked(const Finding& finding) {
    if (const auto removal = goes_with_a_part(finding)) {
      Finding mended = with(finding, *removal);
      mended.or_else.clear();
      mended.buy.reset();
      mended.also_buy.clear();
      return mended;
    }
    const std::vector<Mend> mends = mends_of(finding);
    std::vector<Mend> helping;
    for (const Mend& mend : mends)
      if (can_be_tried(mend) && helps(finding, mend)) helping.push_back(mend);
    Finding kept = finding;
    kept.or_else.clear();
    if (!helping.empty() && can_be_tried(mends.front()) && helping.front().fact == mends.front().fact)
      return with(kept, with_what_it_opens(finding, helping.front()));
    for (Mend& mend : helping) mend = with_what_it_opens(finding, std::move(mend));
    if (!helping.empty()) return with(kept, either(helping));
    for (const Mend& mend : mends)
      if (const auto whole = carried_on(kept, mend)) return with(kept, *whole);
    if (!mends.empty() && !can_be_tried(mends.front())) return kept;
    if (finding.buy && is_a_step(finding)) return kept;
    kept.mend.reset();
    kept.buy.reset();
    kept.also_buy.clear();
    kept.ways_to_mend.clear();
    kept.ways_to_try.clear();
    return kept;
  }

 private:
  /// A valve that is refused where it stands is taken out, before walls or relief valve are changed for what it asks.
  std::optional<Mend> goes_with_a_part(const Finding& finding) {
    for (const Finding& refused : before_) {
      if (refused.severity != Severity::refused || same(refused, finding)) continue;
      std::optional<Mend> removal;
      if (refused.reason.code == "foot_valve_against_drain")
        removal = Mend{fact("leave_out_foot_valve"), {{{"riser.foot valve", "no"}}}};
      else if (refused.reason.code == "check_valve_against_drain")
        removal = Mend{fact("leave_the_part_out", refused.reason.values.at(1)),
                       {},
                       {{{kCheckLeftOut, refused.reason.values.at(0)}}}};
      if (!removal) continue;
      const std::vector<Finding>& after = followed_.after(*only_way(*removal));
      if (!has(after, finding) && mends(before_, refused, after) && mends(before_, finding, after)) return removal;
    }
    return std::nullopt;
  }

  /// What must be bought in any case is not left off the list because something else is open then.
  bool is_a_step(const Finding& finding) {
    const auto mended = [&](const Changes& way) {
      const std::vector<Finding>& after = followed_.after(way);
      return !has(after, finding) && std::all_of(after.begin(), after.end(), [&](const Finding& left) {
        return left.severity != Severity::refused || has(before_, left);
      });
    };
    return std::all_of(finding.ways_to_mend.begin(), finding.ways_to_mend.end(), mended) &&
           std::all_of(finding.ways_to_try.begin(), finding.ways_to_try.end(), mended);
  }

  bool helps(const Finding& finding, const Mend& mend) {
    const auto all = [&](const std::vector<Changes>& ways) {
      return std::all_of(ways.begin(), ways.end(),
                         [&](const Changes& way) { return mends(before_, finding, followed_.after(way)); });
    };
    return all(mend.ways_to_mend) && all(mend.ways_to_try);
  }

  /// What is refused may be mended into what is not yet fit to go ahead: that is said with the mend.
  Mend with_what_it_opens(const Finding& finding, Mend mend) {
    const Changes* way = only_way(mend);
    if (way == nullptr || finding.severity != Severity::refused) return mend;
    quantity::Facts opens;
    for (const Finding& left : followed_.after(*way))
      if (!has(before_, left)) opens.push_back(left.reason);
    if (!opens.empty()) mend.fact = fact("mend_then_open", quantity::Facts{mend.fact}, std::move(opens));
    return mend;
  }

  static Finding with(Finding finding, Mend mend) {
    finding.mend = std::move(mend.fact);
    finding.ways_to_mend = std::move(mend.ways_to_mend);
    finding.ways_to_try = std::move(mend.ways_to_try);
    return finding;
  }

  static Mend either(const std::vector<Mend>& helping) {
    if (helping.size() == 1) return helping.front();
    quantity::Facts said;
    Mend any;
    for (const Mend& mend : helping) {
      said.push_back(mend.fact);
      any.ways_to_mend.insert(any.ways_to_mend.end(), mend.ways_to_mend.begin(), mend.ways_to_mend.end());
      any.ways_to_try.insert(any.ways_to_try.end(), mend.ways_to_try.begin(), mend.ways_to_try.end());
    }
    any.fact = fact("either_mend", std::move(said));
    return any;
  }

  /// What goes on next: of the finding itself, else of what takes its place, the first mend with one way.
  struct Next {
    Mend mend;
    std::optional<Purchase> buy;
  };
  std::optional<Next> next_after(const Finding& finding, const std::vector<Finding>& after) const {
    std::optional<Next> next;
    for (const Finding& left : after) {
      const bool itself = same(left, finding);
      if (!itself && (next || !takes_its_place(before_, finding, left))) continue;
      const std::vector<Mend> more = mends_of(left);
      const auto way = std::find_if(more.begin(), more.end(), [](const Mend& one) { return only_way(one) != nullptr; });
      if (way == more.end()) continue;
      next = Next{*way, itself || way != more.begin() ? std::nullopt : left.buy};
      if (itself) return next;
    }
    return next;
  }

  /// The mend with those of what it leaves open, until nothing as grave is; what they buy is added to the finding.
  std::optional<Mend> carried_on(Finding& finding, const Mend& mend) {
    if (only_way(mend) == nullptr) return std::nullopt;
    Together together;
    std::vector<Purchase> bought;
    together.add(mend);
    for (int step = 1; !mends(before_, finding, followed_.after(together.changes())); ++step) {
      const auto next = next_after(finding, followed_.after(together.changes()));
      if (!next || step == kMostTogether) return std::nullopt;
      if (next->buy) bought.push_back(*next->buy);
      together.add(next->mend);
    }
    if (!finding.mend || !(mend.fact == *finding.mend)) {
      finding.buy.reset();
      finding.also_buy = mend.buys;
    }
    finding.also_buy.insert(finding.also_buy.end(), bought.begin(), bought.end());
    return together.as_one();
  }

  const std::vector<Finding> before_;
  Followed followed_;
};

/// The mends of one card, taken in turn: each is looked at in the job with those before it done. One that the others
/// have done already is no more to buy, and one that does not help beside them is worked out anew.
class InTurn {
 public:
  InTurn(const Job& job, const Catalog& catalog, const PlanAgain& plan_again)
      : job_(job), catalog_(catalog), plan_again_(plan_again), followed_(job, catalog, plan_again) {}

  void look_at(Finding& finding) {
    const std::optional<Changes> way = way_of(finding);
    if (taken_.empty()) return take(way);
    if (way && is_taken(*way)) return;
    const std::vector<Finding>& now = followed_.after(taken_);
    const auto left = std::find_if(now.begin(), now.end(), [&](const Finding& each) { return same(each, finding); });
    if (left == now.end()) return goes_with_those_before(finding);
    if (!way) return;
    // Of what must be changed together some may be done already.
    if (finding.mend->code != "mends_together" && mends(now, finding, followed_.after(with_taken(*way))))
      return take(way);
    const Finding anew = Advice(now, changed(catalog_, job_, taken_), catalog_, plan_again_).checked(*left);
    const std::optional<Changes> next = way_of(anew);
    if (!next || *next == *way) return take(way);
    finding.mend = fact("mend_once_those_before", quantity::Facts{*anew.mend}, quantity::Facts{*finding.mend});
    finding.buy = anew.buy;
    finding.also_buy = anew.also_buy;
    take(next);
  }

 private:
  static std::optional<Changes> way_of(const Finding& finding) {
    if (!finding.mend) return std::nullopt;
    const Mend mend{*finding.mend, finding.ways_to_mend, finding.ways_to_try};
    const Changes* way = only_way(mend);
    return way == nullptr ? std::nullopt : std::optional(*way);
  }
  bool is_taken(const Changes& way) const {
    return std::all_of(way.begin(), way.end(), [&](const Change& change) {
      return std::find(taken_.begin(), taken_.end(), change) != taken_.end();
    });
  }
  Changes with_taken(const Changes& way) const {
    Changes all = taken_;
    all.insert(all.end(), way.begin(), way.end());
    return all;
  }
  void take(const std::optional<Changes>& way) {
    if (way) taken_ = with_taken(*way);
  }
  static void goes_with_those_before(Finding& finding) {
    finding.mend = finding.mend ? fact("mend_unless_those_before", quantity::Facts{*finding.mend})
                                : fact("goes_with_those_before");
    finding.buy.reset();
    finding.also_buy.clear();
  }

  const Job& job_;
  const Catalog& catalog_;
  const PlanAgain& plan_again_;
  Followed followed_;
  Changes taken_;
};

}  // namespace

void keep_what_mends(Plan& plan, const PlanAgain& plan_again) {
  Advice advice(plan.findings, plan.job, *plan.catalog, plan_again);
  for (Finding& finding : plan.findings) finding = advice.checked(finding);
  InTurn in_turn(plan.job, *plan.catalog, plan_again);
  for (Finding& finding : plan.findings) in_turn.look_at(finding);
}

}  // namespace riserun::plan
