// SPDX-License-Identifier: Apache-2.0
// Who may make a SignedIn. For the .cpp files of this folder and for tests only.
#pragma once

#include "archive/identity_store.h"
#include "archive/sign_in.h"

namespace model {

struct SignIns {
    static SignedIn make(Stored<Person> person, std::int64_t identity, SigningKey key) {
        return {std::move(person), identity, std::move(key)};
    }

    /// Tries `open`, a function that takes a passphrase's owner's identity and returns a Result:
    /// not before a wait after wrong passphrases is over (Refused), and keeps count in the archive.
    /// `holder` is whom the history names, a person's id or "authority".
    template <class Open>
    static auto open(Archive& archive, const IdentityRow& row, const std::string& holder,
                     Open tryOpen) -> decltype(tryOpen(row.identity)) {
        if (auto waited = checkWait(archive, row); !waited) return waited.error();
        auto opened = tryOpen(row.identity);
        const bool wrong = !opened && isWrongPassphrase(opened.error());
        if (!opened && !wrong) return opened;
        if (!wrong && row.attempts.count == 0) return opened;
        if (auto counted = count(archive, row.number, holder, wrong); !counted)
            return counted.error();
        return opened;
    }

private:
    static Result<void> checkWait(const Archive& archive, const IdentityRow& row);
    static Result<void> count(Archive& archive, std::int64_t identity, const std::string& holder,
                              bool wrong);
};

}  // namespace model
