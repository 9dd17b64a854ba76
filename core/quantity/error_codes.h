// The kinds of mistake in what a person wrote, as `riserun explain` knows them. Each has a row in
// core/report/words/explain_input.cpp, and no other code does (tests/structure/explained_test.py).
#pragma once

#include <string_view>

namespace riserun::quantity::mistake {

// Of a value.
inline constexpr std::string_view kNothingWritten = "nothing_written";
inline constexpr std::string_view kNotANumber = "not_a_number";
inline constexpr std::string_view kNoUnit = "no_unit";
inline constexpr std::string_view kWrongUnit = "wrong_unit";
inline constexpr std::string_view kOutOfRange = "out_of_range";
inline constexpr std::string_view kNotOneOf = "not_one_of";
inline constexpr std::string_view kUnknownPart = "unknown_part";
inline constexpr std::string_view kAmbiguousPart = "ambiguous_part";
inline constexpr std::string_view kUnknownPort = "unknown_port";
inline constexpr std::string_view kWrongValue = "wrong_value";  // each other one

// Of a file and its keys.
inline constexpr std::string_view kUnknownKey = "unknown_key";
inline constexpr std::string_view kMissingKey = "missing_key";
inline constexpr std::string_view kDuplicateKey = "duplicate_key";
inline constexpr std::string_view kEmptyKey = "empty_key";
inline constexpr std::string_view kWrongShape = "wrong_shape";
inline constexpr std::string_view kNotYaml = "not_yaml";
inline constexpr std::string_view kNotText = "not_text";
inline constexpr std::string_view kFileNotRead = "file_not_read";
inline constexpr std::string_view kFileNotWritten = "file_not_written";
inline constexpr std::string_view kNotWhole = "catalog_not_whole";

}  // namespace riserun::quantity::mistake
