#include "catalog/identify/thread_form.h"

#include <cmath>

namespace riserun::catalog {

namespace {

constexpr double kTaper = 1.0 / 16.0;                // on diameter: ASME B1.20.1, ISO 7-1
constexpr double kNptHeight = 0.8;                   // of the pitch: ASME B1.20.1, 2.4
constexpr double kNptCrestsCutLower = 0.09;          // of the pitch, on diameter; see thread_diameters
constexpr double kWhitworthHeight = 0.640327;        // of the pitch: ISO 7-1, ISO 228-1
constexpr double kUnifiedPitchDepth = 0.649519;      // D - E over p: ASME B1.1, 0.75 H
constexpr double kMajorToleranceInches = 0.087;      // times p^(2/3) in inches; see thread_diameters
constexpr double kStraightClearance = 0.1;           // of the pitch, between pitch diameters: about class 2
constexpr double kSixtyDegreeMinor[] = {1.2, 0.85};  // D - minor over p, least and greatest bore
constexpr double kWhitworthMinor[] = {1.280654, 0.98};

ThreadDiameters sixty_degree_taper(const JointSize& size, Length pitch) {
  const Length outside = size.outside_diameter;
  const Length small_end = outside - 0.05 * outside * (in_inches(pitch)) - 1.1 * pitch;
  const Length mouth = small_end + size.hand_tight_engagement * kTaper;
  const Length turn = pitch * kTaper;
  const Length inside = mouth - kNptHeight * pitch;
  return {{small_end + kNptHeight * pitch - turn - kNptCrestsCutLower * pitch, outside + turn},
          {inside - size.hand_tight_engagement * kTaper - turn, inside + turn + kNptCrestsCutLower * pitch},
          small_end,
          mouth};
}

ThreadDiameters whitworth_taper(const JointSize& size, Length pitch) {
  const Length gauge_plane = size.outside_diameter;
  const Length to_small_end = size.hand_tight_engagement * kTaper;
  const Length to_large_end = (size.thread_length - size.hand_tight_engagement) * kTaper;
  const Length turn = pitch * kTaper;
  const Length inside = gauge_plane - 2.0 * kWhitworthHeight * pitch;
  const Length pitch_diameter = gauge_plane - kWhitworthHeight * pitch;
  return {{gauge_plane - to_small_end - turn, gauge_plane + to_large_end + turn},
          {inside - to_small_end - turn, inside + turn},
          pitch_diameter - to_small_end,
          pitch_diameter};
}

ThreadDiameters straight(const JointSize& size, Length pitch, bool whitworth) {
  const Length major = size.major_diameter > Length{} ? size.major_diameter : size.outside_diameter;
  const Length tolerance = inches(kMajorToleranceInches * std::cbrt(in_inches(pitch) * in_inches(pitch)));
  const double(&minor)[2] = whitworth ? kWhitworthMinor : kSixtyDegreeMinor;
  const Length pitch_diameter = major - (whitworth ? kWhitworthHeight : kUnifiedPitchDepth) * pitch;
  return {{major - tolerance, major},
          {major - minor[0] * pitch, major - minor[1] * pitch},
          pitch_diameter,
          pitch_diameter + kStraightClearance * pitch};
}

}  // namespace

std::optional<ThreadDiameters> thread_diameters(const JointKind& kind, const JointSize& size) {
  if (!kind.threaded || !kind.recognition || size.threads_per_inch <= 0.0) return std::nullopt;
  const Length pitch = inches(1.0 / size.threads_per_inch);
  const bool whitworth = kind.recognition->flank_angle_degrees == 55.0;
  if (!kind.tapered) return straight(size, pitch, whitworth);
  return whitworth ? whitworth_taper(size, pitch) : sixty_degree_taper(size, pitch);
}

}  // namespace riserun::catalog
