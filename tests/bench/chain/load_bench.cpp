// Loads an invented file of families on top of the shipped catalog, or the shipped catalog alone: what the loader
// takes for a part.
//
//   load_bench PARTS   0: the shipped catalog alone; a line of JSON
#include "bench/chain/made_catalog.h"
#include "bench/chain/stopwatch.h"

#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <string>

namespace {

using namespace riserun;         // NOLINT(google-build-using-namespace)
using namespace riserun::bench;  // NOLINT(google-build-using-namespace)

/// A file that is there as long as this is.
class OwnFile {
 public:
  explicit OwnFile(const catalog::SourceText& source) : path_(std::filesystem::temp_directory_path() / source.name) {
    std::ofstream(path_) << source.text;
  }
  ~OwnFile() { std::filesystem::remove(path_); }
  OwnFile(const OwnFile&) = delete;
  OwnFile& operator=(const OwnFile&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

void report(std::span<const std::filesystem::path> own) {
  std::size_t loaded = 0;
  const double took =
      nanoseconds_of([&] { loaded = catalog::load_catalog(catalog::find_catalog_folder(), own).parts().size(); });
  fmt::print("{{\"parts\":{},\"load_ns\":{:.0f}}}\n", loaded, took);
}

}  // namespace

int main(int argc, char** argv) {
  const std::size_t parts = argc > 1 ? std::stoul(argv[1]) : 0;
  if (parts == 0) {
    report({});
    return 0;
  }
  const OwnFile own(made_family_file(parts));
  report({&own.path(), 1});
}
