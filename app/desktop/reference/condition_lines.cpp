// SPDX-License-Identifier: Apache-2.0
#include "reference/condition_lines.h"

#include <QCoreApplication>
#include <QStringList>

#include "conditions/parameters.h"
#include "fields/field_words.h"
#include "looks/text.h"

namespace app {
namespace {

using Is = model::ConditionKind;

QString tr(const char* text) {
    return QCoreApplication::translate("Conditions", text);
}

QString labelOf(const std::string& key) {
    const auto* known = model::parameter(key);
    if (!known) return qt(key);
    const std::string label(known->label);
    return QCoreApplication::translate("Fields", label.c_str());
}

QString wordsOf(const std::vector<std::string>& words) {
    QStringList texts;
    for (const auto& word : words) texts << choiceText(word);
    return texts.join(", ");
}

QString compared(model::Comparison comparison, const QString& with) {
    switch (comparison) {
        case model::Comparison::Less:
            return tr("below %1").arg(with);
        case model::Comparison::AtMost:
            return tr("at most %1").arg(with);
        case model::Comparison::AtLeast:
            return tr("at least %1").arg(with);
        case model::Comparison::More:
            break;
    }
    return tr("above %1").arg(with);
}

QString limitOf(const model::ConditionRule& rule) {
    return rule.limit ? compared(rule.comparison, qt(rule.limit->text())) : QString();
}

QString kindsOf(const model::ConditionRule& rule) {
    return rule.words.empty() ? tr("any") : wordsOf(rule.words);
}

QString whatOf(const model::ConditionRule& rule) {
    switch (rule.kind) {
        case Is::Limit:
        case Is::OneOf:
        case Is::Compare:
            return labelOf(rule.parameter);
        case Is::Stated:
            return tr("%1 is stated").arg(labelOf(rule.parameter));
        case Is::Same:
            return tr("%1 is the same as %2").arg(labelOf(rule.parameter), labelOf(rule.second));
        case Is::Elapsed:
            return tr("Time from %1 to %2").arg(labelOf(rule.second), labelOf(rule.parameter));
        case Is::Check:
            return tr("Check of %1: %2").arg(kindsOf(rule), choiceText(rule.check));
        case Is::Calibration:
            return tr("Calibration of %1").arg(kindsOf(rule));
        case Is::Expiry:
            return tr("Last day of use is known of %1").arg(kindsOf(rule));
        case Is::OneMaker:
            return tr("From one maker: %1").arg(kindsOf(rule));
        case Is::Designation:
            return tr("Designation of %1").arg(kindsOf(rule));
        case Is::Certificate:
            return tr("Batch certificate of %1").arg(kindsOf(rule));
        case Is::Sulphur:
            return tr("Sulphur in %1").arg(kindsOf(rule));
        case Is::Halogens:
            return tr("Chlorine and fluorine in %1").arg(kindsOf(rule));
        case Is::CheckBefore:
            return tr("Check of the setting before the first scan");
        case Is::CheckAfter:
            return tr("Check of the setting after the last scan");
        case Is::CheckInterval:
            return tr("Time between checks of the setting");
        case Is::CheckTemperature:
            return tr("Difference of temperature between block and part");
        case Is::DriftLoss:
            return tr("Loss of sensitivity that makes scans void");
        case Is::DriftGain:
            return tr("Gain of sensitivity that reopens recorded indications");
        case Is::DriftRange:
            return tr("Drift of range that makes scans void");
        case Is::Sight:
            return tr("Eye test: %1").arg(choiceText(rule.check));
        case Is::CertificatePeriod:
            return tr("How long a certificate holds");
        case Is::Sector:
            return tr("Sector of the certificate: %1").arg(kindsOf(rule));
        case Is::Authorisation:
            return tr("The employer permits testing by the procedure");
        case Is::PenetrantFirst:
            return tr("Penetrant testing of a zone goes before magnetic particle testing");
    }
    return {};
}

QString limitText(const model::ConditionRule& rule) {
    QStringList parts;
    if (rule.kind == Is::OneOf) {
        parts << tr("one of: %1").arg(wordsOf(rule.words));
    } else if (rule.kind == Is::Compare) {
        parts << compared(rule.comparison, labelOf(rule.second));
    } else if (const QString limit = limitOf(rule); !limit.isEmpty()) {
        parts << limit;
    }
    for (const auto& value : rule.values) {
        QString text = compared(value.comparison, qt(value.limit.text()));
        if (value.from && value.to) {
            text = tr("%1 (at %2 to %3)").arg(text, qt(value.from->text()), qt(value.to->text()));
        }
        parts << text;
    }
    QString alternatives = parts.join(tr(" or "));
    if (!rule.every) return alternatives;
    const QString every = rule.every->count == 0 ? tr("on the day of the test")
                                                 : tr("within %1").arg(qt(rule.every->text()));
    return alternatives.isEmpty() ? every : tr("%1, %2").arg(alternatives, every);
}

QString clauseOf(const model::WhenClause& clause) {
    return clause.values.empty()
               ? tr("%1 is stated").arg(labelOf(clause.parameter))
               : tr("%1: %2").arg(labelOf(clause.parameter), wordsOf(clause.values));
}

QString whenOf(const model::ConditionRule& rule) {
    QStringList parts;
    for (const auto& clause : rule.when) parts << clauseOf(clause);
    for (const auto& clause : rule.unless) parts << tr("unless %1").arg(clauseOf(clause));
    if (rule.ifStated) parts << tr("only where it is stated");
    return parts.join("; ");
}

}  // namespace

std::vector<ConditionLine> conditionLines(const model::ConditionSet& set) {
    std::vector<ConditionLine> lines;
    for (const auto& rule : set.rules) {
        const std::string reaction(model::word(rule.reaction));
        lines.push_back({qt(rule.id), whatOf(rule), limitText(rule), whenOf(rule),
                         QCoreApplication::translate("Conditions", reaction.c_str()),
                         qt(rule.source.locator), gradeText(rule.source.grade).section(':', 0, 0),
                         qt(rule.note)});
    }
    return lines;
}

}  // namespace app
