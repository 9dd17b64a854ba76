// A job file, read: what each key says, and every mistake with its place.
#pragma once

#include "catalog/catalog.h"
#include "plan/job/job.h"
#include "plan/job/read_before.h"

#include <filesystem>
#include <string>

namespace riserun::plan {

/// Reads a job file. The row numbers in the job are those of `catalog`.
///
/// @throws InputError with every mistake of the file and of the bin and price files that it names: unknown keys with
///         the nearest known one, missing keys, wrong units, values out of range with the range, names of ports that
///         do not exist, words that match no part
Job load_job(const Catalog& catalog, const std::filesystem::path& path);

/// The same from text; `name` stands for the file in messages, and files that the job names are looked for beside it.
Job read_job(const Catalog& catalog, const std::string& text, const std::filesystem::path& name);
Job read_job(const Catalog& catalog, const std::string& text, const std::filesystem::path& name, ReadBefore& before);

}  // namespace riserun::plan
