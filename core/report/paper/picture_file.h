// Drawings as a file of their own, no larger than they are.
#pragma once

#include "report/paper/pictures.h"

#include <string>
#include <vector>

namespace riserun::report {

enum class PictureForm { svg, png, pdf };
inline constexpr PictureForm kPictureForms[] = {PictureForm::svg, PictureForm::png, PictureForm::pdf};

/// `svg`, `png`, `pdf`: how the file's name ends.
const char* ending_of(PictureForm form);

/// The pictures one under the other.
/// @param width  points, of each with its margins
/// @return the bytes of the file; a PNG has two pixels a point
/// @throws std::runtime_error when it could not be made
std::string picture_file(const std::vector<Picture>& pictures, double width, PictureForm form);

}  // namespace riserun::report
