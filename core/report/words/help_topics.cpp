#include "report/words/help_topics.h"

namespace riserun::report {

std::span<const HelpTopic> help_topics() {
  static constexpr HelpTopic kTopics[] = {
      {"verdict",
       "A plan begins with one of three words. refused: it cannot work, or must not be done. not yet: it works, but "
       "something that must be there before air goes in is not in the job; each is a line at the top that says what to "
       "buy or change, and the list holds it. ready: nothing is open. A mend is printed only if the job, planned again "
       "with it, has the finding no more and no other in its place; where one change leads to the next, all that go "
       "together are named. In the book each finding has its code behind it: riserun explain CODE says why it "
       "matters.\n"
       "Refused: 15 psig and more, set or reached; a setting or a leak test above the walls' limit; a check valve or a "
       "foot valve that keeps the table from draining; parts before the regulator that do not stand what the supply "
       "gives; aluminium-lithium over water; flammable liquids; a supply of another gas than air; a run that cannot be "
       "made; a table port that is not "
       "over the bung it looks "
       "down at; a riser that takes no thread; a table that cannot be "
       "filled.\n"
       "Not yet: no relief valve, one that stands where it guards nothing (behind what can shut, check or reduce, on "
       "the supply, on the table or under water), one on a hose, more than a foot away, or behind a restrictor or "
       "anything narrower than its own inlet, one that is too small with the regulator failed and the riser stopped, "
       "one that blows when the tank "
       "is left alone, or one that with tolerance and rise passes the walls' "
       "limit; a setting that is worked out, or an advised relief valve, that leaves a factor of safety below 4 (of a "
       "setting that the job gives it is said at the top); a run that ends short of "
       "its gap, or far from an assumed one; a hose that its gap does not let bend, or that lies in a loop; no "
       "regulator, or one whose range "
       "is more than ten times its setting, or that comes back too coarsely; "
       "no gauge, one that cannot show the pressure, or one behind what can shut it off; gauge, vent, relief valve or "
       "air "
       "under the highest water, or in a side without a face height; a leak test below what the relief valve allows, "
       "or "
       "above that and the factor of 4; a restrictor behind the regulator, or one that is a key and in no run, be it "
       "by the name of a "
       "narrow feed; a check valve before the regulator; air that comes in twice, or out of plastic that shatters; a "
       "leak test that no relief "
       "valve is sold for; a vent behind a check valve; no vent "
       "that a hand opens and shuts; a port of reservoir or table that nothing closes, a drain without a valve or that "
       "is but a plug, "
       "in the lid, high up, or under a floor that is carried; a second line to the table; a table of which most stays "
       "full; tight baffles, and baffles too near to each other to be "
       "welded in, a bung placed too near to a wall, a stay or another bung; a riser that falls through its bung; less "
       "water to spare than a day takes, or more than leaves air under the lid; a yield that no sheet has beside its "
       "welds; stays that no flat bar is; parts in the water that are not known to stand its heat; a vent that "
       "throttles "
       "the drain to more than one and a half times as long; a regulator key and a regulator that contradict each "
       "other, a first "
       "stage "
       "that gives too little; water that scalds or can freeze without a measure that handles it (against heat: "
       "guarded, insulated, covered, mixing valve; against frost: drained, heated, antifreeze), or with one that asks "
       "for a drain that is not there; a shut reservoir that pulls its walls in as it cools; aluminium or magnesium "
       "fines without an open vent and a purge."},
      {"order",
       "What decides between runs. line, when left out, is what a fitter buys: the line's size kept, no thread that is "
       "foreign to both ends (garden hose thread, plastic in metal), the ends' own kinds of joint, then fewest size "
       "changes, fewest parts, one material and last the price; of hoses it takes one that stands a house's water (60 "
       "psi) before clear tubing. What it keeps, or could not keep, stands in the first line of the answer. bin, of a "
       "job that has one, looks for fewest to buy before kinds of joint. parts, price, loss (of head) and length are "
       "for who asks for them. The answer is the best there is, and the same every time."},
      {"words",
       "Ports are read the way people write and say them: 1 FNPT, 1\" FIP, three quarter FIP, 3/4 GHT male, G 1/2 "
       "female, R 3/4, 1/2 barb, 3/4 cup, and with what they are in: 1 FNPT aluminium. A mistyped word is taken for "
       "the one that it must be; what can be read two ways is answered with both. A need is met by whatever is called "
       "so: union by a PVC union in a PVC run, valve by one that shuts; a check valve, a relief valve or a regulator "
       "is "
       "asked for by its own name. nipple keeps out close, hex and PVC nipples too, just nipple that family alone.\n"
       "Measures carry their unit: 5-1/2 in, 1'1-11/16\", 14 cm, 25 psi, 28 inH2O, 1.7 bar, 40 gal, 3.5 scfm, 10 ga "
       "steel. A number without one is in the unit of the job's units or of --units; where it could be two things the "
       "error names both."},
      {"files",
       "A job may name a bin, prices and measured parts of its own, in it or in files beside it; --bin and --catalog "
       "do "
       "the same for every verb. A file that is made is there whole or not at all, and what it would replace stays "
       "until then.\n"
       "Prices and bins may also be tables that a spreadsheet saves (.csv, with commas, semicolons or tabs): a first "
       "line with the heads part or id, and price; or part, count, length, material. Of two files that price a part "
       "the "
       "later holds. Of several bins (--bin given again, or bin: {truck: truck.yaml, shop: shop.yaml}) the list says "
       "where each part lies; the first are emptied first, and only bins in .yaml files are changed.\n"
       "A file that is read has at most 4 MB, 250,000 values, 1,000 keys in a map, 32 lists and maps within each "
       "other, "
       "and 256 KB in one text or in one pair of brackets; a job at most 512 connections, a bin or a list of prices at "
       "most 1,000 different descriptions of parts (ids do not count), the catalog with parts of your own at most "
       "100,000. At most 100 mistakes are told of one reading. Names are texts of one line: controls, line breaks, "
       "marks that turn the direction of writing and characters that cannot be seen are refused with their place; in "
       "file names they are printed as escapes."},
  };
  return kTopics;
}

}  // namespace riserun::report
