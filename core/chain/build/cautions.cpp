#include "chain/build/cautions.h"

#include "chain/ask/needs.h"
#include "chain/part/metals.h"
#include "chain/part/move.h"
#include "chain/part/wetted_area.h"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <utility>

namespace riserun::chain {

using catalog::End;
using catalog::GalvanicVerdict;
using catalog::Part;
using quantity::Fact;
using quantity::fact;
using quantity::Facts;

namespace {

/// One side of a joint, an end or a part: what it is made of, where that is known.
struct Side {
  const PortEnd* end = nullptr;
  const Part* part = nullptr;
  std::optional<MaterialId> material;
  bool bushing = false;
  Area wetted{};  // zero: not known

  Fact name() const { return part == nullptr ? fact("end", end->called) : fact("the_part", part->name); }
};

class Cautions {
 public:
  Cautions(const Catalog& catalog, Service service) : catalog_(catalog), service_(service) {}

  void look_at(const Chain& way) {
    way_ = &way;
    look_at_ends();
    for (std::size_t joint = 0; joint < way.joints.size(); ++joint) look_at_joint(joint);
    for (const RunPart& link : way.parts) {
      look_at_part(catalog_.part(link.part));
      for (const Follower& plug : link.plugs()) look_at_part(catalog_.part(plug.plug));
    }
    look_at_bushings();
    look_at_bore();
  }

  /// Moves all that was said to the end of these.
  void move_to(Facts& facts) {
    for (Fact& fact : said_) facts.push_back(std::move(fact));
    for (Note& note : notes_) {
      note.what.values.emplace_back(std::move(note.whom));
      facts.push_back(std::move(note.what));
    }
    if (most_bushings_ == 1) facts.push_back(fact("bushing_leaves_a_ledge"));
    if (most_bushings_ > 1) facts.push_back(fact("bushings_in_one_chain", most_bushings_));
    for (Fact& fact : said_last_) facts.push_back(std::move(fact));
  }

 private:
  Side side_of_end(const PortEnd& end) const;
  Side side(std::size_t body, bool leaving) const;
  void look_at_ends();
  void look_at_air_on(const PortEnd& end);
  void look_at_joint(std::size_t joint);
  void look_at_metals(const Side& a, const Side& b);
  void look_at_part(const Part& part);
  void look_at_bushings();
  void look_at_bore();
  static void add_once(Facts& facts, Fact fact) {
    if (std::find(facts.begin(), facts.end(), fact) == facts.end()) facts.push_back(std::move(fact));
  }
  void say(Fact fact) { add_once(said_, std::move(fact)); }
  const PortEnd& to() const { return way_->ends.front().port; }

  /// Says the same of another part or joint, in one sentence with the others.
  void note(Fact what, Fact whom);

  struct Note {
    Fact what;
    Facts whom;
  };

