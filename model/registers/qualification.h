// SPDX-License-Identifier: Apache-2.0
// What entitles a person to test: certificate, sight, the employer's permission.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "registers/field.h"

namespace model {

/// A person's certificate in one method (ISO 9712 or an employer's scheme).
struct Qualification {
    static constexpr std::string_view kRegister = "qualification";
    static std::span<const Field<Qualification>> fields();

    std::string person;
    std::string method;
    std::string certificate;
    std::string scheme;
    std::string level;
    std::string sector;
    std::string body;
    std::string issuedOn;
    std::string expiresOn;
    std::string state;
    std::string remarks;

    friend bool operator==(const Qualification&, const Qualification&) = default;
};

/// A test of a person's sight.
struct EyeTest {
    static constexpr std::string_view kRegister = "eye test";
    static std::span<const Field<EyeTest>> fields();

    std::string person;
    std::string kind;
    std::string testedOn;
    std::string chart;
    std::string by;
    std::string result;
    std::string remarks;

    friend bool operator==(const EyeTest&, const EyeTest&) = default;
};

/// The employer's written permission to test.
struct Authorisation {
    static constexpr std::string_view kRegister = "authorisation";
    static std::span<const Field<Authorisation>> fields();

    std::string person;
    std::string method;
    std::string grantedOn;
    std::string procedures;
    std::string scope;
    std::string by;
    std::string until;
    std::string state;
    std::string remarks;

    friend bool operator==(const Authorisation&, const Authorisation&) = default;
};

}  // namespace model
