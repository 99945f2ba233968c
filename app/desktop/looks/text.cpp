// SPDX-License-Identifier: Apache-2.0
#include "looks/text.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QStringList>
#include <algorithm>
#include <cmath>

#include "base/decimal.h"

namespace app {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Words", text);
}

QString withUnit(const std::string& number, model::CheckUnit unit) {
    const QString symbol = unitText(unit);
    return symbol.isEmpty() ? qt(number) : qt(number) + QChar(0x202F) + symbol;
}

}  // namespace

QString wordText(model::Word word) {
    switch (word) {
        case model::Word::Acceptable:
            return tr("acceptable");
        case model::Word::NotAcceptable:
            return tr("not acceptable");
        case model::Word::NotJudged:
            break;
    }
    return tr("not judged");
}

QString methodText(model::Method method) {
    switch (method) {
        case model::Method::Magnetic:
            return tr("MT");
        case model::Method::Penetrant:
            return tr("PT");
        case model::Method::Ultrasonic:
            break;
    }
    return tr("UT");
}

QString methodName(model::Method method) {
    switch (method) {
        case model::Method::Magnetic:
            return tr("magnetic particle testing");
        case model::Method::Penetrant:
            return tr("penetrant testing");
        case model::Method::Ultrasonic:
            break;
    }
    return tr("ultrasonic testing");
}

QString stageText(model::Stage stage) {
    switch (stage) {
        case model::Stage::AsCast:
            return tr("as cast");
        case model::Stage::HeatTreated:
            return tr("heat treated");
        case model::Stage::RoughMachined:
            return tr("rough machined");
        case model::Stage::FinishMachined:
            break;
    }
    return tr("finish machined");
}

QString ruleText(model::RuleKind rule) {
    using model::RuleKind;
    switch (rule) {
        case RuleKind::IndividualLength:
            return tr("individual length");
        case RuleKind::CumulativeLength:
            return tr("cumulative length");
        case RuleKind::TotalArea:
            return tr("total area");
        case RuleKind::IndividualArea:
            return tr("individual area");
        case RuleKind::AreaShare:
            return tr("area share");
        case RuleKind::Count:
            return tr("count");
        case RuleKind::CountAtMaximum:
            return tr("count at the maximum");
        case RuleKind::LineOfIndications:
            return tr("line of indications");
        case RuleKind::Spacing:
            return tr("spacing");
        case RuleKind::EquivalentReflector:
            return tr("equivalent reflector");
        case RuleKind::ThroughWallExtent:
            return tr("through-wall extent");
        case RuleKind::BackWallLoss:
            return tr("back-wall loss");
        case RuleKind::ForbiddenKind:
            return tr("forbidden kind");
        case RuleKind::Testability:
            break;
    }
    return tr("testability");
}

QString kindText(model::Kind kind) {
    using model::Kind;
    switch (kind) {
        case Kind::Crack:
            return tr("crack");
        case Kind::HotTear:
            return tr("hot tear");
        case Kind::ColdShut:
            return tr("cold shut");
        case Kind::Shrinkage:
            return tr("shrinkage");
        case Kind::Porosity:
            return tr("porosity");
        case Kind::Inclusion:
            return tr("inclusion");
        case Kind::Chaplet:
            return tr("chaplet");
        case Kind::Insert:
            return tr("insert");
        case Kind::Clustered:
            return tr("clustered");
        case Kind::Volumetric:
            return tr("volumetric");
        case Kind::Planar:
            return tr("planar");
        case Kind::Dross:
            return tr("dross");
        case Kind::Unknown:
            break;
    }
    return tr("unknown");
}

QString gradeText(model::Grade grade) {
    switch (grade) {
        case model::Grade::Read:
            return tr("read in the published text");
        case model::Grade::ReadTwice:
            return tr("read in two published places");
        case model::Grade::Partly:
            return tr("partly read");
        case model::Grade::Memory:
            break;
    }
    return tr("from memory: check it against your copy of the standard");
}

QString classText(const std::string& contractWord) {
    return QCoreApplication::translate("Words", contractWord.c_str());
}

QString unitText(model::CheckUnit unit) {
    switch (unit) {
        case model::CheckUnit::Millimetre:
            return tr("mm");
        case model::CheckUnit::SquareMillimetre:
            return tr("mm²");
        case model::CheckUnit::Percent:
            return tr("%");
        case model::CheckUnit::Decibel:
            return tr("dB");
        case model::CheckUnit::Count:
        case model::CheckUnit::None:
            break;
    }
    return {};
}

