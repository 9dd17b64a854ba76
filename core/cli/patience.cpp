#include "cli/patience.h"

#include <fmt/format.h>
#include <unistd.h>

#include <chrono>
#include <iostream>
#include <string_view>
#include <utility>

namespace riserun::cli {

namespace {

// The line is written over and in the end wiped out: to its beginning, and away what stands there (ECMA-48, EL).
constexpr std::string_view kWiped = "\r\x1b[K";

}  // namespace

Patience::Patience(std::ostream& err, std::string doing) : err_(err), doing_(std::move(doing)) {
  if (&err == &std::cerr && isatty(STDERR_FILENO) != 0) teller_.emplace([this] { tell(); });
}

Patience::~Patience() {
  if (!teller_) return;
  {
    const std::lock_guard lock(mutex_);
    is_done_ = true;
  }
  done_.notify_one();
  teller_->join();
}

void Patience::tell() {
  std::unique_lock lock(mutex_);
  int seconds = 0;
  while (!done_.wait_for(lock, std::chrono::seconds(1), [this] { return is_done_; }))
    err_ << fmt::format("{}{} ... {} s (Ctrl-C ends it)", kWiped, doing_, ++seconds) << std::flush;
  if (seconds > 0) err_ << kWiped << std::flush;
}

}  // namespace riserun::cli
