// SPDX-License-Identifier: Apache-2.0
#include "exchange/what_if_json.h"

#include <algorithm>

#include "exchange/verdict_json.h"
#include "judge/sheet_words.h"
#include "limits/words.h"

namespace model {
namespace {

JsonValue levelsToJson(const std::map<std::string, std::string>& levels) {
    JsonValue::Members members;
    for (const auto& [key, level] : levels) members.push_back({key, JsonValue::string(level)});
    return JsonValue::object(std::move(members));
}

JsonValue textOrNull(const std::string& text) {
    return text.empty() ? JsonValue() : JsonValue::string(text);
}

/// What the verdict's document says of an examination, without what stands beside it already.
JsonValue judgedOf(const JsonValue& examination) {
    JsonValue::Members members;
    for (const JsonMember& member : examination.members()) {
        const bool beside = member.name == "zone" || member.name == "method" ||
                            member.name == "stage" || member.name == "repair_cycle" ||
                            member.name == "repeat" || member.name == "superseded";
        if (!beside) members.push_back(member);
    }
    return JsonValue::object(std::move(members));
}

}  // namespace

JsonValue whatIfToJson(const JudgedAgain& again, const OtherCriteria& other) {
    const JsonValue ordered = verdictToJson(again.ordered);
    const JsonValue whatIf = verdictToJson(again.whatIf);
    JsonValue::Elements examinations;
    for (std::size_t i = 0; i < again.whatIf.examinations.size(); ++i) {
        const ExaminationVerdict& e = again.whatIf.examinations[i];
        const bool changed = std::ranges::find(again.changed, i) != again.changed.end();
        examinations.push_back(
            JsonValue::object({{"zone", JsonValue::string(e.zone)},
                               {"method", JsonValue::string(word(e.method))},
                               {"stage", JsonValue::string(word(e.stage))},
                               {"repair_cycle", JsonValue::count(e.repairCycle)},
                               {"repeat", JsonValue::count(e.repeat)},
                               {"superseded", JsonValue::boolean(e.superseded)},
                               {"judged_otherwise", JsonValue::boolean(changed)},
                               {"ordered", judgedOf(ordered.find("examinations")->elements()[i])},
                               {"what_if", judgedOf(whatIf.find("examinations")->elements()[i])}}));
    }
    return JsonValue::object(
        {{"format", JsonValue::string(kWhatIfFormat)},
         {"warning", JsonValue::string(kWhatIfWarning)},
         {"criteria", JsonValue::object({{"zone", textOrNull(other.zone)},
                                         {"table", textOrNull(other.table)},
                                         {"levels", levelsToJson(other.levels)}})},
         {"ordered", JsonValue::string(word(again.ordered.word))},
         {"what_if", JsonValue::string(word(again.whatIf.word))},
         {"examinations", JsonValue::array(std::move(examinations))}});
}

}  // namespace model
