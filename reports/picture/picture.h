// SPDX-License-Identifier: Apache-2.0
// Photos and sketches from files that anybody may have made: decoded within fixed bounds, so that
// what is printed is drawn from plain pixels and no byte of the file goes any further.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "base/result.h"

namespace reports {

/// Pixels row by row from the upper left corner, three bytes each: red, green, blue of sRGB.
struct Picture {
    int width = 0;
    int height = 0;
    std::string rgb;
    bool fromJpeg = false;  ///< lost detail already when it was made
};

inline constexpr std::size_t kMostPictureBytes = 50'000'000;
inline constexpr std::int64_t kMostPicturePixels = 40'000'000;

/// The picture, made smaller by a whole factor until no side is longer than `longestSide` pixels,
/// each pixel the mean of those that it stands for; turned upright as a camera's Exif data say.
/// Input: the bytes are no PNG or JPEG file (whatever the file's name says), are damaged or cut
/// short, or go beyond the bounds above. Profiles of colour are not applied, comments not kept.
model::Result<Picture> decodedPicture(std::string_view bytes, int longestSide);

/// As a JPEG file, for a picture that came from one.
model::Result<std::string> jpegOf(const Picture& picture);

}  // namespace reports
