#include "catalog/words/words.h"

#include "quantity/read.h"

#include <algorithm>
#include <cctype>
#include <cstdint>
#include <optional>
#include <span>
#include <utility>

namespace riserun::catalog {

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0 || c == '_'; }

/// `½`, `¼` ... in UTF-8: how many bytes stand for one at this place; 0: none does.
std::size_t fraction_sign(std::string_view text) {
  if (text.starts_with("\xC2\xBC") || text.starts_with("\xC2\xBD") || text.starts_with("\xC2\xBE")) return 2;
  const bool eighths = text.starts_with("\xE2\x85") && text.size() > 2 && static_cast<unsigned char>(text[2]) >= 0x90 &&
                       static_cast<unsigned char>(text[2]) <= 0x9E;
  return eighths ? 3 : 0;
}

std::size_t digits(std::string_view text) {
  const auto end = std::find_if_not(text.begin(), text.end(), is_digit);
  return static_cast<std::size_t>(end - text.begin());
}

/// Bytes of `3/4` at the begin of the text; 0: no fraction.
std::size_t fraction(std::string_view text) {
  const std::size_t above = digits(text);
  if (above == 0 || text.substr(above, 1) != "/") return 0;
  const std::size_t below = digits(text.substr(above + 1));
  return below == 0 ? 0 : above + 1 + below;
}

/// Bytes of a fraction with one of its two numbers missing, as `/2` or `3/`, where a word begins; 0: none is there.
std::size_t broken_fraction(std::string_view text) {
  const std::size_t above = digits(text);
  if (text.substr(above, 1) != "/") return 0;
  const std::size_t below = digits(text.substr(above + 1));
  const bool ends = above + 1 + below == text.size() || text[above + 1 + below] == ' ';
  return (above == 0) != (below == 0) && ends ? above + 1 + below : 0;
}

/// Bytes of a number at the begin of the text: `1`, `1.25`, `.5`, `3/4`, `1-1/4`, `1 1/4`, `1¼`.
std::size_t number(std::string_view text) {
  if (const std::size_t length = fraction(text)) return length;
  if (const std::size_t sign = fraction_sign(text)) return sign;
  const std::size_t whole = digits(text);
  const std::string_view rest = text.substr(whole);
  if (rest.starts_with('.') && digits(rest.substr(1)) > 0) return whole + 1 + digits(rest.substr(1));
  if (whole == 0) return 0;
  if (const std::size_t sign = fraction_sign(rest)) return whole + sign;
  // `street 90 3/4` is an elbow of 90 degrees, `22 1/2` an angle of its own.
  constexpr std::size_t kSmallestTurn = 40;
  const bool is_turn =
      whole == 2 && rest.starts_with(' ') && std::stoul(std::string(text.substr(0, 2))) >= kSmallestTurn;
  if (!is_turn && (rest.starts_with('-') || rest.starts_with(' '))) {
    const std::size_t blanks = rest.find_first_not_of(' ', 1);
    if (blanks != std::string_view::npos)
      if (const std::size_t more = fraction(rest.substr(blanks))) return whole + blanks + more;
  }
  return whole;
}

std::string size_name(std::string_view text) {
  quantity::Reading<std::string> reading = quantity::read_size_name(text);
  if (std::string* name = std::get_if<std::string>(&reading)) return std::move(*name);
  return std::string(text);
}

/// `DN 20` and its length when the text begins with one.
std::size_t metric_size(std::string_view text) {
  if (lower_case(text.substr(0, 2)) != "dn") return 0;
  const std::size_t begin = text.find_first_not_of(' ', 2);
  if (begin == std::string_view::npos) return 0;
  const std::size_t count = digits(text.substr(begin));
  return count == 0 ? 0 : begin + count;
}

/// A dash size, `-8` for eight sixteenths of an inch, and its length when the text begins with one.
std::size_t dash_size(std::string_view text) {
  if (!text.starts_with('-')) return 0;
  const std::size_t count = digits(text.substr(1));
  const std::string_view rest = text.substr(1 + count);
  const bool is_fraction = rest.starts_with('/') || rest.starts_with('.') || rest.starts_with('-');
  return count == 0 || is_fraction ? 0 : 1 + count;
}

}  // namespace

