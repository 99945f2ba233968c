// SPDX-License-Identifier: Apache-2.0
// PNG files, through libpng's simplified interface: it reports errors in its image and keeps the
// bounds of single chunks by itself.
#include <limits>
#include <memory>
#include <png.h>
#include <vector>

#include "picture/decoding.h"

namespace reports {

namespace {

struct FreeImage {
    void operator()(png_image* image) const { png_image_free(image); }
};

model::Error damaged(const png_image& image) {
    return model::inputError("", "the PNG file cannot be read: %1", {image.message});
}

}  // namespace

model::Result<Picture> decodedPng(std::string_view bytes, int longestSide) {
    png_image image{};
    image.version = PNG_IMAGE_VERSION;
    const std::unique_ptr<png_image, FreeImage> owner(&image);
    if (png_image_begin_read_from_memory(&image, bytes.data(), bytes.size()) == 0)
        return damaged(image);
    if (auto fits = checkSize(image.width, image.height); !fits) return fits.error();
    image.format = PNG_FORMAT_RGB;
    const std::size_t stride = PNG_IMAGE_ROW_STRIDE(image);
    std::vector<unsigned char> pixels(stride * image.height);
    // What is transparent shows the paper.
    const png_color white{255, 255, 255};
    if (png_image_finish_read(&image, &white, pixels.data(), 0, nullptr) == 0)
        return damaged(image);
    Shrinker shrinker(static_cast<int>(image.width), static_cast<int>(image.height), longestSide);
    for (std::size_t y = 0; y < image.height; ++y) shrinker.add(pixels.data() + y * stride);
    return shrinker.take();
}

}  // namespace reports
