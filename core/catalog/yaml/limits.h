// How much a file may hold, so that no file takes more than two seconds or a quarter of a gigabyte. A shop's own files
// stay far below all of them: the starter job has 6 KB, the whole shipped catalog 0.3 MB in 25 files.
#pragma once

#include <cstddef>
#include <cstdint>

namespace riserun::catalog {

inline constexpr std::size_t kLargestFile = 4U << 20U;     // bytes
inline constexpr std::size_t kLargestPiece = 256U << 10U;  // bytes of one text, or of one list or map in brackets
inline constexpr std::uint32_t kMostValues = 250'000;      // texts, lists and maps of one file, keys among them
inline constexpr std::uint32_t kMostKeys = 1000;           // of one map
inline constexpr std::size_t kDeepest = 32;                // lists and maps within each other
// Mistakes that are told. A file with more of them is not the kind of file that it is taken for.
inline constexpr std::size_t kMostMistakes = 100;

}  // namespace riserun::catalog
