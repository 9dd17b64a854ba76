#include "property/chain/assembly.h"

#include "report/words/say.h"

#include <numeric>

namespace riserun::chain::testing {

using namespace riserun::catalog;  // NOLINT(google-build-using-namespace)

std::string text_of(const BuildStep& step) { return report::say(step.what, UnitSystem::inch); }

namespace {

/// Bodies in a row: the first port, the parts (a union that is taken apart is two bodies), the last port.
class Bench {
 public:
  Bench(const Catalog& catalog, const ChainRequest& request, const Chain& chain)
      : catalog_(catalog), request_(request), chain_(chain) {}

  std::string carry_out();

 private:
  std::string lay_out();
  std::string do_step(const BuildStep& step, bool last);
  std::string make_joint(const BuildStep& step);
  std::string check_turned_body(const BuildStep& step);

  bool holds_end(int cluster, int end_body) const { return cluster_[static_cast<std::size_t>(end_body)] == cluster; }
  bool can(int cluster, bool (*may)(Freedom)) const {
    if (holds_end(cluster, 0) && !may(request_.from.freedom)) return false;
    return !holds_end(cluster, static_cast<int>(cluster_.size()) - 1) || may(request_.to.freedom);
  }
  int cluster_of(int body) const { return cluster_[static_cast<std::size_t>(body)]; }
  void join(int a, int b) {
    const int gone = cluster_of(b);
    const int stays = cluster_of(a);
    for (int& cluster : cluster_)
      if (cluster == gone) cluster = stays;
  }

  const Catalog& catalog_;
  const ChainRequest& request_;
  const Chain& chain_;
  std::vector<int> cluster_;
  std::vector<int> left_body_;   // of each joint
  std::vector<int> first_body_;  // of each part
  std::vector<int> last_body_;
  std::size_t split_ = kNoJoint;  // row of the part that is taken apart
  std::vector<bool> made_;
};

bool turns(Freedom f) { return f == Freedom::spinning || f == Freedom::loose; }
bool moves(Freedom f) { return f == Freedom::sliding || f == Freedom::loose; }

std::size_t part_named_in(const std::string& text, std::size_t from = 0) {
  const std::size_t at = text.find("part ", from);
  return at == std::string::npos ? 0 : static_cast<std::size_t>(std::stoi(text.substr(at + 5)));
}

std::string Bench::lay_out() {
  for (const BuildStep& step : chain_.steps)
    if (step.joint == chain_.joints.size() && step.closing) split_ = part_named_in(text_of(step)) - 1;
  if (split_ != kNoJoint && (split_ >= chain_.parts.size() || !catalog_.part(chain_.parts[split_].part).closing))
    return "the part that is taken apart is no union";
  int body = 1;
  for (std::size_t row = 0; row < chain_.parts.size(); ++row) {
    left_body_.push_back(body - 1);
    first_body_.push_back(body);
    if (row == split_) ++body;
    last_body_.push_back(body++);
  }
  left_body_.push_back(body - 1);
  cluster_.resize(static_cast<std::size_t>(body) + 1);
  std::iota(cluster_.begin(), cluster_.end(), 0);
  made_.assign(chain_.joints.size(), false);
  return "";
}

// The step must name as turned a body that can turn, of the side that it is on.
std::string Bench::check_turned_body(const BuildStep& step) {
  const std::size_t at = text_of(step).find(": turn ");
  if (at == std::string::npos) return "the step does not say what turns: " + text_of(step);
  const std::string what = text_of(step).substr(at + 7, 14);
  const int left = left_body_[step.joint];
  const bool from_end = what.starts_with("the first port");
  const bool to_end = what.starts_with("the last port");
  int body = -1;
  if (from_end) body = 0;
  if (to_end) body = static_cast<int>(cluster_.size()) - 1;
  if (what.starts_with("part ") || what.starts_with("that half")) {
    const std::size_t part = what.starts_with("part ") ? part_named_in(what) - 1 : split_;
    if (part >= chain_.parts.size()) return "no such part: " + text_of(step);
    body = step.joint == part ? first_body_[part] : last_body_[part];
  }
  if (body != left && body != left + 1) return "the body that turns is not at that joint: " + text_of(step);
  return can(cluster_of(body), turns) ? "" : "that body cannot turn any more: " + text_of(step);
}

std::string Bench::make_joint(const BuildStep& step) {
  if (made_[step.joint]) return "a joint is made twice";
  made_[step.joint] = true;
  const int a = cluster_of(left_body_[step.joint]);
  const int b = cluster_of(left_body_[step.joint] + 1);
  if (a == b) return "both sides are one already";
  const MatingRule& rule = catalog_.mating_rules()[chain_.joints[step.joint].rule];
  if (rule.turning == Turning::either) {
    if (const std::string wrong = check_turned_body(step); !wrong.empty()) return wrong;
  } else {
    const bool play = can(a, moves) || can(b, moves) || can(a, turns) || can(b, turns);
    if (!rule.closing && !play) return "neither side can be pushed in: " + text_of(step);
  }
  join(left_body_[step.joint], left_body_[step.joint] + 1);
  return "";
}

std::string Bench::do_step(const BuildStep& step, bool last) {
  if (step.closing != last) return "only the last step may close the run, and it must";
  if (step.joint == kNoJoint) return text_of(step).find("spare") == std::string::npos ? "not a plug step" : "";
  if (step.joint < chain_.joints.size()) return make_joint(step);
  if (!step.closing) return "";
  join(first_body_[split_], last_body_[split_]);
  return "";
}

std::string Bench::carry_out() {
  if (!chain_.buildable) return "said not to be buildable";
  if (const std::string wrong = lay_out(); !wrong.empty()) return wrong;
  for (std::size_t i = 0; i < chain_.steps.size(); ++i)
    if (const std::string wrong = do_step(chain_.steps[i], i + 1 == chain_.steps.size()); !wrong.empty()) return wrong;
  for (const int cluster : cluster_)
    if (cluster != cluster_.front()) return "the run is not whole at the end";
  std::size_t plugs = 0;
  for (const RunPart& link : chain_.parts) plugs += link.plugs().size();
  for (const BuildStep& step : chain_.steps) plugs -= step.joint == kNoJoint ? 1 : 0;
  return plugs == 0 ? "" : "a plug is left over";
}

}  // namespace

std::string carry_out(const Catalog& catalog, const ChainRequest& request, const Chain& chain) {
  return Bench(catalog, request, chain).carry_out();
}

}  // namespace riserun::chain::testing
