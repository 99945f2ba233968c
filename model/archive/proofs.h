// SPDX-License-Identifier: Apache-2.0
// The seals and signatures of a history, checked row by row on all processor cores. For the .cpp
// files of this folder only.
#pragma once

#include <future>
#include <map>
#include <memory>
#include <set>
#include <string>
#include <vector>

#include "archive/archive_key.h"
#include "archive/connection.h"
#include "archive/history_store.h"
#include "archive/identity_store.h"
#include "archive/people.h"
#include "trust/known_signer.h"

namespace model {

class ProofCheck {
public:
    /// Reads the keys, identities and authorities that the database names; whether those are the
    /// ones that the history says is Replay's to find.
    static Result<ProofCheck> begin(const Connection& connection);
    ProofCheck(ProofCheck&&) noexcept;
    ProofCheck& operator=(ProofCheck&&) noexcept = delete;
    ~ProofCheck();

    /// Takes the next row, whose hash was found to be that of its bytes; `row` is what they say.
    /// Other threads check its proofs; waits only where very many rows lie before them.
    void add(const HistoryEntry& entry, const Proofs& proofs, const Canonical& row);

    /// Everything that does not stand up; waits until all is checked. Damaged, each with its row.
    std::vector<Error> finish();

    [[nodiscard]] std::int64_t seals() const { return seals_; }
    [[nodiscard]] std::int64_t signatures() const { return signatures_; }

private:
    struct Signer {
        IdentityRow row;
        std::optional<KnownSigner> known;        ///< none: the certificates cannot be read
        bool own = false;                        ///< the own authority issued it
        std::optional<Revocation> revoked = {};  ///< by a list of another authority
    };
    struct Known {
        std::vector<ArchivePublicKey> keys;
        std::vector<Signer> signers;  ///< by identity number, from 1
    };
    struct Job {
        std::int64_t sequence = 0;
        Digest hash{};
        std::size_t key = 0;  ///< of Known::keys
        std::string seal;     ///< empty: none to check
        const KnownSigner* signer = nullptr;
        std::string signature;
    };
    using Found = std::vector<std::pair<std::int64_t, std::string>>;
    class Queue;

    ProofCheck();
    void find(std::int64_t sequence, std::string reason);
    void addSeal(const HistoryEntry& entry, const Proofs& proofs, Job& job);
    /// Whether the person had the role for the act, as of that row; then follows the act itself.
    void addRole(const HistoryEntry& entry, const Canonical& content, const std::string& person);
    void addSignature(const HistoryEntry& entry, const Proofs& proofs, const Canonical& row,
                      Job& job);
    /// Why the identity could not sign that row; empty: it could.
    [[nodiscard]] std::string againstSigner(const Signer& signer, const HistoryEntry& entry,
                                            const std::string& person) const;
    void handOver();
    static Found checkAll(const Known& known, Queue& queue);

    std::string place_;
    bool isSetUp_ = false;                         ///< somebody has signed already
    std::map<std::string, std::set<Role>> roles_;  ///< of active people as of the row, by id
    std::unique_ptr<Known> known_;
    std::vector<Job> jobs_;
    std::unique_ptr<Queue> queue_;
    std::vector<std::future<Found>> workers_;
    Found found_;
    std::int64_t seals_ = 0;
    std::int64_t signatures_ = 0;
};

}  // namespace model
