// The keys of a file that people write, as a table: what each is called, where it stands, what it holds. Help and the
// schemas that editors check with are written from such tables; a test holds each against what its reader takes.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace riserun::catalog {

/// What stands behind a key. Of quantities a text with a unit, or a bare number in the file's unit.
enum class KeyForm : std::uint8_t {
  map,    // further keys
  names,  // names of one's own, each with what the row `PATH.*` says
  list,   // a list of what the row `PATH[]` says
  file,   // such a list, or the name of a file that holds it
  files,  // the same, or names of one's own, each with the name of a file
  words,  // a list of texts, or one
  text,
  choice,  // one of a few words
  yes_no,
  count,
  number,
  quantity,
  any,  // of a form of its own, which the reader checks
};

struct FileKey {
  std::string path;  // "reservoir.inside.length"; `.*` is a name of one's own, `[]` an item of a list
  KeyForm form = KeyForm::text;
  std::string help;  // one sentence without its full stop
  std::vector<std::string_view> choices{};
  bool needed = false;  // where what it stands in is there

  /// The last part of the path: "length".
  std::string_view name() const;
};

/// The rows of what stands right under that path; "" is the file.
std::vector<const FileKey*> keys_under(std::span<const FileKey> keys, std::string_view path);

}  // namespace riserun::catalog
