// SPDX-License-Identifier: Apache-2.0
#include "archive/signed_record.h"

#include <algorithm>

#include "archive/archive_access.h"
#include "archive/casting_store.h"
#include "archive/draft_store.h"
#include "archive/given_reason.h"
#include "archive/history_store.h"
#include "archive/lifecycle_actions.h"
#include "archive/record_content.h"
#include "archive/signed_record_store.h"
#include "archive/signed_test.h"
#include "archive/table_store.h"
#include "judge/judge.h"
#include "judge/sheet_words.h"
#include "limits/words.h"

namespace model {
namespace {

/// A draft as stored, with its casting and all records of that.
struct Subject {
    StoredCasting casting;
    std::vector<SignedRecord> records;
    std::size_t index = 0;  ///< of the draft in the casting's examinations

    [[nodiscard]] const ExaminationDraft& draft() const { return casting.file.examinations[index]; }
};

Result<Subject> readSubject(const Connection& connection, std::int64_t draftId) {
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    const auto draft = loadDraft(connection, draftId);
    if (!draft) return draft.error();
    auto casting = loadCastingFile(connection, draft->casting);
    if (!casting) return casting.error();
    auto records = loadRecordsOf(connection, draft->casting);
    if (!records) return records.error();
    Subject subject{std::move(*casting), std::move(*records), 0};
    const auto& all = subject.casting.file.examinations;
    const auto found = std::ranges::find(all, draftId, &ExaminationDraft::id);
    if (found == all.end()) return connection.damaged("examination", "does not list with others");
    subject.index = static_cast<std::size_t>(found - all.begin());
    return subject;
}

struct JudgedDraft {
    ExaminationVerdict verdict;
    std::vector<std::int64_t> beside;
};

Result<JudgedDraft> judgeIn(const CastingFile& file, std::int64_t draftId, const TableSet& tables) {
    const auto sheet = sheetOf(file);
    if (!sheet) return sheet.error();
    const auto verdict = judge(*sheet, tables);
    if (!verdict) return verdict.error();
    JudgedDraft judged;
    for (std::size_t i = 0; i < file.examinations.size(); ++i) {
        if (file.examinations[i].id == draftId)
            judged.verdict = verdict->examinations[i];
        else
            judged.beside.push_back(file.examinations[i].id);
    }
    return judged;
}

/// Beside all examinations of the casting; where others are still being typed and cannot be judged,
/// beside the signed ones.
Result<JudgedDraft> judgeSubject(const Subject& subject, const TableSet& tables) {
    const std::int64_t id = subject.draft().id;
    auto judged = judgeIn(subject.casting.file, id, tables);
    if (judged) return judged;
    CastingFile file = subject.casting.file;
    std::erase_if(file.examinations, [&](const ExaminationDraft& draft) {
        return draft.id != id && !standingOf(subject.records, draft.id);
    });
    return judgeIn(file, id, tables);
}

Result<void> checkLevel(const SignedIn& signer, Method method, int least, const char* act) {
    const auto level = signer.person().levels.find(method);
    if (level != signer.person().levels.end() && level->second >= least) return {};
    return refusal("", "%1 cannot %2: that needs Level %3 in %4 (ISO 9712)",
                   {signer.person().name, act, std::to_string(least), std::string(word(method))});
}

Error changed(const Connection& connection, const std::string& what) {
    return {ErrorKind::Conflict,
            connection.place(),
            "has another %1 than was judged; look at it again and sign then",
            {what}};
}

/// Whether all that was judged is still what is stored.
Result<void> checkUnchanged(const Connection& connection, const Subject& subject) {
    const ExaminationDraft& draft = subject.draft();
    SqlStatement versions(connection,
                          "SELECT examination.version, casting.version, part.version, "
                          "customer_order.version "
                          "FROM examination JOIN casting ON casting.serial = "
                          "examination.casting_serial "
                          "JOIN part ON part.number = casting.part_number "
                          "JOIN customer_order ON customer_order.number = casting.order_number "
                          "WHERE examination.id = ?");
    const auto row = versions.first(draft.id);
    if (!row) return row.error();
    const StoredCasting& casting = subject.casting;
    if (!*row || versions.whole(0) != draft.version) return changed(connection, "examination");
    if (versions.whole(1) != casting.castingVersion) return changed(connection, "casting");
    if (versions.whole(2) != casting.partVersion) return changed(connection, "part");
    if (versions.whole(3) != casting.orderVersion) return changed(connection, "order");
    const auto standing = loadStanding(connection, draft.id);
    if (!standing) return standing.error();
    if (!*standing) return {};
    return Error{ErrorKind::Conflict,
                 connection.place(),
                 "has this examination signed already, by %1 at %2",
                 {(*standing)->recorded.name, (*standing)->recorded.time}};
}

/// The test with its conditions; Refused where one of them keeps it from being signed.
Result<SignedTest> validTest(const Connection& connection, const Subject& subject,
                             const SignedIn& inspector) {
    auto test = testNow(connection, subject.casting.file, subject.draft(), inspector.person().id);
    if (!test) return test;
    for (const ConditionFinding& finding : test->findings)
        if (finding.stands())
            return refusal(connection.place(), "does not take the record of this test: %1",
                           {finding.reason.message()});
    return test;
}

int nextRevision(const Subject& subject) {
    int last = 0;
    for (const SignedRecord& record : subject.records)
        if (record.examination == subject.draft().id) last = std::max(last, record.revision);
    return last + 1;
}

Result<std::int64_t> writeRecord(WriteTransaction& transaction, const Subject& subject,
                                 const JudgedDraft& judged, const std::string& rejection,
                                 const SignedIn& inspector) {
    const Connection& connection = transaction.connection();
    if (auto checked = checkUnchanged(connection, subject); !checked) return checked.error();
    const auto test = validTest(connection, subject, inspector);
    if (!test) return test.error();
    if (auto kept = keepLimitTable(transaction, judged.verdict.tableDigest); !kept)
        return kept.error();
    const ExaminationDraft& draft = subject.draft();
    SignedRecord record;
    record.examination = draft.id;
    record.revision = nextRevision(subject);
    record.casting = draft.casting;
    record.word = rejection.empty() ? judged.verdict.word : Word::NotAcceptable;
    const auto bytes = canonicalBytes(
        canonicalOf(SignedContent{subject.casting, draft, judged.verdict, judged.beside, *test,
                                  record.revision, rejection, inspector.person()}));
    if (!bytes) return bytes.error();
    Canonical::Object content;
    content["revision"] = record.revision;
    content["casting"] = record.casting;
    content["word"] = word(record.word);
    if (!rejection.empty()) content["rejection"] = rejection;
    content["content_sha256"] = toHex(sha256(*bytes));
    if (auto done = transaction.recordSigned(action::kRecordSigned, std::to_string(draft.id),
                                             std::move(content), inspector);
        !done)
        return done.error();
    record.id = transaction.head().sequence;
    record.recorded.person = inspector.person().id;
    record.recorded.reason = rejection;
    if (auto added = addRecord(connection, record, *bytes); !added) return added.error();
    return record.id;
}

/// What has to hold for a record to be declared invalid.
Result<void> checkInvalidation(const Connection& connection, const SignedRecord& record,
                               const SignedIn& level3) {
    const auto draft = loadDraft(connection, record.examination);
    if (!draft) return draft.error();
    const Examination& header = draft->header;
    if (auto checked = checkLevel(level3, header.method, 3, "declare an examination invalid");
        !checked)
        return checked;
    const std::string id = std::to_string(record.id);
    if (record.givenBack)
        return inputError(connection.place(), "has the record %1, but it no longer stands", {id});
    if (record.invalid)
        return Error{ErrorKind::Conflict,
                     connection.place(),
                     "has the record %1 declared invalid already, by %2 at %3",
                     {id, record.invalid->name, record.invalid->time}};
    const auto file = loadCastingFile(connection, record.casting);
    if (!file) return file.error();
    const auto records = loadRecordsOf(connection, record.casting);
    if (!records) return records.error();
    for (const ExaminationDraft& other : file->file.examinations) {
        const Examination& its = other.header;
        const SignedRecord* standing = standingOf(*records, other.id);
        if (other.id != record.examination && standing && !standing->invalid &&
            its.zone == header.zone && its.method == header.method && its.stage == header.stage &&
            its.repairCycle == header.repairCycle)
            return {};
    }
    return inputError(connection.place(),
                      "has no other signed examination of zone %1 that could count instead of "
                      "record %2; examine it again first",
                      {header.zone, id});
}

}  // namespace

Result<std::vector<ExaminationState>> examinationStates(const Archive& archive,
                                                        const std::string& serial) {
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    const auto ids = examinationIds(connection, serial);
    if (!ids) return ids.error();
    const auto records = loadRecordsOf(connection, serial);
    if (!records) return records.error();
    std::vector<ExaminationState> states;
    for (const std::int64_t id : *ids) {
        ExaminationState& state = states.emplace_back();
        state.examination = id;
        for (const SignedRecord& record : *records)
            if (record.examination == id) state.records.push_back(record);
    }
    return states;
}

Result<SignedRecord> signedRecord(const Archive& archive, std::int64_t id) {
    return loadRecord(ArchiveAccess::connection(archive), id);
}

Result<std::string> signedRecordContent(const Archive& archive, std::int64_t id) {
    const Connection& connection = ArchiveAccess::connection(archive);
    SqlStatement statement(connection,
                           "SELECT record.content, history.bytes, disposed_record.number "
                           "FROM record JOIN history ON history.sequence = record.id "
                           "LEFT JOIN disposed_record ON record_id = record.id "
                           "WHERE record.id = ?");
    const auto row = statement.first(id);
    if (!row) return row.error();
    if (!*row)
        return inputError(connection.place(), "has no signed record %1", {std::to_string(id)});
    const auto signedRow = parseCanonical(statement.blob(1));
    const Canonical* content = signedRow ? signedRow->member("content") : nullptr;
    const Canonical* digest = content ? content->member("content_sha256") : nullptr;
    std::string bytes = statement.blob(0);
    if (const auto number = statement.wholeOrNone(2); number && bytes.empty())
        return inputError(
            connection.place(),
            "has the content of record %1 no more: it went with certificate %2, which "
            "was disposed of",
            {std::to_string(id), std::to_string(*number)});
    if (!digest || !digest->text() || *digest->text() != toHex(sha256(bytes)))
        return connection.damaged("record " + std::to_string(id), "is not what was signed");
    return bytes;
}

Result<std::int64_t> signRecord(Archive& archive, std::int64_t draftId, std::int64_t draftVersion,
                                const std::optional<Rejection>& rejection,
                                const SignedIn& inspector) {
    if (auto checked = checkRole(inspector, Role::Inspector); !checked) return checked.error();
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto subject = readSubject(connection, draftId);
    if (!subject) return subject.error();
    if (subject->draft().version != draftVersion) return changed(connection, "examination");
    std::string reason;
    if (rejection) {
        const auto given = givenReason(rejection->reason);
        if (!given) return given.error();
        reason = *given;
        const Method method = subject->draft().header.method;
        if (auto checked = checkLevel(inspector, method, 2, "reject"); !checked)
            return checked.error();
    }
    const auto tables = archive.tables();
    if (!tables) return tables.error();
    const auto judged = judgeSubject(*subject, *tables);
    if (!judged) return judged.error();
    return ArchiveAccess::write(archive, inspector.actor(), [&](WriteTransaction& transaction) {
        return writeRecord(transaction, *subject, *judged, reason, inspector);
    });
}

Result<void> invalidateRecord(Archive& archive, std::int64_t recordId, const std::string& reason,
                              const SignedIn& level3) {
    if (auto checked = checkRole(level3, Role::Inspector); !checked) return checked;
    const auto given = givenReason(reason);
    if (!given) return given.error();
    return ArchiveAccess::write(
        archive, level3.actor(), [&](WriteTransaction& transaction) -> Result<void> {
            const Connection& connection = transaction.connection();
            const auto record = loadRecord(connection, recordId);
            if (!record) return record.error();
            if (auto checked = checkInvalidation(connection, *record, level3); !checked)
                return checked;
            Canonical::Object content;
            content["reason"] = *given;
            if (auto done =
                    transaction.recordSigned(action::kRecordInvalidated, std::to_string(recordId),
                                             std::move(content), level3);
                !done)
                return done;
            return addInvalidation(
                connection, recordId,
                {transaction.head().sequence, level3.person().id, "", "", *given});
        });
}

}  // namespace model
