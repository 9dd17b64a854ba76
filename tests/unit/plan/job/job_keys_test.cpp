// The table of a job's keys holds what the reader takes: no key more, none less, and the same words to choose from.
#include "plan/job/job_keys.h"

#include "quantity/input_error.h"
#include "unit/plan/shipped.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <regex>
#include <set>

namespace riserun::plan {
namespace {

/// A wrong key in every map that there is.
const char* const kWrongKeys = R"(zzz: 1
reservoir: {zzz: 1, inside: {zzz: 2}, supports: {zzz: 3, widest bare panel: {zzz: 1}}, ports: {a: {zzz: 1}}}
table: {zzz: 1, inside: {zzz: 1}, ports: {b: {zzz: 1}}}
air: {zzz: 1, ports: {c: {zzz: 1}}}
riser: {zzz: 1}
vent: {zzz: 1}
relief valve: {zzz: 1}
wishes: {zzz: 1}
measured: [{zzz: 1}]
bin: [{zzz: 1, part: 1 x 4 nipple black iron, measured: {zzz: 1}}]
prices: [{zzz: 1}]
connections: [{zzz: 1, held: {zzz: 1}, branches: [{zzz: 1}, {zzz: 1}], take: [{zzz: 1}]}]
)";

std::vector<std::string> what_is_wrong_with(const std::string& text) {
  std::vector<std::string> messages;
  try {
    read_job(*shipped_catalog(), text, "job.yaml");
  } catch (const quantity::InputError& error) {
    for (const quantity::Problem& problem : error.problems()) messages.push_back(problem.message);
  }
  return messages;
}

std::set<std::string> names_in(const std::string& list) {
  std::set<std::string> names;
  const std::regex between(", | or ");
  for (std::sregex_token_iterator name(list.begin(), list.end(), between, -1), end; name != end; ++name)
    names.insert(*name);
  return names;
}

/// As the table writes it: a row of a list has no number, a port of one's own no name.
std::string table_path(std::string path) {
  path = std::regex_replace(path, std::regex(R"(\[\d+\])"), "[]");
  return std::regex_replace(path, std::regex(R"(ports\.[abc]$)"), "ports.*");
}

TEST(JobKeys, AreThoseThatTheReaderTakes) {
  std::map<std::string, std::set<std::string>> taken;
  const std::regex unknown(R"((?:(.*): )?unknown key 'zzz' \(allowed: (.*)\))");
  for (const std::string& message : what_is_wrong_with(kWrongKeys)) {
    std::smatch found;
    if (std::regex_match(message, found, unknown)) taken[table_path(found[1])] = names_in(found[2]);
  }
  for (const auto& [path, names] : taken) {
    std::set<std::string> said;
    for (const JobKey* key : keys_under(path)) said.insert(std::string(key->name()));
    EXPECT_EQ(said, names) << "under '" << path << "'";
  }
  for (const JobKey& key : job_keys()) EXPECT_TRUE(key.form != JobForm::map || taken.count(key.path) == 1) << key.path;
}

// Each key of a few words, given another one, is answered with just these.
TEST(JobKeys, HaveTheWordsThatTheReaderTakes) {
  const std::vector<std::string> messages = what_is_wrong_with(R"(units: zzz
reservoir: {inside: {length: 4 ft, width: 2 ft, height: 1 ft}, sheet: 10 ga steel, lid: zzz,
  supports: {widest bare panel: {length: 1 ft, width: 1 ft, in: zzz}, lid stays: zzz},
  ports: {a: {port: 1 FNPT, where: zzz, bung: zzz}}}
table: {inside: {length: 4 ft, width: 2 ft}, depth: 2 in, floor height: 3 ft, ports: {b: {port: 1 FNPT, where: zzz}}}
air: {delivery: 4 scfm}
wishes: {order: zzz}
connections: [{from: a, carries: zzz, galvanic: zzz, order: zzz, held: {from: zzz, to: zzz}, to: b},
  {from: a, branches: [{to: b, looks: zzz, held: zzz}, {to: b}]}]
bin: [{part: 1-1/4 x 18 threaded pipe black iron, length: 10 in, ends: zzz}]
)");
  for (const JobKey& key : job_keys()) {
    if (key.choices.empty() || key.path == "reservoir.shape") continue;  // a shape is refused in words of its own
    const bool said = std::any_of(messages.begin(), messages.end(), [&](const std::string& message) {
      if (table_path(message.substr(0, message.find(": "))) != key.path &&
          message.find(key.path + ": ") == std::string::npos &&
          table_path(std::regex_replace(message.substr(0, message.find(": ")), std::regex(R"(ports\.[abc]\.)"),
                                        "ports.*.")) != key.path)
        return false;
      return std::all_of(key.choices.begin(), key.choices.end(),
                         [&](std::string_view word) { return message.find(word) != std::string::npos; });
    });
    EXPECT_TRUE(said) << key.path << testing::PrintToString(messages);
  }
}

TEST(JobKeys, EachSaysWhatItIsAndStandsUnderOneThatIsThere) {
  std::set<std::string> paths;
  for (const JobKey& key : job_keys()) {
    EXPECT_TRUE(paths.insert(key.path).second) << key.path;
    EXPECT_GE(key.help.size(), 5u) << key.path;
    EXPECT_FALSE(key.help.ends_with('.')) << key.path;
    EXPECT_EQ(key.form == JobForm::choice, !key.choices.empty()) << key.path;
  }
}

}  // namespace
}  // namespace riserun::plan
