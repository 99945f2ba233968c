// SPDX-License-Identifier: Apache-2.0
// Signing in: proving by one's passphrase who one is, and holding one's key meanwhile.
#pragma once

#include <chrono>
#include <cstdint>
#include <string>

#include "archive/archive.h"
#include "archive/people.h"
#include "trust/key_secret.h"
#include "trust/key_signing.h"

namespace model {

class Connection;

/// A person who has proved who they are, with their unlocked key. Moves only; the key is wiped when
/// it goes. Made by signIn() alone: that one exists is the proof.
class SignedIn {
public:
    SignedIn(SignedIn&&) noexcept = default;
    SignedIn& operator=(SignedIn&&) noexcept = default;

    /// As stored at the sign-in. What is signed is refused where it has changed since.
    [[nodiscard]] const Person& person() const { return person_.value; }
    [[nodiscard]] std::int64_t personVersion() const { return person_.version; }
    [[nodiscard]] std::int64_t identity() const { return identity_; }  ///< its number
    [[nodiscard]] const SigningKey& key() const { return key_; }
    [[nodiscard]] Actor actor() const { return {person().name}; }
    [[nodiscard]] bool has(Role role) const { return person().roles.contains(role); }

private:
    friend struct SignIns;
    SignedIn(Stored<Person> person, std::int64_t identity, SigningKey key)
        : person_(std::move(person)), identity_(identity), key_(std::move(key)) {}

    Stored<Person> person_;
    std::int64_t identity_ = 0;
    SigningKey key_;
};

/// Takes some 0.2 s on purpose: call it away from the window's thread. Refused with
/// kWrongPassphrase (trust/identity.h) and counted in the archive; after three wrong ones the next
/// try has to wait (trust/key_attempts.h) and is Refused, the right passphrase too. Input: no such
/// person, one who is no longer active or has no identity, an identity that has expired or was
/// withdrawn.
Result<SignedIn> signIn(Archive& archive, const std::string& personId,
                        const SecretBytes& passphrase);

/// How long the person's next try has to wait after wrong passphrases; zero: it need not.
Result<std::chrono::seconds> waitBeforeSignIn(const Archive& archive, const std::string& personId);

/// In a transaction: whether the person may sign at `now`. Refused where the person is no longer
/// active, was changed since the sign-in, has another identity by now, or one that has expired or
/// was withdrawn; the reason says which. Roles are the caller's to ask, by SignedIn::has().
Result<void> checkMaySign(const Connection& connection, const SignedIn& signer, UtcTime now);

/// Refused where `signer` has not the role: "A. Bench is no QA manager".
Result<void> checkRole(const SignedIn& signer, Role role);

}  // namespace model
