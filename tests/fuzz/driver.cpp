// Runs one fuzz target without libFuzzer, the same way each time: the seeds, every prefix of the short ones, then
// seeded mutations of them until the time is up. Usage: TARGET [seed file or folder]... [--lines FILE...]
//
// What goes wrong is printed with the input that did it (escaped, ready for a C++ string), be it a signal, an uncaught
// exception, a sanitizer's report or an input that takes longer than ten seconds.
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <csignal>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <set>
#include <string>
#include <string_view>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);
// Present with a sanitizer. NOLINTNEXTLINE(bugprone-reserved-identifier)
extern "C" __attribute__((weak)) void __sanitizer_set_death_callback(void (*callback)());

namespace {

using Clock = std::chrono::steady_clock;

constexpr std::size_t kLongestPrefixedSeed = 4096;
constexpr std::size_t kLongestInput = 1 << 16;
constexpr unsigned kSecondsForOneInput = 10;
constexpr std::uint64_t kSeedOfSeeds = 20260101;

// Read by the signal handler, hence global.
const char* current_data = nullptr;
std::size_t current_size = 0;

void print_current_input() {
  std::fprintf(stderr, "\nthe input (%zu bytes): \"", current_size);
  for (std::size_t i = 0; i < current_size; ++i) {
    const auto byte = static_cast<unsigned char>(current_data[i]);
    if (byte >= ' ' && byte < 0x7f && byte != '"' && byte != '\\') {
      std::fputc(byte, stderr);
    } else {
      std::fprintf(stderr, "\\%03o", static_cast<unsigned>(byte));
    }
  }
  std::fputs("\"\n", stderr);
  std::fflush(stderr);
}

void on_signal(int signal) {
  std::fprintf(stderr, signal == SIGALRM ? "no answer within %u s" : "killed by a signal within %u s",
               kSecondsForOneInput);
  print_current_input();
  std::_Exit(1);
}

void run(const std::string& input) {
  // A copy of exactly its size, so that the address sanitizer sees a read past its end.
  const std::vector<char> copy(input.begin(), input.end());
  current_data = copy.data();
  current_size = copy.size();
  alarm(kSecondsForOneInput);
  LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(copy.data()), copy.size());
  alarm(0);
  current_size = 0;
}

std::string whole_file(const std::filesystem::path& path) {
  std::ifstream stream(path, std::ios::binary);
  if (!stream) {
    std::fprintf(stderr, "cannot read the seed %s\n", path.c_str());
    std::exit(1);
  }
  return {std::istreambuf_iterator<char>(stream), {}};
}

void add_lines(const std::filesystem::path& path, std::vector<std::string>& seeds) {
  const std::string text = whole_file(path);
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    seeds.push_back(text.substr(begin, end - begin));
    begin = end + 1;
  }
}

void add_files(const std::filesystem::path& path, std::vector<std::string>& seeds) {
  if (!std::filesystem::is_directory(path)) {
    seeds.push_back(whole_file(path));
    return;
  }
  std::set<std::filesystem::path> files;  // sorted: the order of a folder is not the same everywhere
  for (const auto& entry : std::filesystem::recursive_directory_iterator(path)) {
    if (entry.is_regular_file()) files.insert(entry.path());
  }
  for (const auto& file : files) seeds.push_back(whole_file(file));
}

std::vector<std::string> read_seeds(int argc, char** argv) {
  std::vector<std::string> seeds;
  bool by_line = false;
  for (int i = 1; i < argc; ++i) {
    if (std::string_view(argv[i]) == "--lines") {
      by_line = true;
    } else if (by_line) {
      add_lines(argv[i], seeds);
    } else {
      add_files(argv[i], seeds);
    }
  }
  return seeds;
}

/// Pieces that are likely to matter: a list of troublemakers, and the words of the seeds themselves.
std::vector<std::string> gather_tokens(const std::vector<std::string>& seeds) {
  const auto zero_byte = std::string(1, '\0');
  std::set<std::string> tokens = {zero_byte,
                                  "\xff",
                                  "\xc2",
                                  "\xe2\x80",
                                  "\xef\xbb\xbf",
                                  "\xc2\xbd",
                                  "\xe2\x80\xb3",
                                  "\t",
                                  "\n",
                                  "\r\n",
                                  " ",
                                  "  ",
                                  "\"",
                                  "'",
                                  "\\",
                                  ":",
                                  ": ",
                                  ", ",
                                  "- ",
                                  "#",
                                  "{",
                                  "}",
                                  "[",
                                  "]",
                                  "&a ",
                                  "*a",
                                  "<<: *a\n",
                                  "---\n",
                                  "...\n",
                                  "!!int ",
                                  "|\n",
                                  ">\n",
                                  "? ",
                                  "%",
                                  "~",
                                  "null",
                                  "true",
                                  "nan",
                                  "inf",
                                  "-inf",
                                  "-0",
                                  "0",
                                  "1/0",
                                  "0/0",
                                  "1e400",
                                  "-1e-400",
                                  "9223372036854775808",
                                  "2147483648",
                                  "0.1",
                                  "1-1/2",
                                  "999999999999999999999999999999",
                                  std::string(400, '9'),
                                  "-",
                                  "/"};
  for (const std::string& seed : seeds) {
    std::size_t begin = 0;
    while (begin < seed.size() && tokens.size() < 2000) {
      begin = seed.find_first_not_of(" \t\r\n,:", begin);
      if (begin == std::string::npos) break;
      const std::size_t end = std::min(seed.find_first_of(" \t\r\n,:", begin), seed.size());
      if (end - begin <= 40) tokens.insert(seed.substr(begin, end - begin));
      begin = end;
    }
  }
  return {tokens.begin(), tokens.end()};
}

