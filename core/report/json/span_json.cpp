#include "report/json/span_json.h"

#include <nlohmann/json.hpp>

namespace riserun::report {

namespace {

using json = nlohmann::ordered_json;

}  // namespace

json span_json(const catalog::Catalog& catalog, const chain::Chain& chain) {
  static const char* const kMakes[] = {"stock_near", "stock", "cut_pipe", "hose", "moving_end"};
  const chain::SpanFit& fit = *chain.span;
  json pieces = json::array();
  for (const chain::SpanPiece& piece : fit.pieces)
    pieces.push_back({{"part", piece.part},
                      {"id", catalog.part(chain.parts[piece.part].part).id},
                      {"length_m", in_metres(piece.length)},
                      {"cut", piece.cut},
                      {"threads", piece.threads}});
  return {{"wanted_m", in_metres(fit.wanted.along)},
          {"offset_m", in_metres(fit.wanted.offset)},
          {"roll_m", in_metres(fit.wanted.roll)},
          {"made_by", kMakes[static_cast<std::size_t>(fit.make)]},
          {"lands_m", in_metres(fit.lands)},
          {"miss_m", in_metres(fit.miss())},
          {"band_m", in_metres(fit.band)},
          {"likely_band_m", in_metres(fit.likely_band)},
          {"lands_aside_m", in_metres(fit.lands_aside)},
          {"band_aside_m", in_metres(fit.band_aside)},
          {"bend_degrees", fit.bend_degrees},
          {"travel_m", in_metres(fit.travel)},
          {"hose_radius_m", in_metres(fit.hose_radius)},
          {"joints", fit.joints},
          {"pieces", pieces}};
}

}  // namespace riserun::report
