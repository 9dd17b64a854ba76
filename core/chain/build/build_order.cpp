#include "chain/build/build_order.h"

#include "chain/build/build_texts.h"
#include "chain/rules/rules.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace riserun::chain {

using catalog::End;
using catalog::MatingRule;
using catalog::Part;
using catalog::Turning;

namespace {

/// Where the run is closed: at a joint, or inside a part (a union) whose two halves are made up apart.
struct LastPlace {
  std::size_t joint = 0;
  std::optional<std::size_t> split_part;  // row of Chain::parts
};

/// Bodies are counted 0 for the first port, then the parts, then the last port.
class BuildOrder {
 public:
  BuildOrder(const Catalog& catalog, const ChainRequest& request, Chain& chain)
      : catalog_(catalog), request_(request), rules_(catalog, request), chain_(chain) {}

  void write();

 private:
  std::optional<LastPlace> last_place() const;
  std::optional<LastPlace> closing_place() const;
  void add_plugs();
  void add_joint(std::size_t joint, bool from_side);
  void add_screwed_joint(std::size_t joint, std::size_t turned, bool last);
  void add_last_joint(std::size_t joint);
  void add_still_joint(std::size_t joint, bool last);
  void add_union_nut(std::size_t part, bool last);
  void warn_of_no_play(const char* moves, std::size_t joint, const char* when);

  const MatingRule& rule(std::size_t joint) const { return catalog_.mating_rules()[chain_.joints[joint].rule]; }
  const Part& part(std::size_t body) const { return catalog_.part(chain_.parts[body - 1].part); }
  bool is_end(std::size_t body) const { return body == 0 || body == chain_.parts.size() + 1; }
  Freedom freedom(std::size_t body) const { return body == 0 ? request_.from.freedom : request_.to.freedom; }
  bool turns(std::size_t body) const;
  bool slides(std::size_t body) const;
  bool is_plastic(std::size_t body) const;
  bool is_half(std::size_t body) const { return place_.split_part && body == *place_.split_part + 1; }
  std::string name(std::size_t body) const;
  std::string name_at(std::size_t body, std::size_t joint) const;
  std::string short_name(std::size_t body) const;
  std::string sealing(const MatingRule& joint);
  std::string turns_text(std::size_t joint, std::size_t turned) const;
  std::string hold(std::size_t body) const;
  std::string facing(std::size_t body) const;