namespace {

struct SpokenNumber {
  std::string_view word;
  int value;
};
constexpr SpokenNumber kWhole[] = {{"one", 1}, {"two", 2},   {"three", 3}, {"four", 4},   {"five", 5},
                                   {"six", 6}, {"eight", 8}, {"ten", 10},  {"twelve", 12}};
constexpr SpokenNumber kShares[] = {{"half", 2},   {"quarter", 4},  {"eighth", 8},  {"sixteenth", 16},
                                    {"halves", 2}, {"quarters", 4}, {"eighths", 8}, {"sixteenths", 16}};
constexpr std::string_view kInch[] = {"in", "inch", "inches"};
constexpr std::string_view kJoins[] = {"x", "by", "and"};

std::optional<int> spoken(std::string_view word, std::span<const SpokenNumber> numbers) {
  const auto found = std::find_if(numbers.begin(), numbers.end(), [&](const auto& n) { return n.word == word; });
  return found == numbers.end() ? std::nullopt : std::optional(found->value);
}

bool is_among(std::string_view word, std::span<const std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// The words of a text from some place on, read as a size.
class SpokenSize {
 public:
  SpokenSize(std::span<const Token> tokens, std::size_t at) : tokens_(tokens), at_(at) {}

  /// How many words are a size there; 0: none.
  std::size_t read() {
    if (word(0) == "dash") return dash();
    std::size_t used = and_a_share(0);
    if (used > 0) return used;
    if (const auto above = spoken(word(0), kWhole)) {
      const auto below = spoken(word(1), kShares);
      if (below) return fraction(*above, *below, 2);
      if (const std::size_t mixed = and_a_share(is_among(word(1), kInch) ? 2 : 1))
        return whole_of(std::to_string(*above) + "-" + share_, mixed);
      return stands_for_a_size(1) ? whole_of(std::to_string(*above), 1) : 0;
    }
    if (const auto below = spoken(word(0), kShares); below && stands_for_a_size(1)) return fraction(1, *below, 1);
    return 0;
  }
  const std::string& size() const { return size_; }

 private:
  std::string_view word(std::size_t ahead) const {
    return at_ + ahead < tokens_.size() && !tokens_[at_ + ahead].is_size ? tokens_[at_ + ahead].text
                                                                         : std::string_view();
  }
  /// `half inch`, `1 by half`, or at the end: but `half coupling` is a name.
  bool stands_for_a_size(std::size_t ahead) const {
    return at_ + ahead == tokens_.size() || is_among(word(ahead), kInch) || is_among(word(ahead), kJoins) ||
           (at_ > 0 && tokens_[at_ - 1].text != "and" && is_among(tokens_[at_ - 1].text, kJoins));
  }
  std::size_t dash() {
    const auto sixteenths = spoken(word(1), kWhole);
    return sixteenths ? whole_of(std::to_string(*sixteenths) + "/16", 2) : 0;
  }
  /// `inch and a half`, from the word `inch` on: how many words; the share is kept.
  std::size_t and_a_share(std::size_t ahead) {
    const std::size_t begin = ahead + (ahead == 0 && is_among(word(0), kInch) ? 1 : 0);
    if ((ahead == 0 && begin == 0) || word(begin) != "and") return 0;
    const std::size_t a = word(begin + 1) == "a" || word(begin + 1) == "an" ? 1 : 0;
    const auto below = spoken(word(begin + 1 + a), kShares);
    if (!below) return 0;
    share_ = "1/" + std::to_string(*below);
    return whole_of("1-" + share_, begin + 2 + a);
  }
  std::size_t fraction(int above, int below, std::size_t used) {
    return whole_of(std::to_string(above) + "/" + std::to_string(below), used);
  }
  std::size_t whole_of(const std::string& text, std::size_t used) {
    size_ = size_name(text);
    return used;
  }

  std::span<const Token> tokens_;
  std::size_t at_;
  std::string size_, share_;
};

/// What is said and written short at the bench and on counter slips (common practice).
struct BenchWord {
  std::string_view written;
  std::string_view meant;
};
constexpr BenchWord kBenchWords[] = {
    {"nip", "nipple"},        {"nips", "nipple"},    {"blk", "black"},    {"vlv", "valve"},     {"vlvs", "valve"},
    {"cplg", "coupling"},     {"cplgs", "coupling"}, {"bshg", "bushing"}, {"bshgs", "bushing"}, {"adptr", "adapter"},
    {"adapt", "adapter"},     {"galvd", "galv"},     {"flg", "flange"},   {"brs", "brass"},     {"shutoff", "shut off"},
    {"shutoffs", "shut off"}, {"bibs", "bibb"},      {"strt", "street"},  {"thrd", "threaded"}, {"thd", "threaded"},
};

/// Each keeps the place of what was written.
std::vector<Token> in_full(std::vector<Token> tokens) {
  std::vector<Token> result;
  for (Token& token : tokens) {
    const auto known = std::find_if(std::begin(kBenchWords), std::end(kBenchWords), [&](const BenchWord& word) {
      return !token.is_size && word.written == token.text;
    });
    if (known == std::end(kBenchWords)) {
      result.push_back(std::move(token));
      continue;
    }
    for (std::string_view meant = known->meant; !meant.empty();) {
      const std::size_t blank = std::min(meant.find(' '), meant.size());
      result.push_back({std::string(meant.substr(0, blank)), token.offset, token.length, false});
      meant.remove_prefix(std::min(blank + 1, meant.size()));
    }
  }
  return result;
}

/// `AN-6`, `AN6`, `-6 AN`, `6 AN`: beside a whole number AN names the flare that SAE J514 has made of it, JIC (common
/// practice); `an` by itself is no more than an article.
std::vector<Token> with_flares_named(std::string_view text, std::vector<Token> tokens) {
  const auto is_dash = [&](const Token& token) {
    return token.is_size &&
           text.substr(token.offset, token.length).find_first_not_of("-0123456789") == std::string_view::npos;
  };
  for (std::size_t at = 0; at < tokens.size(); ++at) {
    Token& token = tokens[at];
    if (token.is_size || token.text != "an") continue;
    const bool before = at > 0 && is_dash(tokens[at - 1]);
    const bool behind =
        at + 1 < tokens.size() && is_dash(tokens[at + 1]) && tokens[at + 1].offset <= token.offset + token.length + 1;
    if (before || behind) token.text = "jic";
  }
  return tokens;
}

std::vector<Token> with_spoken_sizes(const std::vector<Token>& tokens) {
  std::vector<Token> result;
  for (std::size_t at = 0; at < tokens.size();) {
    SpokenSize spoken_size(tokens, at);
    const std::size_t used = tokens[at].is_size ? 0 : spoken_size.read();
    if (used == 0) {
      result.push_back(tokens[at++]);
      continue;
    }
    const Token& last = tokens[at + used - 1];
    result.push_back({spoken_size.size(), tokens[at].offset, last.offset + last.length - tokens[at].offset, true});
    at += used;
  }
  return result;
}

}  // namespace

std::size_t slips_between(std::string_view a, std::string_view b) {
  // Optimal string alignment: three rows of the table are enough.
  std::vector<std::size_t> before_last(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        row[j] = std::min(row[j], before_last[j - 2] + 1);
    }
    std::swap(before_last, last);
    std::swap(last, row);
  }
  return last[b.size()];
}

