// SPDX-License-Identifier: Apache-2.0
// Whole files and folders, written so that they are on the disk. Errors: Refused (disk full, no
// permission, unreadable), and what a function says.
#pragma once

#include <fcntl.h>
#include <string>
#include <string_view>
#include <unistd.h>

#include "base/digest.h"
#include "base/result.h"

namespace model {

/// An open file; closed when it goes.
class Descriptor {
public:
    Descriptor(const std::string& path, int flags, unsigned mode = 0644)
        : number_(::open(path.c_str(), flags | O_CLOEXEC, mode)) {}
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor() {
        if (number_ >= 0) ::close(number_);
    }
    [[nodiscard]] int number() const { return number_; }
    [[nodiscard]] bool ok() const { return number_ >= 0; }
    /// Some file systems report only here that a write failed.
    bool close() {
        const int number = number_;
        number_ = -1;
        return ::close(number) == 0;
    }

private:
    int number_;
};

/// What errno says: "cannot be `what`: ...", or that the disk is full.
Error systemRefusal(const std::string& path, const char* what);

/// The folder that holds it.
std::string parentOf(const std::string& path);

/// There in any form, a link to nowhere included; also where its folder does not let that be seen.
bool isThere(const std::string& path);

/// Refuses where something is there: "exists already; `advice`", and where its folder does not let
/// that be seen.
Result<void> expectNothing(const std::string& path, const char* advice);

/// Makes a folder, on the disk when this returns, where there is none.
Result<void> makeFolder(const std::string& folder);

bool writeAll(int descriptor, std::string_view bytes);

/// A file's bytes. Damaged: it is gone.
Result<std::string> readFile(const std::string& path);

/// Waits until a file's bytes and its name are on the disk.
Result<void> syncFile(const std::string& path);
Result<void> syncFolder(const std::string& folder);
/// All files and folders in a folder, and the folder's own name.
Result<void> syncTree(const std::string& folder);

/// Writes a file that was not there; syncTree() puts it on the disk.
Result<void> writeNewFile(const std::string& path, std::string_view bytes);

/// Copies a file to one that was not there, with the permissions `mode`, and returns the SHA-256
/// of the bytes copied; syncTree() puts it on the disk. Damaged: `from` is gone.
Result<Digest> copyToNewFile(const std::string& from, const std::string& to, unsigned mode = 0644);

/// SHA-256 of a file's bytes, read from the disk itself where the system lets go of its own copy.
/// Damaged: it is gone.
Result<Digest> digestOfFile(const std::string& path);

/// Gives a file or folder its final name, on the disk when this returns. Input: something of that
/// name is there already.
Result<void> moveToNew(const std::string& from, const std::string& to);

/// A folder in which something is made that shall be there whole or not at all. Goes with all that
/// is in it.
class Staging {
public:
    /// Makes `folder`. Input: it is there already, or cannot be made where it should be.
    static Result<Staging> make(const std::string& folder);
    Staging(Staging&& other) noexcept;
    Staging& operator=(Staging&&) = delete;
    ~Staging();

    [[nodiscard]] const std::string& path() const { return path_; }
    /// The folder becomes `final`, as moveToNew().
    Result<void> become(const std::string& final);

private:
    explicit Staging(std::string path) : path_(std::move(path)) {}
    std::string path_;  ///< empty: nothing to take away
};

}  // namespace model