  const Catalog& catalog_;
  const ChainRequest& request_;
  Rules rules_;
  Chain& chain_;
  LastPlace place_;
  SealTexts seals_;
};

bool BuildOrder::turns(std::size_t body) const {
  return !is_end(body) || freedom(body) == Freedom::spinning || freedom(body) == Freedom::loose;
}

bool BuildOrder::slides(std::size_t body) const {
  return freedom(body) == Freedom::sliding || freedom(body) == Freedom::loose;
}

bool BuildOrder::is_plastic(std::size_t body) const {
  if (!is_end(body)) return !catalog_.material(part(body).material).metal;
  const std::optional<MaterialId> material = body == 0 ? request_.from.material : request_.to.material;
  return material && !catalog_.material(*material).metal;
}

std::string BuildOrder::short_name(std::size_t body) const {
  if (is_end(body)) return body == 0 ? name_of_first(request_.from) : name_of_last(request_.to);
  return is_half(body) ? "that half" : fmt::format("part {}", body);
}

std::string BuildOrder::name(std::size_t body) const {
  if (is_end(body))
    return fmt::format("{} ({})", short_name(body),
                       catalog_.written(body == 0 ? request_.from.type : request_.to.type));
  return fmt::format("part {} ({})", body, part(body).name);
}

std::string BuildOrder::name_at(std::size_t body, std::size_t joint) const {
  if (!is_half(body)) return name(body);
  return fmt::format("the {} half of {}", joint + 1 == body ? "first" : "second", name(body));
}

std::string BuildOrder::sealing(const MatingRule& joint) {
  return seals_.sealing(catalog_, joint, chain_.steps.size() + 1);
}

std::string BuildOrder::turns_text(std::size_t joint, std::size_t turned) const {
  if (!is_end(turned) && is_close_nipple(part(turned))) return kCloseNippleTurns;
  const ChainJoint& made = chain_.joints[joint];
  return turns_past_hand(catalog_, made.a, made.b, is_plastic(joint) || is_plastic(joint + 1));
}

// A taper joint is never turned back to face a bend: it would leak (common practice).
std::string BuildOrder::facing(std::size_t body) const {
  if (is_end(body) || !is_bent(part(body))) return "";
  return " Stop where its other end faces right, at most one turn further and never back.";
}

std::string BuildOrder::hold(std::size_t body) const {
  if (is_end(body) && !turns(body)) return short_name(body) + " stays still by itself";
  if (!is_end(body) && is_close_nipple(part(body))) return held_close_nipple(short_name(body));
  return fmt::format("hold {} with a second wrench", short_name(body));
}

std::optional<LastPlace> BuildOrder::closing_place() const {
  for (std::size_t row = chain_.parts.size(); row-- > 0;)
    if (catalog_.part(chain_.parts[row].part).closing) return LastPlace{0, row};
  for (const bool lengthwise : {false, true})
    for (std::size_t joint = chain_.joints.size(); joint-- > 0;)
      if (rule(joint).closing && rule(joint).lengthwise == lengthwise) return LastPlace{joint, {}};
  return std::nullopt;
}

std::optional<LastPlace> BuildOrder::last_place() const {
  if (const auto place = closing_place()) return place;
  const std::size_t last = chain_.joints.size() - 1;
  if (rules_.closing() == Closing::none) return LastPlace{turns(last + 1) ? last : 0, {}};
  for (std::size_t joint = chain_.joints.size(); joint-- > 0;)
    if (rules_.joint_closes(rule(joint))) return LastPlace{joint, {}};
  return std::nullopt;
}

void BuildOrder::write() {
  const auto place = last_place();
  if (!place) {
    chain_.buildable = false;
    chain_.not_buildable_because =
        "neither end turns, and no joint of the chain can be made up without turning one of its sides";
    return;
  }
  place_ = *place;
  const std::size_t count = chain_.joints.size();
  // Joints before `from_until` are made from the first port on, those from `to_until` on from the last port back.
  const std::size_t from_until = place_.split_part ? *place_.split_part + 1 : place_.joint;
  const std::size_t to_until = place_.split_part ? *place_.split_part + 1 : place_.joint + 1;
  add_plugs();
  for (std::size_t joint = 0; joint < from_until; ++joint) add_joint(joint, true);
  for (std::size_t joint = count; joint-- > to_until;) add_joint(joint, false);
  for (std::size_t row = 0; row < chain_.parts.size(); ++row)
    if (catalog_.part(chain_.parts[row].part).closing && place_.split_part != row) add_union_nut(row, false);
  if (place_.split_part)
    add_union_nut(*place_.split_part, true);
  else
    add_last_joint(place_.joint);
}

void BuildOrder::add_plugs() {
  for (std::size_t row = 0; row < chain_.parts.size(); ++row) {
    const ChainPart& link = chain_.parts[row];
    const Part& host = catalog_.part(link.part);
    std::size_t next = 0;
    for (std::size_t port = 0; port < host.ports.size() && next < link.plugs.size(); ++port) {
      if (port == link.enter || port == link.leave) continue;
      const Part& plug = catalog_.part(link.plugs[next++]);
      const MatingRule* joint = catalog_.mating_rule(host.ports[port].type, plug.ports[0].type);
      const bool goes_in = catalog_.port_type(plug.ports[0].type).end == End::male;
      chain_.steps.push_back({fmt::format("At the bench, screw the {} {} the spare {} port of {}, held in the vise. {}",
                                          plug.name, goes_in ? "into" : "onto", catalog_.written(host.ports[port].type),
                                          name(row + 1), sealing(*joint)),
                              kNoJoint, false});
    }
  }
}

// Made from the first port on, the further body is added and turns; from the last port back, the nearer one.
void BuildOrder::add_joint(std::size_t joint, bool from_side) {
  if (rule(joint).turning == Turning::neither) return add_still_joint(joint, false);
  add_screwed_joint(joint, from_side ? joint + 1 : joint, false);
}

void BuildOrder::add_screwed_joint(std::size_t joint, std::size_t turned, bool last) {
  const std::size_t held = turned == joint ? joint + 1 : joint;
  const PortTypeId port = turned == joint ? chain_.joints[joint].a : chain_.joints[joint].b;
  const char* way = catalog_.port_type(port).end == End::male ? "into" : "onto";
  chain_.steps.push_back({fmt::format("{}crew {} {} {}: turn {} {}; {}.{} {}", last ? "Last, s" : "S",
                                      name_at(turned, joint), way, name_at(held, joint), short_name(turned),
                                      turns_text(joint, turned), hold(held), facing(turned), sealing(rule(joint))),
                          joint, last});
}

void BuildOrder::add_still_joint(std::size_t joint, bool last) {
  const std::size_t to_end = chain_.parts.size() + 1;
  std::string play;
  if (last && (slides(to_end) || slides(0)))
    play = fmt::format("; {} moves up to it", short_name(slides(to_end) ? to_end : 0));
  const bool nut = catalog_.kind(catalog_.port_type(chain_.joints[joint].a).kind).threaded;
  chain_.steps.push_back(
      {fmt::format("{}ring {} and {} together{}{}. {}", last ? "Last, b" : "B", name_at(joint, joint),
                   name_at(joint + 1, joint), play, nut ? "; turn the swivel nut only" : "; neither side turns",
                   sealing(rule(joint))),
       joint, last});
}

// Only an end can turn here: whatever lies between is part of one side or of the other already.
void BuildOrder::add_last_joint(std::size_t joint) {
  const bool to_turns = is_end(joint + 1) && turns(joint + 1);
  if (rule(joint).turning == Turning::neither || !(to_turns || turns(0))) {
    add_still_joint(joint, true);
    if (rule(joint).lengthwise) warn_of_no_play("slides together by", joint, "");
    return;
  }
  add_screwed_joint(joint, to_turns ? joint + 1 : joint, true);
  warn_of_no_play("draws in", joint, " while it is screwed up");
}

void BuildOrder::add_union_nut(std::size_t row, bool last) {
  const std::string who = name(row + 1);
  const std::string text =
      last ? fmt::format(
                 "Last, close {}: bring its halves together face to face, seat clean and without sealant; hold the "
                 "half beside the nut with one wrench and tighten the nut with another; nothing else turns.",
                 who)
           : fmt::format("Tighten the nut of {}, which is left together; hold the body with a second wrench.", who);
  chain_.steps.push_back({text, chain_.joints.size(), last});
}

void BuildOrder::warn_of_no_play(const char* moves, std::size_t joint, const char* when) {
  if (slides(0) || slides(chain_.parts.size() + 1)) return;
  chain_.cautions.push_back(fmt::format(
      "neither end moves along its axis: the last joint {} {:.2f} in{}, so the run must be sprung by that much", moves,
      in_inches(chain_.joints[joint].make_up), when));
}

}  // namespace

void add_build_order(const Catalog& catalog, const ChainRequest& request, Chain& chain) {
  BuildOrder(catalog, request, chain).write();
}

}  // namespace riserun::chain
