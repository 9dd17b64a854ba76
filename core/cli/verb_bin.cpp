// The shop's bin: what was bought goes in, what a job uses comes out, and the last change can be taken back.
#include "catalog/load/load.h"
#include "catalog/words/piece_words.h"
#include "catalog/yaml/document.h"
#include "catalog/yaml/read_file.h"
#include "cli/inputs.h"
#include "plan/plan.h"
#include "plan/shop/bin_file.h"
#include "plan/stage/inputs.h"
#include "quantity/printable.h"
#include "quantity/write.h"
#include "report/file/write_file.h"

#include <CLI/CLI.hpp>
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <unistd.h>

#include <ostream>
#include <utility>

namespace riserun::cli {

namespace {

namespace fs = std::filesystem;
using quantity::InputError;

std::string text_of(const fs::path& file) {
  catalog::Problems problems;
  std::optional<std::string> text = catalog::read_file(file, problems);
  std::move(problems).throw_if_any();
  return std::move(*text);
}

catalog::Catalog catalog_without_bin(const Session& session) {
  const std::vector<fs::path> own(session.common.catalog_files.begin(), session.common.catalog_files.end());
  return catalog::load_shipped_catalog(own);
}

/// The file that holds a bin of the job: its own, or the job itself.
fs::path file_of(const catalog::NamedBin& bin, const std::string& job_file, const Session& session) {
  const bool named_here = !session.common.bin_files.empty();
  if (bin.file == catalog::kStandardInput)
    throw InputError({{named_here ? "--bin" : job_file, 0, 0, "is changed, so that it must be a file", ""}});
  if (bin.file.empty() && job_file == catalog::kStandardInput)
    throw InputError({{job_file, 0, 0, "is the standard input, and its bin cannot be changed: save it in a file", ""}});
  if (bin.file.empty()) return job_file;
  return named_here ? fs::path(bin.file) : fs::path(job_file).parent_path() / bin.file;
}

/// The old text is beside the new one before that is there: a kill between the two loses nothing.
void write_changed(const fs::path& bin, const std::string& old_text, const std::string& new_text) {
  report::write_file(plan::before_file(bin).string(), old_text, report::Overwrite::yes);
  report::write_file(bin.string(), new_text, report::Overwrite::yes);
}

/// Held while a bin is read and written: two changes at once come one after the other. On its folder, as the file is
/// replaced.
class Held {
 public:
  explicit Held(const fs::path& bin)
      : folder_(::open(bin.has_parent_path() ? bin.parent_path().c_str() : ".", O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
    if (folder_ >= 0) ::flock(folder_, LOCK_EX);
  }
  ~Held() {
    if (folder_ >= 0) ::close(folder_);
  }
  Held(const Held&) = delete;
  Held& operator=(const Held&) = delete;

 private:
  int folder_;
};

/// As the list calls it; a piece, which the catalog alone does not have, by what it was cut from.
std::string name_of(const catalog::Catalog& catalog, const std::string& id) {
  const auto part = catalog.find_part(id);
  if (part) return plan::part_title(catalog, *part);
  const auto whole = catalog.find_part(id.substr(0, id.find("/piece-")));
  return whole ? "piece of " + plan::part_title(catalog, *whole) : quantity::printable(id);
}

void change(const fs::path& bin, const plan::BinChange& change, const Session& session) {
  const catalog::Catalog catalog = catalog_without_bin(session);
  if (catalog::is_table_file(bin))
    throw InputError({{bin.string(), 0, 0, "is a table, and only a bin in a .yaml file is changed", ""}});
  const Held held(bin);
  const std::string text = text_of(bin);
  const std::string changed = plan::changed_bin(text, bin.string(), catalog, change);
  if (changed == text) {
    session.out << fmt::format("Nothing of it concerns {}.\n", quantity::printable(bin.string()));
    return;
  }
  write_changed(bin, text, changed);
  for (const plan::BinChange::Count& count : change.counts)
    if (count.more != 0) session.out << fmt::format("  {:+} {}\n", count.more, name_of(catalog, count.part));
  for (const plan::BinChange::Piece& piece : change.pieces)
    session.out << fmt::format(
        "  +1 {}, {}\n", catalog.part(piece.part).id,
        catalog::piece_words(piece.length, piece.sawn_ends, session.style(UnitSystem::inch).units));
  for (const plan::BinChange::Count& count : change.counts)
    if (count.lent > 0)
      session.out << fmt::format("  {} of {} left in: lent to the leak test alone\n", count.lent,
                                 name_of(catalog, count.part));
  session.out << fmt::format("{} changed; riserun bin undo {} takes it back.\n", quantity::printable(bin.string()),
                             quantity::printable(bin.string()));
}

int take(const std::string& job_file, const Session& session) {
  const Stock stock = load_stock(session.common);
  plan::Job job = load_job(stock, job_file, session.err);
  if (job.bins.empty()) throw InputError({{job_file, 0, 0, "the job has no bin; name one with --bin FILE", ""}});
  const plan::Plan plan = plan::make_plan(stock.catalog, std::move(job));
  if (plan.verdict == plan::Verdict::refused) {
    session.out << fmt::format("The job is refused, so nothing is taken: riserun plan {}\n",
                               quantity::printable(job_file));
    return kNoSolution;
  }
  const std::vector<plan::BinChange> changes = plan::changes_by(plan);
  for (std::size_t row = 0; row < changes.size(); ++row)
    change(file_of(plan.job.bins[row], job_file, session), changes[row], session);
  return kDone;
}

int add(const std::string& list, const Session& session) {
  const std::vector<std::string>& bins = session.common.bin_files;
  if (bins.size() != 1) throw InputError({{"", 0, 0, "which bin? name one with --bin FILE", ""}});
  change(bins.front(), plan::change_of_list(list, catalog_without_bin(session)), session);
  return kDone;
}

int undo(const std::string& file, const Session& session) {
  const fs::path before = plan::before_file(file);
  if (!fs::exists(before)) {
    session.out << fmt::format("There is no change of {} to take back.\n", quantity::printable(file));
    return kNoSolution;
  }
  const Held held(file);
  // The two change places, so that an undo can be undone.
  const std::string now = text_of(file);
  const std::string then = text_of(before);
  write_changed(file, now, then);
  session.out << fmt::format("{} is as it was before its last change.\n", quantity::printable(file));
  return kDone;
}

using Doing = int (*)(const std::string&, const Session&);

void add_part(CLI::App& bin, Session& session, const char* name, const char* about, const char* what,
              const char* what_about, Doing doing) {
  const auto file = std::make_shared<std::string>();
  CLI::App* part = bin.add_subcommand(name, about);
  part->add_option(what, *file, what_about)->required();
  part->callback(
      [file, doing, &session] { session.chosen_verb = [file, doing, &session] { return doing(*file, session); }; });
}

}  // namespace

void add_bin_verb(CLI::App& app, Session& session) {
  CLI::App* bin = app.add_subcommand("bin", "The shop's bin: put in what was bought, take out what a job uses, undo");
  bin->require_subcommand(1);
  bin->fallthrough();
  add_part(*bin, session, "take", "Take out what a job uses, and put back what is left of a length", "job",
           "The job file; its own bins, or those of --bin", &take);
  add_part(*bin, session, "add", "Put in what a list names: a bin file, or a table of riserun plan --out FILE.csv",
           "list", "The list; the bin is that of --bin", &add);
  add_part(*bin, session, "undo", "Take the last change back; once more does it again", "file", "The bin's file",
           &undo);
}

}  // namespace riserun::cli
