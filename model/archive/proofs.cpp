// SPDX-License-Identifier: Apache-2.0
#include "archive/proofs.h"

#include <algorithm>
#include <condition_variable>
#include <deque>
#include <mutex>
#include <thread>

#include "archive/signed_acts.h"
#include "trust/identity_certificate.h"
#include "trust/revocation_list.h"

namespace model {
namespace {

/// Large enough that handing over does not count, small enough that all cores are busy soon.
constexpr std::size_t kRowsATask = 128;
/// What may wait: some ten megabytes. So threads have work while this one compares tables.
constexpr std::size_t kMostTasks = 256;

/// Of the person that a row saves.
std::set<Role> rolesIn(const Canonical& content) {
    std::set<Role> roles;
    const Canonical* words = content.member("roles");
    if (!words || !words->array()) return roles;
    for (const Canonical& one : *words->array())
        if (const auto role = one.text() ? roleFrom(*one.text()) : std::nullopt)
            roles.insert(*role);
    return roles;
}

std::string_view bytesOf(const Digest& hash) {
    return {reinterpret_cast<const char*>(hash.data()), hash.size()};
}

}  // namespace

/// What is to be checked, handed from the thread that reads to those that check.
class ProofCheck::Queue {
public:
    void put(std::vector<Job> jobs) {
        std::unique_lock lock(mutex_);
        changed_.wait(lock, [&] { return tasks_.size() < kMostTasks; });
        tasks_.push_back(std::move(jobs));
        changed_.notify_all();
    }
    /// Empty: there is nothing more to do.
    std::vector<Job> take() {
        std::unique_lock lock(mutex_);
        changed_.wait(lock, [&] { return isClosed_ || !tasks_.empty(); });
        if (tasks_.empty()) return {};
        std::vector<Job> jobs = std::move(tasks_.front());
        tasks_.pop_front();
        changed_.notify_all();
        return jobs;
    }
    void close() {
        const std::lock_guard lock(mutex_);
        isClosed_ = true;
        changed_.notify_all();
    }
    void abandon() {
        const std::lock_guard lock(mutex_);
        tasks_.clear();
    }

private:
    std::mutex mutex_;
    std::condition_variable changed_;
    std::deque<std::vector<Job>> tasks_;
    bool isClosed_ = false;
};

ProofCheck::ProofCheck() : queue_(std::make_unique<Queue>()) {}
ProofCheck::ProofCheck(ProofCheck&&) noexcept = default;

Result<ProofCheck> ProofCheck::begin(const Connection& connection) {
    ProofCheck check;
    check.place_ = connection.place();
    check.known_ = std::make_unique<Known>();
    auto keys = archivePublicKeys(connection);
    if (!keys) return keys.error();
    check.known_->keys = std::move(*keys);
    const auto rows = loadIdentities(connection);
    if (!rows) return rows.error();
    const auto trusted = loadTrusted(connection);
    if (!trusted) return trusted.error();
    for (const IdentityRow& row : *rows) {
        Signer signer{row, std::nullopt, isOwnIssued(row, *rows)};
        // The own authority's list follows from the withdrawals. A list that was altered is found
        // by its digest.
        if (auto revoked = revocationOf(row.identity.certificates, trusted->revocationLists);
            revoked && !signer.own)
            signer.revoked = std::move(*revoked);
        if (auto known = KnownSigner::read(row.identity.certificates, trusted->anchors))
            signer.known = std::move(*known);
        check.known_->signers.push_back(std::move(signer));
    }
    for (unsigned i = 0; i < std::max(1U, std::thread::hardware_concurrency()); ++i)
        check.workers_.push_back(std::async(
            std::launch::async, [known = check.known_.get(), queue = check.queue_.get()] {
                return checkAll(*known, *queue);
            }));
    return check;
}

ProofCheck::~ProofCheck() {
    if (!queue_) return;
    queue_->abandon();
    queue_->close();
    for (auto& worker : workers_)
        if (worker.valid()) worker.wait();
}

void ProofCheck::find(std::int64_t sequence, std::string reason) {
    found_.emplace_back(sequence, std::move(reason));
}

void ProofCheck::add(const HistoryEntry& entry, const Proofs& proofs, const Canonical& row) {
    Job job;
    job.sequence = entry.sequence;
    job.hash = entry.hash;
    addSeal(entry, proofs, job);
    addSignature(entry, proofs, row, job);
    if (!job.seal.empty() || job.signer != nullptr) jobs_.push_back(std::move(job));
    if (jobs_.size() >= kRowsATask) handOver();
}

void ProofCheck::addSeal(const HistoryEntry& entry, const Proofs& proofs, Job& job) {
    const auto& keys = known_->keys;
    const auto after =
        std::ranges::upper_bound(keys, entry.sequence, {}, &ArchivePublicKey::sealedFrom);
    if (after == keys.begin()) {
        if (proofs.seal) find(entry.sequence, "has a seal, but comes before the archive's key");
        return;
    }
    if (!proofs.seal) return find(entry.sequence, "has no seal of the archive");
    job.key = static_cast<std::size_t>(after - keys.begin()) - 1;
    job.seal = *proofs.seal;
    ++seals_;
}

void ProofCheck::addSignature(const HistoryEntry& entry, const Proofs& proofs, const Canonical& row,
                              Job& job) {
    const Canonical* content = row.member("content");
    const std::string* person = content ? signerOf(*content) : nullptr;
    if (!person) {
        if (isSignedAct(entry.action)) find(entry.sequence, "is an act that nobody signed");
        if (proofs.signature) find(entry.sequence, "has a signature, but names nobody who signed");
        return;
    }
    if (!proofs.signature)
        return find(entry.sequence, "has lost the signature of the person " + *person);
    addRole(entry, *content, *person);
    const auto index = static_cast<std::size_t>(proofs.identity - 1);
    if (proofs.identity < 1 || index >= known_->signers.size())
        return find(entry.sequence, "was signed by an identity that the archive does not know");
    const Signer& signer = known_->signers[index];
    if (std::string why = againstSigner(signer, entry, *person); !why.empty())
        find(entry.sequence, std::move(why));
    if (!signer.known) return;
    job.signer = &*signer.known;
    job.signature = *proofs.signature;
    ++signatures_;
}

void ProofCheck::addRole(const HistoryEntry& entry, const Canonical& content,
                         const std::string& person) {
    // The first person is the administrator of the set-up, who signs for being that.
    if (!isSetUp_ && entry.action == action::kPersonSaved) roles_[person] = rolesIn(content);
    isSetUp_ = true;
    const std::set<Role>* allowed = rolesForAct(entry.action);
    const auto had = roles_.find(person);
    const bool may = allowed != nullptr && had != roles_.end() &&
                     (allowed->empty() || std::ranges::any_of(*allowed, [&](Role role) {
                          return had->second.contains(role);
                      }));
    if (!may) find(entry.sequence, "was signed by " + person + ", who had not the role for it");
    if (entry.action != action::kPersonSaved) return;
    const Canonical* active = content.member("active");
    if (active && active->truth() && *active->truth())
        roles_[entry.subject] = rolesIn(content);
    else
        roles_.erase(entry.subject);
}

std::string ProofCheck::againstSigner(const Signer& signer, const HistoryEntry& entry,
                                      const std::string& person) const {
    const IdentityRow& row = signer.row;
    if (!signer.known) return "was signed with a certificate that cannot be read";
    const KnownSigner& known = *signer.known;
    if (row.kind != IdentityKind::Person || row.personId != person ||
        (signer.own && known.facts().personId != person))
        return "was not signed by the person that it names, " + person;
    if (!known.trusted())
        return "was signed by " + known.facts().name + ", whom no trusted authority vouches for";
    const auto time = timeFrom(entry.time);
    if (!time || !known.validAt(*time))
        return "was signed while the certificate of " + known.facts().name + " was not valid";
    if (signer.revoked && signer.revoked->since <= *time)
        return "was signed by " + known.facts().name + ", whose certificate " +
               known.facts().issuer + " revoked on " + toText(signer.revoked->since) + ": " +
               signer.revoked->reason;
    if (row.withdrawal && row.withdrawal->row < entry.sequence)
        return "was signed by " + known.facts().name + " after the identity was withdrawn";
    return {};
}

void ProofCheck::handOver() {
    if (!jobs_.empty()) queue_->put(std::move(jobs_));
    jobs_.clear();
}

ProofCheck::Found ProofCheck::checkAll(const Known& known, Queue& queue) {
    Found found;
    std::vector<std::optional<SealCheck>> keys;
    for (const ArchivePublicKey& key : known.keys) {
        auto read = SealCheck::read(key.publicKey);
        keys.push_back(read ? std::optional(std::move(*read)) : std::nullopt);
    }
    const auto check = [&](const Job& job) {
        if (!job.seal.empty() && !(keys[job.key] && keys[job.key]->fits(job.hash, job.seal)))
            found.emplace_back(job.sequence, "has a seal that is not the archive's");
        if (job.signer == nullptr) return;
        if (const std::string fault = job.signer->fault(bytesOf(job.hash), job.signature);
            !fault.empty())
            found.emplace_back(job.sequence, "has a signature of " + job.signer->facts().name +
                                                 " that does not hold: " + fault);
    };
    for (auto jobs = queue.take(); !jobs.empty(); jobs = queue.take())
        for (const Job& job : jobs) check(job);
    return found;
}

std::vector<Error> ProofCheck::finish() {
    handOver();
    queue_->close();
    for (auto& worker : workers_) {
        const Found found = worker.get();
        found_.insert(found_.end(), found.begin(), found.end());
    }
    workers_.clear();
    std::ranges::stable_sort(found_, {}, &Found::value_type::first);
    std::vector<Error> findings;
    if (known_->keys.empty())
        findings.push_back({ErrorKind::Damaged,
                            place_ + ": archive key",
                            "is missing: no row of the history can be checked by its seal",
                            {}});
    for (auto& [sequence, reason] : found_)
        findings.push_back({ErrorKind::Damaged,
                            place_ + ": history row " + std::to_string(sequence),
                            std::move(reason),
                            {}});
    found_.clear();
    return findings;
}

}  // namespace model
