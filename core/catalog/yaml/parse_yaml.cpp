#include "catalog/yaml/parse_yaml.h"

#include "catalog/yaml/limits.h"
#include "catalog/yaml/text_checks.h"
#include "quantity/printable.h"
#include "yaml-cpp/eventhandler.h"
#include "yaml-cpp/exceptions.h"
#include "yaml-cpp/mark.h"
#include "yaml-cpp/parser.h"

#include <fmt/format.h>

#include <algorithm>
#include <istream>
#include <optional>
#include <streambuf>
#include <string_view>
#include <unordered_map>

namespace riserun::catalog::detail {

namespace {

// Of a map with fewer keys all are looked at; of a larger one an index is made.
constexpr std::uint32_t kFewKeys = 16;

/// Ends the parsing when there is no use in going on.
struct Refused {};

/// Reads from a string that stays where it is; a stringstream would copy it. What is in brackets the parser takes apart
/// whole before it says a word of it: where it has read too much since the last word, it is stopped.
class ViewBuffer : public std::streambuf {
 public:
  explicit ViewBuffer(std::string& text) : size_(text.size()) { setg(text.data(), text.data(), text.data()); }
  /// The parser has come so far that it says something of what it read.
  void heard() { may_read_ = read() + kLargestPiece; }
  bool piece_is_too_large() const { return too_large_; }

 protected:
  int_type underflow() override {
    if (read() == size_) return traits_type::eof();
    too_large_ = read() >= may_read_;
    if (too_large_) throw Refused();
    const std::size_t step = std::min(kStep, size_ - read());
    setg(eback(), gptr(), gptr() + step);
    return traits_type::to_int_type(*gptr());
  }

 private:
  static constexpr std::size_t kStep = 4096;
  std::size_t read() const { return static_cast<std::size_t>(gptr() - eback()); }

  std::size_t size_;
  std::size_t may_read_ = kLargestPiece;
  bool too_large_ = false;
};

class Builder : public YAML::EventHandler {
 public:
  Builder(DocumentData& data, ViewBuffer& buffer, Problems& problems)
      : data_(data), buffer_(buffer), problems_(problems) {}
  /// Where the last thing begins that was heard of.
  std::size_t last_place() const { return last_place_; }

