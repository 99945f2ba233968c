// SPDX-License-Identifier: Apache-2.0
#include "new_file.h"

#include <filesystem>
#include <unistd.h>

#include "archive/disk.h"

namespace app {

model::Result<void> writeNewWholeFile(const std::string& out, std::string_view bytes,
                                      const char* advice) {
    const std::string path = std::filesystem::absolute(out).lexically_normal().string();
    if (auto nothing = model::expectNothing(path, advice); !nothing) return nothing;
    std::error_code ignored;
    if (!std::filesystem::is_directory(model::parentOf(path), ignored))
        return model::inputError(out, "cannot be written: the folder is not there");
    const std::string temporary = path + ".new-" + std::to_string(::getpid());
    auto written = model::writeNewFile(temporary, bytes);
    if (written) written = model::syncFile(temporary);
    if (written) written = model::moveToNew(temporary, path);
    if (written) return {};
    ::unlink(temporary.c_str());
    model::Error error = written.error();
    error.place = out;  // not the temporary file's
    return error;
}

}  // namespace app
