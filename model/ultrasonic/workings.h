// SPDX-License-Identifier: Apache-2.0
// The small calculations of ultrasonic testing that stand beside a reading: what each asks for, how
// it is called, where it comes from, how far it holds, and what it gives. A form and a command are
// made from this description, so both ask for the same and say the same.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace model {

enum class WorkingUnit {
    None,
    Millimetre,
    Degree,
    MetrePerSecond,
    Megahertz,
    Decibel,
    DecibelPerMetre,
    Percent,
};

/// What a field may hold.
enum class WorkingRange {
    Word,         ///< one of `words`
    Length,       ///< above 0, at most 10 000 mm
    Angle,        ///< above 0, below 90 degrees
    Velocity,     ///< from 100 to 20 000 m/s
    Frequency,    ///< from 0.01 to 100 MHz
    Gain,         ///< from -20 to 120 dB
    Screen,       ///< above 0, at most 100 percent
    Attenuation,  ///< from 0 to 10 000 dB/m
};

struct WorkingField {
    std::string_view key;  ///< "first_path_mm"; the place of an error
    std::string_view label;
    std::string_view help;
    WorkingRange range = WorkingRange::Length;
    bool needed = true;
    std::vector<std::string_view> words = {};
    /// The field has a meaning only where the field `when` holds one of `is`; empty: always.
    std::string_view when = {};
    std::vector<std::string_view> is = {};
};

struct WorkedResult {
    std::string_view key;
    std::string_view label;
    WorkingUnit unit = WorkingUnit::None;
    std::optional<double> value;  ///< none: there is no such value; a note says why
};

struct WorkedOut {
    std::vector<WorkedResult> results;  ///< what was asked for stands first
    std::vector<std::string> notes;     ///< every limit that was met
};

/// What was typed: exact numbers as read, and words.
struct WorkingEntry {
    std::map<std::string, double, std::less<>> numbers;
    std::map<std::string, std::string, std::less<>> words;
};

struct Working {
    std::string_view key;  ///< "height"
    std::string_view title;
    std::string_view formula;
    std::string_view source;
    std::vector<std::string_view> limits;  ///< what it holds for
    std::vector<WorkingField> fields;
    Result<WorkedOut> (*run)(const WorkingEntry& entry);  ///< of a checked entry: use workOut()
};

std::span<const Working> workings();
/// Null: there is none of that key.
const Working* findWorking(std::string_view key);

WorkingUnit unitOf(const WorkingField& field);
/// "mm", "m/s"; empty for a bare number.
std::string_view symbol(WorkingUnit unit);
/// Whether the field has a meaning with the words of the entry.
bool isMeant(const WorkingField& field, const WorkingEntry& entry);

/// Fails with ErrorKind::Input and the field's key as place where a needed field is missing, a
/// value is out of its range, a field has no meaning beside the words, or the values cannot be
/// together.
Result<WorkedOut> workOut(const Working& working, const WorkingEntry& entry);

}  // namespace model
