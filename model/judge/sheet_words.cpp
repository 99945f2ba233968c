// SPDX-License-Identifier: Apache-2.0
#include "judge/sheet_words.h"

#include "base/word_table.h"

namespace model {
namespace {

constexpr WordEntry<Stage> kStages[] = {{Stage::AsCast, "as cast"},
                                        {Stage::HeatTreated, "heat treated"},
                                        {Stage::RoughMachined, "rough machined"},
                                        {Stage::FinishMachined, "finish machined"}};
constexpr WordEntry<Relevance> kRelevances[] = {{Relevance::Relevant, "relevant"},
                                                {Relevance::NonRelevant, "non-relevant"},
                                                {Relevance::False, "false"}};
constexpr WordEntry<StatedClass> kStatedClasses[] = {{StatedClass::Linear, "linear"},
                                                     {StatedClass::NonLinear, "non-linear"}};
constexpr WordEntry<Word> kVerdicts[] = {{Word::Acceptable, "acceptable"},
                                         {Word::NotJudged, "not judged"},
                                         {Word::NotAcceptable, "not acceptable"}};

}  // namespace

std::string_view word(Stage stage) {
    return wordIn(kStages, stage);
}
std::string_view word(Relevance relevance) {
    return wordIn(kRelevances, relevance);
}
std::string_view word(StatedClass stated) {
    return wordIn(kStatedClasses, stated);
}
std::string_view word(Word verdict) {
    return wordIn(kVerdicts, verdict);
}

std::optional<Stage> stageFrom(std::string_view text) {
    return valueIn(kStages, text);
}
std::optional<Relevance> relevanceFrom(std::string_view text) {
    return valueIn(kRelevances, text);
}
std::optional<StatedClass> statedClassFrom(std::string_view text) {
    return valueIn(kStatedClasses, text);
}
std::optional<Word> verdictFrom(std::string_view text) {
    return valueIn(kVerdicts, text);
}

}  // namespace model
