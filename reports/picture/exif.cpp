// SPDX-License-Identifier: Apache-2.0
// Which way a camera was held. Exif 2.3: a TIFF 6.0 directory in a JPEG file's APP1 segment.
#include <optional>

#include "picture/decoding.h"

namespace reports {

namespace {

constexpr std::string_view kExifBegins{"Exif\0\0", 6};
constexpr std::uint32_t kOrientationTag = 0x0112;
constexpr std::uint32_t kShort = 3;
constexpr std::size_t kEntryBytes = 12;
constexpr int kUpright = 1;
constexpr int kLastOrientation = 8;

/// Whole numbers in the byte order that the first two bytes name; none beyond the end.
class Tiff {
public:
    explicit Tiff(std::string_view bytes) : bytes_(bytes), little_(bytes.starts_with("II")) {}

    [[nodiscard]] std::optional<std::uint32_t> at(std::size_t place, std::size_t size) const {
        if (place > bytes_.size() || size > bytes_.size() - place) return std::nullopt;
        std::uint32_t value = 0;
        for (std::size_t i = 0; i < size; ++i) {
            const std::size_t byte = place + (little_ ? size - 1 - i : i);
            value = value << 8U | static_cast<unsigned char>(bytes_[byte]);
        }
        return value;
    }

private:
    std::string_view bytes_;
    bool little_;
};

}  // namespace

int exifOrientation(std::string_view segment) {
    if (!segment.starts_with(kExifBegins)) return kUpright;
    const Tiff tiff(segment.substr(kExifBegins.size()));
    const auto directory = tiff.at(4, 4);
    if (!directory) return kUpright;
    const auto entries = tiff.at(*directory, 2);
    if (!entries) return kUpright;
    for (std::size_t i = 0; i < *entries; ++i) {
        const std::size_t entry = *directory + 2 + i * kEntryBytes;
        const auto tag = tiff.at(entry, 2);
        if (!tag) return kUpright;
        if (*tag != kOrientationTag) continue;
        const auto type = tiff.at(entry + 2, 2);
        const auto value = tiff.at(entry + 8, 2);
        const bool known = type && *type == kShort && value && *value >= kUpright &&
                           *value <= static_cast<std::uint32_t>(kLastOrientation);
        return known ? static_cast<int>(*value) : kUpright;
    }
    return kUpright;
}

Picture upright(Picture picture, int orientation) {
    if (orientation <= kUpright || orientation > kLastOrientation) return picture;
    // Where the first row and the first column of the file belong: 2 to 4 keep rows as rows.
    const bool swapped = orientation >= 5;
    const bool fromRight =
        orientation == 2 || orientation == 3 || orientation == 6 || orientation == 7;
    const bool fromBelow =
        orientation == 3 || orientation == 4 || orientation == 7 || orientation == 8;
    Picture turned;
    turned.width = swapped ? picture.height : picture.width;
    turned.height = swapped ? picture.width : picture.height;
    turned.fromJpeg = picture.fromJpeg;
    turned.rgb.resize(picture.rgb.size());
    std::size_t to = 0;
    for (int y = 0; y < turned.height; ++y)
        for (int x = 0; x < turned.width; ++x) {
            const int right = fromRight ? turned.width - 1 - x : x;
            const int down = fromBelow ? turned.height - 1 - y : y;
            const int column = swapped ? down : right;
            const int row = swapped ? right : down;
            const auto from =
                3 * (static_cast<std::size_t>(row) * static_cast<std::size_t>(picture.width) +
                     static_cast<std::size_t>(column));
            for (std::size_t c = 0; c < 3; ++c) turned.rgb[to++] = picture.rgb[from + c];
        }
    return turned;
}

}  // namespace reports
