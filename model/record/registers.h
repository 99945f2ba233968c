// SPDX-License-Identifier: Apache-2.0
// The entries of the registers that belong together.
#pragma once

#include <vector>

#include "registers/attached.h"
#include "registers/consumable.h"
#include "registers/equipment.h"
#include "registers/nonconformance.h"
#include "registers/procedure.h"
#include "registers/qualification.h"

namespace model {

/// Of one casting; each list in the order in which the entries were made, the current version of
/// each.
struct Dossier {
    std::vector<Nonconformance> nonconformances;
    std::vector<Disposition> dispositions;
    std::vector<Excavation> excavations;
    std::vector<WeldRepair> weldRepairs;
    std::vector<HeatTreatment> heatTreatments;
    std::vector<Concession> concessions;
    std::vector<OtherResult> otherResults;
    std::vector<Attachment> attachments;

    friend bool operator==(const Dossier&, const Dossier&) = default;
};

/// What the works has and who may test.
struct Holdings {
    std::vector<Equipment> equipment;
    std::vector<EquipmentCheck> checks;
    std::vector<Consumable> consumables;
    std::vector<Procedure> procedures;
    std::vector<Qualification> qualifications;
    std::vector<EyeTest> eyeTests;
    std::vector<Authorisation> authorisations;

    friend bool operator==(const Holdings&, const Holdings&) = default;
};

}  // namespace model
