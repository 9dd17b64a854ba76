// Why words are no port, and what is close to them.
#include "catalog/words/not_here.h"
#include "catalog/words/port_reader.h"
#include "catalog/yaml/nearest_name.h"
#include "quantity/read.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <span>
#include <utility>

namespace riserun::catalog::detail {

namespace {

constexpr std::size_t kMostPortsListed = 8;

}  // namespace

std::string some_of_ports(const std::vector<std::string>& names) {
  const std::vector<std::string_view> views(names.begin(), names.end());
  if (views.size() <= kMostPortsListed) return either_of(views);
  std::string result;
  for (std::size_t i = 0; i < kMostPortsListed; ++i) result += (i == 0 ? "" : ", ") + names[i];
  return result + " ...";
}

std::string PortReader::example() const {
  return catalog_.port_types().empty() ? "1 FNPT" : catalog_.written(PortTypeId{0});
}

std::string PortReader::in_text(const Token& token) const {
  return "'" + std::string(text_.substr(token.offset, token.length)) + "'";
}

PortError PortReader::in_millimetres() const {
  KindEnds ends;
  for (std::size_t at = 0; at < tokens_.size(); ++at)
    if (const Phrase* phrase = vocabulary_.longest_at(std::span(tokens_).subspan(at)))
      ends.insert(phrase->means.begin(), phrase->means.end());
  const quantity::Reading<double> number = quantity::read_number(text_.substr(size_->offset, size_->length));
  const double* across = std::get_if<double>(&number);
  std::vector<std::pair<double, std::string>> near;
  for (const KindEnd& one : ends)
    for (const JointSize& row : catalog_.kind(one.kind).sizes) {
      const auto port = catalog_.find_port_type({one.kind, row.size, one.end});
      const JointKind& kind = catalog_.kind(one.kind);
      const bool is_hose = kind.male_shape == EndShape::barb;
      const bool is_around = one.end == End::female && !kind.male_notation.empty();
      if (across == nullptr || !port || kind.threaded || is_around != is_hose) continue;
      const double millimetres = riserun::in_millimetres(is_hose ? row.bore : row.outside_diameter);
      near.emplace_back(std::abs(millimetres - *across), fmt::format("{} ({:.1f} mm {})", catalog_.written(*port),
                                                                     millimetres, is_hose ? "inside" : "across"));
    }
  std::sort(near.begin(), near.end());
  std::string message = "'" + std::string(text_.substr(size_->offset, size_->length)) +
                        " mm' is no size here: sizes are nominal, in inches or as DN 15";
  if (!near.empty()) message += "; the nearest is " + near.front().second + ", and another diameter does not fit it";
  return {std::move(message), size_->offset, {}};
}

PortError PortReader::unknown_word(const Token& token) const {
  if (token.text == "mm" && size_) return in_millimetres();
  if (const auto thing = not_here(text_)) return {std::string(thing->instead), thing->offset, {}};
  std::vector<std::string> close = vocabulary_.close_to(token.text);
  std::string message = in_text(token) + " is not understood";
  if (!close.empty()) {
    message += "; close to it: " + some_of_ports(close);
  } else {
    message += "; a port is a size, a kind of joint and an end, as in '" + example() + "'";
  }
  return {std::move(message), token.offset, std::move(close)};
}

std::vector<std::string> PortReader::written(const std::vector<PortTypeId>& ports) const {
  std::vector<std::string> result;
  result.reserve(ports.size());
  for (const PortTypeId port : ports) result.push_back(catalog_.written(port));
  return result;
}

std::variant<PortTypeId, PortError> PortReader::decide() const {
  if (const std::optional<PortTypeId> port = the_one()) return *port;
  KindEnds ends = ends_said();
  if (!kinds_) return no_kind(ends);
  if (ends.empty()) return no_such_end(*kinds_);
  if (!size_) return no_size(ends);
  const std::vector<PortTypeId> ports = in_size(ends);
  if (ports.empty()) return no_such_size(ends);
  return several(ports);
}

PortError PortReader::no_kind(const KindEnds& ends) const {
  std::vector<std::string> close = written(in_size(ends));
  std::string message = "the kind of joint is missing";
  if (!close.empty()) message += "; it could be " + some_of_ports(close);
  return {std::move(message), text_.size(), std::move(close)};
}

PortError PortReader::no_such_end(const KindEnds& any_end) const {
  std::vector<std::string> close = written(in_size(any_end));
  std::string message = in_text(end_token_) + ": there is no such end of " + kinds_text(any_end);
  if (!close.empty()) message += "; there is " + some_of_ports(close);
  return {std::move(message), end_token_.offset, std::move(close)};
}

PortError PortReader::no_size(const KindEnds& ends) const {
  std::vector<std::string> close;
  for (const KindEnd& one : ends)
    for (const JointSize& size : catalog_.kind(one.kind).sizes) {
      const std::string& name = catalog_.size_name(size.size);
      if (std::find(close.begin(), close.end(), name) == close.end()) close.push_back(name);
    }
  return {"the size is missing; " + kinds_text(ends) + " comes in " + some_of_ports(close), text_.size(), close};
}

PortError PortReader::no_such_size(const KindEnds& ends) const {
  PortError error = no_size(ends);
  error.message =
      in_text(*size_) + " is not a size of " + kinds_text(ends) + ", which comes in " + some_of_ports(error.close);
  error.offset = size_->offset;
  return error;
}

PortError PortReader::several(const std::vector<PortTypeId>& ports) const {
  std::vector<std::string> close = written(ports);
  const auto same_kind = [&](PortTypeId port) {
    return catalog_.port_type(port).kind == catalog_.port_type(ports.front()).kind;
  };
  const bool only_end = std::all_of(ports.begin(), ports.end(), same_kind);
  std::string message =
      (only_end ? "the end is missing: " : "this can be read in several ways: ") + some_of_ports(close);
  return {std::move(message), only_end ? text_.size() : 0, std::move(close)};
}

std::string PortReader::kinds_text(const KindEnds& ends) const {
  std::vector<std::string> names;
  for (const KindEnd& one : ends) {
    const std::string& name = catalog_.kind(one.kind).name;
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  }
  return some_of_ports(names);
}

}  // namespace riserun::catalog::detail
