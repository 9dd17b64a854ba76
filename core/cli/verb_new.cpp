#include "cli/command.h"
#include "plan/job/starter_job.h"
#include "quantity/input_error.h"

#include <CLI/CLI.hpp>
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <ostream>

namespace riserun::cli {

namespace {

[[noreturn]] void refuse(const std::string& file, const std::string& why) {
  throw quantity::InputError({{file, 0, 0, why, ""}});
}

void write_all(int descriptor, const std::string& file, const std::string& text) {
  std::size_t written = 0;
  while (written < text.size()) {
    const ssize_t count = ::write(descriptor, text.data() + written, text.size() - written);
    if (count < 0) {
      const std::string why = std::strerror(errno);
      ::close(descriptor);
      ::unlink(file.c_str());
      refuse(file, "cannot write: " + why);
    }
    written += static_cast<std::size_t>(count);
  }
}

int run_new(const std::string& file, const Session& session) {
  // O_EXCL: made here or not at all, so that no job of the user's is ever written over.
  const int descriptor = ::open(file.c_str(), O_WRONLY | O_CREAT | O_EXCL, 0644);
  if (descriptor < 0)
    refuse(file, errno == EEXIST ? "is there already; a starter job is never written over another file"
                                 : std::string("cannot be made: ") + std::strerror(errno));
  write_all(descriptor, file, plan::starter_job());
  if (::close(descriptor) != 0) refuse(file, std::string("cannot write: ") + std::strerror(errno));
  session.out << fmt::format(
      "{} is a starter job that works as it stands. Change it to your measures, then: riserun plan {}\n", file, file);
  return kDone;
}

}  // namespace

void add_new_verb(CLI::App& app, Session& session) {
  const auto file = std::make_shared<std::string>();
  CLI::App* verb = app.add_subcommand("new", "Write a commented starter job into a new file");
  verb->add_option("file", *file, "The file to make")->required();
  verb->callback([file, &session] { session.chosen_verb = [file, &session] { return run_new(*file, session); }; });
}

}  // namespace riserun::cli
