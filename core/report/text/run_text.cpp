#include "report/text/run_text.h"

#include "chain/finder.h"
#include "quantity/printable.h"
#include "report/text/duty_text.h"
#include "report/text/span_text.h"
#include "report/words/run_words.h"
#include "report/words/say.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>

namespace riserun::report {

namespace {

using catalog::Catalog;
using chain::Chain;
using chain::Follower;
using chain::Run;
using chain::RunPart;
using What = Follower::What;

bool branches(const Run& run) { return run.ends.size() > 1; }

// "hex bushing (brass)", a part twice as "2 x hex bushing (brass)".
std::string shopping_words(const Catalog& catalog, const std::vector<chain::PartId>& parts) {
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (std::find(parts.begin(), parts.begin() + static_cast<std::ptrdiff_t>(i), parts[i]) !=
        parts.begin() + static_cast<std::ptrdiff_t>(i))
      continue;
    const auto times = std::count(parts.begin(), parts.end(), parts[i]);
    const catalog::Part& part = catalog.part(parts[i]);
    text += fmt::format("{}{}{} ({})", text.empty() ? "" : " and ", times > 1 ? fmt::format("{} x ", times) : "",
                        part.name, catalog.material(part.material).name);
  }
  return text;
}

std::string price_change(Price before, Price after) {
  if (after.without_price() != before.without_price()) return "and parts without price among them";
  if (after == before) return "at the same price";
  return after < before ? write_price(before - after) + " less" : write_price(after - before) + " more";
}

std::string shelf_note(const Catalog& catalog, const Chain& chain, const chain::Substitute& substitute) {
  const std::string lead = "or, if the shelf is empty: ";
  if (!substitute.chain) return lead + "nothing else on sale makes up for it";
  std::string text = lead + (substitute.buy_also.empty() ? "the rest of the cart does without it"
                                                         : shopping_words(catalog, substitute.buy_also));
  if (!substitute.put_back.empty()) text += ", and put back " + shopping_words(catalog, substitute.put_back);
  return text + fmt::format("; {} in all, {}", counted(substitute.chain->part_count, "part", "parts"),
                            price_change(chain.price, substitute.chain->price));
}

// A piece that is cut to measure says so; what must be bought for it says how much.
std::string cut_label(const Catalog& catalog, const catalog::Part& part, const RunPart& link, const Style& style) {
  const std::string label = part_label(catalog, part);
  return link.cut_length ? fmt::format("{}, cut to {}", label, write_length(*link.cut_length, style.units)) : label;
}

/// The table of a run's parts: a row for each part and each plug, and where the run branches for each end.
class RunRows {
 public:
  RunRows(const Catalog& catalog, const Run& run, const std::vector<chain::Substitute>& substitutes, const Style& style)
      : catalog_(catalog), run_(run), substitutes_(substitutes), style_(style) {}

  std::string text();

 private:
  struct Row {
    std::vector<std::string> cells;  // number, part, its ends, where from, where it sits
    std::string note;                // beneath it
  };

  void add_part(std::size_t row, std::size_t depth, const std::string& place);
  void add_followers(std::size_t row, std::size_t depth);
  void add_end(std::size_t target, std::size_t depth, const std::string& place);
  void add_plug(const Follower& follower, std::size_t depth, const std::string& place);
  void fold_what_is_too_wide();
  std::vector<std::string> lines(std::size_t width = kAnyWidth) const;
  std::string ways(const RunPart& link) const;
  std::string note_of(chain::PartId part, bool from_bin);
  std::string direction(const RunPart& link, std::size_t port) const;
  bool is_narrow(const std::vector<std::string>& lines) const;
  static std::string indented(std::size_t depth, const std::string& label) {
    return std::string(depth * 3, ' ') + label;
  }

