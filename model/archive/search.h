// SPDX-License-Identifier: Apache-2.0
// Finding certificates by words and by what they state, page by page, the newest first. Meant for
// finding while a word is being typed, too: the first page of a million certificates takes
// milliseconds.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "archive/archive.h"
#include "archive/connection.h"
#include "archive/lifecycle.h"

namespace model {

/// Which certificates to find: all that agree in everything that is given.
struct CertificateSearch {
    /// Words that all stand somewhere in serial number or series, heat, part, order, customer,
    /// customer's order or type. Case, accents and signs between letters do not matter; the last
    /// word may be only begun, unless a space follows it. At most kMostWords words and
    /// kLongestWords bytes.
    std::string words = {};
    // Compared exactly.
    std::optional<std::string> serial = {};  ///< its own, or one of its series
    std::optional<std::string> heat = {};
    std::optional<std::string> part = {};
    std::optional<std::string> order = {};
    std::optional<std::string> customer = {};
    std::optional<std::string> from = {};  ///< date of issue (UTC), first day: 2026-11-25
    std::optional<std::string> to = {};    ///< date of issue (UTC), last day, included
    std::optional<Word> verdict = {};
    /// Only certificates with a lower number: the last page's `next`.
    std::optional<std::int64_t> before = {};
    int pageSize = 50;  ///< at least 1
};

inline constexpr std::size_t kMostWords = 32;
inline constexpr std::size_t kLongestWords = 1000;

/// A certificate as a list shows it.
struct FoundCertificate {
    std::int64_t number = 0;
    std::string serial;
    std::string heat;
    std::string part;
    std::string order;
    std::string customer;
    std::string customerOrder;
    std::string type;  ///< EN 10204:2004 type
    Word verdict = Word::NotJudged;
    CertificateState state = CertificateState::Released;  ///< superseded or withdrawn since
    std::string issuedAt;                                 ///< UTC, 2026-11-25T09:30:00Z
    std::string issuedBy;
    std::optional<std::int64_t> supersedes;    ///< the certificate that it replaces
    std::optional<std::int64_t> supersededBy;  ///< the one that replaces it
    std::string series;  ///< serial numbers that it stands for; empty: its own alone
};

struct CertificatePage {
    std::vector<FoundCertificate> certificates;  ///< the newest first
    std::optional<std::int64_t> next;            ///< there are more: the `before` of the next page
};

/// Input: a date that is none, a range that ends before it starts, words that are not UTF-8 or too
/// many. Words without any letter or digit find nothing.
Result<CertificatePage> findCertificates(const Archive& archive, const CertificateSearch& search);

/// The statement that findCertificates() runs, and its values: for measuring what the database
/// alone takes.
struct SearchStatement {
    std::string sql;
    SqlStatement::Values values;
};
Result<SearchStatement> searchStatement(const CertificateSearch& search);

/// Makes the index of the words anew, from the certificates; verify() says where it is needed.
Result<void> rebuildSearchIndex(Archive& archive, const Actor& actor);

}  // namespace model
