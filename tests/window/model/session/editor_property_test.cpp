// Hundreds of random acts on jobs with comments strewn over them: a job that is kept loads, comments and the lines that
// were not edited stay, and undo goes back byte for byte.
#include "gui/model/edit/fields.h"
#include "gui/model/session/editor.h"
#include "plan/job/starter_job.h"
#include "window/model/bench.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace riserun::gui {
namespace {

using testing::example;

constexpr int kActs = 30;  // on each job

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::stringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

/// Lines of the first text that the second has not: all but the longest row of lines that both have in order.
std::size_t lines_lost(const std::string& before, const std::string& after) {
  const std::vector<std::string> old = lines_of(before);
  const std::vector<std::string> now = lines_of(after);
  std::vector<std::size_t> common(now.size() + 1, 0);
  for (const std::string& line : old) {
    std::size_t diagonal = 0;
    for (std::size_t i = 0; i < now.size(); ++i) {
      const std::size_t above = common[i + 1];
      common[i + 1] = line == now[i] ? diagonal + 1 : std::max(above, common[i]);
      diagonal = above;
    }
  }
  return old.size() - common.back();
}

class Acting {
 public:
  explicit Acting(unsigned seed) : random_(seed) {}

  std::size_t pick(std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n - 1)(random_); }
  template <class T>
  const T& one_of(const std::vector<T>& all) {
    return all[pick(all.size())];
  }

  /// Comments and blank lines at random between the lines, and behind them.
  std::string strewn(const std::string& text) {
    std::string result;
    bool in_brackets = false;
    for (const std::string& line : lines_of(text)) {
      const std::size_t indent = std::min(line.find_first_not_of(' '), line.size());
      if (!in_brackets && pick(4) == 0)
        result += std::string(indent, ' ') + "# a word of mine: [" + std::to_string(pick(90)) + "\n";
      if (!in_brackets && pick(9) == 0) result += "\n";
      const bool open = std::count(line.begin(), line.end(), '{') != std::count(line.begin(), line.end(), '}');
      if (open) in_brackets = !in_brackets;
      result += line + (!line.empty() && line.find('#') == std::string::npos && pick(3) == 0 ? "   # so" : "") + "\n";
    }
    return result;
  }

  Act next(const plan::Job& job, const JobState& state) {
    switch (pick(8)) {
      case 0:
      case 1:
      case 2:
        return set_field(job);
      case 3:
        return AddWish{connection(job), pick(2) == 0 ? WishKind::need : WishKind::avoid, one_of(words_)};
      case 4:
        return AddPort{static_cast<PortOwner>(pick(3)), "port " + std::to_string(pick(9)), one_of(ports_)};
      case 5:
        return Connect{one_of(port_names(job)), pick(2) == 0 ? one_of(port_names(job)) : "", "plug", ""};
      case 6:
        return pick(3) == 0 ? Act(Disconnect{connection(job)})
                            : Act(CountInBin{one_of(parts_), static_cast<int>(pick(4))});
      default:
        return RemoveValue{
            std::next(state.values.begin(), static_cast<std::ptrdiff_t>(pick(state.values.size())))->first};
    }
  }

 private:
  std::string connection(const plan::Job& job) {
    return job.connections.empty() ? "none" : one_of(job.connections).name;
  }
  std::vector<std::string> port_names(const plan::Job& job) {
    std::vector<std::string> names = {"nowhere"};
    for (const auto* ports : {&job.reservoir.ports, &job.table.ports, &job.air.ports})
      for (const plan::JobPort& port : *ports) names.push_back(port.name);
    return names;
  }
  Act set_field(const plan::Job& job) {
    const std::vector<FieldGroup> groups = fields_of(job);
    const Field& field = one_of(one_of(groups).fields);
    if (field.kind == FieldKind::choice && !field.choices.empty()) return SetValue{field.at, one_of(field.choices)};
    switch (field.kind) {
      case FieldKind::length:
        return SetValue{field.at, one_of(std::vector<std::string>{"3-1/2 in", "140 mm", "1'2\"", "0 in", "half"})};
      case FieldKind::lid_place:
        return SetValue{field.at, one_of(std::vector<std::string>{"5 in, 6 in", "120 mm", "1,2,3", ","})};
      case FieldKind::count:
        return SetValue{field.at, one_of(std::vector<std::string>{"1", "3", "-1"})};
      case FieldKind::pressure:
        return SetValue{field.at, one_of(std::vector<std::string>{"3 psi", "0.2 bar", "1 furlong"})};
      case FieldKind::yes_no:
        return SetValue{field.at, one_of(std::vector<std::string>{"yes", "no", "perhaps"})};
      default:
        return SetValue{field.at,
                        one_of(std::vector<std::string>{"2 min", "1 FNPT", "10 ga steel", "3 x 2", "", "60 degF"})};
    }
  }

  std::mt19937 random_;
  const std::vector<std::string> words_ = {"hose", "ball valve", "brass", "check valve", "black iron", "unobtainium"};
  const std::vector<std::string> ports_ = {"1 FNPT", "3/4 MGHT", "1/2 in female NPT", "7 fathoms"};
  const std::vector<std::string> parts_ = {"hex-bushing/black-iron/1x1-2", "no such part"};
};

void act_at_random(const std::string& text, unsigned seed, int& done, int& refused) {
  Acting acting(seed);
  Editor editor(testing::shipped_catalog());
  editor.start(acting.strewn(text), "job.yaml");
  ASSERT_TRUE(editor.job()) << editor.problems().front().text();
  std::vector<std::string> texts = {editor.text()};
  for (int i = 0; i < kActs; ++i) {
    const std::string before = editor.text();
    const Act act = acting.next(*editor.job(), editor.state());
    const Outcome outcome = editor.perform(act);
    ASSERT_TRUE(editor.job());
    if (!outcome.done) {
      ++refused;
      ASSERT_FALSE(outcome.reason.empty());
      ASSERT_EQ(editor.text(), before);
      continue;
    }
    if (editor.text() == before) continue;
    ++done;
    const auto* count = std::get_if<CountInBin>(&act);
    const bool takes_out = std::holds_alternative<Disconnect>(act) || std::holds_alternative<RemoveValue>(act) ||
                           (count != nullptr && count->count == 0);
    ASSERT_LE(lines_lost(before, editor.text()), takes_out ? 16U : 2U) << before << "\n-----\n" << editor.text();
    texts.push_back(editor.text());
  }
  while (editor.undo()) {
    texts.pop_back();
    ASSERT_EQ(editor.text(), texts.back());
  }
  ASSERT_EQ(texts.size(), 1U);
}

TEST(RandomActs, LeaveAJobThatLoadsAndCanBeTakenBackByteForByte) {
  int done = 0;
  int refused = 0;
  for (unsigned seed = 0; seed < 2; ++seed) {
    for (const std::string& text : {plan::starter_job(), example("air-too-weak"), example("one-part-short")}) {
      act_at_random(text, seed, done, refused);
      if (::testing::Test::HasFatalFailure()) return;
    }
  }
  std::cout << done << " acts done, " << refused << " refused\n";
  EXPECT_GT(done, 50);
  EXPECT_GT(refused, 20);
}

}  // namespace
}  // namespace riserun::gui
