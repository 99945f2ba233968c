// SPDX-License-Identifier: Apache-2.0
// Presentations and what became of them in the database. For the .cpp files of this folder only.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "archive/connection.h"
#include "archive/lifecycle.h"
#include "trust/canonical.h"

namespace model {

/// What a presentation was made from, to be held against what is stored.
struct Basis {
    std::vector<std::int64_t> records;        ///< ids, rising
    std::vector<std::int64_t> invalid;        ///< those of them that were declared invalid
    std::map<std::string, bool> tables = {};  ///< SHA-256; whether it was attested
    std::int64_t orderVersion = 0;
    std::int64_t partVersion = 0;
    std::int64_t castingVersion = 0;
    Canonical::Object dossier = {};  ///< what the registers held of the casting; holdings_store.h
};

/// A row of `presentation` with all that belongs to it.
struct StoredPresentation {
    Presented shown;
    Basis basis;
    std::vector<std::string> notJudged;  ///< examinations that count and are not judged
    /// What is still to be done after a nonconformance, and what of the order cannot be read; each
    /// a whole sentence.
    std::vector<std::string> openRepairs;
    std::vector<std::string> unreadable;
    std::int64_t fileSize = 0;    ///< bytes of shown.fileDigest
    std::string firstFileDigest;  ///< of the presented file, before an endorsement
    std::int64_t firstFileSize = 0;
};

/// What is signed of a presentation, besides its sheet, its verdict and its file.
Canonical::Object canonicalOf(const StoredPresentation& presentation);

/// Within the write transaction that has just recorded it.
Result<void> addPresentation(const Connection& connection, const StoredPresentation& presentation,
                             std::string_view content, const std::string& sheet,
                             const std::string& verdict);

/// By number: those that wait, those of a casting, one (Input where there is none).
Result<std::vector<StoredPresentation>> loadWaiting(const Connection& connection);
Result<std::vector<StoredPresentation>> loadPresentationsOf(const Connection& connection,
                                                            const std::string& serial);
Result<StoredPresentation> loadPresentation(const Connection& connection, std::int64_t number);

/// The column "sheet" or "verdict".
Result<std::string> loadPresentedText(const Connection& connection, std::int64_t number,
                                      const char* column);

/// Why `basis` is no longer what is stored of the casting, each a plain sentence; empty: it is.
Result<std::vector<std::string>> changesSince(const Connection& connection,
                                              const std::string& serial, const Basis& basis);

/// What stands in the way of a release by anybody, then by `person` where one is given, on `today`.
Result<std::vector<Obstacle>> obstaclesTo(const Connection& connection,
                                          const StoredPresentation& presentation,
                                          const Person* person, const std::string& today);

}  // namespace model