namespace {

/// In whatever order.
bool has_the_same_letters(std::string_view a, std::string_view b) {
  std::string first(a);
  std::string second(b);
  std::sort(first.begin(), first.end());
  std::sort(second.begin(), second.end());
  return first == second;
}

}  // namespace

std::vector<std::string> meant_by(std::string_view word, std::span<const std::string> known) {
  constexpr std::size_t kShortest = 4;  // of shorter words too many are near, but where one letter was left out
  constexpr std::size_t kLong = 7;      // where both are as long, two slips are still the same word
  // Hardly anybody mistypes the first letter (common practice), and many short words differ in it alone; where a letter
  // of four is another one, it is another word: flux is not flex.
  if (word.size() + 1 < kShortest) return {};
  std::size_t nearest = word.size() < kLong ? 1 : 2;
  std::vector<std::string> meant;
  for (const std::string& one : known) {
    if (one.size() + 2 < kShortest || one.front() != word.front()) continue;
    if (word.size() < kShortest && one.size() != kShortest) continue;
    const std::size_t slips = slips_between(word, one);
    if (slips > std::min<std::size_t>(nearest, one.size() < kLong ? 1 : 2) || slips >= one.size() - 1) continue;
    if (word.size() == kShortest && one.size() == kShortest && !has_the_same_letters(word, one)) continue;
    if (slips < nearest) meant.clear();
    nearest = slips;
    meant.push_back(one);
  }
  return meant;
}

std::string lower_case(std::string_view text) {
  std::string result(text);
  for (char& c : result) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return result;
}

std::vector<Token> split_words(std::string_view text) {
  std::vector<Token> tokens;
  for (std::size_t at = 0; at < text.size();) {
    const std::string_view rest = text.substr(at);
    const bool begins_word = tokens.empty() || tokens.back().offset + tokens.back().length < at;
    std::size_t length = begins_word ? std::max({metric_size(rest), dash_size(rest), broken_fraction(rest)}) : 0;
    if (length == 0) length = number(rest);
    if (length > 0) {
      tokens.push_back({size_name(rest.substr(0, length)), at, length, true});
    } else if (is_letter(rest[0]) || (static_cast<unsigned char>(rest[0]) >= 0xC3 && rest.size() > 1)) {
      const auto ends = [](char c) { return !is_letter(c) && static_cast<unsigned char>(c) < 0x80; };
      length = static_cast<std::size_t>(std::find_if(rest.begin(), rest.end(), ends) - rest.begin());
      const std::string word = lower_case(rest.substr(0, length));
      // Typographic quotes are no part of a word.
      if (word.find("\xE2\x80") == std::string::npos) tokens.push_back({word, at, length, false});
    } else {
      length = 1;
    }
    at += length;
  }
  return with_spoken_sizes(in_full(with_flares_named(text, std::move(tokens))));
}

std::string without_plural(std::string_view word) {
  for (const std::string_view ending : {"shes", "ches", "sses", "xes"})
    if (word.ends_with(ending)) return std::string(word.substr(0, word.size() - 2));
  if (word.size() > 3 && word.ends_with('s') && !word.ends_with("ss") && !word.ends_with("us"))
    return std::string(word.substr(0, word.size() - 1));
  return std::string(word);
}

}  // namespace riserun::catalog
