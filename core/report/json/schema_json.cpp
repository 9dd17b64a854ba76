#include "report/json/schema_json.h"

#include "catalog/load/shipped_keys.h"
#include "catalog/load/user_keys.h"
#include "plan/job/job_keys.h"

#include <nlohmann/json.hpp>

#include <span>
#include <utility>
#include <vector>

namespace riserun::report {

namespace {

using Json = nlohmann::ordered_json;
using catalog::FileKey;
using catalog::KeyForm;

/// A schema of one file's keys.
class Schema {
 public:
  explicit Schema(std::span<const FileKey> keys) : keys_(keys) {}

  /// The keys of a map.
  Json map_of(const std::string& path) const {
    Json schema{{"type", "object"}, {"properties", Json::object()}, {"additionalProperties", false}};
    Json needed = Json::array();
    for (const FileKey* key : catalog::keys_under(keys_, path)) {
      if (key->path.ends_with("[]") || key->path.ends_with(".*")) continue;
      schema["properties"][std::string(key->name())] = of(*key);
      if (key->needed) needed.push_back(key->name());
    }
    if (!needed.empty()) schema["required"] = std::move(needed);
    return schema;
  }

 private:
  /// An item of a list, or what stands behind a name of one's own: its map, or the words alone that stand for one.
  Json item_of(const std::string& path) const {
    const Json map = catalog::keys_under(keys_, path).empty() ? Json::object() : map_of(path);
    const bool words_do = path.ends_with("take[]") || path.ends_with("ports.*");
    return words_do ? Json{{"anyOf", {{{"type", "string"}}, map}}} : map;
  }

  Json of(const FileKey& key) const;

  std::span<const FileKey> keys_;
};

Json Schema::of(const FileKey& key) const {
  Json schema;
  switch (key.form) {
    case KeyForm::map:
      schema = map_of(key.path);
      break;
    case KeyForm::names:
      schema = {{"type", "object"}, {"additionalProperties", item_of(key.path + ".*")}};
      break;
    case KeyForm::list:
      schema = {{"type", "array"}, {"items", item_of(key.path + "[]")}};
      break;
    case KeyForm::file:
      schema = {{"anyOf", {{{"type", "array"}, {"items", item_of(key.path + "[]")}}, {{"type", "string"}}}}};
      break;
    case KeyForm::files:
      schema = {{"anyOf",
                 {{{"type", "array"}, {"items", item_of(key.path + "[]")}},
                  {{"type", "string"}},
                  {{"type", "object"}, {"additionalProperties", {{"type", "string"}}}}}}};
      break;
    case KeyForm::words:
      schema = {{"anyOf", {{{"type", "array"}, {"items", {{"type", "string"}}}}, {{"type", "string"}}}}};
      break;
    case KeyForm::choice:
      schema = {{"enum", key.choices}};
      for (const std::string_view word : key.choices)  // as YAML 1.1 reads them
        if (word == "yes" || word == "no") schema["enum"].push_back(word == "yes");
      break;
    case KeyForm::yes_no:
      schema = {{"enum", {"yes", "no", true, false}}};  // as YAML 1.2 and 1.1 read `yes`
      break;
    case KeyForm::count:
      schema = {{"type", {"integer", "string"}}};
      break;
    case KeyForm::text:
    case KeyForm::number:
    case KeyForm::quantity:
      schema = {{"type", {"string", "number"}}};
      break;
    case KeyForm::any:
      schema = Json::object();
      break;
  }
  schema["description"] = key.help + ".";
  return schema;
}

struct NamedSchema {
  std::string_view file;
  const char* title;
  const std::vector<FileKey>& (*keys)();
};

constexpr NamedSchema kSchemas[] = {
    {"job", "A job of Riserun", plan::job_keys},
    {"bin", "A bin of Riserun", catalog::bin_keys},
    {"catalog", "Parts, prices and duties for Riserun", catalog::catalog_keys},
    {"joints", "Kinds of joint of a catalog of Riserun", catalog::joints_keys},
    {"materials", "Materials of a catalog of Riserun", catalog::materials_keys},
    {"losses", "Losses of a catalog of Riserun", catalog::losses_keys},
    {"pipe", "Bores of a catalog of Riserun", catalog::bores_keys},
};

}  // namespace

std::vector<std::string> schema_files() {
  std::vector<std::string> files;
  for (const NamedSchema& schema : kSchemas) files.emplace_back(schema.file);
  return files;
}

std::string schema_json(std::string_view file) {
  for (const NamedSchema& named : kSchemas) {
    if (named.file != file) continue;
    Json schema{{"$schema", "https://json-schema.org/draft/2020-12/schema"}, {"title", named.title}};
    schema.update(Schema(named.keys()).map_of(""));
    return schema.dump(1) + "\n";
  }
  return {};
}

}  // namespace riserun::report
