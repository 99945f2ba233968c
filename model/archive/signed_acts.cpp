// SPDX-License-Identifier: Apache-2.0
#include "archive/signed_acts.h"

#include <map>

#include "archive/history_store.h"
#include "archive/lifecycle_actions.h"
#include "archive/register_acts.h"
#include "archive/retention_store.h"

namespace model {

const std::set<Role>* rolesForAct(std::string_view action) {
    static const std::map<std::string_view, std::set<Role>> kActs{
        {action::kArchiveKeyReplaced, {Role::Administrator}},
        {action::kAuthorityMade, {Role::Administrator}},
        {action::kAuthorityTrusted, {Role::Administrator}},
        {action::kRevocationListTaken, {Role::Administrator}},
        {action::kPersonSaved, {Role::Administrator}},
        {action::kIdentityIssued, {Role::Administrator}},
        {action::kIdentityImported, {Role::Administrator}},
        {action::kIdentityWithdrawn, {Role::Administrator}},
        {action::kPassphraseChanged, {}},
        {action::kAuthorityPassphraseChanged, {Role::Administrator}},
        {action::kTableAttested, {Role::QaManager}},
        {action::kAttestationWithdrawn, {Role::QaManager}},
        {action::kRecordSigned, {Role::Inspector}},
        {action::kRecordInvalidated, {Role::Inspector}},
        {action::kCastingPresented, {Role::Inspector}},
        {action::kPresentationReturned, {Role::QaManager}},
        {action::kPresentationEndorsed, {Role::ThirdParty}},
        {action::kCertificateReleased, {Role::QaManager}},
        {action::kCertificateWithdrawn, {Role::QaManager}},
        {action::kCastingReopened, {Role::QaManager}},
        {action::kRetentionStated, {Role::QaManager, Role::Administrator}},
        {action::kCertificateDisposed, {Role::QaManager, Role::Administrator}},
    };
    const auto found = kActs.find(action);
    if (found != kActs.end()) return &found->second;
    const auto entry = signedRegisters().find(signedRegisterOf(action));
    return entry == signedRegisters().end() ? nullptr : &entry->second;
}

}  // namespace model