  void OnDocumentStart(const YAML::Mark&) override {}
  void OnDocumentEnd() override {}
  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
    refuse_anchor(mark, anchor);
    const std::uint32_t node = add(Value::Shape::empty, mark);
    // The mark of nothing is that of whatever comes next, often on the next line: the key is where it is missed.
    if (const std::uint32_t key = data_.nodes[node].key; key != kNoNode) {
      data_.nodes[node].offset = data_.nodes[key].offset;
      data_.nodes[node].line = data_.nodes[key].line;
    }
  }
  void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override {
    report(mark, "an alias ('*') is not read here: write the value out");
    throw Refused();
  }
  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                const std::string& value) override {
    refuse_anchor(mark, anchor);
    refuse_tag(mark, tag);
    const std::uint32_t node = add(Value::Shape::text, mark);
    data_.nodes[node].text = anchor == YAML::NullAnchor ? text_of(mark, tag, value) : made(value);
    check_text(data_.nodes[node]);
    note_key(node);
  }
  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value) override {
    open(Value::Shape::list, mark, tag, anchor);
  }
  void OnSequenceEnd() override { close(); }
  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value) override {
    open(Value::Shape::map, mark, tag, anchor);
  }
  void OnMapEnd() override { close(); }

 private:
  struct Level {
    std::uint32_t node = kNoNode;
    std::uint32_t last = kNoNode;                                // the child added last
    std::uint32_t pending_key = kNoNode;                         // of a map: key whose value comes next
    std::unordered_map<std::string_view, std::uint32_t> keys{};  // of a map with many keys
  };

  void report(const YAML::Mark& mark, std::string message) {
    report(static_cast<std::size_t>(mark.pos), std::move(message));
  }
  void report(std::size_t offset, std::string message, std::string_view code = quantity::mistake::kNotYaml) {
    problems_.add(data_.problem_at(offset, std::move(message), code));
    if (problems_.size() >= kMostMistakes) throw Refused();
  }
  [[noreturn]] void give_up(std::size_t offset, std::string message) {
    problems_.add(data_.problem_at(offset, std::move(message)));
    throw Refused();
  }
  void refuse_anchor(const YAML::Mark& mark, YAML::anchor_t anchor) {
    if (anchor != YAML::NullAnchor)
      report(mark, "an anchor ('&') is not read here: write the value out where it is needed");
  }
  void refuse_tag(const YAML::Mark& mark, const std::string& tag) {
    if (!tag.empty() && tag != "?" && tag != "!") report(mark, "a tag ('!') is not read here: leave it out");
  }

  bool expects_key() const {
    return !levels_.empty() && data_.nodes[levels_.back().node].shape == Value::Shape::map &&
           levels_.back().pending_key == kNoNode;
  }

  std::uint32_t add(Value::Shape shape, const YAML::Mark& mark) {
    const auto row = static_cast<std::uint32_t>(data_.nodes.size());
    buffer_.heard();
    last_place_ = static_cast<std::size_t>(std::max(mark.pos, 0));
    if (row >= kMostValues) give_up(last_place_, fmt::format("more than {} values in one file", kMostValues));
    Node node;
    node.shape = shape;
    node.offset = static_cast<std::uint32_t>(std::min(last_place_, data_.text.size()));
    node.line = static_cast<std::uint32_t>(std::max(mark.line, 0));
    if (expects_key()) {
      node.parent = levels_.back().node;
      if (shape != Value::Shape::text) report(mark, "a key must be a plain word or words");
      levels_.back().pending_key = row;
    } else if (!levels_.empty()) {
      link(node, row);
    }
    data_.nodes.push_back(node);
    return row;
  }

  void link(Node& node, std::uint32_t row) {
    Level& level = levels_.back();
    Node& parent = data_.nodes[level.node];
    node.parent = level.node;
    node.key = level.pending_key;
    level.pending_key = kNoNode;
    (level.last == kNoNode ? parent.first : data_.nodes[level.last].next) = row;
    level.last = row;
    ++parent.count;
  }

  /// The same key of the map that is open, if it stands there already.
  std::uint32_t same_key(Level& level, std::string_view text) const {
    const Node& map = data_.nodes[level.node];
    if (map.count < kFewKeys) {
      for (std::uint32_t child = map.first; child != kNoNode; child = data_.nodes[child].next)
        if (data_.nodes[data_.nodes[child].key].text == text) return data_.nodes[child].key;
      return kNoNode;
    }
    if (level.keys.empty())
      for (std::uint32_t child = map.first; child != kNoNode; child = data_.nodes[child].next)
        level.keys.emplace(data_.nodes[data_.nodes[child].key].text, data_.nodes[child].key);
    const auto known = level.keys.find(text);
    return known == level.keys.end() ? kNoNode : known->second;
  }

  // A key is noted once its text is known: the same key again is a mistake that YAML readers tend to pass over.
  void note_key(std::uint32_t row) {
    if (levels_.empty() || levels_.back().pending_key != row) return;
    Level& level = levels_.back();
    const Node& key = data_.nodes[row];
    if (data_.nodes[level.node].count >= kMostKeys)
      give_up(key.offset, fmt::format("more than {} keys in one map", kMostKeys));
    const std::uint32_t first = same_key(level, key.text);
    if (!level.keys.empty()) level.keys.emplace(key.text, row);
    if (first != kNoNode)
      report(key.offset, fmt::format("'{}' stands here twice, first in line {}", key.text, data_.nodes[first].line + 1),
             quantity::mistake::kDuplicateKey);
  }

  // What may not be printed can be written as an escape, or come from the lines of a block.
  void check_text(const Node& node) {
    const auto wrong = quantity::first_unprintable(node.text);
    if (!wrong) return;
    const std::string_view text = data_.text;
    const bool as_in_file = node.text.data() >= text.data() && node.text.data() < text.data() + text.size();
    report(as_in_file ? static_cast<std::size_t>(node.text.data() - text.data()) + wrong->offset
                      : node.offset + place_of_escape(text.substr(node.offset)),
           wrong->words() + " in a text: a text is one line of letters, digits, signs and blanks");
  }

  void open(Value::Shape shape, const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor) {
    refuse_anchor(mark, anchor);
    refuse_tag(mark, tag);
    if (levels_.size() >= kDeepest)
      give_up(static_cast<std::size_t>(mark.pos), fmt::format("nested more than {} deep", kDeepest));
    const std::uint32_t row = add(shape, mark);
    levels_.push_back({row, kNoNode, kNoNode});
  }
  void close() { levels_.pop_back(); }

  std::string_view made(const std::string& value) { return data_.made_texts.emplace_back(value); }

  /// The text of a scalar, as a view of the file where it stands there just so.
  std::string_view text_of(const YAML::Mark& mark, const std::string& tag, const std::string& value) {
    const std::string_view rest = std::string_view(data_.text).substr(static_cast<std::size_t>(mark.pos));
    const char first = rest.empty() ? '\0' : rest.front();
    if (tag == "?") {
      if (rest.substr(0, value.size()) == value) return rest.substr(0, value.size());
      report(mark, "this text runs on over several lines; put it on one line, or below a '>'");
      return made(value);
    }
    if (first == '|' || first == '>') return block_text(value);
    return quoted_text(mark, rest, value);
  }

  std::string_view block_text(const std::string& value) {
    const std::size_t end = value.find_last_not_of(" \n");
    return made(value.substr(0, end == std::string::npos ? 0 : end + 1));
  }

  std::string_view quoted_text(const YAML::Mark& mark, std::string_view rest, const std::string& value) {
    const char quote = rest.empty() ? '\0' : rest.front();
    const std::string_view inside = rest.substr(rest.empty() ? 0 : 1);
    if (inside.substr(0, value.size()) == value && inside.substr(value.size(), 1) == std::string_view(&quote, 1)) {
      if (value.find('\n') == std::string::npos) return inside.substr(0, value.size());
    }
    for (std::size_t i = 0; i < inside.size() && inside[i] != quote; ++i) {
      if (inside[i] == '\\' && quote == '"') ++i;
      if (i < inside.size() && (inside[i] == '\n' || inside[i] == '\r')) {
        report(mark, "this quote is not closed on its line");
        break;
      }
    }
    return made(value);
  }

  DocumentData& data_;
  ViewBuffer& buffer_;
  Problems& problems_;
  std::vector<Level> levels_;
  std::size_t last_place_ = 0;
};

