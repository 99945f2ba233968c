// SPDX-License-Identifier: Apache-2.0
#include "editing/held_registers.h"

#include "archive/registers.h"

namespace app {

model::Result<HeldRegisters> heldRegisters(const model::Archive& archive,
                                           const std::string& serial) {
    auto file = archive.casting(serial);
    if (!file) return file.error();
    auto holdings = model::holdings(archive);
    if (!holdings) return holdings.error();
    HeldRegisters held;
    held.dossier = std::move(file->dossier);
    held.holdings = std::move(*holdings);
    return held;
}

}  // namespace app
