// What a person can do to the job, as values. Each act is one step of undo and has a name there. Connections and ports
// are told by their names and parts by their ids, as these outlive a change of the job; row numbers do not.
#pragma once

#include "gui/model/text/job_texts.h"
#include "plan/remarks.h"
#include "quantity/write.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace riserun::gui {

/// Writes a value as typed: `5-1/2 in`, `140 mm`, `price`, `fixed`, `1 FNPT`. Missing keys on the way are made. An
/// empty text takes the key out, and what is assumed for it stands again.
struct SetValue {
  JobPath at;
  std::string written;
};

/// Takes out a key of a map or a row of a list, with all that is in it.
struct RemoveValue {
  JobPath at;
};

/// The whole text, typed by hand. The only act after which the job may not load: then its mistakes are shown and the
/// last good plan stays.
struct SetText {
  std::string text;
};

/// Never use this part in that connection: `avoid`.
struct NeverUse {
  std::string connection;
  std::string part;  // catalog id, here and below
};

/// Use this part in that connection: `need`.
struct UsePart {
  std::string connection;
  std::string part;
};

/// Use another part in place of one of the run, which is taken then. Refused where no run that keeps the rules has it.
struct SwapPart {
  std::string connection;
  std::string part;   // that is in the chain
  std::string other;  // that comes in its place
};

struct TakenRow {
  std::string part;
  int enter = 0;  // ports that it is gone through by, counted from 1; 0: of a plug, or whichever is best
  int leave = 0;
};

/// Plan this run and no other: `take`. Refused, with the reason, where the job's rules do not let it in.
struct TakeRun {
  std::string connection;
  std::vector<TakenRow> run;  // first to last, the plugs of a part behind it
};

/// Plan the best run again.
struct BackToBest {
  std::string connection;
};

/// The shop has that many of it: `bin`. 0 takes it out.
struct CountInBin {
  std::string part;
  int count = 0;
};

enum class WishKind { need, avoid };

/// One more thing that a connection must hold or must not hold: `ball valve`, `black iron`.
struct AddWish {
  std::string connection;
  WishKind kind = WishKind::need;
  std::string words;
};

/// Drops such a wish; `words` as they stand in the job.
struct DropWish {
  std::string connection;
  WishKind kind = WishKind::need;
  std::string words;
};

/// A new connection between two ports, or from a port to a device.
struct Connect {
  std::string from;
  std::string to;       // name of a port; empty: `ends_in`
  std::string ends_in;  // words of a device: `5 psi gauge`
  std::string name;     // empty: `from to to`
};

struct Disconnect {
  std::string connection;
};

/// Takes out what the job asks for in a run: the device that it, or a branch of it, ends in, or a part that it needs.
/// What it stood on stays.
struct TakeOut {
  std::string connection;
  std::string part;
  std::optional<std::size_t> end{};  // row of the branch that ends in the device, 0 of a lone run; none: a needed part
};

enum class PortOwner { reservoir, table, air };

/// A new port of a vessel or of the air supply, in trade notation.
struct AddPort {
  PortOwner owner = PortOwner::reservoir;
  std::string name;
  std::string notation;  // `1 FNPT`
};

/// A mend that a finding names, all its changes as one act.
struct FollowMend {
  plan::Changes changes;
  quantity::UnitSystem units = quantity::UnitSystem::inch;  // in which its figures are written
};

/// The first mend of each finding, one after the other, until none helps any more; all of it as one act.
struct MendAll {
  quantity::UnitSystem units = quantity::UnitSystem::inch;  // as of FollowMend
};

using Act = std::variant<SetValue, RemoveValue, SetText, NeverUse, UsePart, SwapPart, TakeRun, BackToBest, CountInBin,
                         AddWish, DropWish, Connect, Disconnect, TakeOut, AddPort, FollowMend, MendAll>;

}  // namespace riserun::gui
