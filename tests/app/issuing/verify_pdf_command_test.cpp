// SPDX-License-Identifier: Apache-2.0
// fettlemark-cli verify FILE.pdf on a certificate that was released, and on what was made of it.
#include <algorithm>
#include <filesystem>

#include "issued.h"
#include "process.h"

namespace app {
namespace {

using testing::HasSubstr;
using testing::Not;

class VerifyPdfCommand : public Issued {
protected:
    void SetUp() override {
        number_ = presented();
        waiting_ = must(model::presentedFile(archive(), number_));
        released_ = releasedFile(number_);
        writeAuthority();
    }
    Finished verify(const std::string& bytes, std::vector<std::string> more) {
        folder_.write("one.pdf", bytes);
        more.insert(more.begin(), {"verify", path("one.pdf")});
        return runCli(std::move(more));
    }
    Finished trusting(const std::string& bytes) {
        return verify(bytes, {"--trust", path("ca.pem")});
    }
    void expectAltered(const std::string& bytes, const char* what) {
        const Finished finished = trusting(bytes);
        EXPECT_EQ(finished.exitCode, 1) << what << ": " << finished.output << finished.error;
        EXPECT_THAT(finished.output, HasSubstr("ALTERED")) << what;
    }
    static void expectWrong(const Finished& finished, int code) {
        EXPECT_EQ(finished.exitCode, code) << finished.error;
        EXPECT_EQ(finished.output, "");
        EXPECT_EQ(std::ranges::count(finished.error, '\n'), 1) << finished.error;
    }

