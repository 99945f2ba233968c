// SPDX-License-Identifier: Apache-2.0
#include "archive/order_impact.h"

#include <algorithm>
#include <set>

#include "archive/archive_access.h"
#include "archive/casting_store.h"
#include "archive/presentation_store.h"
#include "archive/record_store.h"
#include "archive/signed_record_store.h"
#include "archive/stored_words.h"
#include "archive/table_store.h"
#include "judge/judge.h"
#include "judge/sheet_words.h"
#include "limits/words.h"
#include "record/coverage.h"

namespace model {
namespace {

std::string nameOf(const std::string& zone, Method method, Stage stage) {
    return zone + " " + std::string(word(method)) + " " + std::string(word(stage));
}

std::vector<std::string> changedFields(const Order& before, const Order& after) {
    std::vector<std::string> labels;
    const auto note = [&](const char* label, bool changed) {
        if (changed) labels.emplace_back(label);
    };
    note("Customer", before.customer != after.customer);
    note("Customer's order", before.customerOrder != after.customerOrder);
    note("Certificate type", before.certificateType != after.certificateType);
    note("Language", before.language != after.language);
    note("Forbidden kinds", before.forbiddenKinds != after.forbiddenKinds);
    note("Decision rule", before.decisionRule != after.decisionRule);
    note("Rounding rule", before.roundingRule != after.roundingRule);
    note("Remarks", before.remarks != after.remarks);
    for (const Field<OrderTerms>& field : OrderTerms::fields())
        if (before.terms.*field.text != after.terms.*field.text)
            labels.emplace_back(field.info.label);
    note("Ordered tests", before.terms.tests != after.terms.tests);
    note("Witness points", before.terms.witnessPoints != after.terms.witnessPoints);
    return labels;
}

/// Tests that are required and not made as required. Where the examinations cannot be judged yet,
/// nothing counts as made.
std::vector<std::string> missingIn(const CastingFile& file, const TableSet& tables) {
    const auto sheet = sheetOf(file);
    const auto judged = sheet ? judge(*sheet, tables) : Result<Verdict>(sheet.error());
    CastingFile counted = file;
    if (!judged) counted.examinations.clear();
    std::vector<std::string> missing;
    for (const CoveredTest& covered : coverageOf(counted, judged ? *judged : Verdict()))
        if (covered.state != CoveredTest::State::Made)
            missing.push_back(nameOf(covered.zone->name, covered.test.method, covered.test.stage) +
                              " by " + covered.test.table);
    return missing;
}

void addMissing(const CastingFile& file, const Order& changed, const TableSet& tables,
                TouchedCasting& touched) {
    const auto before = missingIn(file, tables);
    const std::set<std::string> already(before.begin(), before.end());
    CastingFile after = file;
    after.order = changed;
    for (std::string& test : missingIn(after, tables)) {
        const bool was = already.contains(test);
        touched.missing.push_back({std::move(test), was});
    }
}

Result<TouchedCasting> touchedCasting(const Connection& connection, const std::string& serial,
                                      const Order& changed, const TableSet& tables) {
    TouchedCasting touched;
    touched.serial = serial;
    const auto casting = loadCastingFile(connection, serial);
    if (!casting) return casting.error();
    const auto records = loadRecordsOf(connection, serial);
    if (!records) return records.error();
    for (const ExaminationDraft& draft : casting->file.examinations) {
        const Examination& header = draft.header;
        auto& names = standingOf(*records, draft.id) ? touched.records : touched.drafts;
        names.push_back(nameOf(header.zone, header.method, header.stage));
    }
    const auto presentations = loadPresentationsOf(connection, serial);
    if (!presentations) return presentations.error();
    for (const StoredPresentation& one : *presentations) {
        if (one.shown.state() == CertificateState::Waiting) touched.waiting = one.shown.number;
        if (one.shown.state() == CertificateState::Released) touched.certificate = one.shown.number;
    }
    addMissing(casting->file, changed, tables, touched);
    return touched;
}

Result<std::vector<std::string>> serialsOf(const Connection& connection, const std::string& order) {
    SqlStatement statement(connection,
                           "SELECT serial FROM casting WHERE order_number = ? ORDER BY serial");
    if (auto done = statement.run(order); !done) return done.error();
    std::vector<std::string> serials;
    auto read = eachRow(statement, [&](const SqlStatement& row) -> Result<void> {
        serials.push_back(row.text(0));
        return {};
    });
    if (!read) return read.error();
    return serials;
}

}  // namespace

Result<OrderImpact> whatOrderTouches(const Archive& archive, const Order& changed) {
    const Connection& connection = ArchiveAccess::connection(archive);
    const auto reading = ReadTransaction::begin(connection);
    if (!reading) return reading.error();
    const auto stored =
        onlyOne(connection, loadOrders(connection, changed.number), "order", changed.number);
    if (!stored) return stored.error();
    OrderImpact impact;
    impact.fields = changedFields(stored->value, changed);
    if (impact.fields.empty()) return impact;
    const auto tables = loadTableSet(connection);
    if (!tables) return tables.error();
    const auto serials = serialsOf(connection, changed.number);
    if (!serials) return serials.error();
    std::set<std::string> errors;
    for (const std::string& serial : *serials) {
        auto touched = touchedCasting(connection, serial, changed, *tables);
        if (!touched) return touched.error();
        impact.castings.push_back(std::move(*touched));
        auto file = loadCastingFile(connection, serial);
        if (!file) return file.error();
        file->file.order = changed;
        for (const Error& error : requiredTestsOf(file->file).errors)
            errors.insert(error.message());
    }
    impact.errors.assign(errors.begin(), errors.end());
    return impact;
}

}  // namespace model
