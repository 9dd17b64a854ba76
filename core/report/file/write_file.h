// Files that hold what the program made: whole or not at all.
#pragma once

#include <string>

namespace riserun::report {

enum class Overwrite : bool { no, yes };

/// Writes the text beside the file, flushes it to the disk and gives it the file's name, so that whoever opens the file
/// finds the old text or the new, never a half. Through a symbolic link the file that it names is written. A file that
/// is there keeps its mode. What is no regular file (a pipe, a device) is written as it is.
/// @param overwrite  no: a file that is there already, of whatever kind, is an error and stays as it is
/// @throws InputError that names the file and why it could not be written; then nothing of it is left
void write_file(const std::string& file, const std::string& text, Overwrite overwrite);

}  // namespace riserun::report