  const Catalog& catalog_;
  Service service_;
  const Chain* way_ = nullptr;  // that is looked at
  Facts said_;
  std::vector<Note> notes_;
  std::ptrdiff_t most_bushings_ = 0;  // on one way
  Facts said_last_;
};

Side Cautions::side_of_end(const PortEnd& end) const {
  return {&end, nullptr, end.material, false,
          end.on_vessel ? square_metres(std::numeric_limits<double>::infinity()) : Area{}};
}

Side Cautions::side(std::size_t body, bool leaving) const {
  if (body == 0) return side_of_end(way_->base);
  if (body == way_->parts.size() + 1) return side_of_end(to());
  const RunPart& link = way_->parts[body - 1];
  const Part& part = catalog_.part(link.part);
  Side made{nullptr, &part, part.material_at(leaving ? link.leave() : link.enter), is_bushing(catalog_, part),
            wetted_area(catalog_, part, link.enter, link.leave())};
  if (part.dielectric && !part.far_material) made.material.reset();
  return made;
}

void Cautions::look_at_ends() {
  const PortTypeId from = way_->base.type;
  if (const auto* trap = catalog_.look_alike(catalog_.port_type(from), catalog_.port_type(to().type)))
    say(fact("never_screw_together", catalog_.written(from), catalog_.written(to().type), trap->reason));
  look_at_air_on(way_->base);
  look_at_air_on(to());
}

// The port itself may be what bursts: no metal part has such an end, and some are of plastics that air shatters (OSHA
// Hazard Information Bulletin of 13 December 1990).
void Cautions::look_at_air_on(const PortEnd& end) {
  if (service_ != Service::air) return;
  std::vector<std::string> bursting;
  const auto look_at = [&](MaterialId id) {
    const catalog::Material& material = catalog_.material(id);
    const bool known = std::find(bursting.begin(), bursting.end(), material.name) != bursting.end();
    if (!material.compressed_air && !known) bursting.push_back(material.name);
    return material.metal;
  };
  if (end.material) {
    look_at(*end.material);
  } else {
    for (const catalog::PortUse& use : catalog_.uses(end.type))
      if (look_at(catalog_.part(use.part).material_at(use.port))) return;
  }
  if (!bursting.empty()) say(fact("air_can_burst_the_port", end.called, catalog_.written(end.type), bursting));
}

void Cautions::look_at_joint(std::size_t joint) {
  const Side a = side(joint, true);
  const Side b = side(joint + 1, false);
  if (a.bushing && b.bushing) say(fact("bushing_in_bushing"));
  if (!a.material || !b.material) return;
  look_at_metals(a, b);
  const catalog::PortType& first = catalog_.port_type(way_->joints[joint].a);
  const catalog::PortType& second = catalog_.port_type(way_->joints[joint].b);
  if (!catalog_.kind(first.kind).tapered && !catalog_.kind(second.kind).tapered) return;
  const Side& female = first.end == End::female ? a : b;
  const Side& male = first.end == End::female ? b : a;
  if (!catalog_.material(*female.material).metal && catalog_.material(*male.material).metal)
    say(fact("plastic_takes_metal_taper", female.name(), male.name()));
}

// What the wetted areas do to the one that corrodes: ", and fast, for it is small beside the brass".
Facts effect_beside(const Side& anode, const Side& cathode, const std::string& noble) {
  switch (effect_of_areas(anode.wetted, cathode.wetted)) {
    case AreaEffect::worse:
      return {fact("fast_for_it_is_small", noble)};
    case AreaEffect::milder:
      return {fact("slowly_for_it_is_large", noble)};
    case AreaEffect::none:
      break;
  }
  return {};
}

void Cautions::look_at_metals(const Side& a, const Side& b) {
  const catalog::Material& first = catalog_.material(*a.material);
  const catalog::Material& second = catalog_.material(*b.material);
  const GalvanicVerdict verdict = verdict_in(catalog_, service_ == Service::air, *a.material, *b.material);
  if (verdict != GalvanicVerdict::fine) {
    const bool first_corrodes = first.anodic_index_volts > second.anodic_index_volts;
    const catalog::Material& noble = first_corrodes ? second : first;
    const std::string& eaten = first_corrodes ? first.name : second.name;
    const Facts areas = effect_beside(first_corrodes ? a : b, first_corrodes ? b : a, noble.name);
    if (verdict == GalvanicVerdict::keep_apart)
      say(fact(service_ == Service::air ? "keep_metals_apart_in_air" : "keep_metals_apart", a.name(), first.name,
               b.name(), second.name, eaten, areas));
    else
      note(fact("watch_metals", eaten, noble.name, areas), fact("meets", a.name(), b.name()));
  }
  if (first.galls && second.galls) say(fact("threads_gall", first.name, second.name));
}

void Cautions::look_at_part(const Part& part) {
  const auto note_part = [&](Fact what) { note(std::move(what), fact("the_part", part.name)); };
  if (part.one_way)
    note_part(fact(service_ == Service::air ? "air_passes_one_way" : "water_passes_one_way", to().called));
  if (catalog_.family(part.family).check != catalog::CheckKind::none && part.opens_at)
    note_part(fact("check_opens_at", *part.opens_at));
  if (catalog_.family(part.family).check == catalog::CheckKind::swing) note_part(fact("flap_closes_by_weight"));
  const catalog::Material& material = catalog_.material(part.material);
  const auto is_threaded = [&](const catalog::Port& port) {
    return catalog_.kind(catalog_.port_type(port.type).kind).threaded;
  };
  if (!material.compressed_air)
    note_part(fact("bursts_under_air"));
  else if (!part.air)
    note_part(fact("not_made_for_air"));
  if (!material.metal && std::any_of(part.ports.begin(), part.ports.end(), is_threaded))
    note_part(fact("plastic_threads"));
  if (part.straight_tapped) note_part(fact("may_be_tapped_straight"));
  if (is_close_nipple(part)) note_part(fact("no_pipe_to_grip"));
}

void Cautions::note(Fact what, Fact whom) {
  const auto known = std::find_if(notes_.begin(), notes_.end(), [&](const Note& note) { return note.what == what; });
  Facts& all = known == notes_.end() ? notes_.emplace_back(Note{std::move(what), {}}).whom : known->whom;
  add_once(all, std::move(whom));
}

void Cautions::look_at_bushings() {
  const auto count = std::count_if(way_->parts.begin(), way_->parts.end(),
                                   [&](const RunPart& link) { return is_bushing(catalog_, catalog_.part(link.part)); });
  most_bushings_ = std::max(most_bushings_, count);
}

// What a fitter would not expect of "the best": a run that is much tighter inside than either port that it joins.
void Cautions::look_at_bore() {
  constexpr double kTight = 0.7;  // of the narrower port: under half of its area
  if (way_->parts.empty()) return;
  const auto bore = [&](const RunPart& link, std::size_t port) {
    return port_bore(catalog_, catalog_.part(link.part), port);
  };
  // The port's own bore where its kind fixes one, else that of the part in it.
  const auto port = [&](const PortEnd& end, const RunPart& next, std::size_t at) {
    const catalog::JointSize* size = catalog_.joint_size(catalog_.port_type(end.type));
    return size && size->bore > Length{} ? size->bore : bore(next, at);
  };
  const RunPart& first = way_->parts.front();
  const RunPart& last = way_->parts.back();
  Length least = std::min(port(way_->base, first, first.enter), port(to(), last, last.leave())) * kTight;
  const RunPart* tightest = nullptr;
  for (const RunPart& link : way_->parts) {
    const Length inside = std::min(bore(link, link.enter), bore(link, link.leave()));
    if (!(inside > Length{}) || inside >= least) continue;
    least = inside;
    tightest = &link;
  }
  if (tightest != nullptr)
    add_once(said_last_, fact("much_narrower_than_the_ports", catalog_.part(tightest->part).name, least));
}

/// The narrowest size on the way to its end, of the end's own kind of joint, where it is below the end's.
std::optional<catalog::SizeId> narrows_to(const Catalog& catalog, const Chain& way) {
  const catalog::PortType& end = catalog.port_type(way.ends.front().port.type);
  const catalog::JointSize* narrowest = catalog.joint_size(end);
  if (!narrowest) return std::nullopt;
  for (const RunJoint& joint : way.joints) {
    const catalog::PortType& port = catalog.port_type(joint.a);
    const catalog::JointSize* size = port.kind == end.kind ? catalog.joint_size(port) : nullptr;
    if (size && size->outside_diameter < narrowest->outside_diameter) narrowest = size;
  }
  if (narrowest->size == end.size) return std::nullopt;
  return narrowest->size;
}

}  // namespace

void add_cautions(const Catalog& catalog, Service service, Run& run) {
  Cautions cautions(catalog, service);
  if (run.ends.size() == 1 && !run.ends.front().feeds) {
    cautions.look_at(run);
  } else {
    for (std::size_t end = 0; end < run.ends.size(); ++end)
      cautions.look_at(run.ends[end].feeds ? turned_round(way_to(run, end)) : way_to(run, end));
  }
  cautions.move_to(run.cautions);
}

void add_caution_of_narrow_ways(const Catalog& catalog, Run& run) {
  Facts ways;
  for (std::size_t end = 0; end < run.ends.size(); ++end) {
    const PortEnd& port = run.ends[end].port;
    if (const auto size = narrows_to(catalog, way_to(run, end)))
      ways.push_back(fact("way_to_end", catalog.size_name(*size), port.called, catalog.written(port.type)));
  }
  if (!ways.empty()) run.cautions.push_back(fact("way_narrows", ways));
}

namespace {

std::vector<std::size_t> ends_beyond(const Run& run, std::size_t row) {
  std::vector<std::size_t> ends;
  for (const Follower& port : run.parts[row].ports) {
    if (port.what == Follower::What::end) ends.push_back(port.row);
    if (port.what != Follower::What::part) continue;
    const std::vector<std::size_t> further = ends_beyond(run, port.row);
    ends.insert(ends.end(), further.begin(), further.end());
  }
  return ends;
}

bool is_asked_for(const std::vector<Need>& needs, PartId part) {
  return std::any_of(needs.begin(), needs.end(), [&](const Need& need) {
    return std::find(need.parts.begin(), need.parts.end(), part) != need.parts.end();
  });
}

}  // namespace

void add_caution_of_targets_not_behind(const Catalog& catalog, const AssemblyRequest& request, Run& run) {
  for (std::size_t row = 0; row < run.parts.size(); ++row) {
    const PartId part = run.parts[row].part;
    const bool is_a_branchs = std::any_of(request.branches.begin(), request.branches.end(),
                                          [&](const BranchRules& branch) { return is_asked_for(branch.needs, part); });
    if (is_a_branchs || !acts_on_what_is_beyond(catalog, part) || !is_asked_for(request.rules.needs, part)) continue;
    const std::vector<std::size_t> beyond = ends_beyond(run, row);
    Facts without;
    for (std::size_t end = 0; end < run.ends.size(); ++end)
      if (std::find(beyond.begin(), beyond.end(), end) == beyond.end())
        without.push_back(fact("end", run.ends[end].port.called));
    if (!without.empty())
      run.cautions.push_back(fact("targets_not_behind", catalog.part(part).name, std::move(without)));
  }
}

}  // namespace riserun::chain
