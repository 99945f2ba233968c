// SPDX-License-Identifier: Apache-2.0
// From signed records to a signed certificate: makes the PDF, signs it in a person's name, checks
// what came of it as a stranger would, and hands it to the archive (archive/lifecycle.h), which
// decides whether the person may. Errors are the archive's, and: Refused where a signature cannot
// be made (identity ended or withdrawn, time-stamp service out of reach) or a font is missing;
// Damaged where a signature already in the file does not hold. Then nothing is stored.
//
// Takes long enough to be called away from the window's thread, on that of the archive.
#pragma once

#include <cstdint>
#include <string>

#include "archive/archive.h"
#include "archive/sign_in.h"
#include "base/clock.h"
#include "pdf/render.h"
#include "trust/signature_time_stamp.h"

namespace app {

/// What a certificate needs beside what the archive holds. What is pointed to is borrowed.
struct IssueSettings {
    std::string worksName;
    std::string worksAddress;  ///< may be empty, may have several lines
    std::string place;         ///< where people sign; may be empty
    std::string programVersion;
    const model::TimeStampService* timeStamps = nullptr;  ///< none: signatures carry no time stamp
    const model::Clock* clock = &model::systemClock();
    reports::FontFiles fonts = reports::FontFiles::installed();
};

/// Makes the certificate of a casting whose examinations are all signed, signs it as its inspector
/// and puts it into the release queue. Returns its number. Input also where the order names no type
/// of EN 10204:2004, a limit table is not attested, or something is not judged: what cannot be
/// released is not presented.
model::Result<std::int64_t> presentCasting(model::Archive& archive, const std::string& serial,
                                           const model::SignedIn& inspector,
                                           const IssueSettings& settings);

/// Adds the third party's signature to a waiting certificate of type 3.2.
model::Result<void> endorseCertificate(model::Archive& archive, std::int64_t number,
                                       const model::SignedIn& thirdParty,
                                       const IssueSettings& settings);

/// Adds the QA manager's signature to a waiting certificate, the last one, and releases it.
model::Result<void> releaseCertificate(model::Archive& archive, std::int64_t number,
                                       const model::SignedIn& qaManager,
                                       const IssueSettings& settings);

}  // namespace app
