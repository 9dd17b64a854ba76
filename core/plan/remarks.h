// What a plan says beside its figures: what was assumed, what must be watched, what is worth knowing, and why something
// cannot be done. Each stage of the plan adds its own, in the order in which they are printed.
#pragma once

#include <string>
#include <vector>

namespace riserun::plan {

/// What stands in for something that the job leaves out.
struct Assumption {
  std::string what;   // "water temperature"
  std::string value;  // "68 degF (20 degC)"
  std::string why;    // "room temperature", with its source: "common practice", "ASME B36.10M" ...
  std::string key;    // where the job would say it, "riser.material", "connections[2].gap"; empty: nowhere
};

/// The part of the plan that a caution, a note or a refusal belongs to and is printed with.
/// `whole_job` stands before any figure; `care` is for the shop's daily use and stands last.
enum class Topic { whole_job, connections, riser, levels, transfer, walls, relief, leak_test, list, care };

struct Caution {
  Topic where = Topic::whole_job;
  std::string text;       // short and plain
  std::string source;     // a standard, a report, or "common practice"
  bool standing = false;  // goes with every plan, whatever is in it
};

struct Note {
  Topic where = Topic::whole_job;
  std::string text;
};

/// Why the job cannot go ahead as asked.
struct Refusal {
  Topic where = Topic::whole_job;
  std::string reason;   // one sentence
  std::string asked;    // the number that is asked for, with its unit; empty where there is none
  std::string allowed;  // the number that may be; beside it
  std::string mend;     // the smallest change that lifts it
};

struct Remarks {
  std::vector<Assumption> assumptions;
  std::vector<Caution> cautions;
  std::vector<Note> notes;
  std::vector<Refusal> refusals;

  void assume(std::string what, std::string value, std::string why, std::string key = "");
  void caution(Topic where, std::string text, std::string source);
  void standing_caution(Topic where, std::string text, std::string source);
  void note(Topic where, std::string text);
  void refuse(Refusal refusal);
};

}  // namespace riserun::plan
