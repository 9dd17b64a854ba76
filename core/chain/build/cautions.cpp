#include "chain/build/cautions.h"

#include "chain/part/move.h"
#include "chain/part/wetted_area.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

namespace riserun::chain {

using catalog::End;
using catalog::GalvanicVerdict;
using catalog::Part;

namespace {

/// One side of a joint: what it is called and what it is made of, where that is known.
struct Side {
  std::string name;
  std::optional<MaterialId> material;
  bool bushing = false;
  Area wetted{};  // zero: not known
};

class Cautions {
 public:
  explicit Cautions(const Catalog& catalog) : catalog_(catalog) {}

  void look_at(const ChainRequest& request, const Chain& chain) {
    request_ = &request;
    chain_ = &chain;
    look_at_ends();
    for (std::size_t joint = 0; joint < chain.joints.size(); ++joint) look_at_joint(joint);
    for (const ChainPart& link : chain.parts) {
      look_at_part(catalog_.part(link.part));
      for (const PartId plug : link.plugs) look_at_part(catalog_.part(plug));
    }
    look_at_bushings();
    look_at_bore();
  }

  std::vector<std::string> all() const {
    std::vector<std::string> texts = texts_;
    for (const Note& note : notes_) texts.push_back(fmt::format("{} {}", note.what, fmt::join(note.whom, ", ")));
    texts.insert(texts.end(), last_texts_.begin(), last_texts_.end());
    return texts;
  }

 private:
  Side side(std::size_t body, bool leaving) const;
  void look_at_ends();
  void look_at_air_on(const PortEnd& end, const std::string& name);
  void look_at_joint(std::size_t joint);
  void look_at_metals(const Side& a, const Side& b);
  void look_at_part(const Part& part);
  void look_at_bushings();
  void look_at_bore();
  static void add_once(std::vector<std::string>& texts, std::string text) {
    if (std::find(texts.begin(), texts.end(), text) == texts.end()) texts.push_back(std::move(text));
  }
  void say(std::string text) { add_once(texts_, std::move(text)); }

  /// Says the same of another part or joint, in one sentence with the others.
  void note(const std::string& what, const std::string& whom);

  struct Note {
    std::string what;
    std::vector<std::string> whom;
  };

