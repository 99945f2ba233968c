// SPDX-License-Identifier: Apache-2.0
// A QA manager's statement that the limits of a set of test conditions agree with the company's own
// copy of the standard. Only then may a limit that was only partly read, or is from memory, keep a
// record from being signed.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "registers/field.h"

namespace model {

/// Of one set as it is: a changed one has another SHA-256.
struct ConditionSetAttestation {
    static constexpr std::string_view kRegister = "condition set attestation";
    static std::span<const Field<ConditionSetAttestation>> fields();

    std::string set;
    std::string sha256;
    std::string companyCopy;
    std::string state;
    std::string remarks;

    friend bool operator==(const ConditionSetAttestation&,
                           const ConditionSetAttestation&) = default;
};

}  // namespace model
