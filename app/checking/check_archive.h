// SPDX-License-Identifier: Apache-2.0
// Whether anything in an archive was altered: what Archive::verify() checks, the signatures in
// every PDF, and on request every verdict judged again.
//
// The signatures in a PDF are judged as of the history's row of its last signing act, not as of
// today: a certificate that has ended since, or was withdrawn, proves what it proved then. They
// have to be by the people who signed those acts, with the same certificates.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "archive/archive.h"

namespace app {

struct CheckRequest {
    std::optional<model::Head> held;  ///< a head noted elsewhere, that has to be in the history
    bool rejudge = false;             ///< whether today's program gives the verdicts of then
};

enum class CheckStep { Archive, Certificates, Verdicts };

/// Called now and then, with work done and work in all of a step; false stops.
using CheckProgress = std::function<bool(CheckStep step, std::int64_t done, std::int64_t total)>;

struct ArchiveCheck {
    model::Verification archive;     ///< without findings: those are below
    std::int64_t pdfs = 0;           ///< whose signatures were checked
    std::int64_t pdfSignatures = 0;  ///< in them
    std::int64_t unsignedPdfs = 0;   ///< issued before this archive knew people: nobody signed them
    std::optional<std::int64_t> verdicts;  ///< judged again; none: nobody asked for it
    /// Everything that is not as it was written, each with its place; ErrorKind::Damaged.
    std::vector<model::Error> findings;
    std::vector<std::string> unnamedFiles;  ///< left over by a write that was cut short; no harm

    [[nodiscard]] bool intact() const { return findings.empty(); }
};

/// Checks PDFs on all processor cores. Refused where it was stopped, or a file cannot be read
/// although it is there.
model::Result<ArchiveCheck> checkArchive(const model::Archive& archive,
                                         const CheckRequest& request = {},
                                         const CheckProgress& progress = {});

}  // namespace app