  const Catalog& catalog_;
  const ChainRequest* request_ = nullptr;  // of the chain that is looked at
  const Chain* chain_ = nullptr;
  std::vector<std::string> texts_;
  std::vector<Note> notes_;
  std::vector<std::string> last_texts_;
};

Side Cautions::side(std::size_t body, bool leaving) const {
  const auto wall = [](const PortEnd& end) {
    return end.on_vessel ? square_metres(std::numeric_limits<double>::infinity()) : Area{};
  };
  if (body == 0) return {name_of_first(request_->from), request_->from.material, false, wall(request_->from)};
  if (body == chain_->parts.size() + 1)
    return {name_of_last(request_->to), request_->to.material, false, wall(request_->to)};
  const ChainPart& link = chain_->parts[body - 1];
  const Part& part = catalog_.part(link.part);
  Side made{"the " + part.name, part.material_at(leaving ? link.leave : link.enter), is_bushing(catalog_, part),
            wetted_area(catalog_, part, link.enter, link.leave)};
  if (part.dielectric && !part.far_material) made.material.reset();
  return made;
}

void Cautions::look_at_ends() {
  const PortTypeId from = request_->from.type;
  const PortTypeId to = request_->to.type;
  if (const auto* trap = catalog_.look_alike(catalog_.port_type(from), catalog_.port_type(to)))
    say(fmt::format("never screw {} and {} straight together: {}", catalog_.written(from), catalog_.written(to),
                    trap->reason));
  look_at_air_on(request_->from, name_of_first(request_->from));
  look_at_air_on(request_->to, name_of_last(request_->to));
}

// The port itself may be what bursts: no metal part has such an end, and some are of plastics that air shatters (OSHA
// Hazard Information Bulletin of 13 December 1990).
void Cautions::look_at_air_on(const PortEnd& end, const std::string& name) {
  if (request_->service != Service::air) return;
  std::vector<std::string> bursting;
  const auto look_at = [&](MaterialId id) {
    const catalog::Material& material = catalog_.material(id);
    if (!material.compressed_air) add_once(bursting, material.name);
    return material.metal;
  };
  if (end.material) {
    look_at(*end.material);
  } else {
    for (const catalog::PortUse& use : catalog_.uses(end.type))
      if (look_at(catalog_.part(use.part).material_at(use.port))) return;
  }
  if (bursting.empty()) return;
  say(fmt::format(
      "if {} ({}) is {}, compressed air can burst it and throw splinters: keep the air off it, or change it "
      "for metal",
      name, catalog_.written(end.type), fmt::join(bursting, " or ")));
}

void Cautions::look_at_joint(std::size_t joint) {
  const Side a = side(joint, true);
  const Side b = side(joint + 1, false);
  if (a.bushing && b.bushing) say("a bushing sits in another bushing: a reducing coupling is the sounder way");
  if (!a.material || !b.material) return;
  look_at_metals(a, b);
  const catalog::PortType& first = catalog_.port_type(chain_->joints[joint].a);
  const catalog::PortType& second = catalog_.port_type(chain_->joints[joint].b);
  if (!catalog_.kind(first.kind).tapered && !catalog_.kind(second.kind).tapered) return;
  const Side& female = first.end == End::female ? a : b;
  const Side& male = first.end == End::female ? b : a;
  if (!catalog_.material(*female.material).metal && catalog_.material(*male.material).metal)
    say(fmt::format("{} is plastic and takes a metal taper thread from {}: it may split; start by hand, turn little",
                    female.name, male.name));
}

// Which of the two corrodes, and what the wetted areas do to it: ", and fast, for it is small beside the brass".
std::string area_words(const Side& anode, const Side& cathode, const std::string& noble) {
  switch (effect_of_areas(anode.wetted, cathode.wetted)) {
    case AreaEffect::worse:
      return fmt::format(", and fast, for it is small beside the {}", noble);
    case AreaEffect::milder:
      return fmt::format(", but slowly, for it is large beside the {}", noble);
    case AreaEffect::none:
      break;
  }
  return "";
}

void Cautions::look_at_metals(const Side& a, const Side& b) {
  const catalog::Material& first = catalog_.material(*a.material);
  const catalog::Material& second = catalog_.material(*b.material);
  const GalvanicVerdict verdict = catalog_.galvanic(*a.material, *b.material);
  if (verdict != GalvanicVerdict::fine) {
    const bool first_corrodes = first.anodic_index_volts > second.anodic_index_volts;
    const catalog::Material& noble = first_corrodes ? second : first;
    const std::string& eaten = first_corrodes ? first.name : second.name;
    const std::string areas = area_words(first_corrodes ? a : b, first_corrodes ? b : a, noble.name);
    if (verdict == GalvanicVerdict::keep_apart)
      say(
          fmt::format("{} ({}) and {} ({}) should be kept apart: in water the {} corrodes{}; put a dielectric joint or "
                      "plastic between them",
                      a.name, first.name, b.name, second.name, eaten, areas));
    else
      note(fmt::format("{} against {}: the {} corrodes{}; watch it where", eaten, noble.name, eaten, areas),
           fmt::format("{} meets {}", a.name, b.name));
  }
  const auto stainless = [](const catalog::Material& m) { return m.name.find("stainless") != std::string::npos; };
  if (stainless(first) && stainless(second))
    say("stainless threads gall on stainless: use an anti-gall sealing paste and turn slowly");
}

void Cautions::look_at_part(const Part& part) {
  const std::string name = "the " + part.name;
  if (part.one_way && request_->service == Service::air)
    note(fmt::format("air passes one way only, towards {}, through", name_of_last(request_->to)), name);
  else if (part.one_way)
    note(fmt::format("water passes one way only, towards {}, so it does not drain back, through",
                     name_of_last(request_->to)),
         name);
  const catalog::Material& material = catalog_.material(part.material);
  const auto is_threaded = [&](const catalog::Port& port) {
    return catalog_.kind(catalog_.port_type(port.type).kind).threaded;
  };
  if (!material.compressed_air)
    note("can burst under compressed air, so keep them out of an air test:", name);
  else if (!part.air)
    note("not made for compressed air, so keep them out of an air test:", name);
  if (!material.metal && std::any_of(part.ports.begin(), part.ports.end(), is_threaded))
    note("plastic, rated at room temperature, so no heat and few turns of the wrench:", name);
  if (part.straight_tapped)
    note("may be tapped straight, so that it seals on fewer threads and is no weld bung:", name);
  if (is_close_nipple(part))
    note("no bare pipe to grip, so use a nipple chuck, or a longer nipple where there is room:", name);
}

void Cautions::note(const std::string& what, const std::string& whom) {
  const auto known = std::find_if(notes_.begin(), notes_.end(), [&](const Note& note) { return note.what == what; });
  if (known == notes_.end()) {
    notes_.push_back({what, {whom}});
  } else if (std::find(known->whom.begin(), known->whom.end(), whom) == known->whom.end()) {
    known->whom.push_back(whom);
  }
}

void Cautions::look_at_bushings() {
  std::int64_t count = 0;
  for (const ChainPart& link : chain_->parts) count += is_bushing(catalog_, catalog_.part(link.part)) ? 1 : 0;
  if (count == 1)
    add_once(last_texts_,
             "a bushing leaves a ledge that holds water, and its wall is thin between near sizes: a reducing coupling "
             "is kinder where there is room");
  if (count > 1) add_once(last_texts_, fmt::format("{} bushings in one chain: more than one is poor practice", count));
}

// What a fitter would not expect of "the best": a run that is much tighter inside than either port that it joins.
void Cautions::look_at_bore() {
  constexpr double kTight = 0.7;  // of the narrower port: under half of its area
  if (chain_->parts.empty()) return;
  const auto bore = [&](const ChainPart& link, std::size_t port) {
    return port_bore(catalog_, catalog_.part(link.part), port);
  };
  // The port's own bore where its kind fixes one, else that of the part in it.
  const auto port = [&](const PortEnd& end, const ChainPart& next, std::size_t at) {
    const catalog::JointSize* size = catalog_.joint_size(catalog_.port_type(end.type));
    return size && size->bore > Length{} ? size->bore : bore(next, at);
  };
  const ChainPart& last = chain_->parts.back();
  const Length narrower_port = std::min(port(request_->from, chain_->parts.front(), chain_->parts.front().enter),
                                        port(request_->to, last, last.leave));
  const ChainPart* tightest = nullptr;
  Length least = narrower_port * kTight;
  for (const ChainPart& link : chain_->parts) {
    const Length inside = std::min(bore(link, link.enter), bore(link, link.leave));
    if (!(inside > Length{}) || inside >= least) continue;
    least = inside;
    tightest = &link;
  }
  if (tightest != nullptr)
    add_once(last_texts_,
             fmt::format("much narrower inside than both ports: the {}, {:.2g} in; ask for a smallest bore to avoid it",
                         catalog_.part(tightest->part).name, in_inches(least)));
}

}  // namespace

void add_cautions(const Catalog& catalog, const ChainRequest& request, Chain& chain) {
  for (std::string& text : cautions_of(catalog, {{request, chain}})) chain.cautions.push_back(std::move(text));
}

std::vector<std::string> cautions_of(const Catalog& catalog, const std::vector<Run>& runs) {
  Cautions cautions(catalog);
  for (const Run& run : runs) cautions.look_at(run.request, run.chain);
  return cautions.all();
}

}  // namespace riserun::chain
