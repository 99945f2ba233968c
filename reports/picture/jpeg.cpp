// SPDX-License-Identifier: Apache-2.0
// JPEG files, through libjpeg. It leaves its own functions by longjmp: each function here that
// calls setjmp holds nothing that would have to be destroyed.
#include <algorithm>
#include <array>
#include <csetjmp>
#include <cstdio>  // jpeglib.h needs it
#include <cstdlib>
#include <memory>
#include <vector>

// clang-format off
#include <jpeglib.h>
#include <jerror.h>
// clang-format on

#include "picture/decoding.h"

namespace reports {

namespace {

// A progressive file may hold any number of scans, each over all pixels: a camera writes about ten.
constexpr int kMostScans = 50;
constexpr int kQuality = 90;

struct Errors {
    jpeg_error_mgr manager{};  // first: libjpeg hands back a pointer to it
    std::jmp_buf leave{};
    std::array<char, JMSG_LENGTH_MAX> message{};
};

void leave(j_common_ptr info) {
    auto* errors = reinterpret_cast<Errors*>(info->err);
    info->err->format_message(info, errors->message.data());
    std::longjmp(errors->leave, 1);
}

/// Damage is an error here: libjpeg would fill up what is missing with grey.
void hear(j_common_ptr info, int level) {
    if (level < 0 && info->err->msg_code != JWRN_EXTRANEOUS_DATA) leave(info);
}

void setErrors(Errors& errors, jpeg_error_mgr*& of) {
    of = jpeg_std_error(&errors.manager);
    errors.manager.error_exit = &leave;
    errors.manager.emit_message = &hear;
    errors.manager.output_message = [](j_common_ptr) {};
}

void countScans(j_common_ptr info) {
    if (reinterpret_cast<j_decompress_ptr>(info)->input_scan_number <= kMostScans) return;
    auto* errors = reinterpret_cast<Errors*>(info->err);
    constexpr std::string_view kReason = "it builds up in more than 50 passes";
    static_assert(kMostScans == 50 && kReason.size() < JMSG_LENGTH_MAX);
    std::ranges::copy(kReason, errors->message.begin());
    std::longjmp(errors->leave, 1);
}

struct Reading {
    jpeg_decompress_struct info{};
    Errors errors;
    jpeg_progress_mgr progress{};

    Reading() { setErrors(errors, info.err); }
    Reading(const Reading&) = delete;
    Reading& operator=(const Reading&) = delete;
    ~Reading() { jpeg_destroy_decompress(&info); }
};

bool readHeader(Reading& reading, std::string_view bytes) {
    if (setjmp(reading.errors.leave) != 0) return false;
    jpeg_decompress_struct& info = reading.info;
    jpeg_create_decompress(&info);
    reading.progress.progress_monitor = &countScans;
    info.progress = &reading.progress;
    jpeg_mem_src(&info, reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size());
    constexpr unsigned int kWholeSegment = 0xFFFF;
    jpeg_save_markers(&info, JPEG_APP0 + 1, kWholeSegment);
    return jpeg_read_header(&info, TRUE) == JPEG_HEADER_OK;
}

/// After `info.out_color_space` and the scale are set.
bool start(Reading& reading) {
    if (setjmp(reading.errors.leave) != 0) return false;
    return jpeg_start_decompress(&reading.info) == TRUE;
}

bool readRow(Reading& reading, unsigned char* row) {
    if (setjmp(reading.errors.leave) != 0) return false;
    JSAMPROW rows[] = {row};
    return jpeg_read_scanlines(&reading.info, rows, 1) == 1;
}

bool finish(Reading& reading) {
    if (setjmp(reading.errors.leave) != 0) return false;
    return jpeg_finish_decompress(&reading.info) == TRUE;
}

int orientationOf(const Reading& reading) {
    for (jpeg_saved_marker_ptr marker = reading.info.marker_list; marker != nullptr;
         marker = marker->next) {
        const int orientation =
            exifOrientation({reinterpret_cast<const char*>(marker->data), marker->data_length});
        if (orientation != 1) return orientation;
    }
    return 1;
}

struct Writing {
    jpeg_compress_struct info{};
    Errors errors;
    unsigned char* bytes = nullptr;
    unsigned long size = 0;

    Writing() { setErrors(errors, info.err); }
    Writing(const Writing&) = delete;
    Writing& operator=(const Writing&) = delete;
    ~Writing() {
        jpeg_destroy_compress(&info);
        std::free(bytes);  // from libjpeg's malloc()
    }
};

bool write(Writing& writing, const Picture& picture) {
    if (setjmp(writing.errors.leave) != 0) return false;
    jpeg_compress_struct& info = writing.info;
    jpeg_create_compress(&info);
    jpeg_mem_dest(&info, &writing.bytes, &writing.size);
    info.image_width = static_cast<JDIMENSION>(picture.width);
    info.image_height = static_cast<JDIMENSION>(picture.height);
    info.input_components = 3;
    info.in_color_space = JCS_RGB;
    jpeg_set_defaults(&info);
    jpeg_set_quality(&info, kQuality, TRUE);
    jpeg_start_compress(&info, TRUE);
    while (info.next_scanline < info.image_height) {
        // libjpeg only reads through it.
        JSAMPROW rows[] = {
            const_cast<unsigned char*>(reinterpret_cast<const unsigned char*>(picture.rgb.data()) +
                                       std::size_t{3} * info.next_scanline * info.image_width)};
        jpeg_write_scanlines(&info, rows, 1);
    }
    jpeg_finish_compress(&info);
    return true;
}

}  // namespace

model::Result<Picture> decodedJpeg(std::string_view bytes, int longestSide) {
    const auto reading = std::make_unique<Reading>();
    const auto damaged = [&reading] {
        return model::inputError("", "the JPEG file cannot be read: %1",
                                 {reading->errors.message.data()});
    };
    if (!readHeader(*reading, bytes)) return damaged();
    jpeg_decompress_struct& info = reading->info;
    if (auto fits = checkSize(info.image_width, info.image_height); !fits) return fits.error();
    if (info.jpeg_color_space == JCS_CMYK || info.jpeg_color_space == JCS_YCCK)
        return model::inputError("",
                                 "the JPEG file has the colours of a printing press; save it "
                                 "with red, green and blue");
    info.out_color_space = JCS_RGB;
    if (!start(*reading)) return damaged();
    std::vector<unsigned char> row(std::size_t{3} * info.output_width);
    Shrinker shrinker(static_cast<int>(info.output_width), static_cast<int>(info.output_height),
                      longestSide);
    while (info.output_scanline < info.output_height) {
        if (!readRow(*reading, row.data())) return damaged();
        shrinker.add(row.data());
    }
    const int orientation = orientationOf(*reading);
    if (!finish(*reading)) return damaged();
    Picture picture = upright(shrinker.take(), orientation);
    picture.fromJpeg = true;
    return picture;
}

model::Result<std::string> jpegOf(const Picture& picture) {
    const auto writing = std::make_unique<Writing>();
    if (!write(*writing, picture))
        return model::refusal("", "the picture cannot be written: %1",
                              {writing->errors.message.data()});
    return std::string(reinterpret_cast<const char*>(writing->bytes), writing->size);
}

}  // namespace reports
