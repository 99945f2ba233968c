// SPDX-License-Identifier: Apache-2.0
// Written procedures and technique sheets, by revision.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "registers/field.h"

namespace model {

/// One revision of a procedure or technique sheet.
struct Procedure {
    static constexpr std::string_view kRegister = "procedure";
    static std::span<const Field<Procedure>> fields();

    std::string number;
    std::string revision;
    std::string kind;
    std::string title;
    std::string method;
    std::string standards;
    std::string conditionSets;
    std::string driftRule;
    std::string parentProcedure;
    std::string approvedBy;
    std::string approvedOn;
    std::string state;
    std::string obsoleteFrom;
    std::string fileSha256;
    std::string remarks;

    friend bool operator==(const Procedure&, const Procedure&) = default;
};

}  // namespace model
