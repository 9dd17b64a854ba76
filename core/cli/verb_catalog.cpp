#include "cli/inputs.h"
#include "report/json/catalog_json.h"
#include "report/text/catalog_text.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <numeric>
#include <ostream>

namespace riserun::cli {

namespace {

std::vector<catalog::PartId> chosen_parts(const catalog::Catalog& catalog, const std::vector<std::string>& words) {
  if (words.empty()) {
    std::vector<catalog::PartId> all(catalog.parts().size());
    for (std::uint32_t row = 0; row < all.size(); ++row) all[row] = catalog::PartId{row};
    return all;
  }
  std::string joined;
  for (const std::string& word : words) joined += (joined.empty() ? "" : " ") + word;
  WordReader reader;
  std::vector<catalog::PartId> parts = reader.all_parts(catalog, "catalog", joined);
  reader.finish();
  return parts;
}

int run_catalog(const std::vector<std::string>& words, const Session& session) {
  const Stock stock = load_stock(session.common);
  const std::vector<catalog::PartId> parts = chosen_parts(*stock.catalog, words);
  session.out << (session.common.json ? report::catalog_json(*stock.catalog, parts)
                                      : report::catalog_text(*stock.catalog, parts, session.style(UnitSystem::inch)));
  return kDone;
}

}  // namespace

void add_catalog_verb(CLI::App& app, Session& session) {
  const auto words = std::make_shared<std::vector<std::string>>();
  CLI::App* verb =
      app.add_subcommand("catalog", "Look a part up: \"1 x 3/4 hex bushing brass\"; all parts without words");
  verb->add_option("words", *words, "Family, size, material or port");
  verb->callback(
      [words, &session] { session.chosen_verb = [words, &session] { return run_catalog(*words, session); }; });
}

}  // namespace riserun::cli
