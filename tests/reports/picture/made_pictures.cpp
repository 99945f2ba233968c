// SPDX-License-Identifier: Apache-2.0
#include "made_pictures.h"

#include <QBuffer>
#include <QImageWriter>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <jpeglib.h>
#include <vector>

namespace made {

namespace {

std::string written(const QImage& image, const char* format, bool progressive) {
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    QImageWriter writer(&buffer, format);
    writer.setQuality(95);
    writer.setProgressiveScanWrite(progressive);
    writer.write(image);
    return buffer.data().toStdString();
}

void putBig(std::string& bytes, std::size_t at, std::uint32_t value, int size) {
    for (int i = 0; i < size; ++i)
        bytes[at + static_cast<std::size_t>(i)] =
            static_cast<char>(value >> (8 * (size - 1 - i)) & 0xFFU);
}

/// CRC-32 of ISO 3309, as PNG has it (ISO/IEC 15948:2004, annex D).
std::uint32_t crc(std::string_view bytes) {
    std::uint32_t value = 0xFFFFFFFF;
    for (const char c : bytes) {
        value ^= static_cast<unsigned char>(c);
        for (int bit = 0; bit < 8; ++bit)
            value = value >> 1U ^ ((value & 1U) != 0 ? 0xEDB88320U : 0U);
    }
    return ~value;
}

/// `set` sets what the defaults do not have.
template <class Set>
std::string byLibjpeg(int components, J_COLOR_SPACE space, const Set& set) {
    constexpr int kSide = 16;
    jpeg_compress_struct info{};
    jpeg_error_mgr errors{};
    info.err = jpeg_std_error(&errors);
    jpeg_create_compress(&info);
    unsigned char* bytes = nullptr;
    unsigned long size = 0;
    jpeg_mem_dest(&info, &bytes, &size);
    info.image_width = kSide;
    info.image_height = kSide;
    info.input_components = components;
    info.in_color_space = space;
    jpeg_set_defaults(&info);
    set(info);
    jpeg_start_compress(&info, TRUE);
    std::vector<unsigned char> row(std::size_t{kSide} * static_cast<std::size_t>(components));
    while (info.next_scanline < info.image_height) {
        for (std::size_t i = 0; i < row.size(); ++i)
            row[i] = static_cast<unsigned char>(i * 37 + std::size_t{91} * info.next_scanline);
        JSAMPROW rows[] = {row.data()};
        jpeg_write_scanlines(&info, rows, 1);
    }
    jpeg_finish_compress(&info);
    std::string file(reinterpret_cast<const char*>(bytes), size);
    jpeg_destroy_compress(&info);
    std::free(bytes);
    return file;
}

}  // namespace

QImage pattern(int width, int height) {
    QImage image(width, height, QImage::Format_RGB888);
    for (int y = 0; y < height; ++y)
        for (int x = 0; x < width; ++x)
            image.setPixel(x, y, qRgb(x * 11 % 256, y * 17 % 256, (x * 3 + y * 5) % 256));
    return image;
}

std::string png(const QImage& image) {
    return written(image, "png", false);
}

std::string jpeg(const QImage& image, bool progressive) {
    return written(image, "jpeg", progressive);
}

std::string held(const std::string& jpeg, int orientation, bool littleEndian) {
    const auto number = [littleEndian](std::uint32_t value, int size) {
        std::string bytes(static_cast<std::size_t>(size), '\0');
        putBig(bytes, 0, value, size);
        return littleEndian ? std::string(bytes.rbegin(), bytes.rend()) : bytes;
    };
    // TIFF header, one directory of one entry (0x0112, SHORT, one value), no further directory.
    const std::string tiff = std::string(littleEndian ? "II" : "MM") + number(42, 2) +
                             number(8, 4) + number(1, 2) + number(0x0112, 2) + number(3, 2) +
                             number(1, 4) + number(static_cast<std::uint32_t>(orientation), 2) +
                             number(0, 2) + number(0, 4);
    const std::string body = std::string("Exif\0\0", 6) + tiff;
    std::string segment = "\xFF\xE1";
    segment += static_cast<char>((body.size() + 2) >> 8U);
    segment += static_cast<char>((body.size() + 2) & 0xFFU);
    return jpeg.substr(0, 2) + segment + body + jpeg.substr(2);
}

std::string jpegInManyPasses() {
    static constexpr int kPasses = 64;
    std::array<jpeg_scan_info, kPasses> passes{};
    for (int i = 0; i < kPasses; ++i) {
        passes[static_cast<std::size_t>(i)].comps_in_scan = 1;
        passes[static_cast<std::size_t>(i)].Ss = passes[static_cast<std::size_t>(i)].Se = i;
    }
    return byLibjpeg(1, JCS_GRAYSCALE, [&passes](jpeg_compress_struct& info) {
        info.scan_info = passes.data();
        info.num_scans = kPasses;
    });
}

std::string jpegForAPress() {
    return byLibjpeg(4, JCS_CMYK, [](jpeg_compress_struct&) {});
}

std::string pngOfSize(std::string png, std::uint32_t width, std::uint32_t height) {
    constexpr std::size_t kHeader = 12;  // after the signature and the chunk's length
    putBig(png, kHeader + 4, width, 4);
    putBig(png, kHeader + 8, height, 4);
    putBig(png, kHeader + 17, crc(std::string_view(png).substr(kHeader, 17)), 4);
    return png;
}

std::string jpegOfSize(std::string jpeg, std::uint16_t width, std::uint16_t height) {
    const std::size_t frame = jpeg.find("\xFF\xC0");
    if (frame == std::string::npos) return {};
    putBig(jpeg, frame + 5, height, 2);
    putBig(jpeg, frame + 7, width, 2);
    return jpeg;
}

}  // namespace made
