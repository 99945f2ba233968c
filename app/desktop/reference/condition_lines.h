// SPDX-License-Identifier: Apache-2.0
// The rules of a set of test conditions in words, to be laid beside the standard.
#pragma once

#include <QString>
#include <vector>

#include "conditions/condition_set.h"

namespace app {

/// One rule.
struct ConditionLine {
    QString id;
    QString what;      ///< "UV-A at the part"
    QString limit;     ///< "at least 10 W/m2"; empty: none
    QString when;      ///< "viewing: fluorescent"; empty: always
    QString reaction;  ///< "not to be signed"
    QString place;     ///< in the standard
    QString sure;      ///< "partly read"
    QString note;
};

std::vector<ConditionLine> conditionLines(const model::ConditionSet& set);

}  // namespace app
