#include "catalog/load/load.h"

#include "catalog/load/loading.h"
#include "catalog/yaml/document.h"

#include <algorithm>
#include <atomic>
#include <cstdlib>
#include <future>
#include <iterator>
#include <system_error>

namespace riserun::catalog {

namespace {

namespace fs = std::filesystem;

/// One file of a load; parsed first, read when its turn comes.
struct SourceFile {
  fs::path path;
  Problems problems;
  std::optional<Document> document;
};

constexpr std::string_view kLastFile = "duty.yaml";
constexpr std::string_view kFirstFiles[] = {"materials.yaml", "joints.yaml", "losses.yaml", "pipe.yaml"};

/// The fixed four, then the rest by name, what names families last.
std::vector<fs::path> catalog_files(const fs::path& folder, Problems& problems) {
  std::vector<fs::path> files;
  for (const std::string_view name : kFirstFiles) files.push_back(folder / name);
  std::vector<fs::path> rest;
  std::error_code failed;
  for (fs::directory_iterator it(folder, failed), end; !failed && it != end; it.increment(failed)) {
    const fs::path name = it->path().filename();
    const bool first =
        std::find(std::begin(kFirstFiles), std::end(kFirstFiles), name.string()) != std::end(kFirstFiles);
    if (name.extension() == ".yaml" && !name.string().starts_with('.') && !first) rest.push_back(it->path());
  }
  if (failed)
    problems.add({folder.string(),
                  0,
                  0,
                  "the folder of the catalog cannot be read",
                  {},
                  std::string(quantity::mistake::kFileNotRead)});
  std::sort(rest.begin(), rest.end(), [](const fs::path& a, const fs::path& b) {
    return std::pair(a.filename() == kLastFile, a) < std::pair(b.filename() == kLastFile, b);
  });
  files.insert(files.end(), rest.begin(), rest.end());
  return files;
}

/// Parsing is most of the work of a load and each file stands alone: two threads share the files.
void parse_files(std::vector<SourceFile>& files) {
  std::atomic<std::size_t> next = 0;
  const auto parse_some = [&] {
    for (std::size_t i = next++; i < files.size(); i = next++)
      files[i].document = Document::load(files[i].path, files[i].problems);
  };
  // What either throws comes out here, once both have ended.
  std::future<void> other = std::async(std::launch::async, parse_some);
  parse_some();
  other.get();
}

void load_family_file(Loading& loading, const Value& root) {
  Fields fields(root, {"families"}, loading.problems);
  if (const Value families = fields.need("families"); families.exists()) load_families(loading, families);
}

void load_duty_file(Loading& loading, const Value& root) {
  Fields fields(root, {"duties"}, loading.problems);
  if (const Value duties = fields.need("duties"); duties.exists()) load_duties(loading, duties);
}

void load_user_file(Loading& loading, const Value& root) {
  Fields fields(root, {"families", "parts", "duties", "prices"}, loading.problems);
  if (const Value families = fields.find("families"); families.exists()) load_families(loading, families);
  if (const Value parts = fields.find("parts"); parts.exists()) load_own_parts(loading, parts);
  if (const Value duties = fields.find("duties"); duties.exists()) load_duties(loading, duties);
}

void load_file(Loading& loading, const SourceFile& file, bool from_user) {
  const Value root = file.document->root();
  if (!root.exists() && !file.problems.empty()) return;  // not parsed: its mistake is known
  if (from_user && file.document->is_table()) return;    // of prices
  if (!root.is_map()) {
    loading.problems.add(root, "the file holds no map of keys");
    return;
  }
  const std::string name = file.path.filename().string();
  if (from_user) return load_user_file(loading, root);
  if (name == "materials.yaml") return load_materials(loading, root);
  if (name == "joints.yaml") return load_joints(loading, root);
  if (name == "losses.yaml") return load_losses(loading, root);
  if (name == "pipe.yaml") return load_bores(loading, root);
  if (name == kLastFile) return load_duty_file(loading, root);
  load_family_file(loading, root);
}

/// Prices last: they may be for parts of any file, and only a finished catalog can be asked for a part by its words.
/// Of two files that price the same part the later holds.
Catalog with_own_prices(Catalog catalog, std::span<const SourceFile> own, Problems& problems) {
  const auto has_prices = [](const SourceFile& file) {
    return file.document->is_table() || file.document->root()["prices"].exists();
  };
  if (std::none_of(own.begin(), own.end(), has_prices)) return catalog;
  CatalogBuilder builder(std::move(catalog));
  for (const SourceFile& file : own) {
    if (!has_prices(file)) continue;
    const Value root = file.document->root();
    if (file.document->is_table())
      read_price_table(root, builder, problems);
    else
      read_prices(root["prices"], builder, problems);
  }
  return std::move(builder).build();
}

/// Reads the parsed files in their order; `shipped` of them are the catalog's, the rest the user's.
Catalog assemble(std::vector<SourceFile>& files, std::size_t shipped, Problems problems) {
  CatalogBuilder builder;
  Loading loading{builder, problems, {}, {}, {}, {}};
  bool base_is_good = true;
  for (std::size_t i = 0; i < files.size(); ++i) {
    if (i == std::size(kFirstFiles)) base_is_good = problems.empty();
    problems.take(files[i].problems);
    // With a mistake in the materials or the joints the families would mostly repeat it.
    if (base_is_good) load_file(loading, files[i], i >= shipped);
  }
  if (!base_is_good) std::move(problems).throw_if_any();
  Catalog catalog = with_own_prices(std::move(builder).build(), std::span(files).subspan(shipped), problems);
  std::move(problems).throw_if_any();
  Problems late;
  check_joints_of(catalog, loading, late);
  std::move(late).throw_if_any();
  return catalog;
}

}  // namespace

Catalog load_catalog(const fs::path& folder, std::span<const fs::path> extra_files) {
  Problems problems;
  std::vector<SourceFile> files;
  for (fs::path& path : catalog_files(folder, problems)) files.push_back({std::move(path), {}, {}});
  const std::size_t shipped = files.size();
  for (const fs::path& path : extra_files) files.push_back({path, {}, {}});
  parse_files(files);
  return assemble(files, shipped, std::move(problems));
}

Catalog load_catalog(std::span<const SourceText> texts, std::span<const SourceText> own_texts) {
  std::vector<SourceFile> files;
  for (const std::span<const SourceText> some : {texts, own_texts}) {
    for (const SourceText& source : some) {
      SourceFile file{source.name, {}, {}};
      file.document = Document::parse(source.text, source.name, file.problems);
      files.push_back(std::move(file));
    }
  }
  return assemble(files, texts.size(), {});
}

fs::path find_catalog_folder() {
  std::error_code failed;
  const fs::path program = fs::read_symlink("/proc/self/exe", failed).parent_path();
  std::vector<fs::path> places;
  if (!failed)
    places = {program / "catalog", program / ".." / "catalog", program / ".." / "share" / "riserun" / "catalog"};
  if (const char* own = std::getenv("RISERUN_CATALOG"); own != nullptr && *own != '\0') places.emplace_back(own);
#ifdef RISERUN_CATALOG_FOLDER
  places.emplace_back(RISERUN_CATALOG_FOLDER);
#endif
  for (const fs::path& place : places)
    if (fs::exists(place / kFirstFiles[1], failed)) return place.lexically_normal();
  throw quantity::InputError(
      {{{},
        0,
        0,
        "the catalog is missing: no folder 'catalog' beside the program, and RISERUN_CATALOG names none",
        {}}});
}

}  // namespace riserun::catalog
