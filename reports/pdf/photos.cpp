// SPDX-License-Identifier: Apache-2.0
#include "pdf/photos.h"

#include <algorithm>

#include "pdf/blocks.h"
#include "pdf/cells.h"
#include "pdf/style.h"
#include "picture/picture.h"

namespace reports {

namespace {

constexpr double kMostWidthMm = 96;
constexpr double kMostHeightMm = 72;
constexpr int kMostPixels = 1200;  // 300 to the inch across the largest photo
constexpr double kBetweenMm = 5;

HPDF_Image imageOf(HPDF_Doc file, const Picture& picture, const std::string& jpeg) {
    if (picture.fromJpeg)
        return HPDF_LoadJpegImageFromMem(file, reinterpret_cast<const HPDF_BYTE*>(jpeg.data()),
                                         static_cast<HPDF_UINT>(jpeg.size()));
    return HPDF_LoadRawImageFromMem(file, reinterpret_cast<const HPDF_BYTE*>(picture.rgb.data()),
                                    static_cast<HPDF_UINT>(picture.width),
                                    static_cast<HPDF_UINT>(picture.height), HPDF_CS_DEVICE_RGB, 8);
}

model::Result<LoadedPhoto> loaded(HaruFile& file, const Photo& photo) {
    const auto picture = decodedPicture(photo.bytes, kMostPixels);
    if (!picture) return picture.error();
    std::string jpeg;
    if (picture->fromJpeg) {
        auto written = jpegOf(*picture);
        if (!written) return written.error();
        jpeg = std::move(*written);
    }
    const HPDF_Image image = imageOf(file.get(), *picture, jpeg);
    if (image == nullptr) {
        if (auto failed = file.error("adding a picture")) return *failed;
        return model::refusal("", "the PDF library did not take the picture");
    }
    return LoadedPhoto{image, static_cast<double>(picture->height) / picture->width};
}

}  // namespace

model::Result<std::vector<LoadedPhoto>> loadedPhotos(HaruFile& file, const Document& document) {
    std::vector<LoadedPhoto> photos;
    for (const Block& block : document.blocks) {
        const auto* photo = std::get_if<Photo>(&block);
        if (photo == nullptr) continue;
        auto one = loaded(file, *photo);
        if (!one) {
            model::Error error = one.error();
            error.place = photo->place;
            return error;
        }
        photos.push_back(*one);
    }
    return photos;
}

void addPhoto(Strips& strips, const Photo& photo, const LoadedPhoto& loaded, Faces& faces) {
    double width = kMostWidthMm;
    double height = width * loaded.heightToWidth;
    if (height > kMostHeightMm) {
        height = kMostHeightMm;
        width = height / loaded.heightToWidth;
    }
    const double left = kMostWidthMm + kBetweenMm;
    const double room = style::kWidth - left;
    Strips texts;
    double textHeight = 0;
    const auto add = [&](const std::string& text, Weight weight, double size, Colour colour) {
        for (Strip& row : rowOf({{left, room, text, weight, size, colour}}, {0.4, false}, faces)) {
            textHeight += row.height;
            texts.push_back(std::move(row));
        }
    };
    add(photo.caption, Weight::Bold, style::kNoteSize, style::kInk);
    for (const Field& fact : photo.facts) {
        add(fact.name, Weight::Regular, style::kLabelSize, style::kMuted);
        add(fact.value, Weight::Regular, style::kTableSize, style::kInk);
    }
    // Texts that are no captions any more go on below, over pages if they have to.
    Strips below;
    if (textHeight > 2 * kMostHeightMm) std::swap(texts, below);
    Strip strip;
    strip.height = std::max(height, texts.empty() ? 0 : textHeight);
    strip.gapBefore = 3;
    strip.keepWithNext = !below.empty();
    strip.draw = [=, image = loaded.image](Canvas& canvas, double top) {
        canvas.picture(image, style::kLeft, top, width, height);
        canvas.rectangle(style::kLeft, top, width, height, std::nullopt, Pen{0.15, style::kFaint});
        double y = top;
        for (const Strip& text : texts) {
            text.draw(canvas, y);
            y += text.height;
        }
    };
    strips.push_back(std::move(strip));
    append(strips, std::move(below), 1);
}

}  // namespace reports
