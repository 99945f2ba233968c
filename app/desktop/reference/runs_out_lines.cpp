// SPDX-License-Identifier: Apache-2.0
#include "reference/runs_out_lines.h"

#include <QCoreApplication>
#include <QDate>
#include <map>

#include "archive/people.h"
#include "archive/registers.h"
#include "conditions/running_out.h"
#include "fields/field_words.h"
#include "looks/text.h"

namespace app {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Registers", text);
}

/// What a number or id stands for.
std::map<std::string, QString> namesIn(const model::Holdings& holdings,
                                       const std::vector<model::Stored<model::Person>>& people) {
    std::map<std::string, QString> names;
    for (const auto& item : holdings.equipment) names[item.id] = choiceText(item.kind);
    for (const auto& item : holdings.consumables) names[item.id] = qt(item.product);
    for (const auto& item : holdings.procedures) names[model::keyOf(item)] = qt(item.title);
    for (const auto& person : people) names[person.value.id] = qt(person.value.name);
    return names;
}

}  // namespace

model::Result<std::vector<RunsOutLine>> runsOutLines(const model::Archive& archive,
                                                     const std::string& today, int days) {
    const auto holdings = model::holdings(archive);
    if (!holdings) return holdings.error();
    const auto people = model::people(archive);
    if (!people) return people.error();
    const auto names = namesIn(*holdings, *people);
    const QDate from = QDate::fromString(qt(today), Qt::ISODate);
    std::vector<RunsOutLine> lines;
    for (const auto& one : model::runningOut(*holdings, today, days)) {
        RunsOutLine line;
        line.registerName = one.registers;
        line.key = one.key;
        line.what = choiceText(one.what);
        const auto name = names.find(one.who);
        line.of = name == names.end() ? qt(one.who) : tr("%1 · %2").arg(qt(one.who), name->second);
        line.until = one.lastDay;
        line.daysLeft =
            static_cast<int>(from.daysTo(QDate::fromString(qt(one.lastDay), Qt::ISODate)));
        lines.push_back(std::move(line));
    }
    return lines;
}

}  // namespace app
