// The tables of the keys of a bin, an own catalog and the four files that a catalog begins with hold what the readers
// take: no key more, none less.
#include "catalog/load/user_keys.h"

#include "catalog/load/load.h"
#include "catalog/load/shipped_keys.h"
#include "quantity/input_error.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

namespace riserun::catalog {
namespace {

/// A wrong key in every map that there is.
constexpr const char* kWrongCatalog = R"(zzz: 1
families:
  - {zzz: 1, name: a, shelf: b, source: c, title: d, size: e, ports: [{zzz: 1}], materials: {brass: {zzz: 1}},
     table: {zzz: 1}}
  - {zzz: 1, name: a2, shelf: b, source: c, title: d, size: e, ports: [{zzz: 1}], materials: {brass: {zzz: 1}},
     tables: [{zzz: 1}]}
  - {name: a3, shelf: b, source: c, title: d, size: e, ports: [{zzz: 1}, {zzz: 1}], materials: {brass: {rating: 9 psi}},
     table: {columns: [size], rows: [["1"]]}}
parts: [{zzz: 1, ports: [{zzz: 1}]}]
duties: [{zzz: 1}]
prices: [{zzz: 1}]
)";
constexpr const char* kWrongBin = "zzz: 1\nbin: [{zzz: 1, part: 1 x 4 nipple black iron, measured: {zzz: 1}}]\n";

constexpr const char* kWrongMaterials = "zzz: 1\ngalvanic: {zzz: 1}\nmaterials: [{zzz: 1}]\n";
constexpr const char* kWrongJoints = R"(zzz: 1
seals: [{zzz: 1, tape: {zzz: 1}}]
kinds:
  - {zzz: 1, notation: {zzz: 1}, shape: {zzz: 1}, read as: {zzz: 1}, sizes: {zzz: 1},
     recognise: {zzz: 1, common: {zzz: 1}, shelf names: {zzz: 1}}}
mating: [{zzz: 1}]
look-alikes: [{zzz: 1}]
foreign threads: [{zzz: 1}]
)";
constexpr const char* kWrongLosses = "zzz: 1\nitems: [{zzz: 1}]\n";
constexpr const char* kWrongBores = "zzz: 1\nbores: [{zzz: 1}]\n";

std::set<std::string> names_in(const std::string& list) {
  std::set<std::string> names;
  const std::regex between(", | or ");
  for (std::sregex_token_iterator name(list.begin(), list.end(), between, -1), end; name != end; ++name)
    names.insert(*name);
  return names;
}

/// The keys that each map may have, as the reader's own messages name them.
std::map<std::string, std::set<std::string>> taken_by(const std::function<void(const std::filesystem::path&)>& read,
                                                      const std::string& text) {
  const auto file = std::filesystem::path(::testing::TempDir()) / "user_keys_test.yaml";
  std::ofstream(file) << text;
  std::map<std::string, std::set<std::string>> taken;
  try {
    read(file);
  } catch (const quantity::InputError& error) {
    const std::regex unknown(R"((?:(.*): )?unknown key 'zzz' \(allowed: (.*)\))");
    for (const quantity::Problem& problem : error.problems()) {
      std::smatch found;
      if (!std::regex_match(problem.message, found, unknown)) continue;
      const std::string path = std::regex_replace(found[1].str(), std::regex(R"(\[\d+\])"), "[]");
      taken[std::regex_replace(path, std::regex(R"(materials\.brass$)"), "materials.*")] = names_in(found[2]);
    }
  }
  std::filesystem::remove(file);
  return taken;
}

void expect_same(const std::vector<FileKey>& keys, const std::map<std::string, std::set<std::string>>& taken) {
  for (const auto& [path, names] : taken) {
    std::set<std::string> said;
    for (const FileKey* key : keys_under(keys, path))
      if (!key->path.ends_with(".*")) said.insert(std::string(key->name()));
    EXPECT_EQ(said, names) << "under '" << path << "'";
  }
  std::set<std::string> paths;
  for (const FileKey& key : keys) {
    EXPECT_TRUE(paths.insert(key.path).second) << key.path;
    EXPECT_GE(key.help.size(), 5u) << key.path;
    EXPECT_EQ(key.form == KeyForm::choice, !key.choices.empty()) << key.path;
    const std::string map = key.form == KeyForm::list ? key.path + "[]" : key.path;
    EXPECT_TRUE((key.form != KeyForm::map && key.form != KeyForm::list) || taken.count(map) == 1) << key.path;
  }
}

TEST(UserKeys, OfACatalogAreThoseThatTheReaderTakes) {
  expect_same(catalog_keys(),
              taken_by([](const auto& file) { load_shipped_catalog(std::vector<std::filesystem::path>{file}); },
                       kWrongCatalog));
}

void expect_same_of(const char* name, const std::vector<FileKey>& keys, const char* wrong) {
  expect_same(keys, taken_by(
                        [&](const auto& file) {
                          std::ifstream in(file);
                          const std::string text{std::istreambuf_iterator<char>(in), {}};
                          load_catalog(std::vector<SourceText>{{name, text}}, {});
                        },
                        wrong));
}

TEST(ShippedKeys, AreThoseThatTheReadersTake) {
  expect_same_of("joints.yaml", joints_keys(), kWrongJoints);
  expect_same_of("materials.yaml", materials_keys(), kWrongMaterials);
  expect_same_of("losses.yaml", losses_keys(), kWrongLosses);
  expect_same_of("pipe.yaml", bores_keys(), kWrongBores);
}

TEST(UserKeys, OfABinAreThoseThatTheReaderTakes) {
  expect_same(bin_keys(), taken_by(
                              [](const auto& file) {
                                CatalogBuilder builder(load_shipped_catalog());
                                load_bin(builder, file);
                              },
                              kWrongBin));
}

}  // namespace
}  // namespace riserun::catalog
