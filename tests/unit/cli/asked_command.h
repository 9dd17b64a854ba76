// The command asked as a person asks it, without a process: its words, its exit status, what it prints.
#pragma once

#include "cli/command.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <sstream>
#include <string>
#include <vector>

namespace riserun::cli {

using nlohmann::json;
using testing::HasSubstr;
using testing::Not;
using Words = std::vector<std::string>;

struct Answered {
  int status;
  std::string out;
  std::string err;
};

inline Answered ask(const Words& words) {
  std::vector<const char*> arguments{"riserun"};
  for (const std::string& word : words) arguments.push_back(word.c_str());
  std::ostringstream out;
  std::ostringstream err;
  const int status = run(static_cast<int>(arguments.size()), arguments.data(), out, err);
  return {status, out.str(), err.str()};
}

/// The words one after the other.
inline Words operator+(Words words, const Words& more) {
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

/// Bad input says what is wrong on the error stream, and nothing else.
inline std::string complaint(const Words& words) {
  const Answered answered = ask(words);
  EXPECT_EQ(answered.status, kBadInput) << testing::PrintToString(words);
  EXPECT_EQ(answered.out, "") << testing::PrintToString(words);
  EXPECT_NE(answered.err, "") << testing::PrintToString(words);
  return answered.err;
}

struct AnsweredJson {
  int status;
  json answer;
};

inline AnsweredJson ask_json(const Words& words) {
  const Answered answered = ask(words + Words{"--json"});
  EXPECT_EQ(answered.err, "") << testing::PrintToString(words);
  return {answered.status, json::parse(answered.out)};
}

/// `riserun chain` with these words: the exit status and the answer.
inline AnsweredJson chain(const Words& words) { return ask_json(Words{"chain"} + words); }

/// What each entry of a JSON list has under that key.
template <class T = std::string>
std::vector<T> each(const json& list, const std::string& key) {
  std::vector<T> result;
  for (const json& entry : list) result.push_back(entry.at(key).get<T>());
  return result;
}

/// The parts of the first chain, by that key.
inline std::vector<std::string> parts(const json& answer, const std::string& key) {
  return each(answer.at("chains").at(0).at("parts"), key);
}

/// The families of the first chain's parts.
inline std::vector<std::string> families(const json& answer) {
  std::vector<std::string> result = parts(answer, "id");
  for (std::string& id : result) id.erase(id.find('/'));
  return result;
}

inline std::string example(const std::string& name) {
  return std::string(RISERUN_SOURCE_DIR) + "/examples/" + name + ".yaml";
}

}  // namespace riserun::cli
