// SPDX-License-Identifier: Apache-2.0
#include "people/people.h"

#include <stdexcept>

#include "trust/identity_certificate.h"

namespace people {
namespace {

template <class T>
T valueOf(model::Result<T> result) {
    if (!result) throw std::runtime_error(result.error().message());
    return std::move(result).value();
}

model::Identity person(const char* name, const char* id, model::KeyKind key) {
    return valueOf(authority().issue({.name = name,
                                      .personId = id,
                                      .from = now() - kDay,
                                      .until = now() + 730 * kDay,
                                      .key = key},
                                     passphrase()));
}

model::TrustedCertificates trusting(std::span<const model::RevokedCertificate> revoked) {
    model::TrustedCertificates trusted;
    trusted.anchors = {authority().certificate()};
    trusted.revocationLists = {
        valueOf(authority().revocationList(revoked, 1, now(), now() + 30 * kDay))};
    return trusted;
}

}  // namespace

model::UtcTime now() {
    static const model::UtcTime moment = model::systemClock().now();
    return moment;
}

model::SecretBytes passphrase() {
    return model::SecretBytes(kPassphrase);
}

const model::Identity& authorityIdentity() {
    static const model::Identity made =
        valueOf(model::Authority::create({.name = "Quillmere inspection authority",
                                          .organisation = "Quillmere Gießerei",
                                          .country = "DE",
                                          .from = now() - 2 * kDay,
                                          .until = now() + 7300 * kDay},
                                         passphrase()));
    return made;
}

const model::Authority& authority() {
    static const model::Authority unlocked =
        valueOf(model::Authority::unlock(authorityIdentity(), passphrase(), now()));
    return unlocked;
}

const model::Identity& inspector() {
    static const model::Identity made = person(kInspectorName, "P-17", model::KeyKind::P256);
    return made;
}

const model::Identity& manager() {
    static const model::Identity made = person(kManagerName, "P-4", model::KeyKind::Rsa3072);
    return made;
}

const model::Identity& thirdParty() {
    static const model::Identity made = person(kThirdPartyName, "X-1", model::KeyKind::P256);
    return made;
}

const model::SigningKey& inspectorKey() {
    static const model::SigningKey key = valueOf(model::unlock(inspector(), passphrase(), now()));
    return key;
}

const model::SigningKey& managerKey() {
    static const model::SigningKey key = valueOf(model::unlock(manager(), passphrase(), now()));
    return key;
}

const model::SigningKey& thirdPartyKey() {
    static const model::SigningKey key = valueOf(model::unlock(thirdParty(), passphrase(), now()));
    return key;
}

model::TrustedCertificates trust() {
    return trusting({});
}

model::TrustedCertificates trustWithout(const model::Identity& identity, model::UtcTime since) {
    const auto facts = valueOf(model::describeCertificate(identity.certificates.front()));
    const model::RevokedCertificate revoked{facts.serial, since,
                                            model::RevocationReason::KeyCompromise};
    return trusting({&revoked, 1});
}

}  // namespace people
