// A job file, read: what each key says, and every mistake with its place.
#pragma once

#include "catalog/catalog.h"
#include "catalog/words/part_search.h"
#include "plan/job/job.h"

#include <filesystem>
#include <memory>
#include <string>

namespace riserun::plan {

/// Reads a job file. The row numbers in the job are those of `catalog`.
///
/// @throws InputError with every mistake of the file and of the bin and price files that it names: unknown keys with
///         the nearest known one, missing keys, wrong units, values out of range with the range, names of ports that
///         do not exist, words that match no part
Job load_job(const Catalog& catalog, const std::filesystem::path& path);

/// What reading a job leaves for reading it again, after a change: its own catalog, where its own parts stayed as they
/// were, and what words of parts were found to mean. For one thread, and for one catalog, which must outlive it.
struct ReadBefore {
  std::shared_ptr<const Catalog> own_catalog;   // of the job; nullptr: it has no parts of its own
  std::unique_ptr<catalog::PartSearch> listed;  // what words mean in the catalog that the job is read against
  std::unique_ptr<catalog::PartSearch> own;     // ... and in its own
};

/// The same from text; `name` stands for the file in messages, and files that the job names are looked for beside it.
Job read_job(const Catalog& catalog, const std::string& text, const std::filesystem::path& name);
Job read_job(const Catalog& catalog, const std::string& text, const std::filesystem::path& name, ReadBefore& before);

}  // namespace riserun::plan
