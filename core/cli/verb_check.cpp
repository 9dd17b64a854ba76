#include "catalog/load/load.h"
#include "catalog/yaml/document.h"
#include "catalog/yaml/read_file.h"
#include "cli/inputs.h"
#include "plan/job/read_job.h"
#include "quantity/printable.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <ostream>

namespace riserun::cli {

namespace {

enum class FileKind { job, bin, own_catalog, shipped_catalog };

bool lies_in_shipped_catalog(const std::string& file) {
  std::error_code ignored;
  const auto folder = std::filesystem::weakly_canonical(file, ignored).parent_path();
  return std::filesystem::equivalent(folder, catalog::find_catalog_folder(), ignored);
}

/// A pipe is empty when it is read for the second time.
void refuse_what_is_read_once(const std::string& file) {
  std::error_code ignored;
  const std::filesystem::file_type type = std::filesystem::status(file, ignored).type();
  if (file == catalog::kStandardInput) return;  // it is kept
  if (type == std::filesystem::file_type::fifo || type == std::filesystem::file_type::socket ||
      type == std::filesystem::file_type::character)
    throw quantity::InputError({{file, 0, 0, "is no file that can be read twice, as 'check' does: save it first", {}}});
}

bool has_a_price(const catalog::Value& rows) {
  const std::vector<catalog::Value> all = rows.items();
  return std::any_of(all.begin(), all.end(), [](const catalog::Value& row) {
    const auto cells = row.entries();
    return std::any_of(cells.begin(), cells.end(),
                       [](const auto& cell) { return cell.first.text().starts_with("price"); });
  });
}

bool names(std::string_view head, std::string_view column) { return head.starts_with(column); }

/// Of a table: the lines whose row names a part and leaves its price empty. They keep the catalog's price.
std::vector<std::string> lines_without_price(const std::string& file) {
  catalog::Problems problems;
  const catalog::Document document = catalog::Document::load(file, problems);
  std::vector<std::string> lines;
  if (!document.is_table()) return lines;
  for (const catalog::Value& row : document.root().items()) {
    bool part = false;
    bool price = false;
    for (const auto& [head, cell] : row.entries()) {
      if (cell.text().empty()) continue;
      part = part || names(head.text(), "part") || names(head.text(), "id");
      price = price || names(head.text(), "price");
    }
    if (part && !price) lines.push_back(std::to_string(row.line()));
  }
  return lines;
}

/// The parts that a file of the shop's own adds, and how many of any it prices, in place of what another said before.
std::string what_it_brings(const std::string& file, CommonOptions common) {
  const Stock before = load_stock(common);
  common.catalog_files.push_back(file);
  const Stock now = load_stock(common);
  int priced = 0;
  int again = 0;
  for (const catalog::Part& part : now.catalog->parts()) {
    if (part.priced_by != file) continue;
    ++priced;
    const auto known = before.catalog->find_part(part.id);
    if (known && !before.catalog->part(*known).priced_by.empty()) ++again;
  }
  const std::size_t added = now.catalog->parts().size() - before.catalog->parts().size();
  std::string text = fmt::format("a catalog file that adds {} parts", added);
  if (priced > 0) text += fmt::format(" and prices {}", priced);
  if (again > 0) text += fmt::format(", {} of them in place of what a file before it says", again);
  const std::vector<std::string> unpriced = lines_without_price(file);
  if (!unpriced.empty())
    text += fmt::format("; without a price, and left at the catalog's: line{} {}", unpriced.size() == 1 ? "" : "s",
                        fmt::join(unpriced, ", "));
  return text;
}

/// By what stands in it, not by its name. A file that cannot be parsed is reported here.
FileKind kind_of(const std::string& file) {
  refuse_what_is_read_once(file);
  catalog::Problems problems;
  const catalog::Document document = catalog::Document::load(file, problems);
  std::move(problems).throw_if_any();
  const catalog::Value root = document.root();
  if (document.is_table()) return has_a_price(root) ? FileKind::own_catalog : FileKind::bin;
  if (root["bin"].exists() && !root["reservoir"].exists() && !root["table"].exists()) return FileKind::bin;
  if (!root["families"].exists() && !root["parts"].exists() && !root["prices"].exists() && !root["kinds"].exists() &&
      !root["materials"].exists() && !root["items"].exists() && !root["bores"].exists() && !root["duties"].exists())
    return FileKind::job;
  // `prices` may also stand in a job, beside its reservoir.
  if (root["reservoir"].exists() || root["table"].exists()) return FileKind::job;
  return lies_in_shipped_catalog(file) ? FileKind::shipped_catalog : FileKind::own_catalog;
}

std::string check(const std::string& file, CommonOptions common) {
  switch (kind_of(file)) {
    case FileKind::bin: {
      common.bin_files = {file};
      return fmt::format("a bin with {} kinds of part", load_stock(common).bin.items.size());
    }
    case FileKind::own_catalog:
      return what_it_brings(file, common);
    case FileKind::shipped_catalog:
      return fmt::format("part of the shipped catalog of {} parts", load_stock(common).catalog->parts().size());
    case FileKind::job:
      break;
  }
  const plan::Job job = plan::load_job(*load_stock(common).catalog, file);
  return fmt::format("a job with {} connections", job.connections.size());
}

int run_check(const std::string& file, const Session& session) {
  session.out << fmt::format("{}: nothing wrong; {}.\n", quantity::printable(file), check(file, session.common));
  return kDone;
}

}  // namespace

void add_check_verb(CLI::App& app, Session& session) {
  const auto file = std::make_shared<std::string>();
  CLI::App* verb = app.add_subcommand("check", "Check a job, a bin or a catalog file, and say what is wrong where");
  verb->add_option("file", *file, "The file; - is the standard input")->required();
  verb->callback([file, &session] { session.chosen_verb = [file, &session] { return run_check(*file, session); }; });
}

}  // namespace riserun::cli
