// Processor time of this process: on a machine that does other work as well, the clock on the wall would lie.
#pragma once

#include <ctime>

namespace riserun::bench {

inline double processor_nanoseconds() {
  timespec now{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) * 1e9 + static_cast<double>(now.tv_nsec);
}

/// Nanoseconds of processor time that one call takes, as the mean of `times` calls in a row.
template <class Work>
double nanoseconds_of(Work work, int times = 1) {
  const double start = processor_nanoseconds();
  for (int i = 0; i < times; ++i) work();
  return (processor_nanoseconds() - start) / times;
}

}  // namespace riserun::bench