QString reasonText(const model::Error& error) {
    QString text = QCoreApplication::translate("Errors", error.reason.c_str());
    for (std::size_t i = error.arguments.size(); i > 0; --i) {
        text.replace(QStringLiteral("%") + QString::number(i), qt(error.arguments[i - 1]));
    }
    return text;
}

QString errorText(const model::Error& error) {
    return error.place.empty() ? reasonText(error) : qt(error.place) + ": " + reasonText(error);
}

QString sentence(const model::Error& error) {
    QString text = errorText(error);
    if (text.isEmpty()) return text;
    if (error.place.empty()) text[0] = text[0].toUpper();
    if (!text.endsWith('.')) text += '.';
    return text;
}

QString localTime(const std::string& utc) {
    const QDateTime time = QDateTime::fromString(qt(utc), Qt::ISODate);
    return time.isValid() ? time.toLocalTime().toString("yyyy-MM-dd HH:mm") : qt(utc);
}

QString measuredText(const model::Check& check) {
    if (!check.measured) return QStringLiteral("—");
    return withUnit(model::formatMillionths(*check.measured), check.unit);
}

QString limitText(const model::Check& check) {
    if (!check.limit) return QStringLiteral("—");
    const QString number = withUnit(model::formatMillionths(*check.limit), check.unit);
    if (check.limit->numerator == 0 && check.comparison == model::Comparison::AtMost) {
        return tr("none allowed");
    }
    switch (check.comparison) {
        case model::Comparison::Less:
            return tr("below %1").arg(number);
        case model::Comparison::AtMost:
            return tr("at most %1").arg(number);
        case model::Comparison::AtLeast:
            return tr("at least %1").arg(number);
        case model::Comparison::More:
            break;
    }
    return tr("above %1").arg(number);
}

QString measuredAndLimit(const model::Check& check) {
    if (!check.measured) return {};
    const bool atMost = check.limit && check.comparison == model::Comparison::AtMost;
    if (atMost && check.limit->numerator != 0) {
        return tr("%1 of %2")
            .arg(qt(model::formatMillionths(*check.measured)),
                 withUnit(model::formatMillionths(*check.limit), check.unit));
    }
    if (!check.limit) return measuredText(check);
    return tr("%1, %2").arg(measuredText(check), limitText(check));
}

std::optional<double> shareUsed(const model::Check& check) {
    if (!check.measured || !check.limit) return std::nullopt;
    const double measured = static_cast<double>(*check.measured);
    const double limit =
        static_cast<double>(check.limit->numerator) / static_cast<double>(check.limit->denominator);
    const bool upper = check.comparison == model::Comparison::AtMost ||
                       check.comparison == model::Comparison::Less;
    const double over = upper ? measured : limit;
    const double under = upper ? limit : measured;
    if (under > 0) return over / under;
    if (over == 0) return 0;
    return std::nullopt;
}

QString shareText(const model::Check& check) {
    const auto share = shareUsed(check);
    if (!share) return {};
    const bool fails = check.passes && !*check.passes;
    const double percent = *share * 100;
    // The last bits of the division are not a reason to show one percent more or less.
    const double rounded = fails ? std::ceil(percent - 1e-9) : std::floor(percent + 1e-9);
    if (fails && rounded <= 100) return tr("over 100 %");
    return tr("%1 %").arg(rounded, 0, 'f', 0);
}

std::vector<std::string> levelKeysInOrder(const std::map<std::string, std::string>& levels) {
    std::vector<std::string> keys;
    for (const char* first : {"non-linear", "isolated", "clustered", "linear", "aligned"}) {
        if (levels.contains(first)) keys.emplace_back(first);
    }
    for (const auto& entry : levels) {
        if (std::ranges::find(keys, entry.first) == keys.end()) keys.push_back(entry.first);
    }
    return keys;
}

QString levelsText(const std::map<std::string, std::string>& levels) {
    QStringList words;
    for (const auto& key : levelKeysInOrder(levels)) {
        const QString level = qt(levels.at(key));
        // A bare number says nothing: "level 2" of all classes, "rim 2" of one.
        const bool bare = !level.isEmpty() && level[0].isDigit();
        words << (!bare          ? level
                  : key == "all" ? tr("level %1").arg(level)
                                 : classText(key) + " " + level);
    }
    return words.join(QStringLiteral(" · "));
}

}  // namespace app
