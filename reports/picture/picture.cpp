// SPDX-License-Identifier: Apache-2.0
#include "picture/picture.h"

#include <algorithm>

#include "picture/decoding.h"

namespace reports {

namespace {

constexpr std::string_view kPngBegins = "\x89PNG\r\n\x1a\n";
constexpr std::string_view kJpegBegins = "\xFF\xD8\xFF";

}  // namespace

Shrinker::Shrinker(int width, int height, int longestSide) : width_(width) {
    const int longest = std::max(width, height);
    factor_ = std::max(1, (longest + longestSide - 1) / longestSide);
    picture_.width = (width + factor_ - 1) / factor_;
    picture_.height = (height + factor_ - 1) / factor_;
    sums_.assign(static_cast<std::size_t>(picture_.width) * 3, 0);
    picture_.rgb.reserve(sums_.size() * static_cast<std::size_t>(picture_.height));
}

void Shrinker::add(const unsigned char* rgb) {
    const auto width = static_cast<std::size_t>(width_);
    const auto factor = static_cast<std::size_t>(factor_);
    for (std::size_t x = 0; x < width; ++x)
        for (std::size_t c = 0; c < 3; ++c) sums_[x / factor * 3 + c] += rgb[x * 3 + c];
    if (++rows_ == factor_) finishRow();
}

void Shrinker::finishRow() {
    for (int x = 0; x < picture_.width; ++x) {
        const int columns = std::min(factor_, width_ - x * factor_);
        const auto count = static_cast<std::uint32_t>(columns * rows_);
        for (std::size_t c = 0; c < 3; ++c) {
            std::uint32_t& sum = sums_[static_cast<std::size_t>(x) * 3 + c];
            picture_.rgb += static_cast<char>((sum + count / 2) / count);
            sum = 0;
        }
    }
    rows_ = 0;
}

Picture Shrinker::take() {
    if (rows_ > 0) finishRow();
    return std::move(picture_);
}

model::Result<void> checkSize(std::int64_t width, std::int64_t height) {
    if (width < 1 || height < 1) return model::inputError("", "the picture is empty");
    // Each side alone first: the product of two sides cannot overflow then.
    if (width <= kMostPicturePixels && height <= kMostPicturePixels &&
        width * height <= kMostPicturePixels)
        return {};
    return model::inputError(
        "", "the picture has %1 × %2 pixels, more than 40 million; save it smaller",
        {std::to_string(width), std::to_string(height)});
}

model::Result<Picture> decodedPicture(std::string_view bytes, int longestSide) {
    if (bytes.size() > kMostPictureBytes)
        return model::inputError("", "the file has %1 bytes, more than 50 million",
                                 {std::to_string(bytes.size())});
    if (bytes.starts_with(kPngBegins)) return decodedPng(bytes, longestSide);
    if (bytes.starts_with(kJpegBegins)) return decodedJpeg(bytes, longestSide);
    return model::inputError("", "the file is no PNG or JPEG picture");
}

}  // namespace reports
