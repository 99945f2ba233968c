// SPDX-License-Identifier: Apache-2.0
// What tests are made with, its calibration and the checks of it (records of use).
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "registers/field.h"

namespace model {

/// A meter, lamp, yoke, instrument, probe, block or other thing with a serial number.
struct Equipment {
    static constexpr std::string_view kRegister = "equipment";
    static std::span<const Field<Equipment>> fields();

    std::string id;
    std::string kind;
    std::string description;
    std::string maker;
    std::string model;
    std::string serial;
    std::string calibratedOn;
    std::string calibrationDue;
    std::string calibrationCertificate;
    std::string characteristics;
    std::string place;
    std::string state;
    std::string remarks;

    friend bool operator==(const Equipment&, const Equipment&) = default;
};

/// A check of a thing at the works: pull of a yoke, daily or weekly check of an instrument.
struct EquipmentCheck {
    static constexpr std::string_view kRegister = "equipment check";
    static std::span<const Field<EquipmentCheck>> fields();

    std::string equipment;
    std::string check;
    std::string at;
    std::string by;
    std::string value;
    std::string unit;
    std::string condition;
    std::string with;
    std::string result;
    std::string nextDue;
    std::string remarks;

    friend bool operator==(const EquipmentCheck&, const EquipmentCheck&) = default;
};

}  // namespace model
