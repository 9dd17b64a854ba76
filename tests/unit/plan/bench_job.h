// A whole small job that the tests change in one place at a time.
#pragma once

namespace riserun::plan {

inline constexpr const char* kBench = R"(name: Test bench
units: inch
reservoir:
  inside: {length: 40 in, width: 20 in, height: 14 in}
  sheet: 10 ga steel
  supports: {baffles across: 2}
  charge: 9 in
  ports:
    riser bung: {port: 1 FNPT, bung: full coupling, where: lid}
    air bung: 1/2 FNPT
table:
  inside: {length: 44 in, width: 22 in}
  rim: 5 in
  floor height: 30 in
  depth: 4 in
  ports:
    inlet: {port: 1 FNPT, where: floor}
riser: {bung: riser bung}
air:
  delivery: 3 scfm
  receiver: 8 gal
  regulator range: 15 psi
  ports: {regulator: 1/4 FNPT}
vent: {bore: 1/2 in}
connections:
  - {name: water up, from: riser bung, to: inlet, carries: water, need: [union], held: {from: fixed, to: fixed}}
  - {name: air in, from: regulator, to: air bung, carries: air}
water temperature: 60 degF
altitude: 600 ft
)";

/// The five things that must be known, and nothing else.
inline constexpr const char* kFiveThings = R"(reservoir:
  inside: {length: 40 in, width: 20 in, height: 14 in}
  sheet: 10 ga steel
  supports: {widest bare panel: {length: 20 in, width: 13 in}}
table:
  inside: {length: 44 in, width: 22 in}
  floor height: 30 in
  depth: 4 in
air: {delivery: 3 scfm}
)";

}  // namespace riserun::plan
