// SPDX-License-Identifier: Apache-2.0
// What the archive's registers hold, as a casting on the bench needs it.
#pragma once

#include <set>
#include <string>

#include "archive/archive.h"
#include "record/registers.h"

namespace app {

struct HeldRegisters {
    model::Dossier dossier;    ///< of the casting
    model::Holdings holdings;  ///< everything that the works has and who may test
    /// SHA-256 of every set of condition limits that a QA manager attested.
    std::set<std::string> attestedSets;

    friend bool operator==(const HeldRegisters&, const HeldRegisters&) = default;
};

model::Result<HeldRegisters> heldRegisters(const model::Archive& archive,
                                           const std::string& serial);

}  // namespace app
