// What a family's parts are for, and what the file must say of them then.
#include "catalog/load/loading.h"

#include <algorithm>
#include <array>

namespace riserun::catalog {

namespace {

using NamedRole = std::pair<std::string_view, Role>;
constexpr std::array<NamedRole, 9> kRoles = {{{"connector", Role::connector},
                                              {"plug", Role::plug},
                                              {"device", Role::device},
                                              {"gauge", Role::gauge},
                                              {"relief valve", Role::relief_valve},
                                              {"check valve", Role::check_valve},
                                              {"regulator", Role::regulator},
                                              {"restrictor", Role::restrictor},
                                              {"hose clamp", Role::hose_clamp}}};

/// Where one role may have the key and no other.
void check_only(Problems& problems, const Value& map, std::string_view key, bool may, std::string_view whose) {
  if (const Value value = map[key]; !may && value.exists())
    problems.add(value, at_path(value) + "only " + std::string(whose) + " has one; say so in 'role'");
}

/// Where one role must have the key and no other may.
void check_key(Problems& problems, const Value& map, std::string_view key, bool wanted, std::string_view whose) {
  if (wanted && !map[key].exists())
    problems.add(map, at_path(map) + "'" + std::string(key) + "' is missing: " + std::string(whose) + " has one");
  check_only(problems, map, key, wanted, whose);
}

}  // namespace

std::string_view role_name(Role role) {
  return std::find_if(kRoles.begin(), kRoles.end(), [&](const NamedRole& named) { return named.second == role; })
      ->first;
}

std::optional<Role> read_role(Fields& fields) { return fields.choice<Role>(fields.find("role"), kRoles); }

void check_role(Problems& problems, const Value& map, Role role, std::size_t ports) {
  const Value written = map["role"];
  if (ports == 1 && role == Role::connector)
    problems.add(written.exists() ? written : map,
                 at_path(written.exists() ? written : map) +
                     "a part with one port joins nothing: its 'role' is 'plug' if it closes an open end for good, else "
                     "'device' or what it is");
  if (ports > 1 && (role == Role::plug || role == Role::hose_clamp))
    problems.add(written, at_path(written) + "a " + std::string(role_name(role)) + " has one port, not " +
                              std::to_string(ports));
  check_key(problems, map, "set pressure", role == Role::relief_valve, "a relief valve");
  check_key(problems, map, "range", role == Role::gauge || role == Role::regulator, "a gauge or a regulator");
  check_only(problems, map, "check", role == Role::check_valve, "a check valve");
  check_only(problems, map, "opening pressure", role == Role::check_valve, "a check valve");
}

void check_check_valve(Problems& problems, const Value& map, Role role) {
  if (role != Role::check_valve) return;
  for (const std::string_view key : {"check", "opening pressure"})
    if (!map[key].exists())
      problems.add(map, at_path(map) + "'" + std::string(key) + "' is missing: a check valve has one");
}

CheckKind read_check(Fields& fields) {
  return fields.choice<CheckKind>(fields.find("check"), {{"spring", CheckKind::spring}, {"swing", CheckKind::swing}})
      .value_or(CheckKind::none);
}

}  // namespace riserun::catalog
