// SPDX-License-Identifier: Apache-2.0
// Picture files made for tests by other people's programs.
#pragma once

#include <QImage>
#include <cstdint>
#include <string>

namespace made {

/// A picture in which no two neighbouring pixels are alike and no side is like another.
QImage pattern(int width, int height);

std::string png(const QImage& image);
/// `progressive`: in several passes.
std::string jpeg(const QImage& image, bool progressive = false);
/// The file with an Exif segment that says how the camera was held.
std::string held(const std::string& jpeg, int orientation, bool littleEndian);
/// Grey, in 64 passes: one for each coefficient.
std::string jpegInManyPasses();
std::string jpegForAPress();

/// The PNG file with another size in its header, whose check sum is right.
std::string pngOfSize(std::string png, std::uint32_t width, std::uint32_t height);
/// The JPEG file with another size in its frame header.
std::string jpegOfSize(std::string jpeg, std::uint16_t width, std::uint16_t height);

}  // namespace made
