// SPDX-License-Identifier: Apache-2.0
#include "archive/signed_acts.h"

#include <map>

#include "archive/history_store.h"
#include "archive/lifecycle_actions.h"
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
    return found == kActs.end() ? nullptr : &found->second;
}

}  // namespace model