/// Where a second document begins, if there is one.
class SecondDocument : public YAML::EventHandler {
 public:
  std::optional<std::size_t> begins;

  void OnDocumentStart(const YAML::Mark& mark) override {
    begins = static_cast<std::size_t>(std::max(mark.pos, 0));
    throw Refused();
  }
  void OnDocumentEnd() override {}
  void OnNull(const YAML::Mark&, YAML::anchor_t) override {}
  void OnAlias(const YAML::Mark&, YAML::anchor_t) override {}
  void OnScalar(const YAML::Mark&, const std::string&, YAML::anchor_t, const std::string&) override {}
  void OnSequenceStart(const YAML::Mark&, const std::string&, YAML::anchor_t, YAML::EmitterStyle::value) override {}
  void OnSequenceEnd() override {}
  void OnMapStart(const YAML::Mark&, const std::string&, YAML::anchor_t, YAML::EmitterStyle::value) override {}
  void OnMapEnd() override {}
};

/// Said in our words where yaml-cpp's are of no help to the person who wrote the file.
std::string in_plain_words(const std::string& said) {
  const auto holds = [&](std::string_view part) { return said.find(part) != std::string::npos; };
  if (holds("EOF in scalar")) return "a quote is opened and never closed";
  if (holds("end of sequence flow not found")) return "a '[' is opened and never closed with ']'";
  if (holds("end of map flow not found")) return "a '{' is opened and never closed with '}'";
  if (holds("end of map not found") || holds("end of sequence not found"))
    return "this line does not fit the ones above it: look at its indent, and for a missing ':' or '-'";
  if (holds("illegal map value"))
    return "a ':' stands where no value can follow: look at the indent, or put the text in quotes";
  if (holds("illegal block entry")) return "a '-' stands where no list can begin: look at the indent";
  if (holds("illegal map key")) return "a key stands where none can be: look at the indent";
  if (holds("illegal flow end")) return "a ']' or '}' without its opening bracket";
  if (holds("illegal tab")) return "a tab stands in the indent: use blanks";
  if (holds("unknown token")) return "a text cannot begin with this sign: put it in quotes";
  return "not YAML: " + said;
}

void report_parser(const YAML::Exception& error, DocumentData& data, Problems& problems) {
  const bool placed = !error.mark.is_null() && error.mark.pos >= 0;
  const std::size_t at = placed ? static_cast<std::size_t>(error.mark.pos) : data.text.size();
  problems.add(data.problem_at(at, in_plain_words(error.msg)));
}

}  // namespace

void parse_yaml(DocumentData& data, Problems& problems) {
  ViewBuffer buffer(data.text);
  std::istream stream(&buffer);
  SecondDocument second;
  Builder builder(data, buffer, problems);
  try {
    YAML::Parser parser(stream);
    if (!parser.HandleNextDocument(builder)) return;
    parser.HandleNextDocument(second);
    return;
  } catch (const YAML::Exception& error) {
    report_parser(error, data, problems);
  } catch (const Refused&) {
    if (buffer.piece_is_too_large())
      problems.add(data.problem_at(
          builder.last_place(),
          fmt::format("what follows here is longer than {} KB in one piece; write a long list as lines that begin with "
                      "'-'",
                      kLargestPiece >> 10U)));
    else if (second.begins) {
      problems.add(data.problem_at(*second.begins, "a second document begins here: one file holds one document"));
      return;
    }
  }
  data.nodes.clear();
}

}  // namespace riserun::catalog::detail
