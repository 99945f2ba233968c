// SPDX-License-Identifier: Apache-2.0
// The words of a register's fields as they stand on a screen, and moments as they are typed.
#pragma once

#include <QString>
#include <optional>
#include <string>
#include <string_view>

#include "registers/field.h"

namespace app {

QString fieldLabel(const model::FieldInfo& info);  ///< "Calibration due"
QString fieldHelp(const model::FieldInfo& info);
QString shownUnit(std::string_view unit);  ///< "µm" of "um", "°C" of "deg C"
/// A word of a choice: what it is stored as, translated.
QString choiceText(std::string_view choice);

/// A moment in UTC as the clock on the wall shows it: "2026-11-25 10:30"; other text as it is.
QString momentShown(const std::string& utc);
/// The moment in UTC that a typed time of the clock on the wall means; what is no such time is
/// returned as typed, for the field to say that it cannot be read.
std::string momentFrom(const QString& typed);
/// Now, in UTC, to the second.
std::string momentNow();
/// Today by the clock on the wall.
std::string dateToday();

}  // namespace app
