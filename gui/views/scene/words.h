// The window's own words, each once: sheets, buttons, what a run and its parts are said to be. The plan's sentences
// are core/report's.
#pragma once

namespace riserun::views::words {

// Sheets.
inline constexpr const char* kPlumbing = "Plumbing";
inline constexpr const char* kFillAndDrain = "Fill and drain";
inline constexpr const char* kMeasurements = "Measurements";
inline constexpr const char* kShopping = "Shopping and cut list";
inline constexpr const char* kResults = "Results";
inline constexpr const char* kJobFile = "Job file";

// Questions and entries.
inline constexpr const char* kOk = "OK";
inline constexpr const char* kCancel = "Cancel";
inline constexpr const char* kClose = "Close";
inline constexpr const char* kApply = "Apply";
inline constexpr const char* kDiscard = "Discard";
inline constexpr const char* kReload = "Reload";
inline constexpr const char* kKeepMine = "Keep mine";
inline constexpr const char* kRecover = "Recover";
inline constexpr const char* kRemove = "Remove";
inline constexpr const char* kNotSet = "not set";
inline constexpr const char* kFix = "Fix: ";

// The view.
inline constexpr const char* kZoomIn = "Zoom in";
inline constexpr const char* kZoomOut = "Zoom out";
inline constexpr const char* kZoomToFit = "Zoom to fit";

// A run and its parts.
inline constexpr const char* kRun = "run";
inline constexpr const char* kInUse = "in use";
inline constexpr const char* kInUsePinned = "in use, pinned";
inline constexpr const char* kUseThisRun = "Use this run";
inline constexpr const char* kBestAgain = "Best again";
inline constexpr const char* kSwap = "Swap";
inline constexpr const char* kKeepThisPart = "Keep this part";
inline constexpr const char* kExclude = "Exclude";
inline constexpr const char* kInStock = "In stock";
inline constexpr const char* kMustHave = "Must have";
inline constexpr const char* kMakeUpLast = "make up last";
inline constexpr const char* kDissimilarMetals = "dissimilar metals";
inline constexpr const char* kKeepApart = "keep metals apart";

// How an end is held, in the order of chain::Freedom.
inline constexpr const char* kHeld[] = {"fixed", "free to slide", "free to turn", "loose"};

}  // namespace riserun::views::words
