// SPDX-License-Identifier: Apache-2.0
// Who gives a command, and the passphrases that prove it. A passphrase is read from a file or from
// standard input, never from the command line, which other users of the machine can see.
#pragma once

#include <string>
#include <string_view>

#include "archive/sign_in.h"
#include "base/clock.h"
#include "base/result.h"
#include "command.h"
#include "trust/key_secret.h"

namespace app {

inline constexpr Option kDatabaseOption{"--db", "FILE", "the archive", true};
inline constexpr Option kPersonOption{"--person", "ID", "who does it", true};
inline constexpr Option kPassphraseOption{
    "--passphrase", "FILE", "file with that person's passphrase; - for standard input", true};

/// The passphrase in the file that `option` names, or on standard input where it names "-": the
/// first line without its end. Input: there is no such file, it is empty, or something follows the
/// first line. Of several options of a command only one may be "-".
model::Result<model::SecretBytes> passphraseFrom(const Arguments& arguments,
                                                 std::string_view option = "--passphrase");

/// The person of kPersonOption, signed in with the passphrase of kPassphraseOption.
model::Result<model::SignedIn> signedInFrom(model::Archive& archive, const Arguments& arguments);

/// The end of the day of "2029-12-31", UTC. Input with the option as place: no date.
model::Result<model::UtcTime> dayFrom(const Arguments& arguments, std::string_view option);

}  // namespace app
