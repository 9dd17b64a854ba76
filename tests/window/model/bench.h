// The shipped catalog and the examples, a folder that goes away with its test, and pieces of texts.
#pragma once

#include "catalog/load/load.h"
#include "plan/plan.h"

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <memory>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace riserun::gui::testing {

inline const std::shared_ptr<const catalog::Catalog>& shipped_catalog() {
  static const auto shipped =
      std::make_shared<const catalog::Catalog>(catalog::load_catalog(std::string(RISERUN_SOURCE_DIR) + "/catalog"));
  return shipped;
}

inline std::string text_of_file(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  std::stringstream text;
  text << stream.rdbuf();
  return text.str();
}

inline std::string example(const std::string& name) {
  return text_of_file(std::string(RISERUN_SOURCE_DIR) + "/examples/" + name + ".yaml");
}

/// The text with one piece of it replaced.
inline std::string with(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  if (at == std::string::npos) throw std::logic_error("the text does not hold: " + from);
  return text.replace(at, from.size(), to);
}

/// A folder of its own in the place for temporary files.
class Folder {
 public:
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "riserun-XXXXXX").string();
    if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no folder can be made");
    path_ = name;
  }
  ~Folder() {
    std::error_code error;
    std::filesystem::remove_all(path_, error);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  const std::filesystem::path& path() const { return path_; }
  std::filesystem::path operator/(const std::string& name) const { return path_ / name; }

 private:
  std::filesystem::path path_;
};

inline void write_file(const std::filesystem::path& file, const std::string& text) {
  std::ofstream(file, std::ios::binary) << text;
}

/// Ids of the parts of a connection's chain; empty where there is none.
inline std::vector<std::string> chain_of(const plan::Plan& plan, const std::string& connection) {
  std::vector<std::string> ids;
  for (const plan::ConnectionPlan& run : plan.connections)
    if (run.name == connection && run.chain() != nullptr)
      for (const chain::RunPart& part : run.chain()->parts) ids.push_back(plan.catalog->part(part.part).id);
  return ids;
}

}  // namespace riserun::gui::testing
