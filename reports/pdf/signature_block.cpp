// SPDX-License-Identifier: Apache-2.0
#include <algorithm>

#include "pdf/blocks.h"
#include "pdf/cells.h"
#include "pdf/signature_field.h"
#include "pdf/style.h"

namespace reports {

namespace {

constexpr std::size_t kSideBySide = 2;
constexpr double kGutterMm = 6;
static_assert(kSideBySide * kSignatureBoxWidthMm + (kSideBySide - 1) * kGutterMm <= style::kWidth);

Strip boxStrip(std::span<const SignatureBoxes::Box> boxes) {
    Strip strip;
    strip.height = kSignatureBoxHeightMm;
    strip.gapBefore = 0.8;
    double x = style::kLeft;
    for (const SignatureBoxes::Box& box : boxes) {
        strip.signatureBoxes.push_back({box.field, x, kSignatureBoxWidthMm, kSignatureBoxHeightMm});
        x += kSignatureBoxWidthMm + kGutterMm;
    }
    strip.draw = [places = strip.signatureBoxes](Canvas& canvas, double top) {
        for (const SignatureBoxPlace& place : places)
            canvas.rectangle(place.x, top, place.width, place.height, std::nullopt,
                             Pen{0.2, style::kMuted, Dash::Solid});
    };
    return strip;
}

}  // namespace

void addSignatureBoxes(Strips& strips, const SignatureBoxes& signatures, Faces& faces) {
    std::span<const SignatureBoxes::Box> left = signatures.boxes;
    while (!left.empty()) {
        const auto row = left.first(std::min(kSideBySide, left.size()));
        left = left.subspan(row.size());
        std::vector<Box> labels;
        double x = 0;
        for (const SignatureBoxes::Box& box : row) {
            labels.push_back(
                {x, kSignatureBoxWidthMm, box.label, Weight::Bold, style::kTableSize, style::kInk});
            x += kSignatureBoxWidthMm + kGutterMm;
        }
        Strips label = rowOf(std::move(labels), {}, faces);
        for (Strip& strip : label) strip.keepWithNext = true;
        append(strips, std::move(label), 3);
        strips.push_back(boxStrip(row));
        strips.back().keepWithNext = !left.empty();
    }
}

}  // namespace reports
