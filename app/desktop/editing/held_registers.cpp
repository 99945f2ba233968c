// SPDX-License-Identifier: Apache-2.0
#include "editing/held_registers.h"

#include "archive/registers.h"
#include "registers/condition_attestation.h"

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
    const auto attestations = model::entries<model::ConditionSetAttestation>(archive);
    if (!attestations) return attestations.error();
    for (const auto& entry : *attestations) {
        if (entry.value.state == "attested") held.attestedSets.insert(entry.value.sha256);
    }
    return held;
}

}  // namespace app
