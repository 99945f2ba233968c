// SPDX-License-Identifier: Apache-2.0
#include "reference/order_touches.h"

#include <QCoreApplication>
#include <QStringList>

#include "archive/order_impact.h"
#include "looks/text.h"
#include "reference/record_texts.h"

namespace app {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Registers", text);
}

QString listed(const std::vector<std::string>& names) {
    QStringList texts;
    for (const auto& name : names) texts << qt(name);
    return texts.join(", ");
}

QString lineOf(const model::TouchedCasting& casting) {
    QStringList parts;
    if (!casting.drafts.empty()) {
        parts << tr("not signed, judged by the order as changed: %1").arg(listed(casting.drafts));
    }
    if (!casting.records.empty()) {
        parts << tr("signed by the order as it was, and stays so: %1").arg(listed(casting.records));
    }
    if (casting.waiting) {
        parts << tr("certificate %1 waits and has to be returned").arg(*casting.waiting);
    }
    if (casting.certificate) {
        parts << tr("certificate %1 is released and states the order as it was")
                     .arg(*casting.certificate);
    }
    std::vector<std::string> missing;
    for (const auto& test : casting.missing) {
        if (!test.already) missing.push_back(test.test);
    }
    if (!missing.empty()) parts << tr("required from then on: %1").arg(listed(missing));
    const QString name = tr("Casting %1").arg(qt(casting.serial));
    return parts.isEmpty() ? tr("%1: nothing was examined yet").arg(name)
                           : tr("%1: %2").arg(name, parts.join("; "));
}

}  // namespace

model::Result<std::vector<QString>> orderTouches(const model::Archive& archive,
                                                 const Entry& changed) {
    std::vector<QString> lines;
    if (changed.version == 0) return lines;
    std::vector<model::FieldError> errors;
    const auto impact = model::whatOrderTouches(archive, orderFrom(changed, errors));
    if (!impact) return impact.error();
    if (impact->castings.empty()) return lines;
    lines.push_back(tr("Changed: %1").arg(listed(impact->fields)));
    for (const auto& error : impact->errors)
        lines.push_back(tr("Cannot be read: %1").arg(qt(error)));
    for (const auto& casting : impact->castings) lines.push_back(lineOf(casting));
    return lines;
}

}  // namespace app
