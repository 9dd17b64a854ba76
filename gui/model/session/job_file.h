// Files on disk: read whole, written whole or not at all, and known again.
#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <variant>

namespace riserun::gui {

/// What tells that a file is still the one that was read or written.
struct FileStamp {
  bool exists = false;
  std::uint64_t device = 0;
  std::uint64_t inode = 0;
  std::int64_t size = 0;
  std::int64_t changed_at = 0;  // nanoseconds
  bool operator==(const FileStamp&) const = default;
};

FileStamp stamp_of(const std::filesystem::path& file);

/// Why a file could not be read or written; a sentence.
struct FileError {
  std::string reason;
};

/// At most catalog::kLargestFile, as every file that this program reads.
std::variant<std::string, FileError> read_whole(const std::filesystem::path& file);

/// Writes the text so that the file holds the old text or the new one, whole, whenever the program or the machine
/// stops: into a file beside it, which is flushed to the disk and then takes the name. Mode and, where allowed, owner
/// stay; a symbolic link stays one. nullopt: done. Leftovers of programs that were killed while saving are swept away.
std::optional<FileError> write_whole(const std::filesystem::path& file, const std::string& text);

}  // namespace riserun::gui
