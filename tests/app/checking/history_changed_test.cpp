// SPDX-License-Identifier: Apache-2.0
// The history's bytes, its chain, its seals and signatures; and histories that were cut short.
#include <filesystem>
#include <fstream>
#include <iterator>

#include "archive/history_store.h"
#include "busy_archive.h"
#include "changed_archive.h"
#include "trust/chain.h"
#include "trust/seal_key.h"

namespace app {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

std::string hexOf(std::string_view bytes) {
    static constexpr char kDigits[] = "0123456789abcdef";
    std::string hex;
    for (const char c : bytes) {
        hex += kDigits[static_cast<unsigned char>(c) >> 4U];
        hex += kDigits[static_cast<unsigned char>(c) & 15U];
    }
    return "X'" + hex + "'";
}

std::string_view bytesOf(const model::Digest& hash) {
    return {reinterpret_cast<const char*>(hash.data()), hash.size()};
}

class HistoryChanged : public ChangedArchive {
protected:
    void SetUp() override {
        ChangedArchive::SetUp();
        head_ = head();
    }

    /// Flips one bit of a random byte of a random row's `column`.
    std::optional<std::string> flipByte(Forger& forger, const std::string& table,
                                        const std::string& key, const std::string& column) {
        // A record whose certificate was disposed of has no content any more.
        const auto keys = forger.raw().column("SELECT " + key + " FROM " + table +
                                              " WHERE length(" + column + ") > 0");
        const std::string where =
            " WHERE " + key + " = " + random_.of(keys) + " AND length(" + column + ") > 0";
        std::string bytes = forger.raw().value("SELECT " + column + " FROM " + table + where);
        const std::size_t place = random_.below(bytes.size());
        bytes[place] =
            static_cast<char>(static_cast<unsigned char>(bytes[place]) ^ (1U << random_.below(8)));
        const std::string sql = "UPDATE " + table + " SET " + column + " = " + hexOf(bytes) + where;
        if (forger.raw().run(sql) != SQLITE_OK) return std::nullopt;
        return table + "." + column + where + ", byte " + std::to_string(place);
    }

    /// Alters the bytes of a row, its columns along with them, and makes all hashes from it on fit
    /// again; and all seals, where the archive's own key is at hand.
    void rewrite(Forger& forger, std::int64_t sequence, const model::SealKey* key) const {
        auto& raw = forger.raw();
        const std::string from = std::to_string(sequence);
        const std::string where = " WHERE sequence = " + from;
        const std::string person = raw.value("SELECT person FROM history" + where);
        std::string bytes = raw.value("SELECT bytes FROM history" + where);
        const std::string named = "\"person\":\"" + person + "\"";
        const auto place = bytes.rfind(named);
        ASSERT_NE(place, std::string::npos);
        bytes.replace(place, named.size(), "\"person\":\"Somebody Else\"");
        raw.run("UPDATE history SET person = 'Somebody Else', bytes = " + hexOf(bytes) + where);
        model::Digest hash = model::kGenesis;
        if (sequence > 1)
            std::ranges::copy(raw.value("SELECT hash FROM history WHERE sequence = " +
                                        std::to_string(sequence - 1)),
                              reinterpret_cast<char*>(hash.data()));
        for (const std::string& row : raw.column(
                 "SELECT sequence FROM history WHERE sequence >= " + from + " ORDER BY sequence")) {
            const std::string at = " WHERE sequence = " + row;
            hash = model::chained(hash, raw.value("SELECT bytes FROM history" + at));
            raw.run("UPDATE history SET hash = " + hexOf(bytesOf(hash)) + at);
            if (key)
                raw.run("UPDATE history_seal SET signature = " + hexOf(must(key->seal(hash))) + at);
        }
    }

    [[nodiscard]] model::SealKey archiveKey() const {
        std::ifstream file(path() + ".key");
        const std::string pem{std::istreambuf_iterator<char>(file), {}};
        return must(model::SealKey::fromPem(model::SecretBytes(pem)));
    }

