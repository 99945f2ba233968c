// SPDX-License-Identifier: Apache-2.0
// What follows "not acceptable": the finding, what was decided, what was done. Every entry names
// the one before it; nothing is overwritten.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "registers/field.h"

namespace model {

/// A casting held because of indications beyond the limits.
struct Nonconformance {
    static constexpr std::string_view kRegister = "nonconformance";
    static std::span<const Field<Nonconformance>> fields();

    std::string number;
    std::string casting;
    std::string zone;
    std::string method;
    std::string stage;
    std::string record;
    std::string indications;
    std::string finding;
    std::string ruleBroken;
    std::string openedBy;
    std::string openedOn;
    std::string remarks;

    friend bool operator==(const Nonconformance&, const Nonconformance&) = default;
};

/// What was decided about a nonconformance, signed by a QA manager.
struct Disposition {
    static constexpr std::string_view kRegister = "disposition";
    static std::span<const Field<Disposition>> fields();

    std::string nonconformance;
    std::string sequence;
    std::string casting;
    std::string decision;
    std::string reason;
    std::string authority;
    std::string decidedOn;
    std::string agreement;
    std::string extraTests;

    friend bool operator==(const Disposition&, const Disposition&) = default;
};

/// Metal taken out.
struct Excavation {
    static constexpr std::string_view kRegister = "excavation";
    static std::span<const Field<Excavation>> fields();

    std::string number;
    std::string nonconformance;
    std::string casting;
    std::string zone;
    std::string x;
    std::string y;
    std::string angle;
    std::string length;
    std::string width;
    std::string depth;
    std::string wallBefore;
    std::string wallLeft;
    std::string wallMeasuredWith;
    std::string means;
    std::string preheat;
    std::string doneBy;
    std::string doneOn;
    std::string cavityMethod;
    std::string cavityRecord;
    std::string cleared;
    std::string blended;
    std::string remarks;

    friend bool operator==(const Excavation&, const Excavation&) = default;
};

/// A cavity filled by welding.
struct WeldRepair {
    static constexpr std::string_view kRegister = "weld repair";
    static std::span<const Field<WeldRepair>> fields();

    std::string number;
    std::string excavation;
    std::string casting;
    std::string weldingProcedure;
    std::string procedureApproval;
    std::string welder;
    std::string welderApproval;
    std::string welderUntil;
    std::string filler;
    std::string fillerBatch;
    std::string preheat;
    std::string interpass;
    std::string doneOn;
    std::string agreement;
    std::string remarks;

    friend bool operator==(const WeldRepair&, const WeldRepair&) = default;
};

/// Of a casting, after welding or as delivered.
struct HeatTreatment {
    static constexpr std::string_view kRegister = "heat treatment";
    static std::span<const Field<HeatTreatment>> fields();

    std::string number;
    std::string casting;
    std::string weldRepairs;
    std::string kind;
    std::string temperature;
    std::string holding;
    std::string chart;
    std::string furnace;
    std::string thermocouples;
    std::string doneOn;
    std::string remarks;

    friend bool operator==(const HeatTreatment&, const HeatTreatment&) = default;
};

/// The purchaser's written acceptance of named indications beyond the limits.
struct Concession {
    static constexpr std::string_view kRegister = "concession";
    static std::span<const Field<Concession>> fields();

    std::string number;
    std::string nonconformance;
    std::string casting;
    std::string customerReference;
    std::string grantedBy;
    std::string grantedOn;
    std::string indications;
    std::string scope;
    std::string until;
    std::string fileSha256;

    friend bool operator==(const Concession&, const Concession&) = default;
};

}  // namespace model
