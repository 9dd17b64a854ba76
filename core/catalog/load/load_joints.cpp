// catalog/joints.yaml: seals and kinds of joint.
#include "catalog/load/loading.h"
#include "quantity/read.h"

#include <algorithm>
#include <array>
#include <cctype>

namespace riserun::catalog {

namespace {

enum class Thread { taper, straight, none };

std::string lower_case(std::string text) {
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

quantity::Reading<Length> read_tape_length(std::string_view text) {
  return quantity::within(quantity::read_length(text), quantity::Range<Length>{millimetres(1.0), metres(1000.0)}, text);
}

quantity::Reading<Length> read_bare_length(std::string_view text) {
  return quantity::within(quantity::read_length(text), quantity::Range<Length>{millimetres(1.0), metres(1.0)}, text);
}

/// `{per joint: 0.25 m, per roll: 13.2 m}`
void read_tape(Loading& loading, const Value& value, Seal& seal) {
  if (!value.exists()) return;
  Fields fields(value, {"per joint", "per roll"}, loading.problems);
  if (!fields.valid()) return;
  seal.tape_per_joint = fields.need_with("per joint", read_tape_length).value_or(Length{});
  seal.tape_per_roll = fields.need_with("per roll", read_tape_length).value_or(Length{});
}

void load_seal(Loading& loading, const Value& value) {
  Fields fields(
      value,
      {"name", "instruction", "consumable", "clamped", "washer", "heat", "at the bench", "bare", "tape", "source"},
      loading.problems);
  if (!fields.valid()) return;
  Seal seal{fields.need_text("name"), fields.need_text("instruction"), fields.text_or("consumable", ""),
            fields.need_text("source")};
  seal.clamped = fields.flag_or("clamped", false);
  seal.on_washer = fields.flag_or("washer", false);
  seal.hot = fields.flag_or("heat", false);
  seal.at_bench = fields.flag_or("at the bench", false);
  if (fields.find("bare").exists()) seal.bare = fields.need_with("bare", read_bare_length).value_or(Length{});
  read_tape(loading, fields.find("tape"), seal);
  if (loading.so_far().seal(seal.name))
    loading.problems.add(value["name"], value["name"].path() + ": the seal '" + seal.name + "' is already there");
  loading.builder.add(std::move(seal));
}

/// A size column's head and where its number goes; lengths and plain numbers differ.
struct SizeColumn {
  std::string_view head;
  Length JointSize::*length = nullptr;
  double JointSize::*number = nullptr;
};

constexpr std::array<SizeColumn, 10> kSizeColumns = {{
    {"outside diameter", &JointSize::outside_diameter, nullptr},
    {"major diameter", &JointSize::major_diameter, nullptr},
    {"threads per inch", nullptr, &JointSize::threads_per_inch},
    {"hand tight", &JointSize::hand_tight_engagement, nullptr},
    {"wrench", &JointSize::wrench_engagement, nullptr},
    {"thread length", &JointSize::thread_length, nullptr},
    {"turns low", nullptr, &JointSize::turns_past_hand_low},
    {"turns high", nullptr, &JointSize::turns_past_hand_high},
    {"make-up tolerance", &JointSize::make_up_tolerance, nullptr},
    {"bore", &JointSize::bore, nullptr},
}};

const SizeColumn* find_size_column(std::string_view name) {
  const auto found = std::find_if(kSizeColumns.begin(), kSizeColumns.end(),
                                  [&](const SizeColumn& column) { return column.head == name; });
  return found == kSizeColumns.end() ? nullptr : &*found;
}

bool check_size_heads(Loading& loading, const Value& columns, std::span<const Head> heads) {
  const std::size_t before = loading.problems.size();
  std::vector<std::string_view> known = {"size"};
  for (const SizeColumn& column : kSizeColumns) known.push_back(column.head);
  bool has_size = false;
  for (const Head& head : heads) {
    has_size = has_size || head.name == "size";
    const SizeColumn* column = find_size_column(head.name);
    if (column == nullptr && head.name != "size") {
      loading.problems.add(head.where, head.where.path() + ": unknown column '" + head.name + "'" +
                                           did_you_mean(head.name, known) + " (allowed: " + either_of(known) + ")");
    } else if (column != nullptr && column->length != nullptr && head.unit != "in" && head.unit != "mm") {
      loading.problems.add(head.where, head.where.path() + ": '" + head.name + "' needs its unit, '" + head.name +
                                           " (in)' or '" + head.name + " (mm)'");
    } else if ((column == nullptr || column->number != nullptr) && !head.unit.empty()) {
      loading.problems.add(head.where, head.where.path() + ": '" + head.name + "' has no unit");
    }
  }
  if (!has_size) loading.problems.add(columns, columns.path() + ": there is no column 'size'");
  return loading.problems.size() == before;
}

void check_size(Loading& loading, const Value& row, const JointSize& size, bool threaded) {
  const auto report = [&](std::string_view what) { loading.problems.add(row, row.path() + ": " + std::string(what)); };
  if (size.turns_past_hand_low > size.turns_past_hand_high) report("'turns low' is more than 'turns high'");
  if (threaded && size.threads_per_inch <= 0.0) report("a thread needs its threads per inch");
  if (threaded && size.outside_diameter <= Length{}) report("a thread needs its outside diameter");
  if (size.bore > Length{} && size.outside_diameter > Length{} && size.bore >= size.outside_diameter)
    report("the bore is not less than the outside diameter");
  if (size.make_up() > Length{} && size.make_up_tolerance > size.make_up())
    report("the make-up tolerance is more than the make-up");
}

std::optional<JointSize> load_size(Loading& loading, const Value& row, std::span<const Head> heads) {
  const std::vector<Value> cells = read_row(loading, row, heads.size());
  if (cells.empty()) return std::nullopt;
  JointSize size;
  for (std::size_t i = 0; i < heads.size(); ++i) {
    const std::optional<std::string_view> text = read_text(cells[i], loading.problems);
    if (!text) return std::nullopt;
    const SizeColumn* column = find_size_column(heads[i].name);
    if (column == nullptr) {
      size.size = loading.builder.size(*text);
      read_with(cells[i], quantity::read_number, loading.problems);  // a nominal size is called by a number
    } else if (*text == "none") {
      continue;
    } else if (column->length != nullptr) {
      size.*column->length = length_cell(loading, cells[i], heads[i].unit).value_or(Length{});
    } else {
      size.*column->number = number_cell(loading, cells[i]).value_or(0.0);
    }
  }
  return size;
}

std::vector<JointSize> load_sizes(Loading& loading, const Value& value, bool threaded) {
  std::vector<JointSize> sizes;
  Fields fields(value, {"columns", "rows"}, loading.problems);
  const Value columns = fields.need("columns");
  const std::vector<Value> rows = fields.need_list("rows");
  if (!columns.exists()) return sizes;
  const std::vector<Head> heads = read_heads(loading, columns);
  if (!columns.is_list() || !check_size_heads(loading, columns, heads)) return sizes;
  if (value["rows"].is_list() && rows.empty())
    loading.problems.add(value["rows"], value["rows"].path() + ": a kind has at least one size");
  for (const Value& row : rows) {
    const std::optional<JointSize> size = load_size(loading, row, heads);
    if (!size) continue;
    check_size(loading, row, *size, threaded);
    const auto same = [&](const JointSize& other) { return other.size == size->size; };
    if (std::any_of(sizes.begin(), sizes.end(), same))
      loading.problems.add(
          row, row.path() + ": the size '" + loading.so_far().size_name(size->size) + "' stands in this table twice");
    sizes.push_back(*size);
  }
  return sizes;
}

std::vector<std::string> lower_texts(Fields& fields, std::string_view key) {
  std::vector<std::string> texts = fields.texts(key);
  for (std::string& text : texts) text = lower_case(std::move(text));
  return texts;
}

void read_notation(Loading& loading, const Value& value, JointKind& kind) {
  if (!value.exists()) return;
  Fields fields(value, {"male", "female", "neither"}, loading.problems);
  if (!fields.valid()) return;
  kind.male_notation = fields.text_or("male", "");
  kind.female_notation = fields.text_or("female", "");
  kind.neither_notation = fields.text_or("neither", "");
  if (value.size() == 0)
    loading.problems.add(value, value.path() + ": a kind has at least one of male, female, neither");
  for (const JointKind& other : loading.so_far().kinds())
    for (const auto& [key, text] : value.entries())
      for (const std::string* used : {&other.male_notation, &other.female_notation, &other.neither_notation})
        if (!used->empty() && lower_case(*used) == lower_case(std::string(text.text())))
          loading.problems.add(text, text.path() + ": the notation '" + std::string(text.text()) +
                                         "' is already that of '" + other.id + "'");
}

void read_words(Loading& loading, const Value& value, JointKind& kind) {
  if (!value.exists()) return;
  Fields fields(value, {"kind", "male", "female", "neither"}, loading.problems);
  kind.kind_words = lower_texts(fields, "kind");
  kind.male_words = lower_texts(fields, "male");
  kind.female_words = lower_texts(fields, "female");
  kind.neither_words = lower_texts(fields, "neither");
  const auto needs_end = [&](const std::string& notation, std::string_view key) {
    if (!value[key].exists() || value[key].size() == 0 || !notation.empty()) return;
    loading.problems.add(value[key], value[key].path() + ": the kind has no notation for that end");
  };
  needs_end(kind.male_notation, "male");
  needs_end(kind.female_notation, "female");
  needs_end(kind.neither_notation, "neither");
}

/// `{male: barb, female: hose}`
void read_shapes(Loading& loading, const Value& value, JointKind& kind) {
  if (!value.exists()) return;
  Fields fields(value, {"male", "female", "neither"}, loading.problems);
  if (!fields.valid()) return;
  const auto shape = [&](std::string_view key) {
    return fields
        .choice<EndShape>(fields.find(key), {{"plain", EndShape::plain},
                                             {"barb", EndShape::barb},
                                             {"hose", EndShape::hose},
                                             {"nut", EndShape::nut},
                                             {"cone", EndShape::cone},
                                             {"groove", EndShape::groove},
                                             {"levers", EndShape::levers},
                                             {"collar", EndShape::collar},
                                             {"crimp", EndShape::crimp},
                                             {"plug", EndShape::plug},
                                             {"coupler", EndShape::coupler},
                                             {"flange", EndShape::flange},
                                             {"bands", EndShape::bands}})
        .value_or(EndShape::plain);
  };
  kind.male_shape = shape("male");
  kind.female_shape = shape("female");
  kind.neither_shape = shape("neither");
}

void load_kind(Loading& loading, const Value& value) {
  Fields fields(value,
                {"id", "name", "standard", "thread", "by outside diameter", "notation", "shape", "read as", "source",
                 "recognise", "sizes"},
                loading.problems);
  if (!fields.valid()) return;
  JointKind kind;
  kind.id = fields.need_text("id");
  kind.name = fields.need_text("name");
  kind.standard = fields.need_text("standard");
  kind.source = fields.need_text("source");
  const auto thread = fields.choice<Thread>(
      fields.need("thread"), {{"taper", Thread::taper}, {"straight", Thread::straight}, {"none", Thread::none}});
  kind.threaded = thread && *thread != Thread::none;
  kind.tapered = thread == Thread::taper;
  kind.by_outside = fields.flag_or("by outside diameter", false);
  read_notation(loading, fields.need("notation"), kind);
  read_shapes(loading, fields.find("shape"), kind);
  read_words(loading, fields.find("read as"), kind);
  if (as_id_text(kind.id) != kind.id)
    loading.problems.add(value["id"], value["id"].path() + ": an id is lower case, its words joined by '-'");
  if (loading.so_far().find_kind(kind.id))
    loading.problems.add(value["id"], value["id"].path() + ": the kind '" + kind.id + "' is already there");
  if (const Value recognise = fields.find("recognise"); recognise.exists())
    kind.recognition = load_recognition(loading, recognise, kind.threaded);
  if (const Value sizes = fields.need("sizes"); sizes.exists()) kind.sizes = load_sizes(loading, sizes, kind.threaded);
  loading.builder.add(std::move(kind));
}

/// `{kind: ght, at home: [ght], only at its end: yes, source: common practice}`
void load_foreign_thread(Loading& loading, const Value& value) {
  Fields fields(value, {"kind", "at home", "keeps metals apart between", "only at its end", "source"},
                loading.problems);
  if (!fields.valid()) return;
  const auto named = [&](const Value& name) -> std::optional<KindId> {
    const auto text = read_text(name, loading.problems);
    return text ? named_kind(loading, name, *text) : std::nullopt;
  };
  const std::optional<KindId> kind = named(fields.need("kind"));
  ForeignThread thread{kind.value_or(KindId{}), {}, fields.need_text("source")};
  thread.only_at_end = fields.flag_or("only at its end", false);
  for (const Value& name : fields.need_list("at home"))
    if (const std::optional<KindId> home = named(name)) thread.at_home.push_back(*home);
  for (const Value& name : fields.list("keeps metals apart between"))
    if (const std::optional<KindId> home = named(name)) thread.keeps_apart.push_back(*home);
  if (kind) loading.builder.add(std::move(thread));
}

}  // namespace

void load_joints(Loading& loading, const Value& root) {
  Fields fields(root, {"seals", "kinds", "mating", "look-alikes", "foreign threads"}, loading.problems);
  if (!fields.valid()) return;
  for (const Value& seal : fields.need_list("seals")) load_seal(loading, seal);
  for (const Value& kind : fields.need_list("kinds")) load_kind(loading, kind);
  for (const Value& rule : fields.need_list("mating")) load_mating_rule(loading, rule);
  for (const Value& pair : fields.list("look-alikes")) load_look_alike(loading, pair);
  for (const Value& thread : fields.list("foreign threads")) load_foreign_thread(loading, thread);
}

}  // namespace riserun::catalog
