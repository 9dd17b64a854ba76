// The keys of a job file: what each is called, where it stands, what it holds. Help and the schema that editors check
// with are written from this table; a test holds it against what the reader takes.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace riserun::plan {

/// What stands behind a key. Of quantities a text with a unit, or a bare number in the job's unit.
enum class JobForm : std::uint8_t {
  map,    // further keys
  names,  // names of one's own, each with what the row `PATH.*` says
  list,   // a list of what the row `PATH[]` says
  file,   // such a list, or the name of a file that holds it
  words,  // a list of texts, or one
  text,
  choice,  // one of a few words
  yes_no,
  count,
  number,
  quantity,
};

struct JobKey {
  std::string path;  // "reservoir.inside.length"; `.*` is a name of one's own, `[]` an item of a list
  JobForm form = JobForm::text;
  std::string help;  // one sentence without its full stop
  std::vector<std::string_view> choices{};
  bool needed = false;  // where what it stands in is there

  /// The last part of the path: "length".
  std::string_view name() const;
};

/// In the order in which a job is written; a key stands behind the one that it belongs to. Made once.
const std::vector<JobKey>& job_keys();

/// The rows of what stands right under that path; "" is the file.
std::vector<const JobKey*> keys_under(std::string_view path);

}  // namespace riserun::plan
