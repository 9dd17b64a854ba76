#include "report/text/duty_text.h"

#include "chain/finder.h"

#include <fmt/format.h>

namespace riserun::report {

using catalog::InVacuum;

std::vector<chain::PartId> all_parts(const chain::Chain& chain) {
  std::vector<chain::PartId> parts;
  for (const chain::RunPart& link : chain.parts) {
    parts.push_back(link.part);
    for (const chain::Follower& plug : link.plugs()) parts.push_back(plug.plug);
  }
  return parts;
}

std::string duty_sentence(const chain::Catalog& catalog, const std::vector<chain::PartId>& parts,
                          const std::optional<Temperature>& heat, UnitSystem units) {
  const chain::RunDuty duty = chain::duty_of_run(catalog, parts, heat);
  std::vector<std::string> proved;
  std::vector<std::string> not_proved;
  if (duty.air)
    proved.push_back("compressed air to " + write_pressure_alone(*duty.air, units));
  else
    not_proved.emplace_back("compressed air");
  if (duty.hottest)
    proved.push_back(write_temperature(*duty.hottest, units) + " inside" +
                     (duty.at_hottest ? " at " + write_pressure_alone(*duty.at_hottest, units) : ""));
  else
    not_proved.emplace_back("heat");
  if (duty.vacuum == InVacuum::stands) proved.emplace_back("vacuum");
  if (duty.vacuum == InVacuum::not_proved) not_proved.emplace_back("vacuum");
  std::string text;
  if (!proved.empty()) text += fmt::format("proved for {}", fmt::join(proved, ", "));
  if (!not_proved.empty())
    text += fmt::format("{}not proved for {}", text.empty() ? "" : "; ", fmt::join(not_proved, ", "));
  if (duty.vacuum == InVacuum::collapses) text += "; collapses under vacuum";
  text.front() = text.front() == 'p' ? 'P' : 'N';
  return text + ".";
}

}  // namespace riserun::report