class Mutator {
 public:
  Mutator(const std::vector<std::string>& seeds, std::vector<std::string> tokens)
      : seeds_(seeds), tokens_(std::move(tokens)) {}

  std::string next() {
    std::string text = pick(seeds_);
    for (std::size_t steps = 1 + below(5); steps > 0; --steps) change(text);
    if (text.size() > kLongestInput) text.resize(kLongestInput);
    return text;
  }

 private:
  std::size_t below(std::size_t n) { return n == 0 ? 0 : static_cast<std::size_t>(random_() % n); }
  const std::string& pick(const std::vector<std::string>& from) { return from[below(from.size())]; }

  void change(std::string& text) {
    const std::size_t at = below(text.size() + 1);
    const std::size_t length = below(std::min<std::size_t>(text.size() - at, 64) + 1);
    switch (below(8)) {
      case 0:
        if (at < text.size()) text[at] = static_cast<char>(text[at] ^ (1 << below(8)));
        break;
      case 1:
        if (at < text.size()) text[at] = static_cast<char>(below(256));
        break;
      case 2:
        text.erase(at, length);
        break;
      case 3:
        text.insert(below(text.size() + 1), text.substr(at, length));
        break;
      case 4: {
        const std::string& other = pick(seeds_);
        text = text.substr(0, at) + other.substr(below(other.size() + 1));
        break;
      }
      case 5:
        text.insert(at, pick(tokens_));
        break;
      case 6:
        text.replace(at, length, pick(tokens_));
        break;
      default:
        text.resize(at);
        break;
    }
  }

  const std::vector<std::string>& seeds_;
  std::vector<std::string> tokens_;
  std::mt19937_64 random_{kSeedOfSeeds};
};

double wanted_seconds() {
  const char* text = std::getenv("RISERUN_FUZZ_SECONDS");
  const double seconds = text == nullptr ? 5.0 : std::strtod(text, nullptr);
  return seconds > 0.0 ? seconds : 5.0;
}

Clock::time_point after(double seconds) {
  return Clock::now() + std::chrono::duration_cast<Clock::duration>(std::chrono::duration<double>(seconds));
}

/// Shortest prefixes of all seeds first, so that a time limit cuts the long ones.
std::size_t run_prefixes(const std::vector<std::string>& seeds, Clock::time_point end) {
  std::size_t count = 0;
  for (std::size_t length = 0; length < kLongestPrefixedSeed; ++length) {
    for (const std::string& seed : seeds) {
      if (seed.size() > kLongestPrefixedSeed || seed.size() <= length) continue;
      if (Clock::now() > end) return count;
      run(seed.substr(0, length));
      ++count;
    }
  }
  return count;
}

}  // namespace

int main(int argc, char** argv) {
  const std::vector<std::string> seeds = read_seeds(argc, argv);
  if (seeds.empty()) {
    std::fputs("no seeds: nothing would be tested\n", stderr);
    return 1;
  }
  for (const int signal : {SIGABRT, SIGALRM, SIGFPE, SIGILL}) std::signal(signal, on_signal);
  if (__sanitizer_set_death_callback != nullptr) {
    __sanitizer_set_death_callback(print_current_input);
  } else {
    std::signal(SIGSEGV, on_signal);
  }
  const double total = wanted_seconds();
  const auto end = after(total);
  for (const std::string& seed : seeds) run(seed);
  const std::size_t prefixes = run_prefixes(seeds, after(total / 2));
  Mutator mutator(seeds, gather_tokens(seeds));
  std::size_t mutations = 0;
  for (; Clock::now() < end; ++mutations) run(mutator.next());
  std::printf("%zu seeds, %zu prefixes, %zu mutations\n", seeds.size(), prefixes, mutations);
  return 0;
}
