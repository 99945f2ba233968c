// SPDX-License-Identifier: Apache-2.0
#include "verify.h"

#include "verify_archive.h"
#include "verify_pdf.h"

namespace app {
namespace {

model::Error wrongCall(const std::string& reason) {
    return model::inputError("fettlemark-cli verify", reason + "; see --help");
}

model::Result<Outcome> verify(const Arguments& arguments) {
    if (!arguments.operand().empty()) {
        if (arguments.has("--head") || arguments.has("--rejudge"))
            return wrongCall("--head and --rejudge are for an archive, not for FILE.pdf");
        return verifyPdfFile(arguments);
    }
    if (!arguments.has("--db")) return wrongCall("FILE.pdf or --db FILE is missing");
    if (arguments.has("--trust")) return wrongCall("--trust is for FILE.pdf");
    return verifyArchiveFile(arguments);
}

}  // namespace

Command verifyCommand() {
    return {
        .name = "verify",
        .operand = "FILE.pdf",
        .operandOptional = true,
        .summary = "checks an archive, or the signatures of a PDF",
        .details =
            "Without FILE.pdf: checks the archive of --db. The database, every row of its history\n"
            "with its seal and its person's signature, that every stored value is the one that "
            "the\n"
            "history says was written, every certificate's file and the signatures in it, as of "
            "the\n"
            "day on which they were made. Names each altered thing in a line, says what was\n"
            "checked, and prints the history's head last: noted elsewhere and given as --head at\n"
            "any later time, it shows that nothing before it was replaced and no older copy put\n"
            "back. What no person signed, whoever has both the file and FILE.key can write anew;\n"
            "only such a head shows that.\n"
            "\n"
            "  0  intact\n"
            "  1  something was altered or is damaged or gone, the head is not in the history, or\n"
            "     a verdict comes out otherwise today\n"
            "  2  no archive, not there, or the call is wrong\n"
            "  4  there, but cannot be read\n"
            "\n"
            "With FILE.pdf:\n"
            "Checks every signature of a PDF: that the bytes it covers were not changed, that\n"
            "nothing but further signatures came after it, that the last one covers the whole\n"
            "file, and that the signer's certificate was issued by an authority that is trusted,\n"
            "is valid today or was when a trusted time stamp says, and is not revoked. Prints a\n"
            "line for every signature and, below it, all that stands against it.\n"
            "\n"
            "Trusted are the authorities of the archive and those in CA.pem; without either no\n"
            "signature is. With --db it also says which certificate of the archive the file is\n"
            "(by its SHA-256), and whether that was released, superseded or withdrawn.\n"
            "\n"
            "  0  intact, signed in every signature field, every signer trusted\n"
            "  1  altered after signing, or a signature is damaged\n"
            "  2  no PDF, or not there\n"
            "  3  intact, but unsigned, a signature field is still empty, or a signer is not\n"
            "     trusted\n"
            "  4  there, but cannot be read\n",
        .options = {{"--db", "FILE", "the archive to check, or whose authorities are trusted"},
                    {"--head", "N:HASH", "a head of the history that was noted elsewhere"},
                    {"--rejudge", "", "judges again all that was ever presented for release"},
                    {"--trust", "CA.pem", "certificates (PEM) of authorities to trust"}},
        .run = &verify};
}

}  // namespace app
