#include "catalog/yaml/read_file.h"

#include "catalog/yaml/limits.h"

#include <fmt/format.h>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <system_error>
#include <utility>

namespace riserun::catalog {

std::string too_large() {
  return fmt::format("larger than {} MB: this is not a file for this program", kLargestFile >> 20U);
}

namespace {

std::optional<std::string> read_once(const std::filesystem::path& path, Problems& problems) {
  const auto refuse = [&](std::string why) {
    problems.add({path.string(), 0, 0, std::move(why), {}, std::string(quantity::mistake::kFileNotRead)});
    return std::nullopt;
  };
  std::error_code failed;
  const std::filesystem::path source = path == kStandardInput ? "/dev/stdin" : path;
  const std::filesystem::file_status status = std::filesystem::status(source, failed);
  if (status.type() == std::filesystem::file_type::not_found) return refuse("there is no such file");
  if (status.type() == std::filesystem::file_type::directory) return refuse("this is a folder, not a file");
  if (status.type() == std::filesystem::file_type::regular) {
    const std::uintmax_t size = std::filesystem::file_size(source, failed);
    if (!failed && size > kLargestFile) return refuse(too_large());
  }
  errno = 0;
  std::ifstream stream(source, std::ios::binary);
  if (!stream) return refuse(fmt::format("cannot be opened for reading: {}", std::strerror(errno)));
  std::string text;
  char buffer[65536];
  while (stream.read(buffer, sizeof buffer) || stream.gcount() > 0) {
    text.append(buffer, static_cast<std::size_t>(stream.gcount()));
    if (text.size() > kLargestFile) return refuse(too_large());
  }
  if (stream.bad()) return refuse(fmt::format("cannot be read to its end: {}", std::strerror(errno)));
  return text;
}

}  // namespace

std::optional<std::string> read_file(const std::filesystem::path& path, Problems& problems) {
  if (path != kStandardInput) return read_once(path, problems);
  static std::optional<std::string> standard_input;  // at its end it is empty
  if (!standard_input) standard_input = read_once(path, problems);
  return standard_input;
}

}  // namespace riserun::catalog
