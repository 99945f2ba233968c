// SPDX-License-Identifier: Apache-2.0
// Under what conditions an examination was made, as typed at the bench. A condition is a
// measurement: value, unit, instrument, time and person; a bare tick proves nothing later.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "registers/field.h"

namespace model {

/// One condition, measured or stated.
struct Measurement {
    static std::span<const Field<Measurement>> fields();

    std::string parameter;
    std::string value;
    std::string unit;
    std::string instrument;
    std::string at;
    std::string by;
    std::string place;
    std::string remarks;

    friend bool operator==(const Measurement&, const Measurement&) = default;
};

/// A check of an ultrasonic setting: how far range and sensitivity have drifted since it was set.
struct SettingCheck {
    static std::span<const Field<SettingCheck>> fields();

    std::string id;
    std::string setting;
    std::string at;
    std::string occasion;
    std::string by;
    std::string block;
    std::string sensitivityDrift;
    std::string rangeDrift;
    std::string blockTemperature;
    std::string partTemperature;
    std::string corrected;
    std::string remarks;

    friend bool operator==(const SettingCheck&, const SettingCheck&) = default;
};

/// An area scanned in one go with one setting.
struct Scan {
    static std::span<const Field<Scan>> fields();

    std::string id;
    std::string area;
    std::string setting;
    std::string afterCheck;
    std::string startedAt;
    std::string endedAt;
    std::string direction;
    std::string speed;
    std::string overlap;
    std::string examinedAgain;

    friend bool operator==(const Scan&, const Scan&) = default;
};

/// A typed reason for going on although a condition calls for attention. It is printed.
struct Acknowledgement {
    static std::span<const Field<Acknowledgement>> fields();

    std::string finding;
    std::string reason;
    std::string by;

    friend bool operator==(const Acknowledgement&, const Acknowledgement&) = default;
};

/// What holds for the examination as a whole, and the lists above.
struct TestConditions {
    static std::span<const Field<TestConditions>> fields();

    std::string purpose;
    std::string place;
    std::string startedAt;
    std::string endedAt;
    std::string procedureNumber;
    std::string procedureRevision;
    std::string sheetNumber;
    std::string sheetRevision;
    std::string testStandard;
    std::string deviations;
    std::string deviationsAgreed;
    std::string deliveryState;
    std::string surfacePreparation;
    std::string surfaceFinish;
    std::string coating;
    std::string equipment;
    std::string consumables;
    std::string evaluatedBy;
    std::string witnessedBy;
    std::string piecesTested;
    std::string nonconformance;
    std::string firstRecord;

    std::vector<Measurement> measurements;
    std::vector<SettingCheck> settingChecks;  ///< UT
    std::vector<Scan> scans;                  ///< UT
    std::vector<Acknowledgement> acknowledgements;

    friend bool operator==(const TestConditions&, const TestConditions&) = default;
};

/// Empty where nothing was typed.
Canonical::Object canonicalOf(const TestConditions& conditions);
/// Takes what canonicalOf() wrote; none where it is not understood.
std::optional<TestConditions> testConditionsFrom(const Canonical::Object& object);

}  // namespace model
