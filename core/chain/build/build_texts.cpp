#include "chain/build/build_texts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

namespace riserun::chain {

namespace {

// 1.5 is "1-1/2"; quarters are as fine as turns are counted.
std::string written_turns(double turns) {
  static const char* const kQuarters[] = {"", "1/4", "1/2", "3/4"};
  const int quarters = static_cast<int>(turns * 4.0 + 0.5);
  const int whole = quarters / 4;
  const std::string part = kQuarters[quarters % 4];
  if (part.empty()) return std::to_string(whole);
  return whole == 0 ? part : std::to_string(whole) + "-" + part;
}

}  // namespace

std::string turns_past_hand(const catalog::Catalog& catalog, catalog::PortTypeId a, catalog::PortTypeId b,
                            bool plastic) {
  const catalog::PortTypeId thread = catalog.port_type(b).end == catalog::End::male ? b : a;
  const catalog::JointSize* size = catalog.joint_size(catalog.port_type(thread));
  if (!size || size->turns_past_hand_high <= 0.0) return "hand-tight, then a little more";
  const double low = plastic ? std::min(1.0, size->turns_past_hand_low) : size->turns_past_hand_low;
  const double high = plastic ? std::min(2.0, size->turns_past_hand_high) : size->turns_past_hand_high;
  if (written_turns(low) == written_turns(high))
    return fmt::format("hand-tight, then {} turn{} more", written_turns(high), high > 1.0 ? "s" : "");
  return fmt::format("hand-tight, then {} to {} turns more", written_turns(low), written_turns(high));
}

std::string held_close_nipple(const std::string& short_name) {
  return short_name + " draws up in both, so no wrench touches its threads";
}

std::string SealTexts::sealing(const catalog::Catalog& catalog, const catalog::MatingRule& joint, std::size_t step) {
  const auto [known, is_new] = sealed_in_.try_emplace(joint.seal, step);
  if (!is_new) return fmt::format("Seal as in step {}.", known->second);
  const catalog::Seal* seal = catalog.seal(joint.seal);
  std::string text = seal && !seal->instruction.empty() ? seal->instruction : "seal: " + joint.seal;
  text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
  if (text.back() != '.') text += '.';
  return text;
}

}  // namespace riserun::chain
