#include "property/plan/random_job.h"

#include <fmt/format.h>

#include <array>
#include <cstdlib>
#include <random>
#include <string_view>
#include <vector>

namespace riserun::plan {

namespace {

class Dice {
 public:
  explicit Dice(std::uint32_t seed) : engine_(seed) {}
  int upto(int most) { return static_cast<int>(engine_() % static_cast<std::uint32_t>(most + 1)); }
  int between(int least, int most) { return least + upto(most - least); }
  bool one_in(int n) { return upto(n - 1) == 0; }
  template <class Row>
  typename Row::value_type of(const Row& row) {
    return row[static_cast<std::size_t>(upto(static_cast<int>(row.size()) - 1))];
  }

 private:
  std::mt19937 engine_;
};

constexpr std::array<std::string_view, 5> kSizes = {"1/4", "1/2", "3/4", "1", "1-1/4"};
constexpr std::array<std::string_view, 4> kSheets = {"11 ga steel", "10 ga steel", "3/16 in steel", "1/4 in steel"};
constexpr std::array<std::string_view, 3> kWalls = {"lid", "side", "floor"};
constexpr std::array<std::string_view, 3> kDials = {"3 psi gauge", "5 psi gauge", "15 psi gauge"};
constexpr std::array<std::string_view, 3> kReliefs = {"relief valve set 2 psi", "relief valve set 3 psi",
                                                      "relief valve set 5 psi"};
constexpr std::array<std::string_view, 5> kBin = {
    "1/2 ball valve brass", "1/4 tee brass", "1/2 x 1/4 hex bushing brass", "1/2 plug black iron", "5 psi gauge 1/4"};

struct Written {
  std::string ports;
  std::string connections;

  void port(std::string_view name, std::string_view size, std::string_view wall) {
    ports += fmt::format("    {}: {{port: {} FNPT, where: {}}}\n", name, size, wall);
  }
};

void add_air(Dice& dice, Written& written) {
  written.port("air bung", dice.of(kSizes), "lid");
  if (dice.one_in(4)) return;
  if (dice.one_in(3)) {
    written.connections += fmt::format(
        "  - name: manifold\n    from: air bung\n    carries: air\n    special order: yes\n    branches:\n"
        "      - {{to: shop air, need: [0 to 15 psi air regulator], name: feed}}\n"
        "      - {{name: dial, ends in: {}, special order: yes}}\n",
        dice.of(kDials));
    return;
  }
  written.connections +=
      "  - {name: air in, from: shop air, to: air bung, carries: air, special order: yes, need: [0 to 15 psi air "
      "regulator]}\n";
}

void add_device(Dice& dice, std::string_view name, std::string_view device, Written& written) {
  if (dice.one_in(4)) return;
  const std::string bung = fmt::format("{} bung", name);
  written.port(bung, dice.of(kSizes), dice.of(kWalls));
  if (dice.one_in(4)) return;
  written.connections +=
      fmt::format("  - {{name: {0}, from: {1}, ends in: {2}, special order: yes, carries: air}}\n", name, bung, device);
}

}  // namespace

std::string random_job(std::uint32_t seed) {
  Dice dice(seed);
  Written written;
  const std::string_view riser = dice.one_in(2) ? "1" : "1-1/4";
  written.ports += fmt::format("    riser bung: {{port: {} FNPT, bung: full coupling, where: lid}}\n", riser);
  add_air(dice, written);
  add_device(dice, "dial", dice.of(kDials), written);
  add_device(dice, "relief", dice.of(kReliefs), written);
  add_device(dice, "vent", "brass ball valve", written);
  for (int spare = dice.upto(2); spare > 0; --spare)
    written.port(fmt::format("spare {}", spare), dice.of(kSizes), dice.of(kWalls));
  std::string bin;
  for (const std::string_view part : kBin)
    if (dice.one_in(2)) bin += fmt::format("  - {{part: {}, count: {}}}\n", part, dice.between(1, 2));
  return fmt::format(
      "name: Job {}\nunits: inch\nreservoir:\n"
      "  inside: {{length: {} in, width: {} in, height: {} in}}\n  sheet: {}\n"
      "  supports: {{baffles across: {}, passages: {}}}\n  charge: {} in\n  ports:\n{}"
      "table:\n  inside: {{length: 40 in, width: 20 in}}\n  rim: 5 in\n  floor height: 30 in\n  depth: {} in\n"
      "  ports:\n    inlet: {{port: 1 FNPT, where: floor}}\n"
      "riser: {{bung: riser bung}}\n"
      "air:\n  delivery: 3 scfm\n  receiver: 8 gal\n  regulator range: 15 psi\n  ports: {{shop air: 1/4 FNPT}}\n"
      "connections:\n"
      "  - {{name: water up, from: riser bung, to: inlet, carries: water, need: [hose]}}\n{}{}{}",
      seed, dice.between(24, 60), dice.between(14, 30), dice.between(12, 18), dice.of(kSheets), dice.upto(4),
      dice.one_in(5) ? "no" : "yes", dice.between(6, 9), written.ports, dice.between(2, 4), written.connections,
      bin.empty() ? "" : "bin:\n", bin);
}

namespace {

std::uint32_t asked_for(const char* variable, std::uint32_t usual) {
  const char* asked = std::getenv(variable);
  return asked == nullptr ? usual : static_cast<std::uint32_t>(std::strtoul(asked, nullptr, 10));
}

}  // namespace

std::uint32_t count_of_jobs(std::uint32_t usual) { return asked_for("RISERUN_RANDOM_JOBS", usual); }

std::uint32_t jobs_left_out() { return asked_for("RISERUN_RANDOM_SKIP", 0); }

}  // namespace riserun::plan
