// SPDX-License-Identifier: Apache-2.0
// The words of files, screens and the database for a sheet's and a verdict's enumerations.
#pragma once

#include <optional>
#include <string_view>

#include "judge/sheet.h"
#include "judge/verdict.h"

namespace model {

std::string_view word(Stage stage);          ///< "as cast", "heat treated" ...
std::string_view word(Relevance relevance);  ///< "relevant", "non-relevant", "false"
std::string_view word(StatedClass stated);   ///< "linear", "non-linear"
std::string_view word(Word verdict);         ///< "acceptable", "not acceptable", "not judged"

std::optional<Stage> stageFrom(std::string_view word);
std::optional<Relevance> relevanceFrom(std::string_view word);
std::optional<StatedClass> statedClassFrom(std::string_view word);
std::optional<Word> verdictFrom(std::string_view word);

}  // namespace model
