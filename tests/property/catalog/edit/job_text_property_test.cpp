// Thousands of edits at random places of random files: what was asked is there, everything else stands as it stood.
#include "catalog/edit/job_text.h"
#include "property/catalog/edit/random_yaml.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>

namespace riserun::catalog {
namespace {

using testing::all_paths;
using testing::random_yaml;

constexpr int kFiles = 250;
constexpr int kEditsPerFile = 8;

/// Paths with the texts that stand there; what a file means, without regard to how it is written.
using Meaning = std::map<std::string, std::string>;

void gather(const catalog::Value& value, Meaning& meaning) {
  meaning[value.path()] = value.is_text() ? "=" + std::string(value.text()) : std::to_string(value.size());
  for (const catalog::Value& item : value.items()) gather(item, meaning);
}

Meaning meaning_of(const std::string& text) {
  Problems problems;
  const auto document = Document::parse(text, "file", problems);
  EXPECT_TRUE(problems.empty()) << text;
  Meaning meaning;
  gather(document.root(), meaning);
  return meaning;
}

std::size_t common_prefix(const std::string& a, const std::string& b) {
  return static_cast<std::size_t>(std::mismatch(a.begin(), a.end(), b.begin(), b.end()).first - a.begin());
}

std::size_t common_suffix(const std::string& a, const std::string& b, std::size_t limit) {
  std::size_t n = 0;
  while (n < limit && a[a.size() - 1 - n] == b[b.size() - 1 - n]) ++n;
  return n;
}

/// Bytes of `a` that are not in `b`, where the two differ in one stretch.
std::size_t lost_bytes(const std::string& a, const std::string& b) {
  const std::size_t prefix = common_prefix(a, b);
  return a.size() - prefix - common_suffix(a, b, std::min(a.size(), b.size()) - prefix);
}

JobText read(const std::string& text) {
  auto result = JobText::read(text, "file");
  EXPECT_TRUE(std::holds_alternative<JobText>(result))
      << std::get<std::vector<quantity::Problem>>(result).front().text() << text;
  return std::get<JobText>(std::move(result));
}

struct MixedRadix {
  int done = 0;
  int refused = 0;
};

class RandomEdits : public ::testing::Test {
 protected:
  template <class T>
  const T& one_of(const std::vector<T>& all) {
    return all[std::uniform_int_distribution<std::size_t>(0, all.size() - 1)(random)];
  }

  /// Edits every file a few times, each time with what came out before.
  template <class Edit>
  MixedRadix edit_files(Edit edit) {
    MixedRadix tally;
    for (int file = 0; file < kFiles; ++file) {
      JobText text = read(random_yaml(random));
      for (int i = 0; i < kEditsPerFile; ++i) {
        const std::vector<JobPath> paths = all_paths(text.root());
        auto [edited, known] = edit(text, one_of(paths));
        if (!known) continue;
        if (const auto* why = std::get_if<CannotEdit>(&edited)) {
          ++tally.refused;
          EXPECT_LE(tally.refused, 20) << why->reason << text.text();
          continue;
        }
        ++tally.done;
        text = std::get<JobText>(std::move(edited));
        if (HasFailure()) return tally;
      }
    }
    return tally;
  }

