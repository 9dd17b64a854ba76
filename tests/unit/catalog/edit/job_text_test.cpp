// How edits look in a file as people write it.
#include "catalog/edit/job_text.h"

#include <gtest/gtest.h>

namespace riserun::catalog {
namespace {

const std::string kFile = R"(# Mine
table:                 # over it
  inside: {length: 48 in, width: 24 in}   # measured twice
  depth: 3-1/2 in      # wanted
  # rim: 5 in

connections:
  - name: water up     # the main run
    from: "riser bung"
    need: [hose]
    # gap: 15 in

  # the second
  - {name: air in, from: regulator}
units: inch
)";

JobText file(const std::string& text = kFile) {
  auto result = JobText::read(text, "job.yaml");
  return std::get<JobText>(std::move(result));
}

std::string replaced(std::string text, const std::string& what, const std::string& by) {
  EXPECT_NE(text.find(what), std::string::npos);
  return text.replace(text.find(what), what.size(), by);
}

std::string text_of(const Edited& edited) {
  const auto* why = std::get_if<CannotEdit>(&edited);
  return why != nullptr ? why->reason : std::get<JobText>(edited).text();
}

TEST(JobText, ACommentKeepsItsColumnWhereThereIsRoom) {
  EXPECT_EQ(text_of(file().set(at("table") / "depth", "4 in")),
            replaced(kFile, "3-1/2 in      # wanted", "4 in          # wanted"));
  EXPECT_EQ(text_of(file().set(at("table") / "depth", "3-1/2 in and a lot more")),
            replaced(kFile, "3-1/2 in      # wanted", "3-1/2 in and a lot more  # wanted"));
}

TEST(JobText, AValueInBracketsIsChangedInPlace) {
  EXPECT_EQ(text_of(file().set(at("table") / "inside" / "width", "600 mm")),
            replaced(kFile, "width: 24 in", "width: 600 mm"));
}

TEST(JobText, QuotesStayQuotes) {
  EXPECT_EQ(text_of(file().set(at("connections") / 0 / "from", "drain")),
            replaced(kFile, "\"riser bung\"", "\"drain\""));
}

TEST(JobText, ATextThatWouldMeanSomethingElseIsPutInQuotes) {
  EXPECT_EQ(text_of(file().set(at("table") / "inside" / "width", "1'2\", so")),
            replaced(kFile, "width: 24 in", "width: \"1'2\\\", so\""));
}

TEST(JobText, ANewKeyGoesBelowTheLastOfItsMap) {
  EXPECT_EQ(text_of(file().set(at("table") / "rim", "6 in")), replaced(kFile, "wanted\n", "wanted\n  rim: 6 in\n"));
}

TEST(JobText, MapsOnTheWayAreMade) {
  EXPECT_EQ(text_of(file().set(at("riser") / "clearance", "5/8 in")), kFile + "riser: {clearance: 5/8 in}\n");
  EXPECT_EQ(text_of(file().set(at("connections") / 1 / "held" / "to", "fixed")),
            replaced(kFile, "regulator}", "regulator, held: {to: fixed}}"));
}

TEST(JobText, AFileWithoutALastLineBreakGetsOne) { EXPECT_EQ(text_of(file("a: 1").set(at("b"), "2")), "a: 1\nb: 2\n"); }

TEST(JobText, LineBreaksStayAsTheyAre) {
  EXPECT_EQ(text_of(file("a: 1\r\nb: 2\r\n").set(at("c"), "3")), "a: 1\r\nb: 2\r\nc: 3\r\n");
}

TEST(JobText, ARowIsWrittenLikeTheOneBeforeIt) {
  const Content row(Content::Map{{"name", Content("drain")}, {"from", Content("b")}});
  EXPECT_EQ(text_of(file().append(at("connections"), row)),
            replaced(kFile, "regulator}\n", "regulator}\n  - {name: drain, from: b}\n"));
  EXPECT_EQ(text_of(file("c:\n- name: a\n  from: b\n  # gap: 1 in\n\n# end\n").append(at("c"), row)),
            "c:\n- name: a\n  from: b\n  # gap: 1 in\n- name: drain\n  from: b\n\n# end\n");
}

TEST(JobText, ALoneTextBecomesAList) {
  EXPECT_EQ(text_of(file("need: hose\n").append(at("need"), "union")), "need: [hose, union]\n");
}

TEST(JobText, ARowGoesWithTheCommentsInsideIt) {
  EXPECT_EQ(
      text_of(file().remove(at("connections") / 0)),
      replaced(kFile,
               "  - name: water up     # the main run\n    from: \"riser bung\"\n    need: [hose]\n    # gap: 15 in\n",
               ""));
}

TEST(JobText, TheFirstKeyOfARowLeavesItsDash) {
  EXPECT_EQ(text_of(file().remove(at("connections") / 0 / "name")),
            replaced(kFile, "name: water up     # the main run\n    ", ""));
}

TEST(JobText, TheLastOfAListTakesTheListWithIt) {
  EXPECT_EQ(text_of(file().remove(at("connections") / 0 / "need" / 0)), replaced(kFile, "    need: [hose]\n", ""));
}

TEST(JobText, WhatIsNotThereCannotBeTakenOut) {
  EXPECT_EQ(text_of(file().remove(at("table") / "rim")), "There is no table.rim in the file.");
  EXPECT_EQ(text_of(file().set(at("connections") / 5 / "gap", "1 in")), "There is no connections[6].gap in the file.");
  EXPECT_EQ(text_of(file().set(at("connections"), "none")), "connections holds several values: change one of them.");
}

}  // namespace
}  // namespace riserun::catalog
