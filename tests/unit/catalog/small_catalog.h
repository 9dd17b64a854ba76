// A catalog small enough to read at a glance, as texts of files. The numbers are invented where they stand for nothing.
#pragma once

#include "catalog/load/load.h"

#include <fmt/format.h>

#include <string>
#include <vector>

namespace riserun::catalog::testing {

inline const std::string kMaterials = R"(# Materials of the tests.
galvanic: {watch above: 0.25 V, keep apart above: 0.50 V, source: test}
materials:
  - {id: black-iron, name: black iron, aliases: [black], anodic index: 0.85 V, roughness: 0.046 mm, source: test}
  - {id: galvanized, name: galvanized, anodic index: 1.20 V, roughness: 0.15 mm, source: test}
  - {id: brass, name: brass, anodic index: 0.45 V, roughness: 0.0015 mm, source: test}
  - {id: pvc, name: PVC, metal: no, compressed air: no, roughness: 0.0015 mm, source: test}
)";

inline const std::string kJoints = R"(# Joints of the tests.
seals:
  - {name: thread sealant, instruction: tape 3 turns, consumable: PTFE tape, source: test}
  - {name: hose washer, instruction: put the washer in, consumable: hose washer, source: test}
kinds:
  - id: npt
    name: NPT
    standard: ASME B1.20.1
    thread: taper
    notation: {male: MNPT, female: FNPT}
    read as: {kind: [pipe thread], male: [MIP, MPT], female: [FIP, FPT]}
    source: test
    sizes:
      columns: [size, outside diameter (in), threads per inch, hand tight (in), wrench (in), turns low, turns high, make-up tolerance (in)]
      rows:
        - [1/2, 0.840, 14, 0.320, 0.2143, 1.5, 3, 0.0714]
        - [3/4, 1.050, 14, 0.339, 0.2143, 1.5, 3, 0.0714]
        - [1, 1.315, 11.5, 0.400, 0.2609, 1.5, 3, 0.0870]
  - id: ght
    name: garden hose thread
    standard: ASME B1.20.7
    thread: straight
    notation: {male: MGHT, female: FGHT}
    read as: {kind: [garden hose]}
    source: test
    sizes: {columns: [size, outside diameter (in), threads per inch, hand tight (in)], rows: [[3/4, 1.0625, 11.5, 0.3]]}
mating:
  - {a: npt male, b: npt female, seal: thread sealant, turns: either, source: test}
  - {a: ght male, b: ght female, seal: hose washer, turns: neither, closing: yes, source: test}
look-alikes:
  - {kinds: [npt, ght], sizes: [[3/4, 3/4]], reason: nearly the same diameter, source: test}
)";

inline const std::string kLosses = R"(# Losses of the tests.
items:
  - {name: check valve, crane n: 100, scatter: 0.3, source: test}
)";

inline const std::string kPipe = R"(# Bores of the tests.
bores:
  - {name: schedule 40, source: test, columns: [size, bore (in)], rows: [[1/2, 0.622], [3/4, 0.824], [1, 1.049]]}
)";

inline const std::string kFamilies = R"(# Families of the tests.
families:
  - name: reducing coupling
    aliases: [bell reducer]
    standard: ASME B16.3
    shelf: pipe fittings
    title: "{large} x {small} reducing coupling"
    size: "{large} x {small}"
    ports:
      - {kind: npt, end: female, size: large, bore: schedule 40, reach: half of length}
      - {kind: npt, end: female, size: small, bore: schedule 40, reach: half of length}
    materials:
      black-iron: {rating: 300 psi}
      galvanized: {rating: 300 psi, price factor: 1.25, stocked: {large: [3/4]}}
    source: test
    table:
      columns: [large, small, length (in), price (usd), stocked]
      rows:
        - [3/4, 1/2, 1.44, 3.00, galvanized]
        - [1, [1/2, 3/4], 1-11/16, 4.00, yes]
  - name: nipple
    shelf: pipe nipples
    title: "{size} x {length} in nipple"
    size: "{size} x {length} in"
    bore: schedule 40
    ports:
      - {kind: npt, end: male, size: size, reach: half of length}
      - {kind: npt, end: male, size: size, reach: half of length}
    materials:
      black-iron: {rating: 1000 psi}
      brass: {rating: 400 psi, price factor: 4, only: {size: [1/2]}}
    source: test
    table:
      columns: [size, length (in), price per inch (usd)]
      rows:
        - [1/2, [2, 4], 0.60]
        - [3/4, 4, 0.80]
  - name: check valve
    shelf: valves
    role: device
    title: "{size} check valve"
    size: "{size}"
    one way: yes
    loss: check valve
    ports:
      - {kind: npt, end: female, size: size, bore: schedule 40, reach: length - 0.5 in}
      - {kind: npt, end: female, size: size, bore: schedule 40, reach: half of length + 0.25 in}
    materials: {brass: {rating: pressure}}
    source: test
    table: {columns: [size, length (in), pressure (psi), price (usd)], rows: [[1/2, 2.5, 125, 20]]}
  - name: hose adapter
    shelf: garden hose
    title: "3/4 MGHT x {pipe} FNPT adapter"
    size: "3/4 x {pipe}"
    ports:
      - {kind: ght, end: male, size: 3/4, bore: 0.6 in, reach: 0.75 in}
      - {kind: npt, end: female, size: pipe, bore: schedule 40, reach: 0.75 in}
    materials: {brass: {rating: 125 psi}, pvc: {rating: 100 psi, price factor: 0.5}}
    source: test
    table: {columns: [pipe, price (usd), made in], rows: [[1/2, 6, [brass, pvc]], [3/4, 6, brass]]}
)";

