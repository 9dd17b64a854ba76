// One mistake a case, made in the small catalog, in a user's own file or in a bin: what is said of it, word for word.
#include "catalog/yaml/document.h"
#include "unit/catalog/small_catalog.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <ostream>

namespace riserun::catalog {
namespace {

/// `find` in the file becomes `with`; an own file or a bin is `with` as a whole.
struct Mistake {
  std::string name;
  std::string file;
  std::string find;
  std::string with;
  std::vector<std::string> said;
};

void PrintTo(const Mistake& mistake, std::ostream* stream) { *stream << mistake.name; }

void load_with(const Mistake& mistake) {
  std::vector<SourceText> texts = testing::small_catalog_texts();
  if (mistake.file == "bin.yaml") {
    CatalogBuilder builder(load_catalog(texts, {}));
    load_bin(builder, SourceText{mistake.file, mistake.with});
    return;
  }
  std::vector<SourceText> own;
  if (mistake.file == "own.yaml") own.push_back({mistake.file, mistake.with});
  for (SourceText& source : texts) {
    if (source.name != mistake.file) continue;
    const std::size_t at = source.text.find(mistake.find);
    if (at == std::string::npos) throw std::logic_error("the test's own text is not there: " + mistake.find);
    source.text.replace(at, mistake.find.size(), mistake.with);
  }
  load_catalog(texts, own);
}

class CatalogMistake : public ::testing::TestWithParam<Mistake> {};

TEST_P(CatalogMistake, IsSaidWithPlaceAndWhatIsAllowed) {
  try {
    load_with(GetParam());
    FAIL() << "it loaded";
  } catch (const quantity::InputError& error) {
    EXPECT_EQ(testing::places_and_messages(error), GetParam().said);
  }
}

const std::vector<Mistake>& mistakes() {
  // clang-format off
  static const std::vector<Mistake> kMistakes = {
    {"TabInTheIndent", "families.yaml", "    aliases: [bell", "\taliases: [bell",
     {"families.yaml:4:1: a tab stands in the indent: use blanks"}},
    {"OpenBracket", "families.yaml", "[bell reducer]", "[bell reducer",
     {"families.yaml:4:15: this text runs on over several lines; put it on one line, or below a '>'",
      "families.yaml:5:13: a '[' is opened and never closed with ']'"}},
    {"QuoteNotClosedOnItsLine", "families.yaml", "title: \"{large} x {small} reducing coupling\"", "title: \"{large} x {small} reducing coupling",
     {"families.yaml:7:12: this quote is not closed on its line",
      "families.yaml:8:12: this line does not fit the ones above it: look at its indent, and for a missing ':' or '-'"}},
    {"TextOverSeveralLines", "families.yaml", "standard: ASME B16.3", "standard: ASME\n      B16.3",
     {"families.yaml:5:15: this text runs on over several lines; put it on one line, or below a '>'"}},
    {"KeyTwice", "families.yaml", "    shelf: pipe fittings", "    shelf: pipe fittings\n    shelf: other",
     {"families.yaml:7:5: 'shelf' stands here twice, first in line 6"}},
    {"SecondDocument", "pipe.yaml", "# Bores of the tests.", "---\nbores: []\n---",
     {"pipe.yaml:3:1: a second document begins here: one file holds one document"}},
    {"AnchorAndAlias", "materials.yaml", "id: brass, name: brass", "id: &b brass, name: *b",
     {"materials.yaml:6:10: an anchor ('&') is not read here: write the value out where it is needed",
      "materials.yaml:6:26: an alias ('*') is not read here: write the value out"}},
    {"Tag", "materials.yaml", "name: brass", "name: !!str brass",
     {"materials.yaml:6:23: a tag ('!') is not read here: leave it out"}},
    {"EmptyValue", "families.yaml", "shelf: pipe fittings", "shelf:",
     {"families.yaml:6:5: families[1].shelf: has no value"}},
    {"NotUtf8", "families.yaml", "bell", "b\377ll",
     {"families.yaml:4:16: bytes that are not UTF-8 text: save the file as UTF-8"}},
    {"ControlCharacter", "families.yaml", "bell", std::string("b\000ll", 4),
     {"families.yaml:4:16: a control character (U+0000): a text file holds letters, digits, signs and blanks"}},
    {"NoMap", "losses.yaml", "# Losses of the tests.\nitems:\n  - {name: check valve, crane n: 100, scatter: 0.3, source: test}\n", "- a\n",
     {"losses.yaml:1:1: the file holds no map of keys"}},
    {"EmptyFile", "losses.yaml", "# Losses of the tests.\nitems:\n  - {name: check valve, crane n: 100, scatter: 0.3, source: test}\n", "",
     {"losses.yaml:1:1: the file holds no map of keys"}},
    {"UnknownKey", "families.yaml", "    shelf: pipe fittings", "    shelff: pipe fittings",
     {"families.yaml:3:5: families[1]: 'shelf' is missing",
      "families.yaml:6:5: families[1]: unknown key 'shelff'; did you mean 'shelf'? (allowed: name, aliases, standard, shelf, role, title, size, id, ports, bore, across flats, loss, branch loss, weld bung, straight tapped, bushing, can shut, flexible, closing, dielectric, one way, cut to length, air, far material, materials, source, table, tables, set pressure, range, close, check, opening pressure, arrow, shape, outside diameter, sold as, for vacuum or hose bore)"}},
    {"UnknownKeyInAPort", "families.yaml", "reach: half of length}", "raech: half of length}",
     {"families.yaml:10:9: families[1].ports[1]: 'reach' is missing",
      "families.yaml:10:66: families[1].ports[1]: unknown key 'raech'; did you mean 'reach'? (allowed: kind, end, size, bore, reach or heading)"}},
    {"MissingSource", "materials.yaml", ", roughness: 0.046 mm, source: test", ", roughness: 0.046 mm",
     {"materials.yaml:4:5: materials[1]: 'source' is missing"}},
    {"ListWhereATextBelongs", "families.yaml", "shelf: pipe fittings", "shelf: [pipe, fittings]",
     {"families.yaml:6:12: families[1].shelf: a text is expected here, not a list"}},
    {"TextWhereAListBelongs", "pipe.yaml", "rows: [[1/2, 0.622], [3/4, 0.824], [1, 1.049]]", "rows: 1/2",
     {"pipe.yaml:3:73: bores[1].rows: a list is expected here, not a text"}},
    {"NeitherYesNorNo", "families.yaml", "one way: yes", "one way: maybe",
     {"families.yaml:43:14: families[3].one way: 'maybe' is neither yes nor no"}},
    {"NotOneOfTheChoices", "joints.yaml", "thread: taper", "thread: tapered",
     {"joints.yaml:9:13: kinds[1].thread: 'tapered' is not one of taper, straight or none; did you mean 'taper'?"}},
    {"UnitMissing", "materials.yaml", "roughness: 0.046 mm", "roughness: 0.046",
     {"materials.yaml:4:96: materials[1].roughness: '0.046': no unit; length takes in, ft, mm, cm, m, um, mil"}},
    {"WrongUnit", "materials.yaml", "roughness: 0.046 mm", "roughness: 0.046 psi",
     {"materials.yaml:4:97: materials[1].roughness: '0.046 psi': 'psi' is a unit of pressure; length takes in, ft, mm, cm, m, um, mil"}},
    {"NotAVoltage", "materials.yaml", "anodic index: 0.85 V", "anodic index: 0.85",
     {"materials.yaml:4:72: materials[1].anodic index: '0.85' is not a voltage; allowed: 0.85 V"}},
    {"AnodicIndexMissing", "materials.yaml", "anodic index: 0.85 V, ", "",
     {"materials.yaml:4:5: materials[1]: 'anodic index' is missing"}},
    {"AnodicIndexOfPlastic", "materials.yaml", "name: PVC, metal: no", "name: PVC, metal: no, anodic index: 0.1 V",
     {"materials.yaml:7:51: materials[4].anodic index: only a metal has an anodic index"}},
    {"MaterialTwice", "materials.yaml", "id: brass, name: brass", "id: brass, name: galvanized",
     {"materials.yaml:6:23: materials[3].name: the material 'galvanized' is already there"}},
    {"LimitsTheWrongWayRound", "materials.yaml", "keep apart above: 0.50 V", "keep apart above: 0.20 V",
     {"materials.yaml:2:51: galvanic: 'keep apart above' is below 'watch above'"}},
    {"UnknownSeal", "joints.yaml", "b: npt female, seal: thread sealant", "b: npt female, seal: thread sealent",
     {"joints.yaml:28:40: mating[1].seal: unknown seal 'thread sealent'; did you mean 'thread sealant'?"}},
    {"UnknownKindInARule", "joints.yaml", "{a: npt male, b: npt female", "{a: ntp male, b: npt female",
     {"joints.yaml:28:9: mating[1].a: unknown kind of joint 'ntp'; did you mean 'npt'? (known: npt or ght)"}},
    {"UnknownEndInARule", "joints.yaml", "{a: npt male, b: npt female", "{a: npt mail, b: npt female",
     {"joints.yaml:28:9: mating[1].a: unknown end 'mail' (known: male, female or neither)"}},
    {"KindWithoutThatEnd", "joints.yaml", "{a: npt male, b: npt female", "{a: npt neither, b: npt female",
     {"joints.yaml:28:9: mating[1].a: the kind 'npt' has no end 'neither', only male or female"}},
    {"ClosingJointThatTurns", "joints.yaml", "turns: neither, closing: yes", "turns: either, closing: yes",
     {"joints.yaml:29:77: mating[2].closing: a closing joint turns neither side ('turns: neither')"}},
    {"RecognitionWithoutAFlank", "joints.yaml", "source: test\n    sizes: {columns", "source: test\n    recognise: {common: {inch: 1, metric: 1}, source: test}\n    sizes: {columns",
     {"joints.yaml:26:16: kinds[2].recognise: a thread needs its 'flank angle', 55 or 60"}},
    {"RecognitionWithoutItsShare", "joints.yaml", "source: test\n    sizes: {columns", "source: test\n    recognise: {flank angle: 60, common: {inch: 1, metric: 0}, source: test}\n    sizes: {columns",
     {"joints.yaml:26:60: kinds[2].recognise.common.metric: must be more than nothing"}},
    {"RecognitionWithoutASource", "joints.yaml", "source: test\n    sizes: {columns", "source: test\n    recognise: {flank angle: 60, common: {inch: 1, metric: 1}}\n    sizes: {columns",
     {"joints.yaml:26:16: kinds[2].recognise: 'source' is missing"}},
    {"SizeTwice", "joints.yaml", "[3/4, 1.050,", "[1/2, 1.050,",
     {"joints.yaml:17:11: kinds[1].sizes.rows[2]: the size '1/2' stands in this table twice",
      "joints.yaml:31:34: look-alikes[1].sizes[1][1]: '3/4' is not a size of 'npt' (it has 1/2, 1/2 or 1)"}},
    {"RowTooShort", "joints.yaml", "        - [1/2, 0.840, 14, 0.320, 0.2143, 1.5, 3, 0.0714]", "        - [1/2, 0.840, 14, 0.320, 0.2143, 1.5, 3]",
     {"joints.yaml:16:11: kinds[1].sizes.rows[1]: the row has 7 cells, but there are 8 columns"}},
    {"ColumnWithoutUnit", "joints.yaml", "hand tight (in), wrench", "hand tight, wrench",
     {"joints.yaml:14:64: kinds[1].sizes.columns[4]: 'hand tight' needs its unit, 'hand tight (in)' or 'hand tight (mm)'"}},
    {"UnknownColumn", "joints.yaml", "turns low", "turn low",
     {"joints.yaml:14:94: kinds[1].sizes.columns[6]: unknown column 'turn low'; did you mean 'turns low'? (allowed: size, outside diameter, major diameter, threads per inch, hand tight, wrench, thread length, turns low, turns high, make-up tolerance or bore)"}},
    {"ThreadWithoutPitch", "joints.yaml", "[1/2, 0.840, 14,", "[1/2, 0.840, none,",
     {"joints.yaml:16:11: kinds[1].sizes.rows[1]: a thread needs its threads per inch"}},
    {"NotationTwice", "joints.yaml", "{male: MGHT,", "{male: MNPT,",
     {"joints.yaml:23:22: kinds[2].notation.male: the notation 'MNPT' is already that of 'npt'"}},
    {"ForeignThreadOfNoKind", "joints.yaml", "look-alikes:", "foreign threads:\n  - {kind: nptt, at home: [gth], source: test}\nlook-alikes:",
     {"joints.yaml:31:12: foreign threads[1].kind: unknown kind of joint 'nptt'; did you mean 'npt'? (known: npt or ght)",
      "joints.yaml:31:28: foreign threads[1].at home[1]: unknown kind of joint 'gth'; did you mean 'ght'? (known: npt or ght)"}},
    {"LookAlikeThatMates", "joints.yaml", "{kinds: [npt, ght], sizes: [[3/4, 3/4]]", "{a: npt male, b: npt female, sizes: [[1, 1]]",
     {"joints.yaml:31:5: look-alikes[1]: a mating rule joins 1 FNPT and 1 MNPT"}},
    {"SizeThatTheKindHasNot", "joints.yaml", "sizes: [[3/4, 3/4]], reason", "sizes: [[3/4, 1]], reason",
     {"joints.yaml:31:39: look-alikes[1].sizes[1][2]: '1' is not a size of 'ght' (it has 3/4)"}},
    {"BoreNotANumber", "pipe.yaml", "[3/4, 0.824]", "[3/4, wide]",
     {"pipe.yaml:3:94: bores[1].rows[2][2]: 'wide in': does not begin with a number; length is a number and a unit, like 5-1/2 in"}},
    {"LossOfNothing", "losses.yaml", "crane n: 100, ", "",
     {"losses.yaml:3:5: items[1]: a loss item needs 'crane n', 'three-k' or both"}},
    {"UnknownMaterial", "families.yaml", "black-iron: {rating: 300 psi}", "blak-iron: {rating: 300 psi}",
     {"families.yaml:13:7: families[1].materials: unknown material 'blak-iron'; did you mean 'black-iron'? (known: black-iron, black iron, black, galvanized, brass, pvc or PVC)"}},
    {"RatingOfZero", "families.yaml", "black-iron: {rating: 300 psi}", "black-iron: {rating: 0 psi}",
     {"families.yaml:13:28: families[1].materials.black-iron.rating: a rating lies above 0 and up to 20000 psi"}},
    {"RatingInTheWrongUnit", "families.yaml", "black-iron: {rating: 300 psi}", "black-iron: {rating: 300 in}",
     {"families.yaml:13:32: families[1].materials.black-iron.rating: '300 in': 'in' is a unit of length; pressure takes psi, inH2O, ftH2O, inHg, bar, mbar, Pa, kPa, MPa, mmH2O, mH2O, oz/in2"}},
    {"UnknownKind", "families.yaml", "{kind: npt, end: female, size: large", "{kind: nptt, end: female, size: large",
     {"families.yaml:10:16: families[1].ports[1].kind: unknown kind of joint 'nptt'; did you mean 'npt'? (known: npt or ght)"}},
    {"UnknownSize", "families.yaml", "[3/4, 1/2, 1.44", "[3/4, 5/8, 1.44",
     {"families.yaml:19:17: families[1].table.rows[1][2]: '5/8' is not a size of 'npt' (it has 1/2, 3/4 or 1)"}},
    {"NoSuchColumn", "families.yaml", "size: large, bore", "size: larg, bore",
     {"families.yaml:10:40: families[1].ports[1].size: 'larg' is neither a column of the table nor a size; did you mean 'large'?"}},
    {"NoSuchColumnInATitle", "families.yaml", "title: \"{large} x", "title: \"{lange} x",
     {"families.yaml:7:14: families[1].title: there is no column 'lange'; did you mean 'large'?"}},
    {"NeitherColumnNorLength", "families.yaml", "reach: length - 0.5 in", "reach: lenght - 0.5 in",
     {"families.yaml:46:72: families[3].ports[1].reach: 'lenght' is neither a column of the table nor a length; did you mean 'length'?"}},
    {"LengthWithoutUnit", "families.yaml", "reach: length - 0.5 in", "reach: length - 0.5",
     {"families.yaml:46:84: families[3].ports[1].reach: '0.5': no unit; length takes in, ft, mm, cm, m, um, mil"}},
    {"NegativeReach", "families.yaml", "reach: length - 0.5 in", "reach: length - 5 in",
     {"families.yaml:50:79: families[3].table.rows[1]: the reach of a port comes out negative"}},
    {"UnknownBores", "families.yaml", "bore: schedule 40, reach: half of length}", "bore: schedule 41, reach: half of length}",
     {"families.yaml:10:53: families[1].ports[1].bore: 'schedule 41' is neither a table of bores nor a column nor a length; did you mean 'schedule 40'?"}},
    {"UnknownLoss", "families.yaml", "loss: check valve", "loss: chek valve",
     {"families.yaml:44:11: families[3].loss: unknown loss item 'chek valve'; did you mean 'check valve'? (known: check valve)"}},
    {"SamePartTwice", "families.yaml", "[1, [1/2, 3/4], 1-11/16", "[1, [1/2, 1/2], 1-11/16",
     {"families.yaml:20:11: families[1].table.rows[2]: the part 'reducing-coupling/black-iron/1x1-2' is already there, from line 20 of families.yaml"}},
    {"FamilyTwice", "families.yaml", "name: nipple", "name: bell reducer",
     {"families.yaml:21:11: families[2].name: the family 'bell reducer' is already there"}},
    {"UnknownUnitInAHead", "families.yaml", "pressure (psi)", "pressure (atm)",
     {"families.yaml:50:42: families[3].table.columns[3]: unknown unit 'atm' (known: in, mm, ft, psi, bar or usd)"}},
    {"PriceMissing", "families.yaml", "columns: [pipe, price (usd), made in]", "columns: [pipe, prize (usd), made in]",
     {"families.yaml:60:22: families[4].table.columns: there is no column 'price (usd)'"}},
    {"PriceOfNothing", "families.yaml", "[[1/2, 2.5, 125, 20]]", "[[1/2, 2.5, 125, 0]]",
     {"families.yaml:50:79: families[3].table.rows[1]: the price comes out below one cent or beyond 100000 usd"}},
    {"MadeInNothingOfTheFamily", "families.yaml", "[brass, pvc]", "[brass, black]",
     {"families.yaml:60:76: families[4].table.rows[1][3][2]: the family states no material 'black'"}},
    {"StockedRowMistyped", "families.yaml", "stocked: {large: [3/4]}", "stocked: {large: [3/4z]}",
     {"families.yaml:14:75: families[1].materials.galvanized.stocked.large[1]: no row of the table has '3/4z' there"}},
    {"NothingMates", "joints.yaml", "  - {a: ght male, b: ght female, seal: hose washer, turns: neither, closing: yes, source: test}\n", "",
     {"families.yaml:60:59: families[4].table.rows[1]: nothing mates with 3/4 MGHT of the part 'hose-adapter/brass/3-4x1-2'"}},
    {"BoreWiderThanThePart", "pipe.yaml", "[1/2, 0.622]", "[1/2, 0.9]",
     {"families.yaml:36:11: families[2].table.rows[1]: the bore of a port comes out wider than the male end that it goes through"}},
    {"SeveralMistakesAtOnce", "families.yaml", "    shelf: pipe fittings\n    title", "    shlf: pipe fittings\n    closing: maybe\n    title",
     {"families.yaml:3:5: families[1]: 'shelf' is missing",
      "families.yaml:6:5: families[1]: unknown key 'shlf'; did you mean 'shelf'? (allowed: name, aliases, standard, shelf, role, title, size, id, ports, bore, across flats, loss, branch loss, weld bung, straight tapped, bushing, can shut, flexible, closing, dielectric, one way, cut to length, air, far material, materials, source, table, tables, set pressure, range, close, check, opening pressure, arrow, shape, outside diameter, sold as, for vacuum or hose bore)",
      "families.yaml:7:14: families[1].closing: 'maybe' is neither yes nor no"}},
    {"OnePortWithoutARole", "own.yaml", "", "families:\n  - name: stopper\n    shelf: mine\n    title: \"{size} stopper\"\n    size: \"{size}\"\n    ports: [{kind: npt, end: male, size: size, bore: schedule 40, reach: 1 in}]\n    materials: {brass: {rating: 150 psi}}\n    source: mine\n    table: {columns: [size, price (usd)], rows: [[1, 2]]}\n",
     {"own.yaml:2:5: families[1]: a part with one port joins nothing: its 'role' is 'plug' if it closes an open end for good, else 'device' or what it is"}},
    {"OnePortThatConnects", "own.yaml", "", "families:\n  - name: stopper\n    shelf: mine\n    title: \"{size} stopper\"\n    size: \"{size}\"\n    ports: [{kind: npt, end: male, size: size, bore: schedule 40, reach: 1 in}]\n    role: connector\n    materials: {brass: {rating: 150 psi}}\n    source: mine\n    table: {columns: [size, price (usd)], rows: [[1, 2]]}\n",
     {"own.yaml:7:11: families[1].role: a part with one port joins nothing: its 'role' is 'plug' if it closes an open end for good, else 'device' or what it is"}},
    {"PlugWithTwoPorts", "families.yaml", "role: device", "role: plug",
     {"families.yaml:40:11: families[3].role: a plug has one port, not 2"}},
    {"UnknownRole", "families.yaml", "role: device", "role: relief valv",
     {"families.yaml:40:11: families[3].role: 'relief valv' is not one of connector, plug, device, gauge, relief valve, check valve, regulator, restrictor or hose clamp; did you mean 'relief valve'?"}},
    {"UnknownShape", "families.yaml", "role: device", "role: device\n    shape: ball valv",
     {"families.yaml:41:12: families[3].shape: 'ball valv' is not one of usual, ball valve, gate valve, needle valve, bibb, strainer, bowl, muffler, bulkhead or pipe; did you mean 'ball valve'?"}},
    {"ReliefValveWithoutItsSetPressure", "families.yaml", "role: device", "role: relief valve",
     {"families.yaml:38:5: families[3]: 'set pressure' is missing: a relief valve has one"}},
    {"SetPressureOfNoReliefValve", "families.yaml", "role: device", "role: device\n    set pressure: 2 psi",
     {"families.yaml:41:19: families[3].set pressure: only a relief valve has one; say so in 'role'"}},
    {"CheckValveWithoutWhatClosesAndOpensIt", "families.yaml", "role: device", "role: check valve",
     {"families.yaml:38:5: families[3]: 'check' is missing: a check valve has one", "families.yaml:38:5: families[3]: 'opening pressure' is missing: a check valve has one"}},
    {"CheckOfNoCheckValve", "families.yaml", "role: device", "role: device\n    check: swing",
     {"families.yaml:41:12: families[3].check: only a check valve has one; say so in 'role'"}},
    {"CheckOfUnknownKind", "families.yaml", "role: device", "role: check valve\n    opening pressure: 1 psi\n    check: lift",
     {"families.yaml:42:12: families[3].check: 'lift' is not one of spring or swing"}},
    {"GaugeWithoutItsRange", "own.yaml", "", "families:\n  - name: stopper\n    shelf: mine\n    title: \"{size} stopper\"\n    size: \"{size}\"\n    ports: [{kind: npt, end: male, size: size, bore: schedule 40, reach: 1 in}]\n    role: gauge\n    materials: {brass: {rating: 150 psi}}\n    source: mine\n    table: {columns: [size, price (usd)], rows: [[1, 2]]}\n",
     {"own.yaml:2:5: families[1]: 'range' is missing: a gauge or a regulator has one"}},
    {"RangeInNoUnitOfPressure", "own.yaml", "", "families:\n  - name: stopper\n    shelf: mine\n    title: \"{size} stopper\"\n    size: \"{size}\"\n    ports: [{kind: npt, end: male, size: size, bore: schedule 40, reach: 1 in}]\n    role: gauge\n    range: size\n    materials: {brass: {rating: 150 psi}}\n    source: mine\n    table: {columns: [size, price (usd)], rows: [[1, 2]]}\n",
     {"own.yaml:8:12: families[1].range: the column 'size' has no unit of pressure"}},
    {"OwnPartWithOnePortAndNoRole", "own.yaml", "", "parts:\n  - {id: own, name: own, size: 1, material: brass, rating: 150 psi, source: mine, ports: [{port: 1 FNPT, bore: 1 in, reach: 2 in}]}\n",
     {"own.yaml:2:5: parts[1]: a part with one port joins nothing: its 'role' is 'plug' if it closes an open end for good, else 'device' or what it is"}},
    {"OwnPartOfAnotherRoleThanItsFamily", "own.yaml", "", "parts:\n  - {id: own, name: own, size: 1, family: check valve, role: connector, material: brass, rating: 150 psi, source: mine, ports: [{port: 1 FNPT, bore: 1 in, reach: 2 in}, {port: 1 FNPT, bore: 1 in, reach: 2 in}]}\n",
     {"own.yaml:2:62: parts[1].role: the family 'check valve' is a device; name another family"}},
    {"SizeThatIsNoNumber", "joints.yaml", "[[3/4, 1.0625", "[[3/4 wide, 1.0625",
     {"joints.yaml:26:100: kinds[2].sizes.rows[1][1]: '3/4 wide': 'wide' after the number; a number is written like 0.6, 3/4 or 60 %, without a unit",
      "joints.yaml:31:39: look-alikes[1].sizes[1][2]: '3/4' is not a size of 'ght' (it has 3/4 wide)"}},
    {"OwnPartWithUnreadablePort", "own.yaml", "", "parts:\n  - {id: own, name: own, size: 1, material: brass, rating: 150 psi, source: mine, ports: [{port: 1 FTP, bore: 1 in, reach: 2 in}]}\n",
     {"own.yaml:2:100: parts[1].ports[1].port: 'FTP' is not understood; close to it: fip or fpt"}},
    {"OwnPartThatShutsInAFamilyThatDoesNot", "own.yaml", "", "parts:\n  - {id: own, name: own, size: 1, family: reducing coupling, can shut: yes, material: brass, rating: 150 psi, source: mine, ports: [{port: 1 FNPT, bore: 1 in, reach: 2 in}, {port: 1 FNPT, bore: 1 in, reach: 2 in}]}\n",
     {"own.yaml:2:72: parts[1].can shut: the family 'reducing coupling' holds nothing that can shut; name another family"}},
    {"OwnPartOfNoReach", "own.yaml", "", "parts:\n  - {id: own, name: own, size: 1, material: brass, rating: 150 psi, source: mine, ports: [{port: 1 FNPT, bore: 1 in, reach: 0 in}, {port: 1 FNPT, bore: 1 in, reach: 2 in}]}\n",
     {"own.yaml:2:125: parts[1].ports[1].reach: '0 in': out of range; allowed is 0.019685 in to 393.701 in"}},
    {"OwnPartOfABoreWiderThanItsThread", "own.yaml", "", "parts:\n  - {id: own, name: own, size: 1, material: brass, rating: 150 psi, source: mine, ports: [{port: 1 FNPT, bore: 1 m, reach: 2 in}, {port: 1 FNPT, bore: 1 in, reach: 2 in}]}\n",
     {"own.yaml:2:112: parts[1].ports[1].bore: a port 1 npt female has no bore of 39-3/8 in; allowed is less than 1-5/16 in, its outside"}},
    {"OwnPriceTwice", "own.yaml", "", "prices:\n  - {part: check valve, price: 3 usd}\n  - {part: check-valve/brass/1-2, price: 4 usd}\n",
     {"own.yaml:3:12: prices[2].part: 'check-valve/brass/1-2' has a price on line 2 already; keep one"}},
    {"BinPartMeasuredTooLong", "bin.yaml", "", "bin:\n  - {part: 1/2 x 2 nipple brass, measured: {length: 100 ft}}\n",
     {"bin.yaml:2:53: bin[1].measured.length: no 1/2 x 2 in nipple is 1200 in long; allowed is 1-1/16 in (what goes into its joints) to 8 in"}},
    {"BinPartMeasuredTooShort", "bin.yaml", "", "bin:\n  - {part: 1/2 x 2 nipple brass, measured: {length: 1/4 in}}\n",
     {"bin.yaml:2:53: bin[1].measured.length: no 1/2 x 2 in nipple is 1/4 in long; allowed is 1-1/16 in (what goes into its joints) to 8 in"}},
    {"OwnPartAlreadyThere", "own.yaml", "", "parts:\n  - {id: check-valve/brass/1-2, name: own, size: 1, role: plug, material: brass, rating: 150 psi, source: mine, ports: [{port: 1 FNPT, bore: 1 in, reach: 2 in}]}\n",
     {"own.yaml:2:10: parts[1].id: the part 'check-valve/brass/1-2' is already there"}},
    {"OwnPriceOfNothingKnown", "own.yaml", "", "prices:\n  - {part: check wlv, price: 3 usd}\n",
     {"own.yaml:2:18: prices[1].part: no part knows the word 'wlv'"}},
    {"OwnPriceWithoutUnit", "own.yaml", "", "prices:\n  - {part: check valve, price: 3}\n",
     {"own.yaml:2:33: prices[1].price: '3': no currency; a price is dollars and cents, like $2.10 or 2.10 usd"}},
    {"OwnPriceForSeveralParts", "own.yaml", "", "prices:\n  - {part: nipple, price: 3 usd}\n",
     {"own.yaml:2:12: prices[1].part: 'nipple' fits 5 parts, say which: nipple/black-iron/1-2x2-in, nipple/brass/1-2x2-in, nipple/black-iron/1-2x4-in, nipple/brass/1-2x4-in, nipple/black-iron/3-4x4-in"}},
    {"BinWithoutItsKey", "bin.yaml", "", "parts: []\n",
     {"bin.yaml:1:1: unknown key 'parts' (allowed: bin or units)",
      "bin.yaml:1:1: 'bin' is missing"}},
    {"BinPartUnknown", "bin.yaml", "", "bin:\n  - {part: 1 x 4 nipl, count: 2}\n",
     {"bin.yaml:2:18: bin[1].part: no part knows the word 'nipl'; did you mean nipple?"}},
    {"BinPartInNoSuchSize", "bin.yaml", "", "bin:\n  - {part: 1 x 4 nipple, count: 2}\n",
     {"bin.yaml:2:12: bin[1].part: no part fits all of '1 x 4 nipple'; the sizes are 1/2 x 4 in, 3/4 x 4 in"}},
    {"BinPartThatFitsSeveral", "bin.yaml", "", "bin:\n  - {part: 1 x 3/4 reducing coupling}\n",
     {"bin.yaml:2:12: bin[1].part: '1 x 3/4 reducing coupling' fits 2 parts, say which: reducing-coupling/black-iron/1x3-4, reducing-coupling/galvanized/1x3-4"}},
    {"BinCountNotWhole", "bin.yaml", "", "bin:\n  - {part: 1/2 check valve, count: 2.5}\n",
     {"bin.yaml:2:36: bin[1].count: '2.5': a whole number from 0 to 1000000 is wanted"}},
    {"BinCountNegative", "bin.yaml", "", "bin:\n  - {part: 1/2 check valve, count: -1}\n",
     {"bin.yaml:2:36: bin[1].count: '-1': a whole number from 0 to 1000000 is wanted"}},
    {"BinMaterialUnknown", "bin.yaml", "", "bin:\n  - {part: 1/2 x 2 nipple, material: bras}\n",
     {"bin.yaml:2:38: bin[1].material: unknown material 'bras'"}},
    {"BinLengthWithoutUnit", "bin.yaml", "", "bin:\n  - {part: 1/2 x 2 nipple, material: brass, measured: {length: 2-1/16}}\n",
     {"bin.yaml:2:70: bin[1].measured.length: '2-1/16': no unit; length takes in, ft, mm, cm, m, um, mil; 'units: inch' would make it 2-1/16 in"}},
    {"BinKeyUnknown", "bin.yaml", "", "bin:\n  - {part: 1/2 check valve, cuont: 2}\n",
     {"bin.yaml:2:29: bin[1]: unknown key 'cuont'; did you mean 'count'? (allowed: part, material, count, length, ends or measured)"}},
    {"BinPieceOfWhatHasItsLength", "bin.yaml", "", "bin:\n  - {part: 1/2 check valve, length: 4 in}\n",
     {"bin.yaml:2:37: bin[1].length: a piece has a length where it is sold by length, as hose is, or cut off a pipe, which 'check-valve/brass/1-2' is not; what was measured goes under 'measured'"}},
    {"BinNotAList", "bin.yaml", "", "bin: {part: 1/2 check valve}\n",
     {"bin.yaml:1:6: bin: a list is expected here, not a map of keys"}},
  };
  // clang-format on
  return kMistakes;
}

INSTANTIATE_TEST_SUITE_P(Of, CatalogMistake, ::testing::ValuesIn(mistakes()),
                         [](const auto& one) { return one.param.name; });

TEST(CatalogMistakeText, ShowsTheLineWithACaretBelowTheMistake) {
  try {
    load_with({"", "materials.yaml", "roughness: 0.15 mm", "roughness: 0.15 psi", {}});
    FAIL() << "it loaded";
  } catch (const quantity::InputError& error) {
    EXPECT_STREQ(
        error.what(),
        "materials.yaml:5:78: error: materials[2].roughness: '0.15 psi': 'psi' is a unit of pressure; length takes in, "
        "ft, mm, cm, m, um, mil [wrong_unit]\n"
        "    - {id: galvanized, name: galvanized, anodic index: 1.20 V, roughness: 0.15 psi, source: test}\n"
        "                                                                               ^");
  }
}

TEST(CatalogMistakes, OfAllFamilyFilesAreSaidAtOnce) {
  std::vector<SourceText> texts = testing::small_catalog_texts();
  texts.push_back({"more.yaml", "families:\n  - {nam: x}\n"});
  texts[4].text.replace(texts[4].text.find("rating: 300 psi"), 15, "rating: 300 ft ");
  try {
    load_catalog(texts, {});
    FAIL() << "it loaded";
  } catch (const quantity::InputError& error) {
    EXPECT_EQ(error.problems().front().file, "families.yaml");
    EXPECT_EQ(error.problems().back().file, "more.yaml");
  }
}

std::string what_load_says(const std::filesystem::path& file) {
  Problems problems;
  const Document document = Document::load(file, problems);
  return problems.empty() ? "" : problems.all().front().message;
}

TEST(FileThatIsNoTextFile, IsRefused) {
  const std::filesystem::path folder = std::filesystem::path(::testing::TempDir()) / "riserun-odd-files";
  std::filesystem::create_directories(folder);
  EXPECT_EQ(what_load_says(folder), "this is a folder, not a file");
  EXPECT_EQ(what_load_says(folder / "none.yaml"), "there is no such file");
  const std::filesystem::path large = folder / "large.yaml";
  std::ofstream(large).put('a');
  std::filesystem::resize_file(large, 100 << 20);
  EXPECT_EQ(what_load_says(large), "larger than 4 MB: this is not a file for this program");
  std::filesystem::remove_all(folder);
}

TEST(DeepNesting, IsRefusedAndNotFollowed) {
  for (const std::string& open : {std::string("["), std::string("{a: "), std::string("- ")}) {
    std::string text;
    for (int i = 0; i < 20000; ++i) text += open;
    Problems problems;
    Document::parse(text, "deep.yaml", problems);
    ASSERT_FALSE(problems.empty());
    EXPECT_EQ(problems.all().back().message, "nested more than 32 deep");
  }
}

TEST(MissingFolder, IsSaid) {
  try {
    load_catalog(std::filesystem::path("no-such-folder"), {});
    FAIL() << "it loaded";
  } catch (const quantity::InputError& error) {
    EXPECT_EQ(error.problems().front().text(),
              "no-such-folder: error: the folder of the catalog cannot be read [file_not_read]");
  }
}

}  // namespace
}  // namespace riserun::catalog
