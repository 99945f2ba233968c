// SPDX-License-Identifier: Apache-2.0
#include "check_text.h"

#include <algorithm>
#include <vector>

#include "base/decimal.h"
#include "limits/words.h"

namespace app {
namespace {

using model::Check;

std::string_view unitText(model::CheckUnit unit) {
    switch (unit) {
        case model::CheckUnit::Millimetre:
            return " mm";
        case model::CheckUnit::SquareMillimetre:
            return " mm2";
        case model::CheckUnit::Percent:
            return " %";
        case model::CheckUnit::Decibel:
            return " dB";
        case model::CheckUnit::Count:
        case model::CheckUnit::None:
            break;
    }
    return "";
}

std::string_view comparisonText(model::Comparison comparison) {
    switch (comparison) {
        case model::Comparison::Less:
            return "less than ";
        case model::Comparison::AtMost:
            return "at most ";
        case model::Comparison::AtLeast:
            return "at least ";
        case model::Comparison::More:
            break;
    }
    return "more than ";
}

/// How much of an upper limit is used; of a limit that must be kept from above, how near it is.
long double usedShare(const Check& check) {
    if (!check.measured || !check.limit) return 0;
    const auto measured = static_cast<long double>(*check.measured);
    const auto limit = static_cast<long double>(check.limit->numerator) /
                       static_cast<long double>(check.limit->denominator);
    const bool upper = check.comparison == model::Comparison::AtMost ||
                       check.comparison == model::Comparison::Less;
    const long double over = upper ? measured : limit;
    const long double under = upper ? limit : measured;
    return under > 0 ? over / under : 0;
}

std::string andMore(std::size_t more) {
    return more == 0 ? "" : "; and " + std::to_string(more) + " more";
}

}  // namespace

std::string checkText(const Check& check) {
    std::string text(model::word(check.rule));
    if (!check.classText.empty()) text += ", " + check.classText;
    text += ": ";
    if (!check.passes) return text + (check.reason.empty() ? "could not be made" : check.reason);
    if (check.measured)
        text += model::formatMillionths(*check.measured) + std::string(unitText(check.unit));
    if (check.limit)
        text += ", " + std::string(comparisonText(check.comparison)) +
                model::formatMillionths(*check.limit) + std::string(unitText(check.unit));
    if (!check.source.locator.empty())
        text +=
            " (" + check.source.locator + ", " + std::string(model::word(check.source.grade)) + ")";
    return text;
}

std::string decidingText(const model::ExaminationVerdict& verdict) {
    std::vector<const Check*> failed;
    std::vector<const Check*> open;
    const Check* closest = nullptr;
    for (const Check& check : verdict.checks) {
        if (!check.passes)
            open.push_back(&check);
        else if (!*check.passes)
            failed.push_back(&check);
        else if (usedShare(check) > (closest == nullptr ? 0 : usedShare(*closest)))
            closest = &check;
    }
    switch (verdict.word) {
        case model::Word::NotAcceptable:
            if (failed.empty()) break;
            return checkText(*failed.front()) + andMore(failed.size() - 1);
        case model::Word::NotJudged: {
            const std::size_t all = verdict.reasons.size() + open.size();
            if (all == 0) break;
            return (verdict.reasons.empty() ? checkText(*open.front()) : verdict.reasons.front()) +
                   andMore(all - 1);
        }
        case model::Word::Acceptable:
            return closest == nullptr ? "nothing counts against a limit" : checkText(*closest);
    }
    return "";
}

}  // namespace app
