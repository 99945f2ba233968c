// SPDX-License-Identifier: Apache-2.0
#include "importing/import_register.h"

#include <QString>
#include <algorithm>
#include <functional>
#include <optional>

#include "archive/batch.h"
#include "archive/registers.h"
#include "importing/named_things.h"
#include "importing/person_line.h"
#include "registers/every_register.h"

namespace app {
namespace {

using model::ErrorKind;
using model::FieldError;
using model::ImportProblem;
using model::Result;
using model::Stored;

/// How entries of one kind are found and saved. Line: text, compared as such.
template <class Line>
struct Target {
    std::map<std::string, Stored<Line>> known;
    /// Fails as the archive's save does; what is wrong with fields is added to the errors, and then
    /// nothing is saved.
    std::function<Result<void>(const Line&, std::int64_t version, std::vector<FieldError>&)> save;
    /// Adds what the line names and the archive has not. Fails where that cannot be read.
    std::function<Result<void>(const Line&, std::vector<FieldError>&)> addUnknown =
        [](const Line&, std::vector<FieldError>&) { return Result<void>(); };
    /// The line that a stored value has, where a value can be written in several ways.
    std::function<Line(const Line&)> asStored = [](const Line& line) { return line; };
};

template <class Line>
bool hasField(std::string_view key) {
    return std::ranges::any_of(Line::fields(),
                               [&](const auto& field) { return field.info.key == key; });
}

/// Fails where the archive as a whole refuses, rather than one entry.
template <class Line>
Result<void> note(model::Error error, std::size_t row, std::size_t line,
                  std::vector<ImportProblem>& problems) {
    const bool ofField = hasField<Line>(error.place);
    const bool ofEntry = error.kind == ErrorKind::Input || error.kind == ErrorKind::Conflict;
    if (!ofEntry && !ofField) return error;
    std::string column = ofField ? std::move(error.place) : std::string();
    error.place.clear();
    problems.push_back({row, line, std::move(column), std::move(error)});
    return {};
}

std::set<std::size_t> rowsOf(const std::vector<ImportProblem>& problems) {
    std::set<std::size_t> rows;
    for (const ImportProblem& problem : problems) rows.insert(problem.row);
    return rows;
}

/// Saves entries of one line each.
template <class Line>
Result<void> saveLines(model::ReadEntries<Line> read, const Target<Line>& target,
                       const Import& import, ImportReport& report) {
    report.rows = read.rows;
    const std::set<std::size_t> wrong = rowsOf(read.problems);
    report.problems = std::move(read.problems);
    for (model::ReadEntry<Line>& entry : read.entries) {
        Line& line = entry.value;
        const auto tell = [&](std::vector<FieldError> errors) {
            for (FieldError& error : errors)
                report.problems.push_back(
                    {entry.row, entry.line, std::move(error.field), std::move(error.error)});
            return errors.empty();
        };
        std::vector<FieldError> unknown;
        if (auto looked = target.addUnknown(line, unknown); !looked) return looked;
        if (!tell(std::move(unknown)) || wrong.contains(entry.row)) continue;

        const auto known = target.known.find(keyOf(line));
        const bool isKnown = known != target.known.end();
        if (isKnown)
            for (const auto& field : Line::fields())
                if (read.absent.contains(field.info.key))
                    line.*field.text = known->second.value.*field.text;
        if (isKnown && target.asStored(line) == known->second.value) {
            ++report.unchanged;
            continue;
        }
        if (isKnown && !import.change) {
            tell({{"", model::inputError("", "\"%1\" is in the archive already, with other content",
                                         {known->first})}});
            continue;
        }
        if (wrong.contains(0)) continue;
        std::vector<FieldError> errors;
        const auto saved = target.save(line, isKnown ? known->second.version : 0, errors);
        if (!saved) {
            if (auto noted = note<Line>(saved.error(), entry.row, entry.line, report.problems);
                !noted)
                return noted;
            continue;
        }
        if (tell(std::move(errors))) ++(isKnown ? report.changed : report.added);
    }
    return {};
}

std::vector<FieldError> fieldErrorsOf(std::vector<model::LineError> errors) {
    std::vector<FieldError> fields;
    fields.reserve(errors.size());
    for (model::LineError& error : errors) fields.push_back(std::move(error.error));
    return fields;
}

Result<void> done(const Result<std::int64_t>& saved) {
    if (!saved) return saved.error();
    return {};
}

template <class T>
Result<void> importEntries(model::Archive& archive, const model::CsvTable& table,
                           const Import& import, const Importer& importer, ImportReport& report) {
    const auto stored = model::entries<T>(archive);
    if (!stored) return stored.error();
    Target<T> target;
    for (const Stored<T>& one : *stored) target.known[keyOf(one.value)] = one;
    target.addUnknown = [&](const T& entry, std::vector<FieldError>& errors) -> Result<void> {
        auto wrong = model::wrongReferences(archive, entry);
        if (!wrong) return wrong.error();
        errors = std::move(*wrong);
        return {};
    };
    target.save = [&](const T& entry, std::int64_t version, std::vector<FieldError>&) {
        return done(importer.signer ? saveEntry(archive, entry, version, *importer.signer)
                                    : saveEntry(archive, entry, version, importer.actor));
    };
    return saveLines(model::readRegister<T>(table), target, import, report);
}

Result<void> importParts(model::Archive& archive, const model::CsvTable& table,
                         const Import& import, const Importer& importer, ImportReport& report) {
    const auto parts = archive.parts();
    if (!parts) return parts.error();
    Target<model::PartLine> target;
    for (const model::Part& part : *parts) {
        const auto stored = archive.part(part.number);
        if (!stored) return stored.error();
        target.known[part.number] = {model::lineOf(stored->value), stored->version};
    }
    target.save = [&](const model::PartLine& line, std::int64_t version,
                      std::vector<FieldError>& errors) -> Result<void> {
        std::vector<model::LineError> wrong;
        const model::Part part = model::partFrom(line, wrong);
        errors = fieldErrorsOf(std::move(wrong));
        return errors.empty() ? done(archive.save(part, version, importer.actor)) : Result<void>();
    };
    return saveLines(model::readRegister<model::PartLine>(table), target, import, report);
}

Result<void> importCastings(model::Archive& archive, const model::CsvTable& table,
                            const Import& import, const Importer& importer, ImportReport& report) {
    const auto castings = archive.castings();
    if (!castings) return castings.error();
    Target<model::CastingLine> target;
    for (const model::Casting& casting : *castings) {
        const auto stored = archive.castingEntry(casting.serial);
        if (!stored) return stored.error();
        target.known[casting.serial] = {model::lineOf(stored->value), stored->version};
    }
    target.save = [&](const model::CastingLine& line, std::int64_t version,
                      std::vector<FieldError>& errors) -> Result<void> {
        std::vector<model::LineError> wrong;
        const model::Casting casting = model::castingFrom(line, wrong);
        errors = fieldErrorsOf(std::move(wrong));
        return errors.empty() ? done(archive.save(casting, version, importer.actor))
                              : Result<void>();
    };
    target.addUnknown = [&](const model::CastingLine& line, std::vector<FieldError>& errors) {
        errors = unknownIn(archive, line);
        return Result<void>();
    };
    target.asStored = [](const model::CastingLine& line) {
        std::vector<model::LineError> errors;
        const model::Casting casting = model::castingFrom(line, errors);
        return errors.empty() ? model::lineOf(casting) : line;
    };
    return saveLines(model::readRegister<model::CastingLine>(table), target, import, report);
}

Result<void> importPeople(model::Archive& archive, const model::CsvTable& table,
                          const Import& import, const Importer& importer, ImportReport& report) {
    const auto people = model::people(archive);
    if (!people) return people.error();
    Target<model::PersonLine> target;
    for (const Stored<model::Person>& person : *people)
        target.known[person.value.id] = {lineOf(person.value), person.version};
    target.save = [&](const model::PersonLine& line, std::int64_t version,
                      std::vector<FieldError>& errors) -> Result<void> {
        const model::Person person = personFrom(line, errors);
        if (!errors.empty()) return {};
        return done(model::savePerson(archive, person, version, *importer.signer));
    };
    target.asStored = [](const model::PersonLine& line) {
        std::vector<FieldError> errors;
        const model::Person person = personFrom(line, errors);
        return errors.empty() ? lineOf(person) : line;
    };
    return saveLines(model::readRegister<model::PersonLine>(table), target, import, report);
}

/// An order with what no column says as it is stored.
model::Order completed(const model::Order& read, const model::Order& stored,
                       const std::set<std::string, std::less<>>& absent) {
    std::vector<model::OrderLine> lines = model::linesOf(read);
    const std::vector<model::OrderLine> storedLines = model::linesOf(stored);
    for (const auto& field : model::OrderLine::fields())
        if (!model::OrderLine::isOfLine(field.info.key) && absent.contains(field.info.key))
            lines[0].*field.text = storedLines[0].*field.text;
    std::vector<model::LineError> errors;
    model::Order order = model::orderFrom(lines, errors);
    if (absent.contains("test_method")) order.terms.tests = stored.terms.tests;
    if (absent.contains("witness_what")) order.terms.witnessPoints = stored.terms.witnessPoints;
    return order;
}

Result<void> saveOrder(model::Archive& archive, const model::ReadEntry<model::Order>& entry,
                       const std::set<std::string, std::less<>>& absent, const Import& import,
                       const Importer& importer, ImportReport& report) {
    model::Order order = entry.value;
    std::int64_t version = 0;
    const auto stored = archive.order(order.number);
    if (!stored && stored.error().kind != ErrorKind::Input) return stored.error();
    if (stored) {
        version = stored->version;
        order = completed(order, stored->value, absent);
        if (model::linesOf(order) == model::linesOf(stored->value)) {
            ++report.unchanged;
            return {};
        }
        if (!import.change)
            return model::inputError("", "\"%1\" is in the archive already, with other content",
                                     {order.number});
    }
    if (auto saved = archive.save(order, version, importer.actor); !saved) return saved.error();
    ++(version == 0 ? report.added : report.changed);
    return {};
}

Result<void> savePlan(model::Archive& archive, const model::ReadEntry<model::ZonePlan>& entry,
                      const Importer& importer, ImportReport& report) {
    const model::ZonePlan& plan = entry.value;
    const auto stored = archive.zonePlan(plan.part, plan.revision);
    if (!stored && stored.error().kind != ErrorKind::Input) return stored.error();
    if (stored) {
        if (model::linesOf(*stored) != model::linesOf(plan))
            return model::inputError("",
                                     "revision %1 of the zone plan of \"%2\" is in the archive "
                                     "already, with other content; it never changes",
                                     {std::to_string(plan.revision), plan.part});
        ++report.unchanged;
        return {};
    }
    if (auto saved = archive.add(plan, importer.actor); !saved) return saved;
    ++report.added;
    return {};
}

/// Saves what takes several lines, each with its errors noted at its first row.
template <class Line, class Value, class Save>
Result<void> saveWholes(const model::Archive& archive, const model::CsvTable& table,
                        model::ReadEntries<Value> read, Save save, ImportReport& report) {
    report.rows = read.rows;
    report.problems = std::move(read.problems);
    if (rowsOf(report.problems).contains(0)) return {};
    if (auto noted = noteUnknownCriteria<Line>(archive, table, report.problems); !noted)
        return noted;
    for (const auto& entry : read.entries) {
        const auto saved = save(entry, read.absent);
        if (saved) continue;
        if (auto noted = note<Line>(saved.error(), entry.row, entry.line, report.problems); !noted)
            return noted;
    }
    return {};
}

/// Stored texts have one form of each character (Unicode Standard Annex 15).
std::string inNfc(std::string text) {
    const bool ascii =
        std::ranges::all_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x80; });
    if (ascii || model::utf8End(text) != text.size()) return text;
    return QString::fromStdString(text).normalized(QString::NormalizationForm_C).toStdString();
}

