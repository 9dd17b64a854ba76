#include "plan/job/job_keys.h"

#include "chain/ask/askable.h"

#include <algorithm>
#include <cctype>
#include <iterator>
#include <utility>

namespace riserun::plan {

namespace {

using chain::Askable;
using chain::AskedKind;
using chain::AskedOf;
using Form = JobForm;

std::vector<JobKey> keys_of_the_boxes() {
  return {
      {"name", Form::text, "Title of the plan"},
      {"units", Form::choice, "What the plan is written in, and the unit of a number without one", {"inch", "metric"}},
      {"reservoir", Form::map, "The closed box under the table", {}, true},
      {"reservoir.shape", Form::choice, "What the reservoir is", {"box"}},
      {"reservoir.inside", Form::map, "Its inside measures", {}, true},
      {"reservoir.inside.length", Form::quantity, "2 in to 40 ft", {}, true},
      {"reservoir.inside.width", Form::quantity, "2 in to 40 ft", {}, true},
      {"reservoir.inside.height", Form::quantity, "2 in to 40 ft", {}, true},
      {"reservoir.sheet",
       Form::quantity,
       "Thickness and metal of the walls, as `10 ga steel`, `3/16 plate`, `2.5 mm stainless`; a gauge counts at the "
       "least that a mill may send, plain steel below 3/16 in as commercial sheet of 30 ksi unless `yield` says better",
       {},
       true},
      {"reservoir.metal", Form::text, "Metal of the walls, where `sheet` is a thickness alone"},
      {"reservoir.yield", Form::quantity, "Yield strength of the sheet, by its certificate"},
      {"reservoir.ultimate", Form::quantity, "Tensile strength of the sheet, by its certificate"},
      {"reservoir.corrosion allowance", Form::quantity, "Of the thickness, that rust may take"},
      {"reservoir.supports", Form::map, "What holds the flat walls"},
      {"reservoir.supports.widest bare panel", Form::map, "The widest rectangle between stays, in place of the rest"},
      {"reservoir.supports.widest bare panel.length", Form::quantity, "1 in to 40 ft", {}, true},
      {"reservoir.supports.widest bare panel.width", Form::quantity, "1 in to 40 ft", {}, true},
      {"reservoir.supports.widest bare panel.in",
       Form::choice,
       "Where that panel is; in the lid alone, the sides count as bare",
       {"lid", "any wall"}},
      {"reservoir.supports.baffles across", Form::count, "Upright plates across the length, from floor to lid"},
      {"reservoir.supports.baffles along", Form::count, "Upright plates along the length, from floor to lid"},
      {"reservoir.supports.lid bays", Form::text, "Panels that stays divide the lid into, along x across: `3 x 2`"},
      {"reservoir.supports.floor bays", Form::text, "The same of the floor"},
      {"reservoir.supports.long side bays", Form::text, "The same of each long side, along x up"},
      {"reservoir.supports.short side bays", Form::text, "The same of each short side"},
      {"reservoir.supports.lid stays", Form::choice, "How the stays of the lid stand", {"posts", "rows"}},
      {"reservoir.supports.floor carried", Form::yes_no, "The floor lies flat on what bears it all over, not on legs"},
      {"reservoir.supports.solid share", Form::quantity, "Share of the inside that supports fill, 0 to 50 %"},
      {"reservoir.supports.passages", Form::yes_no, "Water and air pass the baffles, at floor and lid; no: tight ones"},
      {"reservoir.charge", Form::quantity, "Depth of the water put in, the table empty; one is worked out otherwise"},
      {"reservoir.under the riser", Form::quantity, "Height of what lies on the floor under the riser"},
      {"reservoir.lid", Form::choice, "Whether the lid is on", {"open", "welded"}},
      {"reservoir.ports", Form::names, "Threads in the reservoir: `drain: 3/4 FNPT`, or a map"},
      {"reservoir.ports.*", Form::map, "A port of that name"},
      {"reservoir.ports.*.port", Form::text, "Its size and thread, as `1 FNPT`, `1-1/4 FIP aluminium`", {}, true},
      {"reservoir.ports.*.material", Form::text, "What its thread is cut in"},
      {"reservoir.ports.*.where", Form::choice, "The wall that it is in", {"lid", "side", "floor"}},
      {"reservoir.ports.*.bung",
       Form::choice,
       "What carries the thread",
       {"full coupling", "half coupling", "welded riser", "double-tapped bushing"}},
      {"reservoir.ports.*.bung part", Form::text, "The part that is its bung, by name or id"},
      {"reservoir.ports.*.welded in", Form::yes_no, "no: the bung is still to be bought and welded in"},
      {"reservoir.ports.*.bung length", Form::quantity, "Length of the bung, 1/4 to 24 in"},
      {"reservoir.ports.*.projects", Form::quantity,
       "How far its lower end reaches into the reservoir, under the lid's inside"},
      {"reservoir.ports.*.at", Form::list,
       "Where it stands in the lid, of its axis: from the inside of the left end and of the front side, `[6 in, 5 "
       "in]`; "
       "left out of a bung that is not welded in, a place is proposed"},
      {"reservoir.ports.*.at[]", Form::quantity, "From the left, then from the front"},
      {"reservoir.ports.*.face height", Form::quantity,
       "Height of its face, or in a side of its centre, over the floor"},
      {"table", Form::map, "The open table over the reservoir", {}, true},
      {"table.inside", Form::map, "Its inside measures", {}, true},
      {"table.inside.length", Form::quantity, "2 in to 40 ft", {}, true},
      {"table.inside.width", Form::quantity, "2 in to 40 ft", {}, true},
      {"table.depth", Form::quantity, "Depth of water that is wanted", {}, true},
      {"table.floor height", Form::quantity, "Of the table's floor over the reservoir's inside floor", {}, true},
      {"table.rim", Form::quantity, "Height of the rim over the table's floor"},
      {"table.solid share", Form::quantity, "Share of the water that slats and work take up, 0 to 50 %"},
      {"table.ports", Form::names, "Threads in the table"},
      {"table.ports.*", Form::map, "A port of that name"},
      {"table.ports.*.port", Form::text, "Its size and thread", {}, true},
      {"table.ports.*.material", Form::text, "What its thread is cut in"},
      {"table.ports.*.where", Form::choice, "Where the water comes in", {"floor", "side", "over rim"}},
      {"table.ports.*.opens at", Form::quantity, "Height over the table's floor at which the water comes out"},
      {"table.ports.*.crest", Form::quantity, "Highest point of a pipe over the rim, over the table's floor"},
      {"table.ports.*.face height", Form::quantity, "Height of its face over the reservoir's floor"},
      {"riser", Form::map, "The pipe that the water goes up by"},
      {"riser.bung", Form::text, "The port of the reservoir that it hangs from"},
      {"riser.pipe", Form::text, "Its nominal size, as `1-1/4`"},
      {"riser.material", Form::text, "What it is of"},
      {"riser.clearance", Form::quantity, "From its end to the floor"},
      {"riser.headroom", Form::quantity, "Free height over the lid, to let it in from above"},
      {"riser.foot valve", Form::yes_no, "A valve at its foot lets water up only: the table cannot drain back"},
  };
}

std::vector<JobKey> keys_of_the_air() {
  return {
      {"air", Form::map, "What the compressor's plate says, and the regulator's sheet", {}, true},
      {"air.delivery", Form::quantity, "Free air that it delivers, 0 to 2000 scfm; this or `receiver` is needed"},
      {"air.receiver", Form::quantity, "Volume of the receiver, 0 to 5000 gal"},
      {"air.receiver pressure", Form::quantity, "Pressure in the receiver, 0.01 to 300 psi"},
      {"air.regulator range", Form::quantity, "Where its dial ends, as `10 psi` or `0-10 psi`"},
      {"air.regulator repeatability", Form::quantity, "Plus or minus, that it comes back to"},
      {"air.set pressure", Form::quantity, "Its setting; one is worked out otherwise"},
      {"air.droop", Form::quantity, "Share of the setting that it falls by at its rated flow, 0 to 90 %"},
      {"air.rated flow", Form::quantity, "Free air that it passes, wide open"},
      {"air.lock up", Form::quantity, "Rise over the setting until it shuts tight, 0 to 30 psi"},
      {"air.feed bore", Form::quantity, "Smallest bore between receiver and regulator"},
      {"air.restrictor", Form::quantity, "Bore of a drilled hole right before the regulator"},
      {"air.check valve opens at", Form::quantity, "Pressure at which a check valve on the air opens"},
      {"air.ports", Form::names, "Ends of the shop's air"},
      {"air.ports.*", Form::map, "A port of that name"},
      {"air.ports.*.port", Form::text, "Its size and thread", {}, true},
      {"air.ports.*.material", Form::text, "What it is of"},
      {"vent", Form::map, "What lets the air out, until a connection does"},
      {"vent.bore", Form::quantity, "Its bore"},
      {"vent.count", Form::count, "How many there are, 1 to 20"},
      {"vent.stays open", Form::yes_no, "It stands open when the table is not in use, so that hydrogen gets out"},
      {"vent.purged", Form::yes_no, "The air space is blown out before use, where metals are cut that make hydrogen"},
      {"relief valve", Form::map, "From the maker's sheet; a code valve's where left out"},
      {"relief valve.tolerance", Form::quantity, "Plus or minus, of its set pressure, 0 to 50 psi"},
      {"relief valve.rise", Form::quantity, "Over its set pressure until it is wide open, 0 to 50 psi"},
  };
}

std::vector<JobKey> keys_of_the_rest() {
  return {
      {"bin", Form::files, "What the shop has: each part free; of several bins `{truck: truck.yaml, shop: shop.yaml}`"},
      {"bin[]", Form::map, "A row of the bin, `{part: 1 x 4 nipple black iron, count: 2}`"},
      {"bin[].part", Form::text, "The part in words, or its id", {}, true},
      {"bin[].material", Form::text, "What it is of, where the words do not say"},
      {"bin[].count", Form::count, "How many; of hose by the foot the feet of one piece"},
      {"bin[].length", Form::quantity, "Of a piece: two short ones never make a long one"},
      {"bin[].ends", Form::choice, "Of what is left of a pipe", {"one thread", "plain"}},
      {"bin[].measured", Form::map, "What was measured by hand"},
      {"bin[].measured.length", Form::quantity, "End to end"},
      {"bin[].measured.rating", Form::quantity, "Pressure that it stands, by its marks"},
      {"measured", Form::file, "Parts measured by hand: they beat the catalog and stay marked"},
      {"measured[]", Form::map, "One of them"},
      {"measured[].part", Form::text, "The part in words, or its id", {}, true},
      {"measured[].length", Form::quantity, "End to end"},
      {"measured[].bore", Form::quantity, "Its narrowest bore"},
      {"measured[].rating", Form::quantity, "Pressure that it stands, by its marks"},
      {"prices", Form::file, "Prices of one's own"},
      {"prices[]", Form::map, "One of them"},
      {"prices[].part", Form::text, "The part in words, or its id", {}, true},
      {"prices[].price", Form::quantity, "What one costs, as `4.20 usd`", {}, true},
      {"wishes", Form::map, "What would be liked"},
      {"wishes.fill time", Form::quantity, "Time for a fill; the setting is worked out from it"},
      {"wishes.cost cap", Form::quantity, "What the list may cost, as `80 usd`"},
      {"wishes.order", Form::choice, "What decides between runs, of all connections", {}},
      {"water temperature", Form::quantity, "Of the water in use, 33 degF to 80 degC"},
      {"hottest", Form::quantity, "What the water, or the place, comes to at most, -60 to 99 degC"},
      {"coldest", Form::quantity, "What the place comes to at least, -60 to 99 degC"},
      {"against heat", Form::text,
       "How hot water is handled, where `hottest` says that there is some: guarded, insulated, covered or mixing "
       "valve, "
       "and gloves beside one of them"},
      {"against frost", Form::text,
       "How frost is handled, where `coldest` says that there is some: drained, heated or antifreeze, and insulated "
       "beside one of them"},
      {"altitude", Form::quantity, "Of the shop, -500 to 5000 m"},
      {"liquid", Form::text,
       "What is in the reservoir: water, or water with a few per cent of coolant or propylene glycol"},
      {"cutting", Form::words, "What is cut or ground over it: aluminium and magnesium make hydrogen in the water"},
      {"test pressure", Form::quantity, "Of the leak test; one is worked out otherwise"},
      {"measured fill time", Form::quantity, "By the clock, shown beside what is worked out"},
  };
}

std::vector<JobKey> keys_of_a_connection() {
  return {
      {"connections", Form::list, "Runs from port to port; the fittings between are worked out"},
      {"connections[]", Form::map, "A run"},
      {"connections[].name", Form::text, "What it is called"},
      {"connections[].from", Form::text, "The port that it begins at", {}, true},
      {"connections[].to", Form::text, "The port that it ends at"},
      {"connections[].ends in", Form::text, "The device that it ends in: `5 psi gauge`, `3/4 relief valve set 2 psi`"},
      {"connections[].branches", Form::list, "Several far ends, 2 to 8, in place of `to` and `ends in`"},
      {"connections[].held", Form::map, "How its ends are held"},
      {"connections[].held.from", Form::choice, "The first end", {}},
      {"connections[].held.to", Form::choice, "The last end", {}},
      {"connections[].hose length", Form::quantity, "Length of each hose in it, where no gap is given"},
      {"connections[].take", Form::list, "The run that is planned instead of the best: its parts from `from` on"},
      {"connections[].take[]", Form::map, "The id of a part, or a map that says by which ports it is entered and left"},
      {"connections[].take[].part", Form::text, "Its id", {}, true},
      {"connections[].take[].enter", Form::count, "Row of the port on the side of `from`, from 1", {}, true},
      {"connections[].take[].leave", Form::count, "Row of the port that leads on", {}, true},
      {"connections[].branches[]", Form::map, "One of the far ends"},
      {"connections[].branches[].name", Form::text, "What it is called"},
      {"connections[].branches[].to", Form::text, "The port that it ends at"},
      {"connections[].branches[].ends in", Form::text, "The device that it ends in"},
      {"connections[].branches[].held", Form::choice, "How it is held", {}},
      {"connections[].branches[].special order", Form::yes_no, "Its device may be one that a store must order"},
  };
}

Form form_of(AskedKind kind) {
  switch (kind) {
    case AskedKind::yes_no:
      return Form::yes_no;
    case AskedKind::choice:
      return Form::choice;
    case AskedKind::parts:
      return Form::words;
    case AskedKind::count:
      return Form::count;
    case AskedKind::none:
      return Form::text;
    default:
      return Form::quantity;
  }
}

std::vector<std::string_view> words_of(std::span<const std::string_view> choices) {
  return {choices.begin(), choices.end()};
}

/// The help of an option, as it is said of a key: `need` for --need.
std::string said_of_keys(std::string help) {
  for (const Askable& row : chain::askables()) {
    if (row.option.empty() || row.key.empty()) continue;
    const std::size_t at = help.find(row.option);
    const std::size_t behind = at == std::string::npos ? at : at + row.option.size();
    if (behind == std::string::npos || (behind < help.size() && (help[behind] == '-' || std::isalpha(help[behind]))))
      continue;
    help.replace(at, row.option.size(), "`" + std::string(row.key) + "`");
  }
  return help;
}

/// What can be asked of a run, and of one of its branches, unless a row says it already.
void add_asked(std::vector<JobKey>& keys) {
  for (const Askable& row : chain::askables()) {
    if (row.key.empty()) continue;
    const std::string path =
        (row.of == AskedOf::branch ? "connections[].branches[]." : "connections[].") + std::string(row.key);
    if (std::any_of(keys.begin(), keys.end(), [&](const JobKey& known) { return known.path == path; })) continue;
    const Askable& said = row.like.empty() ? row : chain::askable(row.like);
    keys.push_back({path, form_of(row.kind), said_of_keys(std::string(row.help.empty() ? said.help : row.help)),
                    words_of(row.choices)});
  }
}

void append(std::vector<JobKey>& keys, std::vector<JobKey> more) {
  std::move(more.begin(), more.end(), std::back_inserter(keys));
}

std::vector<JobKey> made() {
  std::vector<JobKey> keys = keys_of_the_boxes();
  append(keys, keys_of_the_air());
  append(keys, keys_of_a_connection());
  add_asked(keys);
  append(keys, keys_of_the_rest());
  for (JobKey& key : keys) {
    if (key.path == "wishes.order") key.choices = words_of(chain::askable("order").choices);
    if (key.path == "connections[].branches[].held") key.choices = words_of(chain::askable("held_end").choices);
    if (key.path.find("[].held.") != std::string::npos) key.choices = words_of(chain::askable("held_ends").choices);
  }
  return keys;
}

}  // namespace

const std::vector<JobKey>& job_keys() {
  static const std::vector<JobKey> keys = made();
  return keys;
}

std::vector<const JobKey*> keys_under(std::string_view path) { return catalog::keys_under(job_keys(), path); }

}  // namespace riserun::plan
