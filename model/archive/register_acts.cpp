// SPDX-License-Identifier: Apache-2.0
#include "archive/register_acts.h"

#include "archive/history_store.h"
#include "registers/attached.h"
#include "registers/condition_attestation.h"
#include "registers/nonconformance.h"
#include "registers/procedure.h"
#include "registers/qualification.h"

namespace model {
namespace {

constexpr std::string_view kSigned = " signed";

}  // namespace

const std::map<std::string_view, std::set<Role>>& signedRegisters() {
    static const std::map<std::string_view, std::set<Role>> kRegisters{
        // What entitles people to test is stated by whoever answers for people.
        {Qualification::kRegister, {Role::QaManager, Role::Administrator}},
        {EyeTest::kRegister, {Role::QaManager, Role::Administrator}},
        {Authorisation::kRegister, {Role::QaManager, Role::Administrator}},
        {Procedure::kRegister, {Role::Inspector, Role::QaManager}},
        // What closes a required test, or a nonconformance.
        {OtherResult::kRegister, {Role::Inspector, Role::QaManager}},
        {Disposition::kRegister, {Role::QaManager}},
        {Concession::kRegister, {Role::QaManager}},
        {ConditionSetAttestation::kRegister, {Role::QaManager}},
    };
    return kRegisters;
}

std::string savingAction(std::string_view registerName) {
    if (!signedRegisters().contains(registerName)) return action::kEntrySaved;
    return std::string(registerName).append(kSigned);
}

std::string_view signedRegisterOf(std::string_view action) {
    if (!action.ends_with(kSigned)) return {};
    const auto found = signedRegisters().find(action.substr(0, action.size() - kSigned.size()));
    return found == signedRegisters().end() ? std::string_view() : found->first;
}

}  // namespace model
