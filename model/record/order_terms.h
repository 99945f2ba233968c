// SPDX-License-Identifier: Apache-2.0
// What the buyer asked beyond customer, certificate and rules: inherited by the castings of the
// order and their examinations.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "registers/field.h"

namespace model {

/// A test that the order asks for; it takes the place of the zone plan's of the same zone, method
/// and stage.
struct OrderedTest {
    static std::span<const Field<OrderedTest>> fields();

    std::string zone;
    std::string method;
    std::string stage;
    std::string table;
    std::string levels;
    std::string reason;

    friend bool operator==(const OrderedTest&, const OrderedTest&) = default;
};

/// Where the purchaser's or official inspector is called.
struct WitnessPoint {
    static std::span<const Field<WitnessPoint>> fields();

    std::string what;
    std::string kind;
    std::string who;
    std::string calledOn;
    std::string attendedOn;
    std::string waived;
    std::string result;

    friend bool operator==(const WitnessPoint&, const WitnessPoint&) = default;
};

/// Terms of an order.
struct OrderTerms {
    static std::span<const Field<OrderTerms>> fields();

    std::string receiver;
    std::string contact;
    std::string item;
    std::string deliveryConditions;
    std::string productStandard;
    std::string extraRequirements;
    std::string quantity;
    std::string samplingRule;
    std::string samplingPercent;
    std::string finishingWelds;
    std::string operatorLevel;
    std::string repairCycles;
    std::string repairRule;
    std::string penetrantLevel;
    std::string residualField;
    std::string fixedProcedures;
    std::string marking;
    std::string guardBand;

    std::vector<OrderedTest> tests;
    std::vector<WitnessPoint> witnessPoints;

    friend bool operator==(const OrderTerms&, const OrderTerms&) = default;
};

Canonical::Object canonicalOf(const OrderTerms& terms);
std::optional<OrderTerms> orderTermsFrom(const Canonical::Object& object);

/// "non-linear=SM 2, linear=LM 4" by key; none where it is not of that form.
std::optional<std::map<std::string, std::string>> levelsFrom(const std::string& text);
std::string levelsText(const std::map<std::string, std::string>& levels);

}  // namespace model
