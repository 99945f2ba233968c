// SPDX-License-Identifier: Apache-2.0
// The contract's words for the trade's enumerations, one place for reading and writing them.
#pragma once

#include <optional>
#include <string_view>

#include "limits/limit_table.h"

namespace model {

std::string_view word(Method method);                    ///< "MT", "PT", "UT"
std::string_view word(Material material);                ///< "cast steel" ...
std::string_view word(Grade grade);                      ///< "R", "R2", "P", "M"
std::string_view word(Kind kind);                        ///< "hot tear" ...
std::string_view word(IndicationClass indicationClass);  ///< "non-linear" ...
std::string_view word(RuleKind rule);                    ///< "individual length" ...
std::string_view word(Comparison comparison);            ///< "<", "<=", ">=", ">"
std::string_view word(ReflectorMeasure measure);         ///< "fbh", "over reference" ...
std::string_view word(TestabilityMeasure measure);       ///< "smallest fbh" ...

std::optional<Method> methodFrom(std::string_view word);
std::optional<Material> materialFrom(std::string_view word);
std::optional<Grade> gradeFrom(std::string_view word);
std::optional<Kind> kindFrom(std::string_view word);
std::optional<IndicationClass> classFrom(std::string_view word);
std::optional<RuleKind> ruleFrom(std::string_view word);
std::optional<Comparison> comparisonFrom(std::string_view word);
std::optional<ReflectorMeasure> reflectorMeasureFrom(std::string_view word);
std::optional<TestabilityMeasure> testabilityMeasureFrom(std::string_view word);

}  // namespace model
