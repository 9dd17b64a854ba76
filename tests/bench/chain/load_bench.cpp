// Loads an invented file of families on top of the shipped catalog, or the shipped catalog alone: what the loader
// takes for a part.
//
//   load_bench PARTS   0: the shipped catalog alone; a line of JSON
#include "bench/chain/made_catalog.h"
#include "bench/chain/stopwatch.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace {

using namespace riserun;         // NOLINT(google-build-using-namespace)
using namespace riserun::bench;  // NOLINT(google-build-using-namespace)

catalog::SourceText text_of(const std::filesystem::path& path) {
  std::ostringstream text;
  text << std::ifstream(path).rdbuf();
  return {path.filename().string(), text.str()};
}

std::vector<catalog::SourceText> shipped_texts() {
  const std::filesystem::path folder = catalog::find_catalog_folder();
  std::vector<catalog::SourceText> texts;
  for (const char* name : {"materials.yaml", "joints.yaml", "losses.yaml", "pipe.yaml"})
    texts.push_back(text_of(folder / name));
  const auto known = texts.size();
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    const std::string name = entry.path().filename().string();
    const auto first_four = texts.begin() + static_cast<std::ptrdiff_t>(known);
    if (std::none_of(texts.begin(), first_four, [&](const auto& text) { return text.name == name; }))
      texts.push_back(text_of(entry.path()));
  }
  return texts;
}

}  // namespace

int main(int argc, char** argv) {
  const std::size_t parts = argc > 1 ? std::stoul(argv[1]) : 0;
  const std::vector<catalog::SourceText> shipped = shipped_texts();
  std::vector<catalog::SourceText> own;
  if (parts > 0) own.push_back(made_family_file(parts));
  std::size_t loaded = 0;
  const double took = nanoseconds_of([&] { loaded = catalog::load_catalog(shipped, own).parts().size(); });
  fmt::print("{{\"parts\":{},\"load_ns\":{:.0f}}}\n", loaded, took);
}
