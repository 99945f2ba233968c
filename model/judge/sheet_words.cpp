// SPDX-License-Identifier: Apache-2.0
#include "judge/sheet_words.h"

#include <array>
#include <cassert>
#include <utility>

namespace model {
namespace {

template <class Value, std::size_t Size>
using Words = std::array<std::pair<Value, std::string_view>, Size>;

constexpr Words<Stage, 4> kStages{{{Stage::AsCast, "as cast"},
                                   {Stage::HeatTreated, "heat treated"},
                                   {Stage::RoughMachined, "rough machined"},
                                   {Stage::FinishMachined, "finish machined"}}};
constexpr Words<Relevance, 3> kRelevances{{{Relevance::Relevant, "relevant"},
                                           {Relevance::NonRelevant, "non-relevant"},
                                           {Relevance::False, "false"}}};
constexpr Words<StatedClass, 2> kStatedClasses{
    {{StatedClass::Linear, "linear"}, {StatedClass::NonLinear, "non-linear"}}};
constexpr Words<Word, 3> kVerdicts{{{Word::Acceptable, "acceptable"},
                                    {Word::NotJudged, "not judged"},
                                    {Word::NotAcceptable, "not acceptable"}}};

template <class Value, std::size_t Size>
std::string_view wordIn(const Words<Value, Size>& words, Value value) {
    for (const auto& [candidate, text] : words)
        if (candidate == value) return text;
    assert(false);
    return {};
}

template <class Value, std::size_t Size>
std::optional<Value> valueIn(const Words<Value, Size>& words, std::string_view text) {
    for (const auto& [value, candidate] : words)
        if (candidate == text) return value;
    return std::nullopt;
}

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