    std::int64_t number_ = 0;
    std::string waiting_;
    std::string released_;
};

TEST_F(VerifyPdfCommand, SaysWhoSignedWhatAndWhoIsTrusted) {
    const Finished finished = trusting(released_);
    EXPECT_EQ(finished.exitCode, 0) << finished.output << finished.error;
    EXPECT_THAT(finished.output, HasSubstr("one.pdf: intact, signed and trusted\n"));
    EXPECT_THAT(finished.output,
                HasSubstr("signature 1: field \"Inspector\", by Ilse Bröker (Quillmere Foundry), "
                          "claims 2026-11-25T"));
    EXPECT_THAT(finished.output,
                HasSubstr("and what came after it is only further signatures, trusted by Quillmere "
                          "inspection authority"));
    EXPECT_THAT(finished.output, HasSubstr("signature 2: field \"Release\", by Quentin Marsh"));
    EXPECT_THAT(finished.output, HasSubstr("covers the whole file, trusted by Quillmere"));
    EXPECT_THAT(finished.output, Not(HasSubstr("against it")));
}

TEST_F(VerifyPdfCommand, KnowsWhichCertificateOfTheArchiveItIs) {
    const std::string db = path("works.fettlemark");
    const Finished known = verify(released_, {"--db", db});
    EXPECT_EQ(known.exitCode, 0) << known.output << known.error;
    EXPECT_THAT(known.output, HasSubstr("archive: this is certificate 1 of casting Q-1, "
                                        "released by Quentin Marsh on 2026-11-25T"));
    must(model::withdraw(archive(), number_, "wrong heat number",
                         foundry_.person(foundry::kQaManager)));
    const Finished withdrawn = verify(released_, {"--db", db});
    EXPECT_EQ(withdrawn.exitCode, 0);
    EXPECT_THAT(withdrawn.output, HasSubstr("withdrawn by Quentin Marsh on "));
    EXPECT_THAT(withdrawn.output, HasSubstr("because: wrong heat number"));
    const Finished other = verify(waiting_ + "\n", {"--db", db});
    EXPECT_EQ(other.exitCode, 1);
    EXPECT_THAT(other.output, HasSubstr("no certificate of it is this file, byte for byte"));
}

TEST_F(VerifyPdfCommand, TakesTheLastFileAloneForTheCertificate) {
    const std::string db = path("works.fettlemark");
    foundry_.signedCasting("Q-2", "O-32");
    const std::int64_t number = foundry_.present("Q-2");
    const std::string presented = must(model::presentedFile(archive(), number));
    const std::string name = "certificate " + std::to_string(number) + " of casting Q-2";
    EXPECT_THAT(verify(presented, {"--db", db}).output,
                HasSubstr("archive: this is " + name + ", waiting for release\n"));
    foundry_.endorse(number);
    const std::string endorsed = must(model::presentedFile(archive(), number));
    foundry_.release(number);
    for (const std::string& earlier : {presented, endorsed}) {
        const Finished finished = verify(earlier, {"--db", db});
        EXPECT_EQ(finished.exitCode, 3) << finished.output;
        EXPECT_THAT(finished.output, HasSubstr("archive: this is what was signed on the way to " +
                                               name + ", not the certificate itself, released by"));
        EXPECT_THAT(finished.output, Not(HasSubstr("against it")));
    }
    const Finished last = verify(must(archive().certificateFile(number)), {"--db", db});
    EXPECT_EQ(last.exitCode, 0) << last.output;
    EXPECT_THAT(last.output, HasSubstr("archive: this is " + name + ", released by"));
}

TEST_F(VerifyPdfCommand, FindsSignersWhoAreNotThoseOfTheHistory) {
    // The archive takes any bytes that its own people present.
    BusyArchive other(path("other.fettlemark"));
    other.signedCasting("Q-2", "O-31");
    const std::string pdf = must(model::presentedFile(other.archive(), other.present("Q-2")));
    foundry_.signedCasting("Q-2", "O-31", "", foundry::kLevel3);
    const auto level3 = foundry_.person(foundry::kLevel3);
    const auto prepared = must(model::prepare(archive(), "Q-2", level3));
    must(model::present(archive(), prepared, pdf, level3));
    const Finished finished = verify(pdf, {"--db", path("works.fettlemark")});
    EXPECT_EQ(finished.exitCode, 1) << finished.output;
    EXPECT_THAT(finished.output, HasSubstr("one.pdf: ALTERED"));
    EXPECT_THAT(finished.output, HasSubstr("is not by Otto Sandmann, who signed history row "));
}

TEST_F(VerifyPdfCommand, IsNotSatisfiedWithoutTrustOrWithAnEmptyField) {
    const Finished nobody = verify(released_, {});
    EXPECT_EQ(nobody.exitCode, 3);
    EXPECT_THAT(nobody.output, HasSubstr("no authority is trusted; give --db or --trust"));
    const Finished waiting = trusting(waiting_);
    EXPECT_EQ(waiting.exitCode, 3);
    EXPECT_THAT(waiting.output, HasSubstr("intact, but not every signature field is signed"));
    EXPECT_THAT(waiting.output, HasSubstr("field \"Release\": not signed"));
}

TEST_F(VerifyPdfCommand, FindsEveryAlteration) {
    std::string early = released_;
    early[waiting_.size() / 2] ^= 1;
    expectAltered(early, "one byte flipped in the first revision");

    std::string late = released_;
    late[late.rfind("/ByteRange") - 40] ^= 1;
    expectAltered(late, "one byte flipped in the last revision");

    expectAltered(released_ + "% more\n", "bytes appended");

    std::string filled = released_;
    const std::size_t contents = filled.rfind("/Contents <");
    ASSERT_NE(contents, std::string::npos);
    filled[filled.find('>', contents) - 1] = '1';
    expectAltered(filled, "a byte changed in the zeros behind the signature");

    // The page that carries the result is replaced by an appended revision.
    folder_.write("released.pdf", released_);
    const auto page = folder_.run(
        "qpdf --show-pages released.pdf | grep -A9 'page 1:' | grep -A1 "
        "content | tail -1 | tr -dc '0-9 ' | awk '{print $1}'");
    const std::string number = page.output.substr(0, page.output.find('\n'));
    ASSERT_FALSE(number.empty());
    std::string replaced = released_;
    const std::size_t at = replaced.size();
    replaced += number + " 0 obj\n<< /Length 9 >>\nstream\n0 0 1 rg \nendstream\nendobj\n";
    const std::size_t xref = replaced.size();
    char entry[32];
    std::snprintf(entry, sizeof entry, "%010zu 00000 n\r\n", at);
    const std::size_t root = released_.rfind("/Root ");
    const std::size_t previous = released_.rfind("startxref");
    replaced += "xref\n" + number + " 1\n" + entry + "trailer\n<< /Size 5000 " +
                released_.substr(root, released_.find('R', root + 6) + 1 - root) + " /Prev " +
                std::to_string(std::stoull(released_.substr(previous + 10))) + " >>\nstartxref\n" +
                std::to_string(xref) + "\n%%EOF\n";
    expectAltered(replaced, "a page replaced by an appended revision");

    // The QA manager's signature taken away and the inspector's file put up as the whole: nothing
    // is altered, and it is not released.
    EXPECT_EQ(trusting(waiting_).exitCode, 3);
}

TEST_F(VerifyPdfCommand, RefusesWhatIsNoPdfOrNotThere) {
    expectWrong(verify("no PDF at all\n", {}), 2);
    expectWrong(verify("", {}), 2);
    expectWrong(runCli({"verify", path("none.pdf")}), 2);
    expectWrong(runCli({"verify", folder_.path()}), 2);
    expectWrong(runCli({"verify"}), 2);
    expectWrong(verify(released_, {"--trust", path("none.pem")}), 2);
    folder_.write("text.pem", "no certificate\n");
    expectWrong(verify(released_, {"--trust", path("text.pem")}), 2);
    expectWrong(verify(released_, {"--db", path("none.fettlemark")}), 2);
}

}  // namespace
}  // namespace app