    model::Head head_;
};

TEST_F(HistoryChanged, AnyByte) {
    const char* const columns[][3] = {{"history", "sequence", "bytes"},
                                      {"history", "sequence", "hash"},
                                      {"history_seal", "sequence", "signature"},
                                      {"history_signature", "sequence", "signature"},
                                      {"identity_certificate", "identity", "certificate"},
                                      {"record", "id", "content"},
                                      {"presentation", "number", "content"}};
    for (const auto& [table, key, column] : columns) {
        for (int time = 0; time < 16; ++time)
            EXPECT_TRUE(isFound([&](Forger& forger) {
                return flipByte(forger, table, key, column);
            })) << table;
    }
    EXPECT_GE(changes_, 100);
}

TEST_F(HistoryChanged, RowsWrittenAnewWithFittingHashes) {
    for (int time = 0; time < 15; ++time) {
        const auto sequence =
            static_cast<std::int64_t>(1 + random_.below(static_cast<std::size_t>(head_.sequence)));
        EXPECT_TRUE(isFound([&](Forger& forger) {
            rewrite(forger, sequence, nullptr);
            return std::optional("row " + std::to_string(sequence) + " and all hashes from it on");
        }));
    }
}

// Whoever has the archive's key file can seal anew, but not sign for people.
TEST_F(HistoryChanged, RowsWrittenAnewWithTheArchivesOwnKey) {
    const model::SealKey key = archiveKey();
    const std::size_t lastSigned = [&] {
        model::RawDatabase raw(path());
        return std::stoul(raw.value("SELECT max(sequence) FROM history_signature"));
    }();
    for (int time = 0; time < 15; ++time) {
        const auto sequence = static_cast<std::int64_t>(1 + random_.below(lastSigned));
        EXPECT_TRUE(isFound([&](Forger& forger) {
            rewrite(forger, sequence, &key);
            return std::optional("row " + std::to_string(sequence) + ", sealed anew");
        }));
    }
}

// What no person signed after, the holder of the key file can write anew; a head that was noted
// elsewhere shows it.
TEST_F(HistoryChanged, TheUnsignedEndWrittenAnewIsShownByAHeadHeldElsewhere) {
    const model::SealKey key = archiveKey();
    {
        Forger forger(path(), random_);
        ASSERT_EQ(forger.raw().value("SELECT max(sequence) FROM history_signature"),
                  std::to_string(head_.sequence - 1));
        rewrite(forger, head_.sequence, &key);
    }
    EXPECT_THAT(findings(head_), Contains(HasSubstr("has another row where the head")));
}

TEST_F(HistoryChanged, SealsAndSignaturesStripped) {
    for (const char* sql :
         {"DELETE FROM history_seal", "DELETE FROM history_signature",
          "DELETE FROM history_seal WHERE sequence > 20",
          "DELETE FROM history_signature WHERE sequence > 20", "DELETE FROM archive_key",
          "DELETE FROM history_signature; DELETE FROM identity; DELETE FROM identity_certificate",
          "DELETE FROM history_seal; DELETE FROM archive_key; DELETE FROM history_signature"})
        EXPECT_TRUE(isFound([&](Forger& forger) {
            return forger.raw().run(sql) == SQLITE_OK ? std::optional<std::string>(sql)
                                                      : std::nullopt;
        })) << sql;
}

TEST_F(HistoryChanged, SealsAndSignaturesExchanged) {
    for (const char* name : {"history_seal", "history_signature"}) {
        for (int time = 0; time < 20; ++time)
            EXPECT_TRUE(isFound([&](Forger& forger) -> std::optional<std::string> {
                for (const Table& table : forger.tables(kNoEvidence))
                    if (table.name == name) return forger.swapRows(table);
                return std::nullopt;
            }));
    }
}

// The key of somebody else in the archive's place, and all its seals anew.
TEST_F(HistoryChanged, AnotherKeyInThePlaceOfTheArchives) {
    const auto key = must(model::SealKey::make());
    EXPECT_TRUE(isFound([&](Forger& forger) {
        auto& raw = forger.raw();
        raw.run("UPDATE archive_key SET public_key = " + hexOf(key.publicKey()));
        for (const std::string& row : raw.column("SELECT sequence FROM history")) {
            model::Digest hash{};
            std::ranges::copy(raw.value("SELECT hash FROM history WHERE sequence = " + row),
                              reinterpret_cast<char*>(hash.data()));
            raw.run("UPDATE history_seal SET signature = " + hexOf(must(key.seal(hash))) +
                    " WHERE sequence = " + row);
        }
        return std::optional<std::string>("another key");
    }));
}

TEST_F(HistoryChanged, TheEndCutOff) {
    for (int time = 0; time < 20; ++time) {
        const std::string last =
            std::to_string(random_.below(static_cast<std::size_t>(head_.sequence)));
        {
            Forger forger(path(), random_);
            for (const char* table : {"history", "history_seal", "history_signature"})
                ASSERT_EQ(forger.raw().run(std::string("DELETE FROM ") + table +
                                           " WHERE sequence > " + last),
                          SQLITE_OK);
        }
        EXPECT_THAT(findings(head_), Contains(HasSubstr("rows are missing"))) << last;
        undo();
    }
}

// Nothing inside can show that a whole archive is an older copy of itself.
TEST_F(HistoryChanged, AnOlderCopyPutBackIsShownByAHeadHeldElsewhere) {
    for (int time = 0; time < 3; ++time) {
        {
            auto archive = must(model::Archive::open(path()));
            must(archive.reserveCertificateNumber({"Ilse Bröker"}));
        }
        const model::Head later = head();
        EXPECT_THAT(findings(later), IsEmpty());
        undo();
        EXPECT_THAT(findings(), IsEmpty());
        EXPECT_THAT(findings(later), Contains(HasSubstr("rows are missing")));
    }
}

}  // namespace
}  // namespace app