  static constexpr std::size_t kWays = 2;
  static constexpr std::size_t kPlace = 4;
  const Catalog& catalog_;
  const Run& run_;
  const std::vector<chain::Substitute>& substitutes_;
  const Style& style_;
  std::vector<Row> rows_;
  std::vector<chain::PartId> noted_;
};

std::string RunRows::text() {
  add_part(0, 0, "");
  fold_what_is_too_wide();
  const std::vector<std::string> table = lines(style_.width);
  std::string text;
  for (std::size_t row = 0; row < rows_.size(); ++row) text += table[row] + "\n" + rows_[row].note;
  return text;
}

std::vector<std::string> RunRows::lines(std::size_t width) const {
  std::vector<std::vector<std::string>> cells;
  for (const Row& row : rows_) cells.push_back(row.cells);
  return column_lines(std::move(cells), "  ", {0}, width);
}

// Columns where they fit on a page; else where a row's part sits, and then its ends too, stand below it, and only then
// its words are broken.
void RunRows::fold_what_is_too_wide() {
  std::vector<std::string> below(rows_.size());
  for (const std::size_t column : {kPlace, kWays}) {
    if (is_narrow(lines())) break;
    for (std::size_t row = 0; row < rows_.size(); ++row) {
      std::string& cell = rows_[row].cells[column];
      if (!cell.empty()) below[row] = below[row].empty() ? cell : cell + ", " + below[row];
      cell.clear();
    }
  }
  for (std::size_t row = 0; row < rows_.size(); ++row) {
    const std::size_t label_starts = rows_[row].cells[1].find_first_not_of(' ');
    if (!below[row].empty())
      rows_[row].note = wrapped(std::string(8 + label_starts, ' '), below[row], style_.width) + rows_[row].note;
  }
}

bool RunRows::is_narrow(const std::vector<std::string>& lines) const {
  return std::all_of(lines.begin(), lines.end(),
                     [&](const std::string& line) { return quantity::count_characters(line) <= style_.width; });
}

// "1/2 FNPT -> 1/4 FNPT, two 1/2 FNPT": like ends that follow each other are counted.
std::string RunRows::ways(const RunPart& link) const {
  static constexpr const char* kCounts[] = {"", "", "two ", "three ", "four "};
  const catalog::Part& part = catalog_.part(link.part);
  std::vector<std::pair<std::string, std::size_t>> ends;
  for (std::size_t port = 0; port < part.ports.size(); ++port) {
    if (!link.ports[port].leads_on()) continue;
    const std::string end = catalog_.written(part.ports[port].type);
    if (ends.empty() || ends.back().first != end || ends.back().second + 1 == std::size(kCounts))
      ends.emplace_back(end, 0);
    ++ends.back().second;
  }
  std::string text = catalog_.written(part.ports[link.enter].type) + " ->";
  for (std::size_t i = 0; i < ends.size(); ++i)
    text += (i == 0 ? " " : ", ") + std::string(kCounts[ends[i].second]) + ends[i].first;
  return text;
}

// Only where there is a choice: a part with two ports says nothing new.
std::string RunRows::direction(const RunPart& link, std::size_t port) const {
  const catalog::Part& part = catalog_.part(link.part);
  if (part.ports.size() == 2) return "";
  return leads_straight_on(part, link.enter, port) ? "straight on" : "to the side";
}

// A part bought twice has one note, under the first.
std::string RunRows::note_of(chain::PartId part, bool from_bin) {
  const auto substitute = std::find_if(substitutes_.begin(), substitutes_.end(),
                                       [&](const chain::Substitute& s) { return s.instead_of == part; });
  const bool known = std::find(noted_.begin(), noted_.end(), part) != noted_.end();
  if (from_bin || known || substitute == substitutes_.end()) return "";
  noted_.push_back(part);
  return wrapped("       ", shelf_note(catalog_, run_, *substitute), style_.width);
}

void RunRows::add_part(std::size_t row, std::size_t depth, const std::string& place) {
  const RunPart& link = run_.parts[row];
  const catalog::Part& part = catalog_.part(link.part);
  rows_.push_back({{fmt::format("{}.", row + 1), indented(depth, cut_label(catalog_, part, link, style_)), ways(link),
                    source_of(part, link.from_bin, link.pieces), place},
                   note_of(link.part, link.from_bin)});
  add_followers(row, depth);
}

void RunRows::add_end(std::size_t target, std::size_t depth, const std::string& place) {
  const chain::RunEnd& end = run_.ends[target];
  const std::string& name = end.port.called;
  if (!end.device) {
    rows_.push_back(
        {{"", indented(depth, fmt::format("= {}: {}", name, catalog_.written(end.port.type))), "", "", place}, ""});
    return;
  }
  const catalog::Part& part = catalog_.part(*end.device);
  rows_.push_back({{"", indented(depth, fmt::format("= {}: {}", name, part_label(catalog_, part))),
                    catalog_.written(end.port.type), source_of(part, end.from_bin), place},
                   ""});
}

void RunRows::add_plug(const Follower& follower, std::size_t depth, const std::string& place) {
  const catalog::Part& plug = catalog_.part(follower.plug);
  rows_.push_back(
      {{"", indented(depth, "  plugged: " + part_label(catalog_, plug)), "", source_of(plug, follower.from_bin), place},
       note_of(follower.plug, follower.from_bin)});
}

// The tree moves in only where it branches, and only there is it told where a part sits. What is plugged beside a part
// of a run with one end stands under it, before the next part.
void RunRows::add_followers(std::size_t row, std::size_t depth) {
  const RunPart& link = run_.parts[row];
  const auto leads_on = [](const Follower& f) { return f.leads_on(); };
  const std::size_t inner = depth + (std::count_if(link.ports.begin(), link.ports.end(), leads_on) > 1 ? 1 : 0);
  if (!branches(run_))
    for (const Follower& plug : link.plugs()) add_plug(plug, inner, "");
  for (std::size_t port = 0; port < link.ports.size(); ++port) {
    const Follower& follower = link.ports[port];
    const std::string way = branches(run_) ? direction(link, port) : "";
    const std::string place = way.empty() ? "" : fmt::format("on part {}, {}", row + 1, way);
    if (follower.what == What::part) add_part(follower.row, inner, place);
    if (!branches(run_)) continue;
    if (follower.what == What::end) add_end(follower.row, inner, place);
    if (follower.what == What::plug) add_plug(follower, inner, place);
  }
}

std::string length_with_band(const Chain& chain, const Style& style) {
  // A hose is longer than the distance that it makes, and so is the way round two elbows.
  const bool slack = chain.span && chain.span->make == chain::SpanMake::hose;
  const bool elbows = chain.span && chain.span->bend_degrees > 0.0;
  const Length length = slack || elbows ? chain.span->lands : chain.length;
  // Where more goes in than the bodies are long, the two faces pass each other.
  const bool overlap = length < Length{};
  std::string nominal =
      overlap ? "overlapping by " + write_length(-length, style.units) : write_length(length, style.units);
  if (elbows) nominal += fmt::format(" along the axes, {} along the run", write_length(chain.length, style.units));
  if (chain.length_tolerance <= Length{}) return nominal;
  return fmt::format("{}, plus or minus {}", nominal, write_length(chain.length_tolerance, style.units));
}

// At the heat that the run is asked for, where it is asked for one.
std::string weakest_part(const Catalog& catalog, const chain::ChainRequest& request, const Run& run,
                         const Style& style) {
  const std::string cold = write_pressure_alone(run.rating, style.units);
  if (request.hottest && !branches(run))
    if (const auto hot = chain::duty_of_run(catalog, all_parts(run), request.hottest).water)
      return fmt::format("{} of water at {}, {} at room temperature", write_pressure_alone(*hot, style.units),
                         write_temperature(*request.hottest, style.units), cold);
  return cold + " of water at room temperature";
}

/// "2 x 1/4 hose clamp, $2.00": what the joints use up, and what it all comes to where that has a price. What is in the
/// bin is free.
std::string goods_sentence(const Catalog& catalog, const catalog::Bin& bin, const Run& run) {
  std::vector<std::string> goods;
  Price all = run.price;
  bool is_priced = true;
  for (const chain::JointGood& good : run.goods) {
    std::string text = fmt::format("{} x {} {}", good.count, good.size, good.what);
    if (good.part) {
      const Price price = catalog.part(*good.part).price * std::max(0, good.count - bin.count_of(*good.part));
      text += ", " + write_price(price);
      all += price;
    }
    is_priced = is_priced && good.part;
    goods.push_back(std::move(text));
  }
  return fmt::format("The joints take besides: {}{}.", fmt::join(goods, "; "),
                     is_priced ? "; in all " + write_about(all) : "");
}

std::string sums(const Catalog& catalog, const chain::ChainRequest& request, const Run& run, const Style& style) {
  std::vector<std::string> sentences;
  if (!run.parts.empty())
    sentences.push_back(fmt::format("{}, {} to buy, {}.", counted(run.part_count, "part", "parts"), run.buy_count,
                                    write_about(run.price)));
  if (!run.goods.empty()) sentences.push_back(goods_sentence(catalog, request.bin, run));
  if (!branches(run)) sentences.push_back(fmt::format("Port to port {}.", length_with_band(run, style)));
  if (!run.parts.empty())
    sentences.push_back(fmt::format("Weakest part: {}{}.", weakest_part(catalog, request, run, style),
                                    run.air ? "" : "; not for compressed air"));
  if (!run.parts.empty() && !branches(run)) {
    sentences.push_back(duty_sentence(catalog, all_parts(run), request.hottest, style.units));
    if (request.service == chain::Service::water)
      sentences.push_back(fmt::format("Head lost at {}: {}.", write_volume_flow(request.flow, style.units),
                                      write_head(run.head, style.units)));
  }
  return wrapped("  ", fmt::format("{}", fmt::join(sentences, " ")), style.width);
}

std::string build_order_text(const chain::Run& run, const Style& style) {
  std::string text = run.buildable ? "  Build order\n" : "  It cannot be screwed together\n";
  if (!run.buildable) return text + wrapped("    ", kNotBuildable, style.width);
  if (run.steps.empty()) return "";  // told elsewhere
  for (std::size_t i = 0; i < run.steps.size(); ++i)
    text += wrapped(fmt::format("    {:>2}. ", i + 1), say(run.steps[i].what, style.units), style.width);
  return text;
}

}  // namespace

