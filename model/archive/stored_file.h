// SPDX-License-Identifier: Apache-2.0
// Files that are named by what they hold: FOLDER/ab/cdef... with the hexadecimal SHA-256 of their
// bytes. A file is there whole or not at all.
#pragma once

#include <string>
#include <string_view>
#include <type_traits>

#include "base/digest.h"
#include "base/result.h"

namespace model {

/// FOLDER/ab/cdef....pdf
std::string storedFilePath(const std::string& folder, const std::string& digest);

struct StoredFile {
    std::string digest;  ///< SHA-256, 64 hexadecimal digits
    bool added = false;  ///< false: a whole file of these bytes was there already
};

/// Writes the bytes, on the disk when this returns, and makes the folders it needs.
Result<StoredFile> storeFile(const std::string& folder, std::string_view bytes);

/// Damaged: gone, or its bytes are not those of its name. Refused: there but unreadable.
Result<std::string> loadStoredFile(const std::string& folder, const std::string& digest);

/// Takes a file out again whose row could not be stored.
void removeStoredFile(const std::string& folder, const std::string& digest);

/// Stores the bytes, then runs body(SHA-256), which returns a Result, and takes the file out again
/// where that failed. Within a write transaction, so that nobody else has come to count on it.
template <class Body>
auto withStoredFile(const std::string& folder, std::string_view bytes, Body body)
    -> std::invoke_result_t<Body, const std::string&> {
    const auto file = storeFile(folder, bytes);
    if (!file) return file.error();
    auto result = body(file->digest);
    if (!result && file->added) removeStoredFile(folder, file->digest);
    return result;
}

}  // namespace model
