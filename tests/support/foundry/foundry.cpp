// SPDX-License-Identifier: Apache-2.0
#include "foundry/foundry.h"

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>

#include "archive/archive_access.h"
#include "archive/identity_store.h"
#include "archive/sign_ins.h"
#include "trust/identity_open.h"

namespace foundry {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void giveUp(const std::string& why) {
    std::cerr << "foundry: " << why << "\n";
    std::abort();
}

std::string keyPath(const std::string& folder, const std::string& personId) {
    return folder + "/" + personId + ".der";
}

std::string bytesOf(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    if (!file) giveUp(path + " cannot be read");
    return {std::istreambuf_iterator<char>(file), {}};
}

}  // namespace

model::UtcTime madeAt() {
    return std::chrono::sys_days(std::chrono::year(2026) / 11 / 25) + std::chrono::hours(9) +
           std::chrono::minutes(30);
}

model::UtcTime validUntil() {
    // So that programs with the machine's clock can be tested for long.
    return madeAt() + std::chrono::days(50 * 365);
}

model::SecretBytes passphrase() {
    return model::SecretBytes(kPassphrase);
}

model::SecretBytes authorityPassphrase() {
    return model::SecretBytes(kAuthorityPassphrase);
}

model::AuthorityRequest authorityRequest() {
    return {"Quillmere inspection authority", "Quillmere Foundry", "", madeAt(),
            validUntil() + std::chrono::days(365)};
}

std::string archiveIn(const std::string& folder) {
    return folder + "/quillmere.fettlemark";
}

void copyTo(const std::string& path) {
    const std::string original = archiveIn(FOUNDRY_FOLDER);
    fs::copy_file(original, path);
    fs::copy_file(original + ".key", path + ".key");
}

void keepKey(const std::string& folder, const model::SignedIn& person) {
    const std::string der = model::openssl::encoded(i2d_PrivateKey, person.key().held().key.get());
    std::ofstream(keyPath(folder, person.person().id), std::ios::binary) << der;
}

model::SignedIn signedIn(const model::Archive& archive, const std::string& personId) {
    const model::Connection& connection = model::ArchiveAccess::connection(archive);
    auto person = model::person(archive, personId);
    if (!person) giveUp(person.error().message());
    const auto identity = model::currentIdentity(connection, personId);
    if (!identity || !*identity) giveUp(personId + " has no identity");
    auto certificates = model::openssl::readCertificates((*identity)->identity.certificates);
    if (!certificates) giveUp(certificates.error().message());
    const std::string der = bytesOf(keyPath(FOUNDRY_FOLDER, personId));
    const unsigned char* at = model::openssl::bytesOf(der);
    model::openssl::Key key(d2i_AutoPrivateKey(nullptr, &at, static_cast<long>(der.size())));
    if (!key || X509_check_private_key(certificates->front().get(), key.get()) != 1)
        giveUp("the key that was kept of " + personId + " is not that of the identity in use");
    return model::SignIns::make(
        std::move(*person), (*identity)->number,
        model::openssl::holding({std::move(key), std::move(*certificates)}));
}

std::string privateNumber(const std::string& personId) {
    // RFC 5915: a sequence of the version and the number.
    return bytesOf(keyPath(FOUNDRY_FOLDER, personId)).substr(7, 32);
}

}  // namespace foundry
