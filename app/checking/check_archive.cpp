// SPDX-License-Identifier: Apache-2.0
#include "checking/check_archive.h"

#include <algorithm>
#include <deque>
#include <future>
#include <set>
#include <thread>

#include "archive/identities.h"
#include "archive/rejudge.h"
#include "archive/signed_files.h"
#include "checking/check_pdf.h"

namespace app {
namespace {

using model::Result;

/// Enough that starting a thread does not count, few enough that their bytes fit in memory.
constexpr std::size_t kFilesATask = 16;

model::Error damaged(const std::string& place, std::int64_t number, std::string reason) {
    return {model::ErrorKind::Damaged,
            place + ": certificate " + std::to_string(number),
            std::move(reason),
            {}};
}

/// What a task found in its files.
struct PdfsChecked {
    std::vector<model::Error> findings;
    std::optional<model::Error> refusal;  ///< a file that is there could not be read
};

PdfsChecked checkPdfs(const std::string& place, const std::vector<model::SignedFile>& files,
                      const model::FileReader& read, const model::TrustedCertificates& trusted) {
    PdfsChecked checked;
    for (const model::SignedFile& file : files) {
        const auto bytes = read(file.digest);
        if (!bytes && bytes.error().kind != model::ErrorKind::Damaged) {
            checked.refusal = bytes.error();
            return checked;
        }
        // One that is gone or altered was found with the archive's own check.
        if (!bytes) continue;
        for (std::string& fault : faultsOf(file, *bytes, trusted))
            checked.findings.push_back(damaged(place, file.number, std::move(fault)));
    }
    return checked;
}

class Checker {
public:
    Checker(const model::Archive& archive, const CheckRequest& request,
            const CheckProgress& progress)
        : archive_(archive), request_(request), progress_(progress) {}
    Checker(const Checker&) = delete;
    Checker& operator=(const Checker&) = delete;
    ~Checker() {
        for (auto& task : running_) task.wait();
    }

    Result<ArchiveCheck> run() {
        for (const auto step : {&Checker::checkArchiveItself, &Checker::checkCertificates,
                                &Checker::checkVerdicts, &Checker::listUnnamedFiles}) {
            const auto done = (this->*step)();
            if (done) continue;
            // Whatever can be read at all is checked.
            if (done.error().kind != model::ErrorKind::Damaged) return done.error();
            find(done.error());
        }
        return std::move(result_);
    }

private:
    /// Two checks may meet the same damage.
    void find(model::Error error) {
        if (known_.insert(error.message()).second) result_.findings.push_back(std::move(error));
    }

    [[nodiscard]] model::Progress progressOf(CheckStep step) const {
        if (!progress_) return {};
        return [this, step](std::int64_t done, std::int64_t total) {
            return progress_(step, done, total);
        };
    }

    Result<void> checkArchiveItself() {
        auto verified = archive_.verify(request_.held, progressOf(CheckStep::Archive));
        if (!verified) return verified.error();
        result_.archive = std::move(*verified);
        for (model::Error& finding : result_.archive.findings) find(std::move(finding));
        result_.archive.findings.clear();
        return {};
    }

    Result<void> checkCertificates() {
        auto trusted = model::trustedCertificates(archive_);
        if (!trusted) return trusted.error();
        trusted_ = std::move(*trusted);
        // Revocation goes by the order of the history's rows, which the archive's own check holds
        // every signing act against: two acts of one second have no order by time.
        trusted_.revocationLists.clear();
        const auto total = model::signedFileCount(archive_);
        if (!total) return total.error();
        total_ = *total;

        Result<void> outcome;
        auto read = model::eachSignedFile(archive_, [&](const model::SignedFile& file) {
            if (file.released) ++signedCertificates_;
            result_.pdfSignatures += static_cast<std::int64_t>(file.signatures.size());
            waiting_.push_back(file);
            if (waiting_.size() >= kFilesATask) outcome = start();
            return outcome.ok();
        });
        if (outcome) outcome = start();
        if (outcome) outcome = collect(0);
        result_.unsignedPdfs = result_.archive.certificates - signedCertificates_;
        return outcome ? read : outcome;
    }

    Result<void> start() {
        if (waiting_.empty()) return {};
        if (auto collected = collect(std::max(1U, std::thread::hardware_concurrency()) - 1);
            !collected)
            return collected;
        const std::size_t count = waiting_.size();
        running_.push_back(std::async(std::launch::async, [this, read = model::fileReader(archive_),
                                                           files = std::move(waiting_)] {
            return checkPdfs(archive_.path(), files, read, trusted_);
        }));
        waiting_.clear();
        result_.pdfs += static_cast<std::int64_t>(count);
        return {};
    }

    Result<void> collect(std::size_t running) {
        while (running_.size() > running) {
            PdfsChecked checked = running_.front().get();
            running_.pop_front();
            for (model::Error& finding : checked.findings) find(std::move(finding));
            if (checked.refusal) return *checked.refusal;
            if (progress_ && !progress_(CheckStep::Certificates, result_.pdfs, total_))
                return model::refusal(archive_.path(),
                                      "was not checked to the end: it was stopped");
        }
        return {};
    }

    Result<void> checkVerdicts() {
        if (!request_.rejudge) return {};
        const auto rejudged =
            model::rejudge(archive_, std::nullopt, progressOf(CheckStep::Verdicts));
        if (!rejudged) return rejudged.error();
        result_.verdicts = rejudged->count;
        for (const model::RejudgedOtherwise& each : rejudged->otherwise)
            find(damaged(archive_.path(), each.number,
                         "is judged otherwise today: " + each.difference + "; program version " +
                             each.programVersion + " judged it then"));
        return {};
    }

    Result<void> listUnnamedFiles() {
        auto files = model::unnamedFiles(archive_);
        if (!files) return files.error();
        result_.unnamedFiles = std::move(*files);
        // What a finding names is more than left over.
        for (const model::Error& finding : result_.findings)
            for (const std::string& named : finding.arguments)
                std::erase(result_.unnamedFiles, named);
        return {};
    }

    const model::Archive& archive_;
    const CheckRequest& request_;
    const CheckProgress& progress_;
    ArchiveCheck result_;
    std::set<std::string> known_;  ///< messages of result_.findings
    model::TrustedCertificates trusted_;
    std::vector<model::SignedFile> waiting_;
    std::deque<std::future<PdfsChecked>> running_;
    std::int64_t signedCertificates_ = 0;
    std::int64_t total_ = 0;
};

}  // namespace

Result<ArchiveCheck> checkArchive(const model::Archive& archive, const CheckRequest& request,
                                  const CheckProgress& progress) {
    return Checker(archive, request, progress).run();
}

}  // namespace app
