// SPDX-License-Identifier: Apache-2.0
#include "pdf/write_file.h"

#include <QTemporaryDir>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <iterator>
#include <sys/resource.h>

namespace {

namespace fs = std::filesystem;
using model::ErrorKind;
using reports::writeFile;

std::string contentOf(const fs::path& path) {
    std::ifstream stream(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
}

std::vector<std::string> namesIn(const fs::path& folder) {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(folder))
        names.push_back(entry.path().filename().string());
    return names;
}

class WriteFile : public testing::Test {
protected:
    [[nodiscard]] fs::path folder() const { return folder_.path().toStdString(); }
    [[nodiscard]] std::string file() const { return (folder() / "certificate.pdf").string(); }

private:
    QTemporaryDir folder_;
};

/// Lets this process write no file longer than so many bytes, as on a disk that fills up.
class SmallFiles {
public:
    explicit SmallFiles(rlim_t bytes) {
        ::getrlimit(RLIMIT_FSIZE, &before_);
        rlimit small = before_;
        small.rlim_cur = bytes;
        handler_ = std::signal(SIGXFSZ, SIG_IGN);
        ::setrlimit(RLIMIT_FSIZE, &small);
    }
    ~SmallFiles() {
        ::setrlimit(RLIMIT_FSIZE, &before_);
        std::signal(SIGXFSZ, handler_);
    }
    SmallFiles(const SmallFiles&) = delete;
    SmallFiles& operator=(const SmallFiles&) = delete;

private:
    rlimit before_ = {};
    void (*handler_)(int) = nullptr;
};

TEST_F(WriteFile, WritesEveryByteAndNothingElse) {
    const std::string bytes("a\0b\r\n\xff", 6);
    ASSERT_TRUE(writeFile(file(), bytes).ok());
    EXPECT_EQ(contentOf(file()), bytes);
    EXPECT_THAT(namesIn(folder()), testing::ElementsAre("certificate.pdf"));
}

TEST_F(WriteFile, ReplacesAnOlderFileAndKeepsItsPermissions) {
    ASSERT_TRUE(writeFile(file(), "old").ok());
    fs::permissions(file(), fs::perms::owner_read | fs::perms::owner_write);
    ASSERT_TRUE(writeFile(file(), "new").ok());
    EXPECT_EQ(contentOf(file()), "new");
    EXPECT_EQ(fs::status(file()).permissions(), fs::perms::owner_read | fs::perms::owner_write);
}

TEST_F(WriteFile, LeavesNothingBehindWhenTheDiskIsFull) {
    const std::string big(300'000, 'x');
    {
        const SmallFiles limit(100'000);
        const auto failed = writeFile(file(), big);
        ASSERT_FALSE(failed.ok());
        EXPECT_EQ(failed.error().kind, ErrorKind::Refused);
        EXPECT_EQ(failed.error().place, file());
    }
    EXPECT_TRUE(namesIn(folder()).empty());
}

TEST_F(WriteFile, LeavesAnOlderFileUntouchedWhenTheDiskIsFull) {
    ASSERT_TRUE(writeFile(file(), "old").ok());
    {
        const SmallFiles limit(1000);
        ASSERT_FALSE(writeFile(file(), std::string(5000, 'x')).ok());
    }
    EXPECT_EQ(contentOf(file()), "old");
    EXPECT_THAT(namesIn(folder()), testing::ElementsAre("certificate.pdf"));
}

TEST_F(WriteFile, RefusesAFolderThatIsNotThere) {
    const auto failed = writeFile((folder() / "none" / "a.pdf").string(), "x");
    ASSERT_FALSE(failed.ok());
    EXPECT_EQ(failed.error().kind, ErrorKind::Refused);
}

TEST_F(WriteFile, RefusesToReplaceWhatIsNoOrdinaryFile) {
    fs::create_directory(folder() / "sub");
    EXPECT_FALSE(writeFile((folder() / "sub").string(), "x").ok());
    EXPECT_THAT(namesIn(folder()), testing::ElementsAre("sub"));
    EXPECT_FALSE(writeFile("/dev/null", "x").ok());
    EXPECT_TRUE(fs::is_character_file("/dev/null"));
}

}  // namespace
