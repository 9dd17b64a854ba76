// What holds for every verb: help, unknown verbs, the exit status, what is written where.
#include "unit/cli/asked_command.h"

namespace riserun::cli {
namespace {

TEST(Help, ListsEveryVerbAndIsDone) {
  const Answered help = ask({"--help"});
  EXPECT_EQ(help.status, kDone);
  EXPECT_EQ(help.err, "");
  for (const char* verb : {"plan", "chain", "riser", "transfer", "walls", "leak-test", "list", "catalog", "check",
                           "identify", "new", "bin", "help"})
    EXPECT_THAT(help.out, HasSubstr("  " + std::string(verb) + " "));
  EXPECT_THAT(help.out, HasSubstr("stores dangerous energy"));
}

TEST(Help, OfAVerbIsDone) {
  for (const char* verb :
       {"plan", "chain", "riser", "transfer", "walls", "leak-test", "list", "catalog", "check", "identify", "new"})
    EXPECT_EQ(ask({verb, "--help"}).status, kDone) << verb;
}

TEST(Verb, MissingListsThem) {
  const Answered answered = ask({});
  EXPECT_EQ(answered.status, kDone);
  EXPECT_THAT(answered.out, HasSubstr("  leak-test "));
}

TEST(Verb, UnknownIsNamed) {
  EXPECT_EQ(complaint({"plumb", "x"}), "error: 'plumb' is no verb of riserun; riserun --help lists them.\n");
}

TEST(CommonOptions, WithoutTheirValueOrWithAWrongOneAreBadInput) {
  EXPECT_THAT(complaint({"chain", "1 FNPT", "1 MNPT", "--bin"}), HasSubstr("--bin"));
  EXPECT_THAT(complaint({"chain", "1 FNPT", "1 MNPT", "--units", "cubits"}), HasSubstr("cubits"));
}

TEST(Words, ThatMayNotBePrintedAreBadInputAndShownEscaped) {
  EXPECT_THAT(
      complaint({"chain", "1 FNPT", "1 FNPT", "--need", "ball valve \xff", "--most-parts", "1"}),
      HasSubstr(
          "--need: error: bytes that are not UTF-8 text; words are letters, digits, signs and blanks [wrong_value]\n"
          "  ball valve ?\n             ^\n"));
  EXPECT_THAT(complaint({"chain", "1 FNPT", "1 FNPT", "--avoid", "\xed\xa0\x80 union"}), HasSubstr("--avoid"));
  const json told = json::parse(complaint({"chain", "1 FNPT", "1 FNPT", "--need", "ball valve \xff", "--json"}));
  EXPECT_EQ(told["errors"][0]["source_line"], "ball valve \xEF\xBF\xBD");
  EXPECT_THAT(complaint({"chain", "1 FNPT\xff", "1 MNPT"}), HasSubstr("FNPT"));
  EXPECT_THAT(complaint({"chain", "1 \u202eFNPT", "1 MNPT"}), HasSubstr("a character that cannot be seen (U+202E)"));
  EXPECT_THAT(complaint({"chain", "1 FNPT", "1 FNPT", "--need", "\u00e9\xff"}), HasSubstr("\n  \u00e9?\n   ^"));
  for (const Words& words :
       {Words{"\x1b[31m\n\xff"}, Words{"plan", "\x1b[31m\n\xff"},
        Words{"chain", "1 FNPT", "1 MNPT", "--units", "\x1b[31m\n\xff"},
        Words{"chain", "1 FNPT", "1 MNPT", "--bin", "\x1b[31m\n\xff"}, Words{"new", "/none/\x1b[31m\n\xff"}})
    EXPECT_THAT(complaint(words), HasSubstr("\\x1B[31m\\n\\xFF")) << testing::PrintToString(words);
}

TEST(Answer, ThatCannotBeWrittenIsAnErrorOfItsOwn) {
  class FullDisk : public std::streambuf {
    int_type overflow(int_type) override { return traits_type::eof(); }
  } full;
  std::ostream out(&full);
  std::ostringstream err;
  const char* const words[] = {"riserun", "catalog", "1 union"};
  EXPECT_EQ(run(3, words, out, err), kNotWritten);
  EXPECT_EQ(err.str(), "error: the answer could not be written.\n");
  std::ostream help(&full);
  const char* const asks_for_help[] = {"riserun", "--help"};
  EXPECT_EQ(run(2, asks_for_help, help, err), kNotWritten);
}

}  // namespace
}  // namespace riserun::cli
