// SPDX-License-Identifier: Apache-2.0
// What the two decoders share. For the .cpp files of this folder only.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "picture/picture.h"

namespace reports {

/// Takes a picture row by row and makes it smaller by a whole factor on the way.
class Shrinker {
public:
    /// The smallest factor with which no side is longer than `longestSide`.
    Shrinker(int width, int height, int longestSide);

    /// The next row, `width` pixels of three bytes.
    void add(const unsigned char* rgb);
    /// After the last row.
    Picture take();

private:
    void finishRow();

    int width_;
    int factor_;
    int rows_ = 0;  ///< in the sums
    std::vector<std::uint32_t> sums_;
    Picture picture_;
};

/// Whether a picture of that size may be decoded.
model::Result<void> checkSize(std::int64_t width, std::int64_t height);

model::Result<Picture> decodedPng(std::string_view bytes, int longestSide);
model::Result<Picture> decodedJpeg(std::string_view bytes, int longestSide);

/// 1 to 8 as in Exif 2.3, tag 0x0112; 1, upright, where an APP1 segment does not say otherwise.
int exifOrientation(std::string_view segment);
/// Turned and mirrored upright.
Picture upright(Picture picture, int orientation);

}  // namespace reports
