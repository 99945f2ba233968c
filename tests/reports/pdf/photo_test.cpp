// SPDX-License-Identifier: Apache-2.0
// Photos from files that anybody may have made.
#include <QBuffer>
#include <QImage>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "pdf/render.h"
#include "tools.h"

namespace {

using reports::Photo;
using testing::HasSubstr;
using testing::Not;
using tools::PdfOnDisk;

constexpr const char* kForeign = "FOREIGN-BYTES-4711";

/// Black above, white below.
std::string file(const char* format, int width, int height) {
    QImage image(width, height, QImage::Format_RGB888);
    image.fill(Qt::white);
    for (int y = 0; y < height / 2; ++y)
        for (int x = 0; x < width; ++x) image.setPixel(x, y, qRgb(0, 0, 0));
    image.setText("Comment", kForeign);
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, format);
    return buffer.data().toStdString() + kForeign;
}

Photo photo(std::string bytes) {
    return {"A-3: Flange after cleaning",
            {{"", "Scale, in the picture", "100 mm rule"}, {"", "Datum", "punch mark, up"}},
            "attachment A-3",
            std::move(bytes)};
}

TEST(PdfPhoto, StandsBesideItsScaleAndDatum) {
    const PdfOnDisk pdf(tools::rendered(tools::documentOf({photo(file("png", 400, 200))})));
    const std::string text = pdf.text();
    for (const char* part : {"A-3: Flange after cleaning", "100 mm rule", "punch mark, up"})
        EXPECT_THAT(text, HasSubstr(part));
    // 96 mm wide and 48 mm high from the upper left corner of the text, at 24 and 22 mm; the first
    // block begins below the masthead, so that its place is searched in the left column.
    constexpr int kDotsInMm = 4;
    const QImage column = pdf.image(1, 102, QRect(70 * kDotsInMm, 0, 1, 150 * kDotsInMm));
    int dark = 0;
    for (int y = 0; y < column.height(); ++y) dark += qGray(column.pixel(0, y)) < 30 ? 1 : 0;
    EXPECT_NEAR(dark, 24 * kDotsInMm, 4);
}

TEST(PdfPhoto, IsAPictureOfOurOwnMakingAndSmallEnough) {
    for (const char* format : {"png", "jpeg"}) {
        const PdfOnDisk pdf(tools::rendered(tools::documentOf({photo(file(format, 3000, 2000))})));
        const auto images = tools::run("pdfimages", {"-list", pdf.path()});
        EXPECT_THAT(images.output, HasSubstr("1000   667")) << images.output;
        EXPECT_EQ(tools::run("qpdf", {"--check", pdf.path()}).code, 0);
        const auto plain = tools::run("qpdf", {"--qdf", "--decode-level=all", pdf.path(), "-"});
        EXPECT_THAT(plain.output, HasSubstr("/Image"));
        EXPECT_THAT(plain.output, Not(HasSubstr(kForeign)));
    }
}

TEST(PdfPhoto, ThatCannotBeDecodedIsNamed) {
    const std::string sound = file("jpeg", 60, 40);
    for (const std::string& bytes : {std::string("%PDF-1.7"), sound.substr(0, 300)}) {
        const auto pdf = reports::renderPdf(tools::documentOf({photo(bytes)}));
        ASSERT_FALSE(pdf.ok());
        EXPECT_EQ(pdf.error().kind, model::ErrorKind::Input);
        EXPECT_EQ(pdf.error().place, "attachment A-3");
    }
}

TEST(PdfPhoto, WithEndlessTextsGoesOnOverPages) {
    Photo wordy = photo(file("png", 40, 80));
    std::string datum;
    for (int i = 0; i < 3000; ++i) datum += "word" + std::to_string(i) + " ";
    wordy.facts[1].value = datum;
    const PdfOnDisk pdf(tools::rendered(tools::documentOf({wordy})));
    EXPECT_GT(pdf.pages(), 1);
    EXPECT_THAT(pdf.text(), HasSubstr("word2999"));
}

TEST(PdfPhoto, EqualDocumentsGiveEqualBytes) {
    const auto document = tools::documentOf({photo(file("jpeg", 60, 40))});
    EXPECT_EQ(tools::rendered(document), tools::rendered(document));
}

}  // namespace
