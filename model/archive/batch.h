// SPDX-License-Identifier: Apache-2.0
// Several writes that are stored together or not at all: a file that is taken over, or tried.
#pragma once

#include <memory>

#include "archive/archive.h"

namespace model {

class Connection;

/// From its making until keep() or its end, whatever is saved in the archive belongs to it; a save
/// that fails takes back only itself. What was saved can be read through this archive, by nobody
/// else. Files are not part of it: those that a save put beside the database stay.
class Batch {
public:
    /// Waits for another program's write, as a save does. Refused: the archive cannot be written,
    /// or has a batch already.
    static Result<std::unique_ptr<Batch>> begin(Archive& archive);
    Batch(const Batch&) = delete;
    Batch& operator=(const Batch&) = delete;
    /// Takes everything back unless it was kept.
    ~Batch();

    /// Everything is on the disk when this returns. Fails as a save does; then nothing is stored.
    Result<void> keep();

private:
    explicit Batch(const Connection& connection) : connection_(connection) {}

    const Connection& connection_;
    bool open_ = true;
};

}  // namespace model