inline std::vector<SourceText> small_catalog_texts() {
  return {{"materials.yaml", kMaterials},
          {"joints.yaml", kJoints},
          {"losses.yaml", kLosses},
          {"pipe.yaml", kPipe},
          {"families.yaml", kFamilies}};
}

inline Catalog small_catalog() { return load_catalog(small_catalog_texts(), {}); }

/// Every problem as `file:line:column: message`.
inline std::vector<std::string> places_and_messages(const quantity::InputError& error) {
  std::vector<std::string> result;
  for (const quantity::Problem& problem : error.problems())
    result.push_back(fmt::format("{}:{}:{}: {}", problem.file, problem.line, problem.column, problem.message));
  return result;
}

/// One line for each thing of the catalog, with all that the files say of it.
inline std::vector<std::string> written_out(const Catalog& catalog) {
  std::vector<std::string> lines;
  const auto end = [](End e) { return static_cast<int>(e); };
  for (const Material& m : catalog.materials())
    lines.push_back(fmt::format("material {} {} {} {} {} {} {} {} {} {}", m.id, m.name, fmt::join(m.aliases, ","),
                                m.anodic_index_volts, m.metal, m.compressed_air, in_metres(m.roughness), m.galls,
                                m.threads, m.source));
  for (const Seal& s : catalog.seals())
    lines.push_back(fmt::format("seal {} {} {} {} {} {} {} {} {} {}", s.name, s.instruction, s.consumable, s.source,
                                s.clamped, s.on_washer, s.hot, s.at_bench, in_metres(s.tape_per_joint),
                                in_metres(s.tape_per_roll)));
  for (const JointKind& k : catalog.kinds()) {
    lines.push_back(fmt::format("kind {} {} {} {} {} {} {} {} {} {} {}", k.id, k.name, k.standard, k.male_notation,
                                k.female_notation, k.neither_notation, fmt::join(k.kind_words, ","),
                                fmt::join(k.male_words, ","), fmt::join(k.female_words, ","), k.tapered, k.source));
    for (const JointSize& s : k.sizes)
      lines.push_back(fmt::format("size {} {} {} {} {} {} {} {}", k.id, catalog.size_name(s.size),
                                  in_metres(s.outside_diameter), s.threads_per_inch, in_metres(s.make_up()),
                                  s.turns_past_hand_low, s.turns_past_hand_high, in_metres(s.make_up_tolerance)));
  }
  for (const MatingRule& r : catalog.mating_rules())
    lines.push_back(fmt::format("rule {} {} {} {} {} {} {} {} {} {}", catalog.kind(r.kind_a).id, end(r.end_a),
                                catalog.kind(r.kind_b).id, end(r.end_b), r.sizes.size(), r.seal,
                                r.turning == Turning::either, r.closing, r.comes_apart, r.source));
  for (const LookAlike& l : catalog.look_alikes())
    lines.push_back(fmt::format("look-alike {} {} {} {} {}", catalog.kind(l.kind_a).id, catalog.kind(l.kind_b).id,
                                l.sizes.size(), l.reason, l.source));
  for (const LossItem& l : catalog.loss_items())
    lines.push_back(fmt::format("loss {} {} {} {} {}", l.name, l.crane_n, l.darby_k1, l.scatter, l.source));
  for (const Family& f : catalog.families())
    lines.push_back(fmt::format("family {} {} {} {} {} {} {} {}", f.name, fmt::join(f.aliases, ","), f.standard,
                                f.shelf, role_name(f.role), static_cast<int>(f.weld_bung), f.is_bushing, f.source));
  for (const Part& p : catalog.parts()) {
    std::string line = fmt::format(
        "part {} '{}' '{}' {} {} {} {} {} {} {} {} {} {} {} {} {} {} {} {}", p.id, p.name, p.size,
        catalog.family(p.family).name, catalog.material(p.material).id, p.price.cents(), in_pascals(p.rating),
        p.stocked, p.air, p.closing, p.dielectric, p.one_way, p.measured, p.close, p.names_material,
        in_pascals(p.opens_at.value_or(psig(0.0))), in_pascals(p.full_scale.value_or(psig(0.0))),
        p.loss.valid() ? catalog.loss_item(p.loss).name : "none", p.source);
    for (const Port& port : p.ports)
      line += fmt::format(" [{} {} {} {}]", catalog.spelled(port.type), in_metres(port.bore), in_metres(port.reach),
                          port.heading_degrees);
    lines.push_back(line);
  }
  return lines;
}

}  // namespace riserun::catalog::testing
