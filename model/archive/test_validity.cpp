// SPDX-License-Identifier: Apache-2.0
#include "archive/test_validity.h"

#include "archive/archive_access.h"
#include "archive/casting_store.h"
#include "archive/signed_record.h"
#include "archive/signed_test.h"

namespace model {

Result<std::vector<ConditionFinding>> validityOf(const Archive& archive,
                                                 const ExaminationDraft& draft,
                                                 const std::string& examiner) {
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    const auto casting = loadCastingFile(connection, draft.casting);
    if (!casting) return casting.error();
    auto test = testNow(connection, casting->file, draft, examiner);
    if (!test) return test.error();
    return std::move(test->findings);
}

Result<SignedTest> signedTest(const Archive& archive, std::int64_t record) {
    const auto bytes = signedRecordContent(archive, record);
    if (!bytes) return bytes.error();
    const auto content = parseCanonical(*bytes);
    auto test = content ? signedTestFrom(*content) : std::nullopt;
    if (test) return std::move(*test);
    return ArchiveAccess::connection(archive).damaged(
        "record " + std::to_string(record), "holds test conditions that are not understood");
}

}  // namespace model
