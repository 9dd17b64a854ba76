// adapter FOLDER: the best adapter from 1 in female pipe thread to 3/4 in male garden hose thread, of the catalog in
// that folder.
#include "catalog/load/load.h"
#include "catalog/words/port_notation.h"
#include "chain/finder.h"

#include <iostream>
#include <variant>

int main(int, char** words) {
  const riserun::catalog::Catalog catalog = riserun::catalog::load_catalog(words[1]);
  const riserun::catalog::PortNotation ports(catalog);
  riserun::chain::ChainRequest request;
  request.from.type = *ports.find("1 FNPT");
  request.to.type = *ports.find("3/4 MGHT");
  const riserun::chain::Answer answer = riserun::chain::Finder(catalog).find(request);
  const auto* run = std::get_if<riserun::chain::Chain>(&answer);
  if (run == nullptr) return 1;
  for (const auto& part : run->parts) std::cout << catalog.part(part.part).name << "\n";
}