std::string source_of(const catalog::Part& part, bool from_bin, int pieces) {
  const bool feet = catalog::sold_by_the_foot(part);
  if (from_bin && feet) return fmt::format("bin, {} ft", pieces);
  if (from_bin) return pieces == 1 ? "bin" : fmt::format("bin, {} of them", pieces);
  const std::string amount = feet          ? fmt::format("{} ft for ", pieces)
                             : pieces == 1 ? ""
                                           : fmt::format("{} for ", pieces);
  const std::string price = "buy " + amount + write_price(part.price * pieces);
  return part.stocked ? price : price + " (special order)";
}

std::string part_label(const Catalog& catalog, const catalog::Part& part) {
  std::string label = part.name + ", " + catalog.material(part.material).name;
  if (part.far_material) label += "/" + catalog.material(*part.far_material).name;
  return part.measured && !part.remnant ? label + " (measured)" : label;
}

std::string bullet_list(const std::string& title, const std::vector<std::string>& sentences, const Style& style) {
  if (sentences.empty()) return "";
  std::string text = "  " + title + "\n";
  for (const std::string& sentence : sentences) text += wrapped("    - ", sentence, style.width);
  return text;
}

std::string run_text(const Catalog& catalog, const chain::ChainRequest& request, const Run& run, const Style& style,
                     const std::vector<chain::Substitute>& substitutes) {
  const std::string kept = kept_sentence(run, style.units);
  std::string text = kept.empty() ? "" : wrapped("  ", kept, style.width);
  text += run.parts.empty() ? "  The two ports go straight together; no part is needed.\n"
                            : RunRows(catalog, run, substitutes, style).text();
  text += sums(catalog, request, run, style);
  if (run.span) text += wrapped("  ", span_sentences(catalog, run, style.units), style.width);
  return text + build_order_text(run, style) + bullet_list("Watch", say_all(run.cautions, style.units), style);
}

}  // namespace riserun::report
