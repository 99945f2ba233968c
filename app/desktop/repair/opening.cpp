// SPDX-License-Identifier: Apache-2.0
#include "repair_bench/opening.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "fields/field_words.h"
#include "judge/sheet_words.h"
#include "limits/words.h"
#include "looks/text.h"

namespace app {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Opening", text);
}

QString ruleOf(const model::Check& check) {
    QStringList parts;
    if (!check.source.locator.empty()) parts << qt(check.source.locator);
    parts << ruleText(check.rule);
    if (!check.level.empty()) parts << tr("level %1").arg(qt(check.level));
    return parts.join(", ");
}

}  // namespace

model::Nonconformance nonconformanceFrom(const model::ExaminationDraft& draft,
                                         const model::ExaminationVerdict& verdict,
                                         std::int64_t record) {
    model::Nonconformance opened;
    opened.casting = draft.casting;
    opened.zone = draft.header.zone;
    opened.method = word(draft.header.method);
    opened.stage = word(draft.header.stage);
    opened.openedOn = dateToday();
    if (record > 0) opened.record = std::to_string(record);
    std::vector<std::string> indications;
    QStringList findings;
    for (const auto& check : verdict.checks) {
        if (check.passes != false) continue;
        if (opened.ruleBroken.empty()) {
            opened.ruleBroken = tr("%1: %2").arg(qt(verdict.tableId), ruleOf(check)).toStdString();
        }
        for (const auto& member : check.members) {
            if (std::ranges::find(indications, member) == indications.end()) {
                indications.push_back(member);
            }
        }
        QString line = ruleText(check.rule);
        if (!check.classText.empty()) line += ", " + classText(check.classText);
        if (check.measured) line += ": " + measuredAndLimit(check);
        findings << line;
    }
    if (verdict.rejected) {
        findings
            << tr("Rejected by %1: %2").arg(qt(verdict.rejected->by), qt(verdict.rejected->reason));
        if (opened.ruleBroken.empty())
            opened.ruleBroken = tr("rejection by a person").toStdString();
    }
    opened.indications = model::listOf(indications);
    opened.finding = findings.join('\n').toStdString();
    return opened;
}

}  // namespace app
