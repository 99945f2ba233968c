// SPDX-License-Identifier: Apache-2.0
// The files beside the database: certificates, and what entries of registers name.
#include <filesystem>
#include <fstream>

#include "changed_archive.h"

namespace app {
namespace {

namespace fs = std::filesystem;

class FilesChanged : public ChangedArchive {
protected:
    void SetUp() override {
        ChangedArchive::SetUp();
        for (const auto& entry : fs::recursive_directory_iterator(files()))
            if (entry.is_regular_file()) files_.push_back(entry.path());
        std::ranges::sort(files_);
        // 15 PDFs, and the photo that an attachment names.
        ASSERT_EQ(files_.size(), 16U);
    }

    /// Lets `change` alter one file, expects that to be found, and puts the file back.
    void alter(const std::string& what, const std::function<void(const fs::path&)>& change) {
        const fs::path file = random_.of(files_);
        const std::string kept = path() + ".pdf";
        fs::copy_file(file, kept, fs::copy_options::overwrite_existing);
        change(file);
        expectFound(what + " " + file.string());
        fs::copy_file(kept, file, fs::copy_options::overwrite_existing);
    }

    std::vector<fs::path> files_;
};

TEST_F(FilesChanged, AnyByte) {
    for (int time = 0; time < 60; ++time) {
        std::size_t place = 0;
        alter("a byte of", [&](const fs::path& file) {
            std::fstream stream(file, std::ios::in | std::ios::out | std::ios::binary);
            place = random_.below(fs::file_size(file));
            stream.seekg(static_cast<std::streamoff>(place));
            const char c = static_cast<char>(stream.get() ^ (1 << random_.below(8)));
            stream.seekp(static_cast<std::streamoff>(place));
            stream.put(c);
        });
    }
}

TEST_F(FilesChanged, LongerShorterGoneOrAnother) {
    for (int time = 0; time < 8; ++time) {
        alter("appended to", [](const fs::path& file) {
            std::ofstream(file, std::ios::app | std::ios::binary) << '\n';
        });
        alter("cut short", [&](const fs::path& file) {
            fs::resize_file(file, random_.below(fs::file_size(file)));
        });
        alter("taken out", [](const fs::path& file) { fs::remove(file); });
        alter("replaced by another of the archive's", [&](const fs::path& file) {
            fs::path other = file;
            while (other == file) other = random_.of(files_);
            fs::copy_file(other, file, fs::copy_options::overwrite_existing);
        });
    }
}

// The database is altered along with it, so that it names the other file.
TEST_F(FilesChanged, AnotherFileInACertificatesRow) {
    for (int time = 0; time < 10; ++time)
        EXPECT_TRUE(isFound([&](Forger& forger) {
            auto& raw = forger.raw();
            const auto numbers = raw.column("SELECT number FROM certificate");
            const std::string one = random_.of(numbers);
            std::string other = one;
            while (other == one) other = random_.of(numbers);
            const std::string sql =
                "UPDATE certificate SET (file_sha256, file_bytes) = (SELECT file_sha256, "
                "file_bytes FROM certificate WHERE number = " +
                other + ") WHERE number = " + one;
            return raw.run(sql) == SQLITE_OK ? std::optional(sql) : std::nullopt;
        }));
}

}  // namespace
}  // namespace app
