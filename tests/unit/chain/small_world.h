// A catalog drawn as a few lines of text, one part a line:
//
//   reducing coupling: 1 A female, 3/4 A female, 200c, brass
//
// Kinds: A and B are taper threads that look alike; G is a hose thread with a washer; H is a barb (male) and a hose
// (female) with a clamp, which closes; C is a copper tube (male) and a cup (female) with solder, which nothing turns
// for. Words after the ports: a price, a material (iron, steel, which is the same metal, brass, stainless, nylon, pvc),
// and any of device, union, bushing, valve (a device that can shut), flexible, special, one way, dielectric, bend,
// `rating N` (psi; 300 when left out), `bore N`, `reach N` (mm).
#pragma once

#include "catalog/catalog.h"
#include "chain/finder.h"
#include "unit/report/words/said.h"

#include <string>
#include <vector>

namespace riserun::chain::testing {

using report::said;

class SmallWorld {
 public:
  explicit SmallWorld(const std::string& text);

  const catalog::Catalog& catalog() const { return catalog_; }
  PartId part(const std::string& name) const;
  PortEnd end(const std::string& port, Freedom freedom = Freedom::loose) const;
  ChainRequest ask(const std::string& from, const std::string& to, Order order = Order::parts) const;
  Need need(const std::string& words, const std::vector<std::string>& names) const;
  Answer find(const ChainRequest& request) const { return find_chain(catalog_, request); }
  /// Names of the parts, plugs in brackets behind their part; "straight together"; or "none: " and the reason.
  std::string chain(const ChainRequest& request) const;

 private:
  catalog::Catalog catalog_;
};

}  // namespace riserun::chain::testing
