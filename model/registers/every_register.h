// SPDX-License-Identifier: Apache-2.0
// All registers by name. Who adds a register adds it here, and it can be stored, imported and
// shown.
#pragma once

#include <string_view>
#include <tuple>

#include "registers/attached.h"
#include "registers/condition_attestation.h"
#include "registers/consumable.h"
#include "registers/equipment.h"
#include "registers/nonconformance.h"
#include "registers/procedure.h"
#include "registers/qualification.h"

namespace model {

/// In the order in which screens and papers list them: what the works has, who may test, what
/// belongs to one casting.
using EveryRegister =
    std::tuple<Equipment, EquipmentCheck, Consumable, Procedure, ConditionSetAttestation,
               Qualification, EyeTest, Authorisation, Nonconformance, Disposition, Excavation,
               WeldRepair, HeatTreatment, Concession, OtherResult, Attachment>;

/// Calls visit.template operator()<T>() for each register, in order.
template <class Visit>
void forEachRegister(Visit&& visit) {
    [&]<class... T>(const std::tuple<T...>*) {
        (visit.template operator()<T>(), ...);
    }(static_cast<const EveryRegister*>(nullptr));
}

/// Calls visit.template operator()<T>() for the register of that name; false: there is none.
template <class Visit>
bool withRegister(std::string_view name, Visit&& visit) {
    bool found = false;
    forEachRegister([&]<class T>() {
        if (name != T::kRegister) return;
        found = true;
        visit.template operator()<T>();
    });
    return found;
}

}  // namespace model
