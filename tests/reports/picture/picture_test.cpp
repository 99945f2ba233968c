// SPDX-License-Identifier: Apache-2.0
#include "picture/picture.h"

#include <QBuffer>
#include <QImageReader>
#include <array>
#include <cstdlib>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "made_pictures.h"

namespace {

using reports::decodedPicture;
using reports::Picture;
using testing::HasSubstr;

constexpr int kLarge = 10000;

/// The largest difference of a colour from the same pixel as Qt reads it; 999 for another size.
int differenceFromQt(const Picture& picture, const std::string& file) {
    QByteArray bytes(file.data(), static_cast<qsizetype>(file.size()));
    QBuffer buffer(&bytes);
    QImageReader reader(&buffer);
    reader.setAutoTransform(true);
    const QImage image = reader.read();
    if (image.width() != picture.width || image.height() != picture.height) return 999;
    int most = 0;
    for (int y = 0; y < picture.height; ++y)
        for (int x = 0; x < picture.width; ++x) {
            const QRgb pixel = image.pixel(x, y);
            const auto at =
                3 * (static_cast<std::size_t>(y) * static_cast<std::size_t>(picture.width) +
                     static_cast<std::size_t>(x));
            const auto of = [&](std::size_t c) {
                return static_cast<int>(static_cast<unsigned char>(picture.rgb[at + c]));
            };
            most = std::max({most, std::abs(qRed(pixel) - of(0)), std::abs(qGreen(pixel) - of(1)),
                             std::abs(qBlue(pixel) - of(2))});
        }
    return most;
}

std::string reasonAgainst(const std::string& file) {
    const auto picture = decodedPicture(file, kLarge);
    if (picture) return "";
    EXPECT_EQ(picture.error().kind, model::ErrorKind::Input);
    return picture.error().message();
}

// Oracle: Qt's own readers.
TEST(Picture, OracleQtReadsTheSamePixelsFromPng) {
    const QImage image = made::pattern(37, 23);
    for (const QImage::Format format : {QImage::Format_RGB888, QImage::Format_Grayscale8,
                                        QImage::Format_Indexed8, QImage::Format_Mono}) {
        const std::string file = made::png(image.convertToFormat(format));
        const auto picture = decodedPicture(file, kLarge);
        ASSERT_TRUE(picture.ok()) << picture.error().message();
        EXPECT_EQ(differenceFromQt(*picture, file), 0) << format;
        EXPECT_FALSE(picture->fromJpeg);
    }
}

TEST(Picture, OracleQtReadsTheSamePixelsFromJpeg) {
    const QImage image = made::pattern(37, 23);
    for (const std::string& file : {made::jpeg(image), made::jpeg(image, true),
                                    made::jpeg(image.convertToFormat(QImage::Format_Grayscale8))}) {
        const auto picture = decodedPicture(file, kLarge);
        ASSERT_TRUE(picture.ok()) << picture.error().message();
        EXPECT_LE(differenceFromQt(*picture, file), 1);
        EXPECT_TRUE(picture->fromJpeg);
    }
}

TEST(Picture, OracleQtTurnsAPhotoUprightInTheSameWay) {
    const std::string file = made::jpeg(made::pattern(40, 24));
    for (int orientation = 1; orientation <= 8; ++orientation)
        for (const bool littleEndian : {true, false}) {
            const std::string held = made::held(file, orientation, littleEndian);
            const auto picture = decodedPicture(held, kLarge);
            ASSERT_TRUE(picture.ok()) << picture.error().message();
            EXPECT_LE(differenceFromQt(*picture, held), 1) << orientation << littleEndian;
        }
}

TEST(Picture, TakesNoNoticeOfAnOrientationThatIsNone) {
    const std::string file = made::jpeg(made::pattern(40, 24));
    for (const int orientation : {0, 9, 65535}) {
        const auto picture = decodedPicture(made::held(file, orientation, true), kLarge);
        ASSERT_TRUE(picture.ok());
        EXPECT_EQ(picture->width, 40);
    }
}

TEST(Picture, ShowsThePaperWhereItIsTransparent) {
    QImage image(2, 1, QImage::Format_ARGB32);
    image.setPixel(0, 0, qRgba(10, 20, 30, 255));
    image.setPixel(1, 0, qRgba(10, 20, 30, 0));
    const auto picture = decodedPicture(made::png(image), kLarge);
    ASSERT_TRUE(picture.ok());
    EXPECT_EQ(picture->rgb, "\x0A\x14\x1E\xFF\xFF\xFF");
}

TEST(Picture, IsMadeSmallerByTheMeanOfWholeSquares) {
    QImage image(5, 2, QImage::Format_RGB888);
    const std::array<std::array<int, 5>, 2> red = {{{10, 20, 100, 101, 7}, {30, 41, 102, 104, 8}}};
    for (int y = 0; y < 2; ++y)
        for (int x = 0; x < 5; ++x)
            image.setPixel(
                x, y, qRgb(red[static_cast<std::size_t>(y)][static_cast<std::size_t>(x)], 0, 255));
    const auto picture = decodedPicture(made::png(image), 3);
    ASSERT_TRUE(picture.ok());
    EXPECT_EQ(picture->width, 3);
    EXPECT_EQ(picture->height, 1);
    // (10+20+30+41)/4 = 25.25; (100+101+102+104)/4 = 101.75; (7+8)/2 = 7.5.
    EXPECT_EQ(picture->rgb, std::string("\x19\x00\xFF\x66\x00\xFF\x08\x00\xFF", 9));
}

TEST(Picture, WrittenAsJpegIsReadAgainAlmostAsItWas) {
    QImage image(64, 48, QImage::Format_RGB888);
    image.fill(qRgb(200, 120, 40));
    const auto picture = decodedPicture(made::jpeg(image), kLarge);
    ASSERT_TRUE(picture.ok());
    const auto file = reports::jpegOf(*picture);
    ASSERT_TRUE(file.ok());
    EXPECT_LE(differenceFromQt(*picture, *file), 4);
}

TEST(Picture, IsToldByItsBytesNotByItsName) {
    for (const std::string& file :
         {std::string(), std::string("GIF89a........"), std::string("<svg/>"),
          std::string("%PDF-1.7"), std::string("\x89PNG"), std::string("\xFF\xD8")})
        EXPECT_THAT(reasonAgainst(file), HasSubstr("no PNG or JPEG picture"));
}

TEST(Picture, CutShortAnywhereIsRefused) {
    const QImage image = made::pattern(31, 17);
    for (const std::string& file : {made::png(image), made::jpeg(image), made::jpeg(image, true)}) {
        ASSERT_TRUE(decodedPicture(file, kLarge).ok());
        for (std::size_t length = 0; length < file.size() - 12; ++length)
            ASSERT_NE(reasonAgainst(file.substr(0, length)), "") << length << " of " << file.size();
    }
}

TEST(Picture, WithAnyByteAlteredIsReadWithinItsBoundsOrRefused) {
    const QImage image = made::pattern(31, 17);
    for (const std::string& file : {made::png(image), made::jpeg(image), made::jpeg(image, true),
                                    made::held(made::jpeg(image), 6, true)})
        for (std::size_t at = 0; at < file.size(); ++at)
            for (const unsigned int flip : {0x01U, 0x80U, 0xFFU}) {
                std::string altered = file;
                altered[at] = static_cast<char>(static_cast<unsigned char>(altered[at]) ^ flip);
                const auto picture = decodedPicture(altered, 100);
                if (!picture) continue;
                ASSERT_EQ(picture->rgb.size(), std::size_t{3} *
                                                   static_cast<std::size_t>(picture->width) *
                                                   static_cast<std::size_t>(picture->height));
                ASSERT_LE(std::max(picture->width, picture->height), 100);
            }
}

TEST(Picture, AboveFortyMillionPixelsIsRefusedBeforeAnyIsRead) {
    const std::string png = made::png(made::pattern(8, 8));
    const std::string jpeg = made::jpeg(made::pattern(8, 8));
    // 8000 × 5000 is the bound: such a file is refused only because it has no such pixels.
    EXPECT_THAT(reasonAgainst(made::pngOfSize(png, 8000, 5000)), HasSubstr("cannot be read"));
    EXPECT_THAT(reasonAgainst(made::pngOfSize(png, 8000, 5001)),
                HasSubstr("8000 × 5001 pixels, more than 40 million"));
    EXPECT_NE(reasonAgainst(made::pngOfSize(png, 0x7FFFFFFF, 0x7FFFFFFF)), "");
    EXPECT_NE(reasonAgainst(made::pngOfSize(png, 0, 5)), "");
    EXPECT_THAT(reasonAgainst(made::jpegOfSize(jpeg, 8000, 5000)), HasSubstr("cannot be read"));
    EXPECT_THAT(reasonAgainst(made::jpegOfSize(jpeg, 65000, 65000)), HasSubstr("65000 × 65000"));
}

TEST(Picture, AboveFiftyMillionBytesIsRefused) {
    std::string file = made::png(made::pattern(8, 8));
    file.resize(reports::kMostPictureBytes + 1);
    EXPECT_THAT(reasonAgainst(file), HasSubstr("50000001 bytes, more than 50 million"));
}

TEST(Picture, InEndlessPassesIsRefused) {
    EXPECT_THAT(reasonAgainst(made::jpegInManyPasses()), HasSubstr("more than 50 passes"));
}

TEST(Picture, InColoursOfAPrintingPressIsRefused) {
    EXPECT_THAT(reasonAgainst(made::jpegForAPress()), HasSubstr("red, green and blue"));
}

}  // namespace
