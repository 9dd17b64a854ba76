// What a family's parts are for, and what the file must say of them then.
#include "catalog/load/loading.h"

#include <algorithm>
#include <array>

namespace riserun::catalog {

namespace {

using NamedRole = std::pair<std::string_view, Role>;
constexpr std::array<NamedRole, 8> kRoles = {{{"connector", Role::connector},
                                              {"plug", Role::plug},
                                              {"device", Role::device},
                                              {"gauge", Role::gauge},
                                              {"relief valve", Role::relief_valve},
                                              {"regulator", Role::regulator},
                                              {"restrictor", Role::restrictor},
                                              {"hose clamp", Role::hose_clamp}}};

/// Where one role must have the key and no other may.
void check_key(Problems& problems, const Value& map, std::string_view key, bool wanted, std::string_view whose) {
  const Value value = map[key];
  if (wanted && !value.exists())
    problems.add(map, at_path(map) + "'" + std::string(key) + "' is missing: " + std::string(whose) + " has one");
  if (!wanted && value.exists())
    problems.add(value, at_path(value) + "only " + std::string(whose) + " has one; say so in 'role'");
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
}

}  // namespace riserun::catalog
