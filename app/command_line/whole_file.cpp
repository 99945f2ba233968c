// SPDX-License-Identifier: Apache-2.0
#include "whole_file.h"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <memory>

namespace app {

model::Result<std::string> readWholeFile(const std::string& file, std::size_t most) {
    std::error_code failure;
    const auto status = std::filesystem::status(file, failure);
    if (status.type() == std::filesystem::file_type::not_found)
        return model::inputError(file, "is not there");
    if (failure == std::errc::filename_too_long)
        return model::inputError(file, "is too long a file name");
    if (failure) return model::refusal(file, "cannot be read: %1", {failure.message()});
    if (!std::filesystem::is_regular_file(status)) return model::inputError(file, "is no file");

    const std::unique_ptr<std::FILE, int (*)(std::FILE*)> opened(std::fopen(file.c_str(), "rb"),
                                                                 &std::fclose);
    if (!opened) return model::refusal(file, "cannot be read: %1", {std::strerror(errno)});
    std::string bytes;
    constexpr std::size_t kPiece = 1U << 20U;
    for (std::size_t taken = kPiece; taken == kPiece;) {
        const std::size_t before = bytes.size();
        bytes.resize(before + kPiece);
        taken = std::fread(bytes.data() + before, 1, kPiece, opened.get());
        bytes.resize(before + taken);
        if (std::ferror(opened.get()) != 0)
            return model::refusal(file, "cannot be read: %1", {std::strerror(errno)});
        if (bytes.size() > most)
            return model::inputError(file, "is larger than %1 bytes", {std::to_string(most)});
    }
    return bytes;
}

}  // namespace app
