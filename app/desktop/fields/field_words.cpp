// SPDX-License-Identifier: Apache-2.0
#include "fields/field_words.h"

#include <QCoreApplication>
#include <QDateTime>

#include "base/clock.h"
#include "looks/text.h"

namespace app {
namespace {

constexpr auto kMinutes = "yyyy-MM-dd HH:mm";
constexpr auto kSeconds = "yyyy-MM-dd HH:mm:ss";

QString translated(std::string_view text) {
    return QCoreApplication::translate("Fields", std::string(text).c_str());
}

}  // namespace

QString fieldLabel(const model::FieldInfo& info) {
    return translated(info.label);
}

QString fieldHelp(const model::FieldInfo& info) {
    return info.help.empty() ? QString() : translated(info.help);
}

QString choiceText(std::string_view choice) {
    return translated(choice);
}

QString shownUnit(std::string_view unit) {
    if (unit == "um") return QStringLiteral("µm");
    if (unit == "deg C") return QStringLiteral("°C");
    if (unit == "degrees") return QStringLiteral("°");
    if (unit == "mm2") return QStringLiteral("mm²");
    if (unit == "W/m2") return QStringLiteral("W/m²");
    if (unit == "uW/cm2") return QStringLiteral("µW/cm²");
    if (unit == "mW/cm2") return QStringLiteral("mW/cm²");
    if (unit == "lm/ft2") return QStringLiteral("lm/ft²");
    if (unit == "deg F") return QStringLiteral("°F");
    return translated(unit);
}

QString momentShown(const std::string& utc) {
    QDateTime time = QDateTime::fromString(qt(utc), Qt::ISODate);
    if (!time.isValid()) return qt(utc);
    time = time.toLocalTime();
    return time.toString(time.time().second() == 0 ? kMinutes : kSeconds);
}

std::string momentFrom(const QString& typed) {
    for (const char* form : {kMinutes, kSeconds, "yyyy-MM-dd H:mm"}) {
        const QDateTime time = QDateTime::fromString(typed.simplified(), form);
        if (time.isValid()) return time.toUTC().toString(Qt::ISODate).toStdString();
    }
    return typed.trimmed().toStdString();
}

std::string momentNow() {
    return model::toText(model::systemClock().now());
}

std::string dateToday() {
    return QDate::currentDate().toString(Qt::ISODate).toStdString();
}

}  // namespace app
