// SPDX-License-Identifier: Apache-2.0
#include "second_program.h"

#include <csignal>
#include <cstdio>
#include <filesystem>
#include <sys/resource.h>

#include "archive_fixture.h"
#include "base/digest.h"
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
            const auto stored =
                archive->addCertificate(sampleFacts(), std::string(size + 1, 'x'), Actor{"B"});
            return !stored && stored.error().kind == ErrorKind::Refused ? 0 : 5;
        }
        draft->version = saved->version;
    }
    return 6;
}

int makeDatabase(const std::string& path) {
    const SetClock clock;
    const Actor actor{"A. Bench"};
    auto archive = Archive::create(path, ArchiveKind::Demonstration, actor, clock);
    if (!archive || !archive->save(sampleOrder(), 0, actor) ||
        !archive->save(samplePart(), 0, actor) || !archive->add(samplePlan(), actor) ||
        !archive->save(sampleCasting(), 0, actor) || !archive->save(sampleDraft(), actor))
        return 4;
    IssueFacts facts = sampleFacts();
    facts.printedHead = *archive->head();
    facts.tableDigests = {toHex(sha256(shippedTables()[0].text))};
    return archive->addCertificate(facts, "%PDF of an old archive", actor) ? 0 : 4;
}

}  // namespace

int runAsSecondProgram(const std::vector<std::string>& arguments) {
    if (arguments.size() == 4 && arguments[0] == "--write-orders")
        return writeOrders(arguments[1], arguments[2], std::stoi(arguments[3]));
    if (arguments.size() == 2 && arguments[0] == "--fill-small-disk")
        return fillSmallDisk(arguments[1]);
    if (arguments.size() == 2 && arguments[0] == "--make-database")
        return makeDatabase(arguments[1]);
    return -1;
}

}  // namespace model
