// SPDX-License-Identifier: Apache-2.0
// What the signatures of an archived certificate prove, in plain words.
#pragma once

#include <QString>
#include <QStringList>

#include "archive/archive.h"
#include "checking/check_archive.h"
#include "looks/mark.h"

namespace app {

struct CertificateReport {
    Mark mark = Mark::Open;
    QString headline;
    QStringList lines;
};

/// Checks the PDF's bytes against the archive and its signatures at the archive's own authorities,
/// as of its release: an identity that has ended since proves what it proved then. Bytes that are
/// not those that were stored are a finding here, not a failure.
model::Result<CertificateReport> verifyCertificate(const model::Archive& archive,
                                                   std::int64_t number);

/// What checking a whole archive found.
CertificateReport reportOf(const ArchiveCheck& check);

}  // namespace app
