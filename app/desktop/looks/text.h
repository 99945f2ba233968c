// SPDX-License-Identifier: Apache-2.0
// The words of the model as they stand on a screen.
#pragma once

#include <QList>
#include <QString>
#include <string>
#include <vector>

#include "base/result.h"
#include "judge/verdict.h"

namespace app {

inline QString qt(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

QString wordText(model::Word word);
QString methodText(model::Method method);  ///< "MT"
QString methodName(model::Method method);  ///< "magnetic particle testing"
QString stageText(model::Stage stage);
QString ruleText(model::RuleKind rule);
QString kindText(model::Kind kind);
QString gradeText(model::Grade grade);               ///< what the letter means, a sentence part
QString classText(const std::string& contractWord);  ///< "linear and aligned" ...
QString unitText(model::CheckUnit unit);

/// "place: reason", translated, arguments in place.
QString errorText(const model::Error& error);
/// The reason alone.
QString reasonText(const model::Error& error);
/// The same as errorText(), begun with a capital and ended with a stop.
QString sentence(const model::Error& error);

/// A stored moment in UTC as the clock on the wall shows it: "2026-11-25 10:30".
QString localTime(const std::string& utc);

/// A measured value or a limit of a check with its unit: "19.5 mm", "3".
QString measuredText(const model::Check& check);
/// "at most 18 mm", or "—" where there is none.
QString limitText(const model::Check& check);
/// Both in few words: "7.5 of 10 mm", "2, none allowed", "28 mm, at least 30 mm".
QString measuredAndLimit(const model::Check& check);
/// How much of the limit is used, 1 = all of it; none where there is no number for it.
std::optional<double> shareUsed(const model::Check& check);
/// "88 %"; rounded away from the limit's other side, so that what fails never reads 100 %.
QString shareText(const model::Check& check);

/// The keys of levels in the order in which the trade names them: non-linear, linear, aligned.
std::vector<std::string> levelKeysInOrder(const std::map<std::string, std::string>& levels);
/// The levels as ordered: "SM 2 · LM 4 · AM 4".
QString levelsText(const std::map<std::string, std::string>& levels);

}  // namespace app