Result<void> importInto(model::Archive& archive, const model::CsvTable& table, const Import& import,
                        const Importer& importer, ImportReport& report) {
    const std::string& name = import.registerName;
    if (name == model::PartLine::kRegister)
        return importParts(archive, table, import, importer, report);
    if (name == model::CastingLine::kRegister)
        return importCastings(archive, table, import, importer, report);
    if (name == model::PersonLine::kRegister)
        return importPeople(archive, table, import, importer, report);
    if (name == model::OrderLine::kRegister)
        return saveWholes<model::OrderLine>(
            archive, table, model::readOrders(table),
            [&](const auto& entry, const auto& absent) {
                return saveOrder(archive, entry, absent, import, importer, report);
            },
            report);
    if (name == model::ZonePlanLine::kRegister)
        return saveWholes<model::ZonePlanLine>(
            archive, table, model::readZonePlans(table),
            [&](const auto& entry, const auto&) {
                return savePlan(archive, entry, importer, report);
            },
            report);
    Result<void> result = model::inputError("", "there is no register \"%1\"; there are: %2",
                                            {name, model::listOf(model::registerNames())});
    model::withRegister(name, [&]<class T>() {
        result = importEntries<T>(archive, table, import, importer, report);
    });
    return result;
}

}  // namespace

std::set<model::Role> signersOfRegister(std::string_view registerName) {
    if (registerName == model::PersonLine::kRegister) return {model::Role::Administrator};
    return model::signersOf(registerName);
}

Result<ImportReport> importRegister(model::Archive& archive, model::CsvTable table,
                                    const Import& import, const Importer& importer) {
    for (model::CsvRow& row : table.rows)
        for (std::string& text : row.fields) text = inNfc(std::move(text));
    if (!signersOfRegister(import.registerName).empty() && !importer.signer)
        return model::refusal("", "the register of %1 takes signed entries only: sign in first",
                              {import.registerName});
    auto batch = model::Batch::begin(archive);
    if (!batch) return batch.error();
    ImportReport report;
    if (auto imported = importInto(archive, table, import, importer, report); !imported)
        return imported.error();
    if (report.added + report.changed + report.unchanged > import.most)
        report.problems.push_back(
            {0, 0, "", model::inputError("", "more than %1 entry", {std::to_string(import.most)})});
    model::sortByRow(report.problems);
    const bool writes = report.added + report.changed > 0;
    if (report.problems.empty() && !import.dryRun && writes)
        if (auto kept = (*batch)->keep(); !kept) return kept.error();
    return report;
}

}  // namespace app
