#include "gui/views/export.h"

#include "gui/model/session/job_file.h"
#include "report/json/plan_json.h"
#include "report/paper/list_pdf.h"
#include "report/paper/picture_file.h"
#include "report/text/plan_text.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <csignal>
#include <exception>
#include <iterator>
#include <optional>
#include <thread>
#include <vector>

namespace riserun::views {

namespace {

namespace fs = std::filesystem;

gui::Notice refused(std::string text) { return {gui::Notice::Kind::refused, std::move(text), {}}; }

/// Empty: written whole; else what was there stays as it was.
std::string write_file(const fs::path& file, const std::string& text) {
  const std::optional<gui::FileError> error = gui::write_whole(file, text);
  return error ? error->reason : "";
}

/// What a program that ends before it has read all would end this one with; for as long as this lives.
class NoBrokenPipe {
 public:
  NoBrokenPipe() {
    sigset_t pipe_only;
    sigemptyset(&pipe_only);
    sigaddset(&pipe_only, SIGPIPE);
    pthread_sigmask(SIG_BLOCK, &pipe_only, &before_);
  }
  ~NoBrokenPipe() {
    const timespec no_wait{};
    sigset_t pipe_only;
    sigemptyset(&pipe_only);
    sigaddset(&pipe_only, SIGPIPE);
    if (sigismember(&before_, SIGPIPE) == 0) sigtimedwait(&pipe_only, nullptr, &no_wait);
    pthread_sigmask(SIG_SETMASK, &before_, nullptr);
  }
  NoBrokenPipe(const NoBrokenPipe&) = delete;
  NoBrokenPipe& operator=(const NoBrokenPipe&) = delete;
  const sigset_t& before() const { return before_; }

 private:
  sigset_t before_{};
};

void send_all(int end, const std::string& text) {
  std::size_t sent = 0;
  while (sent < text.size()) {
    const ssize_t piece = write(end, text.data() + sent, text.size() - sent);
    if (piece < 0 && errno == EINTR) continue;
    if (piece <= 0) return;
    sent += static_cast<std::size_t>(piece);
  }
}

/// Runs a program with that on its standard input; true: it ended well. No shell in between. For any thread.
bool feed(const char* program, const char* const* words, const std::string& text) {
  int ends[2];
  if (pipe2(ends, O_CLOEXEC) != 0) return false;
  const NoBrokenPipe guard;
  const pid_t child = fork();
  if (child == 0) {
    dup2(ends[0], STDIN_FILENO);
    pthread_sigmask(SIG_SETMASK, &guard.before(), nullptr);
    execvp(program, const_cast<char* const*>(words));
    _exit(127);
  }
  close(ends[0]);
  if (child > 0) send_all(ends[1], text);
  close(ends[1]);
  int status = 1;
  return child > 0 && waitpid(child, &status, 0) == child && WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

}  // namespace

gui::Notice export_plan(const plan::Plan& plan, UnitSystem units, const report::Picture& plumbing,
                        const fs::path& folder) {
  std::error_code failed;
  fs::create_directories(folder, failed);
  if (failed) return refused(fmt::format("cannot make the folder {}: {}", folder.string(), failed.message()));
  const report::Style style{units, false};
  std::vector<std::string> texts = {report::list_pdf(plan, style), report::list_text(plan, style),
                                    report::list_json(plan, units), report::plan_text(plan, style),
                                    report::plan_json(plan, units)};
  const report::Paper paper = report::paper_of(units);
  const double plumbing_wide = plumbing.drawing.width() * plumbing.scale;
  const auto add = [&](const std::vector<report::Picture>& pictures, double width) {
    for (const report::PictureForm form : report::kPictureForms) texts.push_back(picture_file(pictures, width, form));
  };
  try {
    add({plumbing}, plumbing_wide);
    add({section_picture(plan, units, paper, report::Letters())}, paper.width);
    add(plot_pictures(plan, units, paper), paper.width);
  } catch (const std::exception& error) {
    return refused(fmt::format("the drawings cannot be made: {}", error.what()));
  }
  for (std::size_t row = 0; row < std::size(kPapers); ++row)
    if (std::string why = write_file(folder / kPapers[row], texts[row]); !why.empty()) return refused(std::move(why));
  return {gui::Notice::Kind::done, fmt::format("Exported list, plan and drawings to {}", folder.string()), {}};
}

gui::Notice print_list(const plan::Plan& plan, UnitSystem units, const fs::path& beside) {
  const std::string pdf = report::list_pdf(plan, report::Style{units, false});
  const char* const words[] = {"lp", "-s", "-t", "Riserun list", nullptr};
  if (feed("lp", words, pdf)) return {gui::Notice::Kind::done, "The list is on its way to the printer", {}};
  std::error_code no_throw;
  fs::path file = beside / "list.pdf";
  for (int next = 2; fs::exists(file, no_throw); ++next) file = beside / fmt::format("list {}.pdf", next);
  if (std::string why = write_file(file, pdf); !why.empty()) return refused(std::move(why));
  return {gui::Notice::Kind::done, fmt::format("No printer answers; the list is in {}", file.string()), {}};
}

std::future<gui::Notice> start_print(std::shared_ptr<const plan::Plan> plan, UnitSystem units, fs::path beside) {
  std::packaged_task<gui::Notice()> task([plan = std::move(plan), units, beside = std::move(beside)] {
    try {
      return print_list(*plan, units, beside);
    } catch (const std::exception& error) {
      return refused(fmt::format("the list cannot be printed: {}", error.what()));
    }
  });
  std::future<gui::Notice> notice = task.get_future();
  std::thread(std::move(task)).detach();
  return notice;
}

}  // namespace riserun::views
