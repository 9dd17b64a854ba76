#include "catalog/load/user_keys.h"

#include <iterator>
#include <utility>

namespace riserun::catalog {

namespace {

using Form = KeyForm;

const std::vector<std::string_view> kRoleNames = {"connector",   "plug",      "device",     "gauge",     "relief valve",
                                                  "check valve", "regulator", "restrictor", "hose clamp"};

std::vector<FileKey> keys_of_parts() {
  return {
      {"parts", Form::list, "Parts of the shop's own, each by itself"},
      {"parts[].id", Form::text, "A name that no other part has, as `shop/adapter-12`", {}, true},
      {"parts[].name", Form::text, "What it is called on a list", {}, true},
      {"parts[].size", Form::text, "Its size as a person says it, as `1 x 3/4`", {}, true},
      {"parts[].family", Form::text, "The family that it belongs to, there already or of its own"},
      {"parts[].role", Form::choice, "What it does in a run", kRoleNames},
      {"parts[].material", Form::text, "What it is made of, a material of the catalog", {}, true},
      {"parts[].rating", Form::quantity, "Pressure that it stands", {}, true},
      {"parts[].price", Form::quantity, "For one, as `4.50 usd`; without one it has no price"},
      {"parts[].source", Form::text, "Where its figures come from, as `measured` or `maker's sheet`", {}, true},
      {"parts[].ports", Form::list, "Its ends, 1 to 8", {}, true},
      {"parts[].ports[].port", Form::text, "Size and thread, as `1 FNPT`", {}, true},
      {"parts[].ports[].bore", Form::quantity, "Its clear bore, under the outside of its joint", {}, true},
      {"parts[].ports[].reach", Form::quantity, "From the part's middle to this face, 0.5 mm to 10 m", {}, true},
      {"parts[].ports[].heading", Form::number, "Degrees that it looks to; 180, 0, 90, 270 in their order"},
      {"parts[].across flats", Form::quantity, "Wrench that it takes"},
      {"parts[].stocked", Form::yes_no, "no: a store must order it"},
      {"parts[].closing", Form::yes_no, "It closes a run between two fixed ends, as a union does"},
      {"parts[].dielectric", Form::yes_no, "It keeps the metals of its two sides apart"},
      {"parts[].one way", Form::yes_no, "Flow passes from its first port to its second alone"},
      {"parts[].arrow", Form::yes_no, "It is marked to be passed from its first port to its second"},
      {"parts[].air", Form::yes_no, "It may stand compressed air"},
      {"parts[].loss", Form::text, "A loss of catalog/losses.yaml by its name"},
      {"parts[].can shut", Form::yes_no, "It holds something that can stop the flow"},
      {"parts[].set pressure", Form::quantity, "Of a relief valve"},
      {"parts[].opening pressure", Form::quantity, "Of a check valve"},
      {"parts[].check", Form::choice, "What closes a check valve", {"spring", "swing"}},
      {"parts[].range", Form::quantity, "To what a gauge reads or a regulator goes"},
      {"parts[].close", Form::yes_no, "Threaded over its whole length, with no bare pipe for a wrench"},
      {"parts[].names material", Form::yes_no, "Its name says what it is made of"},
  };
}

std::vector<FileKey> keys_of_families() {
  return {
      {"families", Form::list, "Families of parts: a table of sizes, and a rule that makes a part of each row"},
      {"families[].name", Form::text, "What the family is called", {}, true},
      {"families[].aliases", Form::words, "What it is called as well"},
      {"families[].standard", Form::text, "The standard that its measures are of"},
      {"families[].shelf", Form::text, "Where a store keeps it", {}, true},
      {"families[].role", Form::choice, "What its parts do in a run", kRoleNames},
      {"families[].title", Form::text, "How a part's name is made of its row", {}, true},
      {"families[].sold as", Form::text, "Last words of the name that a piece of it goes without, as `by the foot`"},
      {"families[].size", Form::text, "How its size is made", {}, true},
      {"families[].id", Form::text, "How its id is made"},
      {"families[].ports", Form::list, "The ends of each part, 1 to 8", {}, true},
      {"families[].ports[].kind", Form::text, "Kind of joint: a name, or a column of the table", {}, true},
      {"families[].ports[].end", Form::text, "male, female or neither: a word, or a column", {}, true},
      {"families[].ports[].size", Form::text, "Nominal size: a size, or a column", {}, true},
      {"families[].ports[].bore", Form::any, "Its bore, where it is not the part's"},
      {"families[].ports[].reach", Form::any, "From the part's middle to this face", {}, true},
      {"families[].ports[].heading", Form::number, "Degrees that it looks to"},
      {"families[].bore", Form::any, "Bore of the part: a length, a column, or a table of bores"},
      {"families[].across flats", Form::any, "Wrench that it takes"},
      {"families[].outside diameter", Form::any, "Of a round body, as a weld bung's"},
      {"families[].hose bore", Form::any, "Of a made-up hose between its narrower end fittings"},
      {"families[].loss", Form::any, "Loss along its run, by name"},
      {"families[].branch loss", Form::any, "Loss by its branch, by name"},
      {"families[].weld bung",
       Form::choice,
       "As what it is welded into a wall",
       {"no", "half coupling", "full coupling", "other"}},
      {"families[].straight tapped", Form::any, "Rows that may be tapped straight"},
      {"families[].bushing", Form::yes_no, "It is a bushing"},
      {"families[].can shut", Form::yes_no, "It holds something that can stop the flow"},
      {"families[].flexible", Form::yes_no, "It bends"},
      {"families[].for vacuum", Form::yes_no, "It goes in unasked only where vacuum may come about"},
      {"families[].closing", Form::yes_no, "It closes a run between two fixed ends"},
      {"families[].dielectric", Form::yes_no, "It keeps the metals of its two sides apart"},
      {"families[].one way", Form::yes_no, "Flow passes from its first port to its second alone"},
      {"families[].arrow", Form::yes_no, "It is marked to be passed so"},
      {"families[].shape",
       Form::choice,
       "What it is drawn as, where ports and role do not tell",
       {"usual", "ball valve", "gate valve", "needle valve", "bibb", "strainer", "bowl", "muffler", "bulkhead",
        "pipe"}},
      {"families[].check", Form::choice, "What closes a check valve", {"spring", "swing"}},
      {"families[].opening pressure", Form::any, "Of check valves"},
      {"families[].set pressure", Form::any, "Of relief valves"},
      {"families[].range", Form::any, "Of gauges and regulators"},
      {"families[].close", Form::yes_no, "Threaded over its whole length"},
      {"families[].cut to length", Form::choice, "How it is sold", {"no", "yes", "threaded", "flexible"}},
      {"families[].air", Form::yes_no, "It may stand compressed air"},
      {"families[].far material", Form::any, "Metal of its last port, where that is another"},
      {"families[].materials", Form::names, "What it is made of, each with rating and price factor", {}, true},
      {"families[].materials.*", Form::map, "A material of the catalog"},
      {"families[].materials.*.rating", Form::any, "Pressure that it stands", {}, true},
      {"families[].materials.*.price factor", Form::number, "On the price of the row"},
      {"families[].materials.*.price", Form::any, "A column of prices of its own"},
      {"families[].materials.*.bore", Form::any, "A bore of its own"},
      {"families[].materials.*.far material", Form::any, "Metal of the last port"},
      {"families[].materials.*.only", Form::any, "Rows that are made of it"},
      {"families[].materials.*.stocked", Form::any, "yes, no, or the rows that a store has"},
      {"families[].source", Form::text, "Where its figures come from", {}, true},
      {"families[].table", Form::map, "Its sizes"},
      {"families[].tables", Form::list, "Several tables"},
  };
}

std::vector<FileKey> keys_of_a_table(const std::string& path) {
  return {
      {path + ".source", Form::text, "Where its figures come from"},
      {path + ".materials", Form::words, "Materials that it is for; all of the family otherwise"},
      {path + ".columns", Form::words, "Heads with their units, as `length (in)`", {}, true},
      {path + ".rows", Form::any, "A list of rows, each a list of cells", {}, true},
  };
}

std::vector<FileKey> keys_of_duties_and_prices() {
  return {
      {"duties", Form::list, "What families or materials stand: heat, air, vacuum"},
      {"duties[].families", Form::words, "Names of families"},
      {"duties[].materials", Form::words, "Names of materials"},
      {"duties[].heat", Form::any, "Share of the rating at each temperature"},
      {"duties[].air", Form::any, "Compressed air that they stand"},
      {"duties[].air alone", Form::yes_no, "They are made for air alone and go into no run of water"},
      {"duties[].vacuum", Form::choice, "What a vacuum does to them", {"stands", "collapses", "not proved"}},
      {"duties[].source", Form::text, "Where that comes from", {}, true},
      {"prices", Form::list, "What the shop pays, in place of the catalog's indicative price"},
      {"prices[].part", Form::text, "The part, by its words or id", {}, true},
      {"prices[].price", Form::quantity, "For one, as `4.50 usd`", {}, true},
  };
}

std::vector<FileKey> all_keys() {
  std::vector<FileKey> keys = keys_of_families();
  for (std::vector<FileKey> more : {keys_of_a_table("families[].table"), keys_of_a_table("families[].tables[]"),
                                    keys_of_parts(), keys_of_duties_and_prices()})
    keys.insert(keys.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
  return keys;
}

}  // namespace

const std::vector<FileKey>& bin_keys() {
  static const std::vector<FileKey> keys = {
      {"units", Form::choice, "The unit of a number without one", {"inch", "metric"}},
      {"bin", Form::list, "What lies in the drawer", {}, true},
      {"bin[].part", Form::text, "The part, by its words or id, as `1 x 4 nipple black iron`", {}, true},
      {"bin[].material", Form::text, "What it is made of, where the words do not say"},
      {"bin[].count", Form::count, "How many; one where it is left out"},
      {"bin[].length", Form::quantity, "Of a piece of what is sold by length, or of what is left of a pipe"},
      {"bin[].ends", Form::choice, "Of what is left of a pipe", {"one thread", "plain"}},
      {"bin[].measured", Form::map, "What was measured by hand, in place of the catalog's figures"},
      {"bin[].measured.length", Form::quantity, "End to end, of a straight part"},
      {"bin[].measured.rating", Form::quantity, "Pressure that it is marked with"},
  };
  return keys;
}

const std::vector<FileKey>& catalog_keys() {
  static const std::vector<FileKey> keys = all_keys();
  return keys;
}

}  // namespace riserun::catalog
