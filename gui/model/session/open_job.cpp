#include "gui/model/session/open_job.h"

#include "plan/job/starter_job.h"

#include <system_error>

namespace riserun::gui {

namespace {

namespace fs = std::filesystem;

const char* const kUnnamed = "new job.yaml";  // stands for the file in messages until there is one

fs::path whole_path(const fs::path& file) {
  std::error_code error;
  const fs::path whole = fs::absolute(file, error);
  return error ? file : whole.lexically_normal();
}

Outcome failed(const FileError& error) { return {false, error.reason}; }

}  // namespace

OpenJob::OpenJob(std::shared_ptr<const catalog::Catalog> catalog, fs::path state)
    : state_(std::move(state)), editor_(std::move(catalog)), copy_(std::make_unique<Copy>(state_)) {
  start_new();
}

void OpenJob::start_new(std::string text) {
  give_up_unsaved();
  file_.clear();
  stamp_ = {};
  on_disk_ = OnDisk::none;
  saved_text_ = text.empty() ? plan::starter_job() : std::move(text);
  editor_.start(saved_text_, kUnnamed);
}

Outcome OpenJob::open(const fs::path& name) {
  const fs::path file = whole_path(name);
  const FileStamp stamp = stamp_of(file);  // before reading: a change meanwhile is then noticed
  auto text = read_whole(file);
  if (const auto* error = std::get_if<FileError>(&text)) return failed(*error);
  give_up_unsaved();
  file_ = file;
  stamp_ = stamp;
  on_disk_ = OnDisk::same;
  saved_text_ = std::get<std::string>(std::move(text));
  editor_.start(saved_text_, file_);
  note_recent(state_, file_);
  return {true, ""};
}

Outcome OpenJob::write(const fs::path& file) {
  std::vector<quantity::Problem> problems = editor_.problems_as(file);
  if (!problems.empty())
    return {false, "Not saved to " + file.filename().string() + ": the job would not load again.", std::move(problems)};
  if (const auto error = write_whole(file, editor_.text())) return failed(*error);
  stamp_ = stamp_of(file);
  on_disk_ = OnDisk::same;
  saved_text_ = editor_.text();
  if (file != file_) editor_.rename(file);
  file_ = file;
  note_recent(state_, file_);
  keep_copy();
  return {true, ""};
}

Outcome OpenJob::save() {
  if (file_.empty()) return {false, "The job has no file yet: save it under a name."};
  look_at_disk();
  if (on_disk_ == OnDisk::changed)
    return {false, file_.filename().string() + " was changed by another program: read it again, or keep yours."};
  return write(file_);
}

Outcome OpenJob::save_as(const fs::path& file) { return write(whole_path(file)); }

Outcome OpenJob::reload() {
  const FileStamp stamp = stamp_of(file_);
  auto text = read_whole(file_);
  if (const auto* error = std::get_if<FileError>(&text)) return failed(*error);
  stamp_ = stamp;
  on_disk_ = OnDisk::same;
  saved_text_ = std::get<std::string>(std::move(text));
  if (saved_text_ != editor_.text()) editor_.replace_text(saved_text_, "Read " + file_.filename().string() + " again");
  return {true, ""};
}

void OpenJob::keep_mine() {
  if (file_.empty()) return;
  stamp_ = stamp_of(file_);
  on_disk_ = stamp_.exists ? OnDisk::same : OnDisk::gone;
  saved_text_.clear();  // what is on disk is not what is here
  if (const auto text = read_whole(file_); std::holds_alternative<std::string>(text))
    saved_text_ = std::get<std::string>(text);
}

Outcome OpenJob::recover(const Recovery& copy) {
  std::optional<std::string> text = text_of(copy);
  if (!text) return {false, "The copy cannot be read any more."};
  start_new();
  std::string on_disk = saved_text_;
  if (!copy.job_file.empty()) {
    file_ = copy.job_file;
    stamp_ = stamp_of(file_);
    on_disk_ = stamp_.exists ? OnDisk::same : OnDisk::gone;
    const auto now = read_whole(file_);
    on_disk = std::holds_alternative<std::string>(now) ? std::get<std::string>(now) : "";
  }
  saved_text_ = std::move(on_disk);
  editor_.start(std::move(*text), file_.empty() ? fs::path(kUnnamed) : file_);
  keep_copy();  // a new copy first: there is one at every moment
  remove(copy);
  return {true, ""};
}

FileState OpenJob::file_state() const { return {file_, is_unsaved(), on_disk_}; }

bool OpenJob::look_at_disk() {
  if (file_.empty()) return false;
  const FileStamp now = stamp_of(file_);
  const OnDisk before = on_disk_;
  if (now == stamp_) return false;
  if (!now.exists) {
    on_disk_ = OnDisk::gone;
  } else if (const auto text = read_whole(file_);
             std::holds_alternative<std::string>(text) && std::get<std::string>(text) == saved_text_) {
    stamp_ = now;  // written anew with the same text
    on_disk_ = OnDisk::same;
  } else {
    on_disk_ = OnDisk::changed;
  }
  return on_disk_ != before;
}

void OpenJob::keep_copy() {
  if (!is_unsaved() || given_up_ == editor_.revision()) {
    if (!copied_text_.empty()) copy_->drop();
    copied_text_.clear();
  } else if (copied_text_ != editor_.text() && copy_->keep(file_, editor_.text())) {
    copied_text_ = editor_.text();
  }
}

void OpenJob::give_up_unsaved() {
  copy_->drop();
  copied_text_.clear();
  given_up_ = editor_.revision();
}

std::optional<ViewState> OpenJob::load_view() const {
  if (file_.empty()) return std::nullopt;
  const auto text = read_whole(side_file_of(file_));
  const auto* good = std::get_if<std::string>(&text);
  return good != nullptr ? std::optional(read_view(*good)) : std::nullopt;
}

void OpenJob::save_view(const ViewState& view) const {
  if (!file_.empty()) write_whole(side_file_of(file_), write_view(view));
}

JobState state_of(const OpenJob& job) {
  JobState state = job.editor().state();
  state.file = job.file_state();
  return state;
}

}  // namespace riserun::gui
