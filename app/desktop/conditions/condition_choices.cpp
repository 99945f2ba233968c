// SPDX-License-Identifier: Apache-2.0
#include "conditions_bench/condition_choices.h"

#include <QCoreApplication>
#include <algorithm>

#include "conditions/parameters.h"
#include "fields/field_words.h"
#include "limits/words.h"
#include "looks/text.h"

namespace app {
namespace {

constexpr std::string_view kBetween = " / ";

QString tr(const char* text) {
    return QCoreApplication::translate("ConditionChoices", text);
}

bool contains(const std::vector<std::string>& items, const std::string& item) {
    return std::ranges::find(items, item) != items.end();
}

Choices procedures(const model::CastingFile& file, const model::ExaminationDraft& draft,
                   std::string_view kind, const std::string& chosen,
                   const std::string& ofProcedure) {
    Choices choices;
    choices.emplace_back("", tr("none of the register"));
    const auto fixed = model::itemsOf(file.order.terms.fixedProcedures);
    for (const auto& procedure : file.used.procedures) {
        const std::string key = keyOf(procedure);
        const bool wanted = procedure.kind == kind &&
                            procedure.method == word(draft.header.method) &&
                            (ofProcedure.empty() || procedure.parentProcedure.empty() ||
                             procedure.parentProcedure == ofProcedure);
        const bool obsolete = procedure.state != "current";
        if (key != chosen && (!wanted || (obsolete && !contains(fixed, key)))) continue;
        QString text = tr("%1 · %2").arg(qt(key), qt(procedure.title));
        if (obsolete)
            text +=
                contains(fixed, key) ? tr(" (obsolete, fixed by the order)") : tr(" (OBSOLETE)");
        choices.emplace_back(key, text);
    }
    return choices;
}

/// "calibration due 2027-01-31", "CALIBRATION OVERDUE since ..."; empty: no date.
QString dueText(const std::string& due, const std::string& on, const QString& holds,
                const QString& over) {
    if (due.empty()) return {};
    // Dates of this form are in the order of the calendar as texts.
    return (due < on ? over : holds).arg(qt(due));
}

QString joined(const QStringList& parts) {
    QStringList filled;
    for (const QString& part : parts) {
        if (!part.isEmpty()) filled << part;
    }
    return filled.join(QStringLiteral(" · "));
}

Choices plain(const std::vector<std::string_view>& words) {
    Choices choices;
    choices.emplace_back("", QString());
    for (const auto one : words) choices.emplace_back(std::string(one), choiceText(one));
    return choices;
}

Choices parameterChoices(model::Method method) {
    Choices choices;
    choices.emplace_back("", QString());
    for (const auto* one : model::parametersOf(method)) {
        choices.emplace_back(std::string(one->key), QCoreApplication::translate(
                                                        "Fields", std::string(one->label).c_str()));
    }
    return choices;
}

}  // namespace

std::pair<std::string, std::string> numberAndRevision(const std::string& key) {
    const auto between = key.rfind(kBetween);
    if (between == std::string::npos) return {key, {}};
    return {key.substr(0, between), key.substr(between + kBetween.size())};
}

std::string procedureKey(const std::string& number, const std::string& revision) {
    return number.empty() ? std::string() : number + std::string(kBetween) + revision;
}

Choices procedureChoices(const model::CastingFile& file, const model::ExaminationDraft& draft) {
    const auto& of = draft.conditions;
    return procedures(file, draft, "procedure",
                      procedureKey(of.procedureNumber, of.procedureRevision), {});
}

Choices sheetChoices(const model::CastingFile& file, const model::ExaminationDraft& draft) {
    const auto& of = draft.conditions;
    return procedures(file, draft, "technique sheet",
                      procedureKey(of.sheetNumber, of.sheetRevision),
                      procedureKey(of.procedureNumber, of.procedureRevision));
}

Choices equipmentChoices(const model::Holdings& works, const std::string& on,
                         std::string_view kinds) {
    const auto wanted = model::partsOf(kinds);
    Choices first;
    Choices others;
    for (const auto& thing : works.equipment) {
        if (thing.state != "in use") continue;
        const QString text = joined({qt(thing.id), choiceText(thing.kind), qt(thing.description),
                                     dueText(thing.calibrationDue, on, tr("calibration due %1"),
                                             tr("CALIBRATION OVERDUE since %1"))});
        const bool fits = std::ranges::find(wanted, thing.kind) != wanted.end();
        (fits || wanted.empty() ? first : others).emplace_back(thing.id, text);
    }
    first.insert(first.end(), others.begin(), others.end());
    return first;
}

Choices consumableChoices(const model::Holdings& works, const std::string& on) {
    Choices choices;
    for (const auto& batch : works.consumables) {
        if (batch.state != "in use") continue;
        choices.emplace_back(
            batch.id, joined({qt(batch.id), choiceText(batch.kind), qt(batch.product),
                              tr("batch %1").arg(qt(batch.batch)),
                              dueText(batch.expiresOn, on, tr("until %1"), tr("EXPIRED %1"))}));
    }
    return choices;
}

Choices peopleChoices(const model::Holdings& works, const People& people, model::Method method) {
    Choices choices;
    for (const auto& [id, name] : people) {
        QStringList about{qt(id), name};
        for (const auto& one : works.qualifications) {
            if (one.person != id || one.method != word(method)) continue;
            about << tr("level %1 until %2").arg(qt(one.level), qt(one.expiresOn));
        }
        choices.emplace_back(id, about.join(QStringLiteral(" · ")));
    }
    return choices;
}

Choices nameChoices(const People& people) {
    Choices choices;
    for (const auto& person : people) {
        choices.emplace_back(person.second.toStdString(), person.second);
    }
    return choices;
}

std::optional<CellEntry> measurementEntry(const model::CastingFile& file,
                                          const model::ExaminationDraft& draft,
                                          const People& people, const EntryTexts& row,
                                          const std::string& key) {
    if (key == "parameter") return CellEntry{parameterChoices(draft.header.method), true};
    const auto named = row.find("parameter");
    const auto* parameter = named == row.end() ? nullptr : model::parameter(named->second);
    if (key == "by") return CellEntry{nameChoices(people)};
    if (key == "instrument") {
        return CellEntry{equipmentChoices(file.used, draft.examinedOn,
                                          parameter ? parameter->meters : std::string_view())};
    }
    if (!parameter) return std::nullopt;
    if (key == "value") {
        switch (parameter->kind) {
            case model::ParameterKind::Choice:
                return CellEntry{plain(model::partsOf(parameter->choices)), true};
            case model::ParameterKind::YesNo:
                return CellEntry{plain({"yes", "no"}), true};
            case model::ParameterKind::Moment:
                return CellEntry{{}, false, model::FieldKind::Moment};
            default:
                return std::nullopt;
        }
    }
    if (key == "unit") {
        Choices units;
        units.emplace_back("", QString());
        for (const auto unit : model::unitsOf(parameter->dimension)) {
            units.emplace_back(std::string(unit), shownUnit(unit));
        }
        return CellEntry{std::move(units), true};
    }
    return std::nullopt;
}

std::string usualUnit(const std::string& parameter) {
    const auto* known = model::parameter(parameter);
    return known ? std::string(known->unit) : std::string();
}

bool isUnitOf(const std::string& unit, const std::string& parameter) {
    const auto* known = model::parameter(parameter);
    if (!known) return true;
    const auto units = model::unitsOf(known->dimension);
    return units.empty() ? unit.empty() : std::ranges::find(units, unit) != units.end();
}

}  // namespace app
