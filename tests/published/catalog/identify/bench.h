// What the tests of `identify` share: the standards' own figures, and a bench that measures with them.
#pragma once

#include "catalog/identify/identify.h"
#include "published/catalog/shipped.h"

#include <algorithm>
#include <string>
#include <vector>

namespace riserun::catalog {

/// One end of one size as its standard gives it; diameters in inches.
struct BenchThread {
  std::string kind;
  std::string size;
  End end;
  double across;  // over the male's crests at the large end, or between the female's at the mouth
  double threads_per_inch;
  bool tapered;
  int flank;
  Shelf shelf;  // the country where it is at home
};

struct NptDimensions {
  const char* size;
  double outside, threads_per_inch, e1;
};
// ASME B1.20.1, Table 2: D, threads per inch, E1; to size 6 published (E1 of 1/16 from memory), 8 to 12 from memory.
inline constexpr NptDimensions kNpt[] = {
    {"1/16", 0.3125, 27, 0.28118}, {"1/8", 0.405, 27, 0.3736},     {"1/4", 0.54, 18, 0.49163},
    {"3/8", 0.675, 18, 0.62701},   {"1/2", 0.84, 14, 0.77843},     {"3/4", 1.05, 14, 0.98887},
    {"1", 1.315, 11.5, 1.23863},   {"1-1/4", 1.66, 11.5, 1.58338}, {"1-1/2", 1.9, 11.5, 1.82234},
    {"2", 2.375, 11.5, 2.29627},   {"2-1/2", 2.875, 8, 2.76216},   {"3", 3.5, 8, 3.3885},
    {"3-1/2", 4.0, 8, 3.88881},    {"4", 4.5, 8, 4.38712},         {"5", 5.563, 8, 5.44929},
    {"6", 6.625, 8, 6.50597},      {"8", 8.625, 8, 8.50003},       {"10", 10.75, 8, 10.62094},
    {"12", 12.75, 8, 12.61781},
};

struct BspDimensions {
  const char* size;
  double threads_per_inch, major_mm, minor_mm;
};
// ISO 7-1 and ISO 228-1, Table 1: 1/8, 1/4 and 1 published, the others' third decimals and minors from memory.
inline constexpr BspDimensions kBsp[] = {
    {"1/16", 28, 7.723, 6.561}, {"1/8", 28, 9.728, 8.566},     {"1/4", 19, 13.157, 11.445},
    {"3/8", 19, 16.662, 14.95}, {"1/2", 14, 20.955, 18.631},   {"3/4", 14, 26.441, 24.117},
    {"1", 11, 33.249, 30.291},  {"1-1/4", 11, 41.91, 38.952},  {"1-1/2", 11, 47.803, 44.845},
    {"2", 11, 59.614, 56.656},  {"2-1/2", 11, 75.184, 72.226}, {"3", 11, 87.884, 84.926},
    {"4", 11, 113.03, 110.072}, {"5", 11, 138.43, 135.472},    {"6", 11, 163.83, 160.872},
};

struct FlareDimensions {
  const char* size;  // of the tube, dash number / 16 in
  double major, threads_per_inch;
};
// SAE J514, thread table (from memory).
inline constexpr FlareDimensions kFlare37[] = {
    {"1/8", 0.3125, 24},  {"3/16", 0.375, 24},  {"1/4", 0.4375, 20}, {"5/16", 0.5, 20},   {"3/8", 0.5625, 18},
    {"1/2", 0.75, 16},    {"5/8", 0.875, 14},   {"3/4", 1.0625, 12}, {"7/8", 1.1875, 12}, {"1", 1.3125, 12},
    {"1-1/4", 1.625, 12}, {"1-1/2", 1.875, 12}, {"2", 2.5, 12},
};

inline std::vector<BenchThread> bench_threads() {
  std::vector<BenchThread> threads;
  constexpr double kInch = 25.4;
  for (const NptDimensions& row : kNpt) {
    threads.push_back({"npt", row.size, End::male, row.outside, row.threads_per_inch, true, 60, Shelf::inch});
    // Thread height 0.8 p: ASME B1.20.1, 2.4 (published).
    threads.push_back({"npt", row.size, End::female, row.e1 - 0.8 / row.threads_per_inch, row.threads_per_inch, true,
                       60, Shelf::inch});
  }
  for (const BspDimensions& row : kBsp)
    for (const char* kind : {"bspt", "bspp"}) {
      const bool tapered = std::string_view(kind) == "bspt";
      threads.push_back(
          {kind, row.size, End::male, row.major_mm / kInch, row.threads_per_inch, tapered, 55, Shelf::metric});
      threads.push_back(
          {kind, row.size, End::female, row.minor_mm / kInch, row.threads_per_inch, tapered, 55, Shelf::metric});
    }
  // ASME B1.20.7: nipple 1.0625 at most (published), coupling bore 0.9595 to 0.9765 (from memory).
  threads.push_back({"ght", "3/4", End::male, 1.0625, 11.5, false, 60, Shelf::inch});
  threads.push_back({"ght", "3/4", End::female, 0.968, 11.5, false, 60, Shelf::inch});
  for (const FlareDimensions& row : kFlare37) {
    threads.push_back({"flare-37", row.size, End::male, row.major, row.threads_per_inch, false, 60, Shelf::inch});
    // Basic minor diameter of a unified thread, D - 1.0825 p: ASME B1.1 (from memory).
    threads.push_back({"flare-37", row.size, End::female, row.major - 1.0825 / row.threads_per_inch,
                       row.threads_per_inch, false, 60, Shelf::inch});
  }
  return threads;
}

inline Measurements measured(std::vector<Observation> seen, End end, Shelf shelf = Shelf::inch) {
  return {std::move(seen), end, true, shelf};
}

inline DiameterReading reading(double across_inches, Tool tool, End end) {
  return {inches(across_inches), tool, end == End::female};
}

inline const Candidate* candidate(const Identification& found, PortTypeId type) {
  const auto at = std::find_if(found.candidates.begin(), found.candidates.end(),
                               [&](const Candidate& c) { return c.type == type; });
  return at == found.candidates.end() ? nullptr : &*at;
}

inline PortTypeId port_of(const BenchThread& thread) { return shipped_port(thread.kind, thread.size, thread.end); }

}  // namespace riserun::catalog
