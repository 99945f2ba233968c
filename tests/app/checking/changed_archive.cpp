// SPDX-License-Identifier: Apache-2.0
#include "changed_archive.h"

#include <filesystem>

#include "busy_archive.h"

namespace app {
namespace {

namespace fs = std::filesystem;

std::string keptAt(const std::string& path) {
    return path + ".kept";
}

}  // namespace

void ChangedArchive::SetUp() {
    {
        BusyArchive busy(path());
        busy.live();
        const auto whole = checkArchive(busy.archive());
        ASSERT_TRUE(whole.ok()) << whole.error().message();
        for (const model::Error& finding : whole->findings) ADD_FAILURE() << finding.message();
        ASSERT_EQ(whole->pdfs, 8);
    }
    // The last one to go folded the log in.
    ASSERT_FALSE(fs::exists(path() + "-wal"));
    fs::copy_file(path(), keptAt(path()));
    ASSERT_THAT(findings(), testing::IsEmpty());
}

std::vector<std::string> ChangedArchive::findings(const std::optional<model::Head>& held) const {
    const auto archive = model::Archive::openForReading(path());
    if (!archive && archive.error().kind == model::ErrorKind::Damaged)
        return {archive.error().message()};
    if (!archive) {
        ADD_FAILURE() << archive.error().message();
        return {};
    }
    const auto verified = archive->verify(held);
    if (!verified && verified.error().kind == model::ErrorKind::Damaged)
        return {verified.error().message()};
    if (!verified) {
        ADD_FAILURE() << verified.error().message();
        return {};
    }
    std::vector<std::string> messages;
    for (const model::Error& finding : verified->findings) messages.push_back(finding.message());
    return messages;
}

model::Head ChangedArchive::head() const {
    return must(must(model::Archive::openForReading(path())).head());
}

bool ChangedArchive::isFound(const Change& change) {
    std::optional<std::string> what;
    {
        Forger forger(path(), random_);
        what = change(forger);
    }
    if (what) expectFound(*what);
    undo();
    return what.has_value();
}

void ChangedArchive::expectFound(const std::string& what) {
    ++changes_;
    EXPECT_THAT(findings(), testing::Not(testing::IsEmpty())) << "not found: " << what;
}

void ChangedArchive::undo() const {
    for (const char* suffix : {"-wal", "-shm"}) fs::remove(path() + suffix);
    fs::copy_file(keptAt(path()), path(), fs::copy_options::overwrite_existing);
}

}  // namespace app
