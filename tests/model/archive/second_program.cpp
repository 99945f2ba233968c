// SPDX-License-Identifier: Apache-2.0
#include "second_program.h"

#include <csignal>
#include <cstdio>
#include <filesystem>
#include <grp.h>
#include <sys/resource.h>
#include <unistd.h>

#include "archive/backup.h"
#include "archive/retention.h"
#include "base/digest.h"
#include "foundry/old_certificates.h"
#include "lifecycle_fixture.h"
#include "limits/shipped_tables.h"

namespace model {
namespace {

int writeOrders(const std::string& path, const std::string& prefix, int count) {
    auto archive = Archive::open(path);
    if (!archive) return 4;
    for (int i = 1; i <= count; ++i) {
        Order order = sampleOrder();
        order.number = prefix + std::to_string(i);
        const auto saved = archive->save(order, 0, Actor{prefix});
        if (!saved) {
            std::fprintf(stderr, "%s\n", saved.error().message().c_str());
            return 4;
        }
        std::printf("%s\n", order.number.c_str());
        std::fflush(stdout);
    }
    return 0;
}

int fillSmallDisk(const std::string& path) {
    auto archive = Archive::open(path);
    if (!archive) return 4;
    auto draft = archive->draft(1);
    if (!draft) return 4;
    std::signal(SIGXFSZ, SIG_IGN);
    const auto size = std::filesystem::file_size(path) + 100'000;
    const rlimit limit{size, size};
    if (::setrlimit(RLIMIT_FSIZE, &limit) != 0) return 4;
    for (int i = 0; i < 100; ++i) {
        draft->rows.resize(draft->rows.size() + 200, typedRow("n", "1"));
        const auto saved = archive->save(*draft, Actor{"B. Second"});
        if (!saved) {
            std::printf("%d %s\n", static_cast<int>(saved.error().kind),
                        saved.error().message().c_str());
            // The certificate's file does not fit either, and leaves no part of itself.
            const auto stored = foundry::addCertificate(*archive, sampleFacts(),
                                                        std::string(size + 1, 'x'), Actor{"B"});
            return !stored && stored.error().kind == ErrorKind::Refused ? 0 : 5;
        }
        draft->version = saved->version;
    }
    return 6;
}

/// Where nothing may be written; prints the head's number and why a write was refused.
int readOnly(const std::string& path) {
    // Root writes anywhere.
    if (::geteuid() == 0 &&
        (::setgroups(0, nullptr) != 0 || ::setgid(65534) != 0 || ::setuid(65534) != 0))
        return 4;
    if (Archive::open(path).ok()) {
        std::printf("was opened for writing\n");
        return 5;
    }
    auto archive = Archive::openForReading(path);
    if (!archive) {
        std::printf("%s\n", archive.error().message().c_str());
        return 6;
    }
    const auto verification = archive->verify();
    const auto pdf = archive->certificateFile(1);
    const auto saved = archive->save(sampleOrder(), 1, Actor{"B. Second"});
    if (!verification || !verification->findings.empty() || !pdf || saved) return 7;
    std::printf("%lld %s\n", static_cast<long long>(verification->head.sequence),
                saved.error().message().c_str());
    return 0;
}

/// No file may become larger than `size`; 0 where `work`, which returns a Result, was refused.
template <class Work>
int onSmallDisk(const std::string& size, Work work) {
    std::signal(SIGXFSZ, SIG_IGN);
    const rlimit limit{std::stoul(size), std::stoul(size)};
    if (::setrlimit(RLIMIT_FSIZE, &limit) != 0) return 4;
    const auto done = work();
    std::printf("%s\n", done ? "done" : done.error().message().c_str());
    return !done && done.error().kind == ErrorKind::Refused ? 0 : 5;
}

int makeDatabase(const std::string& path) {
    const SetClock clock;
    const Actor actor{"A. Bench"};
    auto archive = Archive::create(path, ArchiveKind::Demonstration, actor, clock);
    if (!archive || !archive->save(sampleOrder(), 0, actor) ||
        !archive->save(samplePart(), 0, actor) || !archive->add(samplePlan(), actor) ||
        !archive->save(sampleCasting(), 0, actor) || !archive->save(sampleDraft(), actor) ||
        !archive->save(sampleUltrasonicDraft(), actor))
        return 4;
    IssueFacts facts = sampleFacts();
    facts.printedHead = *archive->head();
    facts.tableDigests = {toHex(sha256(shippedTables()[0].text))};
    return foundry::addCertificate(*archive, facts, "%PDF of an old archive", actor) ? 0 : 4;
}

/// Signed by everybody, with a casting that was presented, endorsed and released.
class SignedDatabase : public LifecycleTest {
public:
    int writeTo(const std::string& to) {
        const std::int64_t number = presentedCasting("3.2", "2");
        const auto done = [&] {
            if (auto endorsed = endorse(*archive_, number, endorsedPdf(number), thirdParty_);
                !endorsed)
                return endorsed;
            if (auto released = release(number, qaManager_); !released) return released;
            return hold(*archive_, "O-1", "a claim is open", qaManager_);
        }();
        archive_.reset();
        if (!done) return 4;
        for (const char* suffix : {"", ".key"})
            std::filesystem::copy_file(path() + suffix, to + suffix);
        return 0;
    }
    void TestBody() override {}
};

}  // namespace

int runAsSecondProgram(const std::vector<std::string>& arguments) {
    if (arguments.size() == 4 && arguments[0] == "--write-orders")
        return writeOrders(arguments[1], arguments[2], std::stoi(arguments[3]));
    if (arguments.size() == 2 && arguments[0] == "--fill-small-disk")
        return fillSmallDisk(arguments[1]);
    if (arguments.size() == 2 && arguments[0] == "--read-only") return readOnly(arguments[1]);
    if (arguments.size() == 4 && arguments[0] == "--back-up-on-small-disk")
        return onSmallDisk(arguments[3], [&] { return backUp(arguments[1], arguments[2]); });
    if (arguments.size() == 4 && arguments[0] == "--restore-on-small-disk")
        return onSmallDisk(arguments[3], [&] { return restore(arguments[1], arguments[2]); });
    if (arguments.size() == 2 && arguments[0] == "--make-database")
        return makeDatabase(arguments[1]);
    if (arguments.size() == 2 && arguments[0] == "--make-signed-database")
        return SignedDatabase().writeTo(arguments[1]);
    return -1;
}

}  // namespace model