  std::mt19937 random{20240531};
};

TEST_F(RandomEdits, AReplacedTextChangesItsOwnLineOnly) {
  const std::vector<std::string> values = {"5-1/2 in", "1'1-11/16\"", "\"quoted\" - and: [odd] # {text}",       "null",
                                           "- x",      "ö, ä",        "a longer text than there was before it", "x"};
  const MixedRadix tally = edit_files([&](const JobText& text, const JobPath& path) {
    const TextNode& node = *text.find(path);
    if (!node.is_text()) return std::pair(Edited(CannotEdit{}), false);
    const std::string value = one_of(values);
    Edited edited = text.set(path, value);
    if (const JobText* now = std::get_if<JobText>(&edited)) {
      Meaning wanted = meaning_of(text.text());
      wanted[path.text()] = "=" + value;
      EXPECT_EQ(meaning_of(now->text()), wanted) << text.text() << "\n--- " << path.text() << "\n" << now->text();
      const std::string& before = text.text();
      const std::size_t value_lines =
          static_cast<std::size_t>(std::count(before.begin() + static_cast<std::ptrdiff_t>(node.begin),
                                              before.begin() + static_cast<std::ptrdiff_t>(node.end), '\n'));
      const auto lines = [](const std::string& s) {
        return static_cast<std::size_t>(std::count(s.begin(), s.end(), '\n'));
      };
      EXPECT_EQ(lines(now->text()) + value_lines, lines(before));
      const std::size_t line_end = std::min(before.find('\n', node.end), before.size());
      EXPECT_EQ(before.substr(0, node.begin), now->text().substr(0, node.begin));
      EXPECT_TRUE(now->text().ends_with(before.substr(line_end))) << before << "---\n" << now->text();
    }
    return std::pair(std::move(edited), true);
  });
  EXPECT_GT(tally.done, kFiles * kEditsPerFile / 3);
  EXPECT_LE(tally.refused, tally.done / 200);
}

TEST_F(RandomEdits, ANewKeyIsAddedAndNothingElseChanges) {
  int count = 0;
  const std::vector<Content> contents = {
      Content("4 in"), Content(Content::List{Content("hose"), Content("ball valve, brass")}),
      Content(Content::Map{{"from", Content("a: b")}, {"to", Content("c")}}),
      Content(Content::List{Content(Content::Map{{"part", Content("1 x 4 nipple")}, {"count", Content("2")}})})};
  const MixedRadix tally = edit_files([&](const JobText& text, const JobPath& path) {
    if (!text.find(path)->is_map()) return std::pair(Edited(CannotEdit{}), false);
    const JobPath added = path / ("new, " + std::to_string(count++));
    Edited edited = text.set(added, one_of(contents));
    if (const JobText* now = std::get_if<JobText>(&edited)) {
      EXPECT_EQ(lost_bytes(text.text(), now->text()), 0U) << text.text() << "\n--- " << added.text() << "\n"
                                                          << now->text();
      EXPECT_NE(now->find(added), nullptr);
      Meaning left = meaning_of(now->text());
      std::erase_if(left, [&](const auto& entry) { return entry.first.starts_with(added.text()); });
      Meaning wanted = meaning_of(text.text());
      wanted[path.text()] = std::to_string(text.find(path)->children.size() + 1);
      EXPECT_EQ(left, wanted) << text.text() << "---\n" << now->text();
    }
    return std::pair(std::move(edited), true);
  });
  EXPECT_GT(tally.done, kFiles / 2);
  EXPECT_LE(tally.refused, tally.done / 200);
}

TEST_F(RandomEdits, ARowIsAddedToAListAndNothingElseChanges) {
  const std::vector<Content> rows = {Content("hose"),
                                     Content(Content::Map{{"part", Content("a")}, {"count", Content("2")}})};
  const MixedRadix tally = edit_files([&](const JobText& text, const JobPath& path) {
    const TextNode& list = *text.find(path);
    if (!list.is_list()) return std::pair(Edited(CannotEdit{}), false);
    Edited edited = text.append(path, one_of(rows));
    if (const JobText* now = std::get_if<JobText>(&edited)) {
      EXPECT_EQ(lost_bytes(text.text(), now->text()), 0U) << text.text() << "\n--- " << path.text() << "\n"
                                                          << now->text();
      EXPECT_EQ(now->find(path)->children.size(), list.children.size() + 1);
    }
    return std::pair(std::move(edited), true);
  });
  EXPECT_GT(tally.done, kFiles / 2);
  EXPECT_LE(tally.refused, tally.done / 200);
}

TEST_F(RandomEdits, WhatIsTakenOutIsGoneAndAllElseIsThere) {
  const MixedRadix tally = edit_files([&](const JobText& text, const JobPath& path) {
    if (path.empty() || text.root().children.size() < 2) return std::pair(Edited(CannotEdit{}), false);
    Edited edited = text.remove(path);
    if (const JobText* now = std::get_if<JobText>(&edited)) {
      EXPECT_LE(lost_bytes(now->text(), text.text()), text.text().find('#') == std::string::npos ? 0U : 200U)
          << text.text() << "\n--- " << path.text() << "\n"
          << now->text();
      EXPECT_LT(now->text().size(), text.text().size());
      EXPECT_EQ(now->root().children.size() + (path.steps().size() == 1 ? 1 : 0) >= text.root().children.size() - 1,
                true);
    }
    return std::pair(std::move(edited), true);
  });
  EXPECT_GT(tally.done, kFiles);
  EXPECT_LE(tally.refused, tally.done / 200);
}

}  // namespace
}  // namespace riserun::catalog
