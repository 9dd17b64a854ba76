#include "report/json/plain_json.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace riserun::report {
namespace {

using Answer = nlohmann::ordered_json;

TEST(WrittenJson, EscapesWhatMayNotBePrintedAndReadsBackTheSame) {
  const Answer answer = {{"name", "a\u202eb\u009bc\x7f\n\u00bd"}, {"tag", "\U000E0041"}};
  const std::string text = written_json(answer);
  EXPECT_EQ(text, "{\n \"name\": \"a\\u202eb\\u009bc\\u007f\\n\u00bd\",\n \"tag\": \"\\udb40\\udc41\"\n}\n");
  EXPECT_EQ(Answer::parse(text), answer);
}

TEST(WrittenJson, IsUtf8WhateverItIsMadeOf) {
  EXPECT_EQ(written_json({{"name", "j\xff"}}), "{\n \"name\": \"j\ufffd\"\n}\n");
}

}  // namespace
}  // namespace riserun::report
