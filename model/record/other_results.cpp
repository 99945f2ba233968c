// SPDX-License-Identifier: Apache-2.0
#include "record/other_results.h"

#include <algorithm>

#include "judge/sheet_words.h"

namespace model {
namespace {

bool isUpTo(const std::string& earlier, const std::string& later) {
    return isDate(earlier) && isDate(later) && earlier <= later;
}

/// Whether metal was taken out because of such a result, between it and a later one.
bool isRepairedBetween(const CastingFile& file, const OtherResult& failed,
                       const OtherResult& later) {
    const bool onSurface = failed.test == "magnetic particle" || failed.test == "penetrant";
    const auto concerns = [&](const Excavation& excavation) {
        return std::ranges::any_of(file.dossier.nonconformances, [&](const Nonconformance& opened) {
            if (opened.number != excavation.nonconformance) return false;
            const std::string_view test = otherTestOf(opened.method);
            return onSurface || test == failed.test ||
                   (test.empty() && failed.test != "visual" && failed.test != "radiographic" &&
                    failed.test != "ultrasonic");
        });
    };
    return std::ranges::any_of(file.dossier.excavations, [&](const Excavation& excavation) {
        return (failed.zone.empty() || excavation.zone == failed.zone) &&
               isUpTo(failed.performedOn, excavation.doneOn) &&
               isUpTo(excavation.doneOn, later.performedOn) && concerns(excavation);
    });
}

bool givesWay(const CastingFile& file, const OtherResult& result, const OtherResult& later) {
    if (&result == &later || result.test != later.test || result.zone != later.zone) return false;
    if (!isUpTo(result.performedOn, later.performedOn)) return false;
    switch (wordOf(result)) {
        case Word::Acceptable:
            return false;
        case Word::NotJudged:
            // Of two on one day that are not judged both stay.
            return wordOf(later) != Word::NotJudged || result.performedOn < later.performedOn;
        case Word::NotAcceptable:
            return wordOf(later) == Word::Acceptable && isRepairedBetween(file, result, later);
    }
    return false;
}

}  // namespace

Word wordOf(const OtherResult& result) {
    return verdictFrom(result.verdict).value_or(Word::NotJudged);
}

std::vector<const OtherResult*> standingResultsOf(const CastingFile& file) {
    std::vector<const OtherResult*> standing;
    const auto& results = file.dossier.otherResults;
    for (const OtherResult& result : results)
        if (std::ranges::none_of(
                results, [&](const OtherResult& later) { return givesWay(file, result, later); }))
            standing.push_back(&result);
    return standing;
}

bool isCavityTest(const CastingFile& file, const OtherResult& result) {
    return std::ranges::any_of(file.dossier.excavations, [&](const Excavation& excavation) {
        return excavation.cavityRecord == result.number;
    });
}

std::string_view otherTestOf(std::string_view method) {
    if (method == "MT") return "magnetic particle";
    if (method == "PT") return "penetrant";
    if (method == "UT") return "ultrasonic";
    if (method == "VT") return "visual";
    if (method == "RT") return "radiographic";
    return {};
}

}  // namespace model
