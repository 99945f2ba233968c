// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic/workings.h"

#include <algorithm>
#include <cmath>

#include "ultrasonic/number_text.h"
#include "ultrasonic/working_steps.h"

namespace model {
namespace {

using Range = WorkingRange;

struct Bounds {
    double least = 0;
    double most = 0;
    bool above = false;  ///< `least` itself is out
    bool below = false;  ///< `most` itself is out
    std::string_view unit;
};

Bounds boundsOf(Range range) {
    switch (range) {
        case Range::Length:
            return {0, 10'000, true, false, "mm"};
        case Range::Angle:
            return {0, 90, true, true, "degrees"};
        case Range::Velocity:
            return {100, 20'000, false, false, "m/s"};
        case Range::Frequency:
            return {0.01, 100, false, false, "MHz"};
        case Range::Gain:
            return {-20, 120, false, false, "dB"};
        case Range::Screen:
            return {0, 100, true, false, "%"};
        case Range::Attenuation:
            return {0, 10'000, false, false, "dB/m"};
        case Range::Word:
            break;
    }
    return {};
}

Result<void> checkNumber(const WorkingField& field, const WorkingEntry& entry) {
    const std::string place(field.key);
    const auto found = entry.numbers.find(field.key);
    const bool given = found != entry.numbers.end();
    if (!isMeant(field, entry)) {
        if (given) return inputError(place, "has no meaning beside the words given: leave it out");
        return {};
    }
    if (!given) {
        if (field.needed) return inputError(place, "is missing");
        return {};
    }
    const Bounds bounds = boundsOf(field.range);
    const double value = found->second;
    const bool low = bounds.above ? value <= bounds.least : value < bounds.least;
    const bool high = bounds.below ? value >= bounds.most : value > bounds.most;
    if (std::isfinite(value) && !low && !high) return {};
    return inputError(place,
                      bounds.below   ? "must be above %1 and below %2 %3"
                      : bounds.above ? "must be above %1 and at most %2 %3"
                                     : "must be from %1 to %2 %3",
                      {plainText(bounds.least), plainText(bounds.most), std::string(bounds.unit)});
}

Result<void> checkWord(const WorkingField& field, const WorkingEntry& entry) {
    const auto found = entry.words.find(field.key);
    if (found == entry.words.end()) return inputError(std::string(field.key), "is missing");
    if (std::ranges::find(field.words, found->second) == field.words.end())
        return inputError(std::string(field.key), "\"%1\" is not a word for it", {found->second});
    return {};
}

const WorkingField* fieldOf(const Working& working, std::string_view key) {
    const auto found = std::ranges::find(working.fields, key, &WorkingField::key);
    return found == working.fields.end() ? nullptr : &*found;
}

Result<void> check(const Working& working, const WorkingEntry& entry) {
    for (const auto& [key, value] : entry.numbers) {
        const WorkingField* field = fieldOf(working, key);
        if (field == nullptr || field->range == Range::Word)
            return inputError(key, "is not a number that is asked for");
    }
    for (const auto& [key, value] : entry.words) {
        const WorkingField* field = fieldOf(working, key);
        if (field == nullptr || field->range != Range::Word)
            return inputError(key, "is not a word that is asked for");
    }
    for (const WorkingField& field : working.fields) {
        const auto checked =
            field.range == Range::Word ? checkWord(field, entry) : checkNumber(field, entry);
        if (!checked) return checked.error();
    }
    return {};
}

}  // namespace

const Working* findWorking(std::string_view key) {
    const auto all = workings();
    const auto found = std::ranges::find(all, key, &Working::key);
    return found == all.end() ? nullptr : &*found;
}

WorkingUnit unitOf(const WorkingField& field) {
    switch (field.range) {
        case Range::Length:
            return WorkingUnit::Millimetre;
        case Range::Angle:
            return WorkingUnit::Degree;
        case Range::Velocity:
            return WorkingUnit::MetrePerSecond;
        case Range::Frequency:
            return WorkingUnit::Megahertz;
        case Range::Gain:
            return WorkingUnit::Decibel;
        case Range::Screen:
            return WorkingUnit::Percent;
        case Range::Attenuation:
            return WorkingUnit::DecibelPerMetre;
        case Range::Word:
            break;
    }
    return WorkingUnit::None;
}

std::string_view symbol(WorkingUnit unit) {
    switch (unit) {
        case WorkingUnit::Millimetre:
            return "mm";
        case WorkingUnit::Degree:
            return "°";
        case WorkingUnit::MetrePerSecond:
            return "m/s";
        case WorkingUnit::Megahertz:
            return "MHz";
        case WorkingUnit::Decibel:
            return "dB";
        case WorkingUnit::DecibelPerMetre:
            return "dB/m";
        case WorkingUnit::Percent:
            return "%";
        case WorkingUnit::None:
            break;
    }
    return "";
}

bool isMeant(const WorkingField& field, const WorkingEntry& entry) {
    if (field.when.empty()) return true;
    const auto word = entry.words.find(field.when);
    return word != entry.words.end() && std::ranges::find(field.is, word->second) != field.is.end();
}

Result<WorkedOut> workOut(const Working& working, const WorkingEntry& entry) {
    if (const auto checked = check(working, entry); !checked) return checked.error();
    return working.run(entry);
}

}  // namespace model
