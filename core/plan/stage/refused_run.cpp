#include "plan/stage/refused_run.h"

#include <algorithm>
#include <string>
#include <variant>

namespace riserun::plan {

namespace {

using catalog::Catalog;
using catalog::PartId;
using catalog::Role;

const chain::Need* need_called(const std::vector<chain::Need>& asked, const Fact& about) {
  if (about.values.empty()) return nullptr;
  const auto* words = std::get_if<std::string>(&about.values.front());
  const auto found = std::find_if(asked.begin(), asked.end(),
                                  [&](const chain::Need& need) { return words != nullptr && need.words == *words; });
  return found != asked.end() ? &*found : nullptr;
}

bool all_are(const chain::Need& need, const auto& fits) {
  return !need.parts.empty() && std::all_of(need.parts.begin(), need.parts.end(), fits);
}

/// In place of doing without it.
std::optional<Fact> mend_of_need(const Catalog& catalog, const chain::Need& need) {
  const auto role_of = [&](PartId part) { return catalog.family(catalog.part(part).family).role; };
  if (all_are(need, [&](PartId part) {
        return catalog.family(catalog.part(part).family).check == catalog::CheckKind::swing;
      }))
    return fact("spring_check_in_its_place");
  if (all_are(need, [&](PartId part) { return catalog.part(part).ports.size() == 1; }))
    return fact("end_a_connection_in_it", need.words);
  const auto guards = [&](PartId part) {
    const Role role = role_of(part);
    return role == Role::regulator || role == Role::restrictor || role == Role::relief_valve || role == Role::gauge ||
           role == Role::check_valve;
  };
  if (all_are(need, guards)) return fact("take_another_that_fits", need.words);
  return std::nullopt;
}

}  // namespace

std::optional<Fact> fitters_mend(const Catalog& catalog, const std::vector<chain::Need>& asked, const Fact& reason,
                                 const std::optional<Fact>& mend) {
  if (reason.code == "air_alone" || reason.code == "need_not_proved_for_air") {
    const chain::Need* need = reason.code == "air_alone" ? nullptr : need_called(asked, reason);
    const auto swing = need != nullptr ? mend_of_need(catalog, *need) : std::nullopt;
    if (swing) return swing;
    return need != nullptr ? fact("metal_or_air_hose_in_its_place", need->words)
                           : fact("carry_air_in_what_is_made_for_it");
  }
  if (reason.code == "need_not_proved_for_heat" || reason.code == "need_not_proved_for_vacuum" ||
      reason.code == "need_not_proved_for_heat_and_vacuum")
    return fact("rigid_pipe_or_cooler_water");
  const Fact& about = mend && mend->code == "need_relief" ? *mend : reason;
  const bool about_a_need = about.code == "need_relief" || about.code == "no_need_stocked" ||
                            about.code == "no_need_to_be_had" || about.code == "need_has_one_port";
  if (!about_a_need) return std::nullopt;
  if (const chain::Need* need = need_called(asked, about)) return mend_of_need(catalog, *need);
  return std::nullopt;
}

void change_for_special_order(const std::string& connection, Finding& refusal) {
  if (refusal.mend && refusal.mend->code == "order_one_part_specially")
    refusal.ways_to_try = {{{kSpecialOrderIn, connection}}};
}

}  // namespace riserun::plan
