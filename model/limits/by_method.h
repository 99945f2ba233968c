// SPDX-License-Identifier: Apache-2.0
// What a limit table states, orders and names, by its method.
#pragma once

#include <string_view>
#include <utility>

#include "limits/limit_table.h"

namespace model {

/// Which tables have a statement.
enum class TablesOf { EveryMethod, Surface, Ultrasonic };
bool isOf(TablesOf tables, Method method);

/// What a table must state, and tables of other methods must not, in the order in which a missing
/// one is reported.
inline constexpr std::pair<std::string_view, TablesOf> kTableStatements[] = {
    {"fettlemark-table", TablesOf::EveryMethod},
    {"id", TablesOf::EveryMethod},
    {"standard", TablesOf::EveryMethod},
    {"edition", TablesOf::EveryMethod},
    {"revision", TablesOf::EveryMethod},
    {"method", TablesOf::EveryMethod},
    {"materials", TablesOf::EveryMethod},
    {"levels", TablesOf::EveryMethod},
    {"linear", TablesOf::Surface},
    {"threshold", TablesOf::Surface},
    {"rows", TablesOf::Surface},
    {"rim", TablesOf::Ultrasonic},
    {"recording", TablesOf::Ultrasonic},
    {"not-measurable", TablesOf::Ultrasonic},
    {"clusters", TablesOf::Ultrasonic},
    {"joins", TablesOf::EveryMethod},
    {"frame", TablesOf::EveryMethod},
    {"summed", TablesOf::Surface},
    {"forbidden", TablesOf::EveryMethod}};

/// Whether a sheet's "levels" can name the key.
bool isLevelKey(Method method, std::string_view name);

/// Whether an indication that the method finds can be of the class.
bool isClassOf(Method method, IndicationClass asked);

}  // namespace model
