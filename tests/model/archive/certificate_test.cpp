// SPDX-License-Identifier: Apache-2.0
#include <filesystem>
#include <fstream>

#include "archive_fixture.h"
#include "base/digest.h"
#include "foundry/old_certificates.h"
#include "limits/shipped_tables.h"
#include "raw_database.h"

namespace model {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

class Certificates : public ArchiveTest {
protected:
    void SetUp() override { fill(); }
    [[nodiscard]] std::vector<std::int64_t> numbers(const CertificateSearch& search) const {
        return numbersIn(*archive_, search);
    }
    [[nodiscard]] std::size_t filesStored() const {
        std::size_t count = 0;
        if (!std::filesystem::exists(path() + ".files")) return 0;
        for (const auto& entry : std::filesystem::recursive_directory_iterator(path() + ".files"))
            if (entry.is_regular_file()) ++count;
        return count;
    }
};

TEST_F(Certificates, ComeBackByteForByte) {
    const std::string pdf("%PDF-1.7\0\r\n\xff\xfe", 13);
    IssueFacts facts = sampleFacts();
    facts.printedHead = *archive_->head();
    const auto number = foundry::addCertificate(*archive_, facts, pdf, actor_);
    ASSERT_THAT(number, Succeeds());
    EXPECT_EQ(*number, 1);
    const Archive archive = reopened();
    EXPECT_EQ(*archive.certificateFile(1), pdf);
    const auto certificate = archive.certificate(1);
    ASSERT_THAT(certificate, Succeeds());
    EXPECT_EQ(certificate->number, 1);
    EXPECT_EQ(certificate->facts.serial, "S-17");
    EXPECT_EQ(certificate->facts.heat, "H 204");
    EXPECT_EQ(certificate->facts.part, "P-9");
    EXPECT_EQ(certificate->facts.order, "O-1");
    EXPECT_EQ(certificate->facts.customer, "First Buyer");
    EXPECT_EQ(certificate->facts.customerOrder, "FB 4711/20");
    EXPECT_EQ(certificate->facts.type, "3.1");
    EXPECT_EQ(certificate->facts.language, "en");
    EXPECT_EQ(certificate->facts.verdict, Word::Acceptable);
    EXPECT_EQ(certificate->facts.printedHead, facts.printedHead);
    EXPECT_EQ(certificate->facts.supersedes, std::nullopt);
    EXPECT_EQ(certificate->issuedAt, "2026-11-25T09:30:00Z");
    EXPECT_EQ(certificate->issuedBy, "A. Bench");
    EXPECT_EQ(certificate->fileSize, 13);
    EXPECT_EQ(certificate->fileDigest.size(), 64u);
}

TEST_F(Certificates, TakeTheReservedNumber) {
    const auto first = archive_->reserveCertificateNumber(actor_);
    const auto second = reopened().reserveCertificateNumber(actor_);
    ASSERT_THAT(first, Succeeds());
    ASSERT_THAT(second, Succeeds());
    EXPECT_EQ(*first, 1);
    EXPECT_EQ(*second, 2);
    EXPECT_EQ(*foundry::addCertificate(*archive_, sampleFacts(), "b", actor_, 2), 2);
    EXPECT_THAT(foundry::addCertificate(*archive_, sampleFacts(), "b", actor_, 2),
                FailsWith(ErrorKind::Conflict));
    EXPECT_THAT(foundry::addCertificate(*archive_, sampleFacts(), "b", actor_, 3),
                FailsWith(ErrorKind::Input));
    EXPECT_EQ(*foundry::addCertificate(*archive_, sampleFacts(), "c", actor_), 3);
    EXPECT_EQ(*foundry::addCertificate(*archive_, sampleFacts(), "a", actor_, 1), 1);
    EXPECT_EQ(*archive_->certificateFile(2), "b");
    EXPECT_THAT(findings(), IsEmpty());
}

TEST_F(Certificates, AreRefusedWhereTheyDoNotFitTheArchive) {
    const Head head = *archive_->head();
    const auto refused = [&](auto change) {
        IssueFacts facts = sampleFacts();
        change(facts);
        EXPECT_THAT(foundry::addCertificate(*archive_, facts, "pdf", actor_),
                    FailsWith(ErrorKind::Input));
    };
    refused([](IssueFacts& facts) { facts.serial = "S-18"; });
    refused([](IssueFacts& facts) { facts.type = ""; });
    refused([](IssueFacts& facts) { facts.supersedes = 1; });
    refused([&](IssueFacts& facts) { facts.printedHead = Head{head.sequence + 1, head.hash}; });
    refused([&](IssueFacts& facts) { facts.printedHead = Head{head.sequence, {}}; });
    refused([](IssueFacts& facts) { facts.tableDigests = {std::string(64, '0')}; });
    refused([](IssueFacts& facts) { facts.customer = "\xff"; });
    EXPECT_THAT(foundry::addCertificate(*archive_, sampleFacts(), "", actor_),
                FailsWith(ErrorKind::Input));
    EXPECT_EQ(*archive_->head(), head);
    EXPECT_EQ(filesStored(), 0u);
}

TEST_F(Certificates, LeaveNoFileWhereTheRowCannotBeStored) {
    RawDatabase raw(path());
    ASSERT_EQ(raw.run("CREATE TRIGGER refuse BEFORE INSERT ON certificate "
                      "BEGIN SELECT RAISE(ABORT, 'not today'); END"),
              SQLITE_OK);
    const auto stored = foundry::addCertificate(*archive_, sampleFacts(), "pdf", actor_);
    ASSERT_THAT(stored, FailsWith(ErrorKind::Refused));
    EXPECT_THAT(stored.error().message(), testing::HasSubstr("not today"));
    EXPECT_EQ(filesStored(), 0u);
    EXPECT_THAT(numbersIn(*archive_), IsEmpty());
}

TEST_F(Certificates, KeepTheLimitTablesTheyWereJudgedBy) {
    const auto shipped = shippedTables();
    ASSERT_GE(shipped.size(), 2u);
    const std::string first = toHex(sha256(shipped[0].text));
    const std::string second = toHex(sha256(shipped[1].text));
    IssueFacts facts = sampleFacts();
    facts.tableDigests = {first, second};
    ASSERT_THAT(foundry::addCertificate(*archive_, facts, "1", actor_), Succeeds());
    facts.tableDigests = {first};
    ASSERT_THAT(foundry::addCertificate(*archive_, facts, "2", actor_), Succeeds());
    ASSERT_THAT(foundry::addCertificate(*archive_, sampleFacts(), "3", actor_), Succeeds());
    EXPECT_THAT(archive_->certificate(3)->facts.tableDigests, IsEmpty());
    EXPECT_THAT(archive_->certificate(2)->facts.tableDigests, ElementsAre(first));
    EXPECT_EQ(archive_->certificate(1)->facts.tableDigests, (std::set<std::string>{first, second}));
    RawDatabase raw(path());
    EXPECT_EQ(raw.value("SELECT count(*) FROM limit_table"), "2");
    EXPECT_EQ(raw.value("SELECT content FROM limit_table WHERE sha256 = '" + first + "'"),
              shipped[0].text);
    EXPECT_THAT(findings(), IsEmpty());
    raw.dropTriggers();
    ASSERT_EQ(raw.run("DELETE FROM certificate_table WHERE certificate = 2"), SQLITE_OK);
    EXPECT_THAT(findings(), testing::Contains(testing::HasSubstr("certificate 2: is not what")));
}

TEST_F(Certificates, ShareAFileOfTheSameBytes) {
    ASSERT_THAT(foundry::addCertificate(*archive_, sampleFacts(), "same", actor_), Succeeds());
    ASSERT_THAT(foundry::addCertificate(*archive_, sampleFacts(), "same", actor_), Succeeds());
    EXPECT_EQ(filesStored(), 1u);
    EXPECT_EQ(*archive_->certificateFile(1), *archive_->certificateFile(2));
}

TEST_F(Certificates, AreNotPutOverAFolderThatCannotBeMade) {
    std::ofstream(path() + ".files") << "in the way";
    const auto stored = foundry::addCertificate(*archive_, sampleFacts(), "pdf", actor_);
    EXPECT_THAT(stored, FailsWith(ErrorKind::Refused));
    EXPECT_THAT(numbersIn(*archive_), IsEmpty());
}

TEST_F(Certificates, AreFoundByWhatTheyState) {
    Casting other = sampleCasting();
    other.serial = "S-18";
    ASSERT_THAT(archive_->save(other, 0, actor_), Succeeds());
    IssueFacts facts = sampleFacts();
    ASSERT_THAT(foundry::addCertificate(*archive_, facts, "1", actor_), Succeeds());
    clock_.set(std::chrono::sys_days(std::chrono::year(2026) / 11 / 26) - std::chrono::seconds(1));
    facts.serial = "S-18";
    facts.heat = "H 205";
    facts.part = "P-10";
    facts.order = "O-2";
    facts.customer = "Second Buyer";
    facts.verdict = Word::NotAcceptable;
    ASSERT_THAT(foundry::addCertificate(*archive_, facts, "2", actor_), Succeeds());
    clock_.set(std::chrono::sys_days(std::chrono::year(2026) / 11 / 26));
    facts = sampleFacts();
    facts.verdict = Word::NotJudged;
    facts.supersedes = 1;
    ASSERT_THAT(foundry::addCertificate(*archive_, facts, "3", actor_), Succeeds());

    EXPECT_THAT(numbers({}), ElementsAre(3, 2, 1));
    EXPECT_THAT(numbers({.serial = "S-17"}), ElementsAre(3, 1));
    EXPECT_THAT(numbers({.heat = "H 205"}), ElementsAre(2));
    EXPECT_THAT(numbers({.part = "P-10"}), ElementsAre(2));
    EXPECT_THAT(numbers({.order = "O-2"}), ElementsAre(2));
    EXPECT_THAT(numbers({.customer = "Second Buyer"}), ElementsAre(2));
    EXPECT_THAT(numbers({.customer = "second buyer"}), IsEmpty());
    EXPECT_THAT(numbers({.from = "2026-11-26"}), ElementsAre(3));
    EXPECT_THAT(numbers({.to = "2026-11-25"}), ElementsAre(2, 1));
    EXPECT_THAT(numbers({.from = "2026-11-25", .to = "2026-11-26"}), ElementsAre(3, 2, 1));
    EXPECT_THAT(numbers({.verdict = Word::Acceptable}), ElementsAre(1));
    EXPECT_THAT(numbers({.verdict = Word::NotAcceptable}), ElementsAre(2));
    EXPECT_THAT(numbers({.serial = "S-17", .verdict = Word::NotJudged}), ElementsAre(3));
    EXPECT_THAT(numbers({.pageSize = 2}), ElementsAre(3, 2));
    EXPECT_EQ(archive_->certificate(3)->facts.supersedes, 1);
    for (const char* date : {"2026-13-01", "2026-02-29", "26-11-2026", "2026-1-1", "today", ""})
        EXPECT_THAT(findCertificates(*archive_, {.from = date}), FailsWith(ErrorKind::Input))
            << date;
}

}  // namespace
}  // namespace model
