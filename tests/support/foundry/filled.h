// SPDX-License-Identifier: Apache-2.0
// Entries of registers, order terms and test conditions with a text in every field, each of which
// its field takes.
#pragma once

#include <string>

#include "record/order_terms.h"
#include "record/test_conditions.h"
#include "registers/field.h"

namespace foundry {

/// A text that a field takes; the last of several choices.
inline std::string textFor(const model::FieldInfo& field) {
    using model::FieldKind;
    switch (field.kind) {
        case FieldKind::Line:
            return "the " + std::string(field.key) + ", \xc3\xa9t\xc3\xa9";
        case FieldKind::Paragraph:
            return "the " + std::string(field.key) + "\nand \"more\"";
        case FieldKind::Date:
            return "2026-11-20";
        case FieldKind::Moment:
            return "2026-11-20T08:15:00Z";
        case FieldKind::Number:
            return "-12,5";
        case FieldKind::Whole:
            return "3";
        case FieldKind::Choice:
            return std::string(field.choices.substr(field.choices.rfind('|') + 1));
        case FieldKind::YesNo:
            return "yes";
        case FieldKind::List:
            return "one, two";
        case FieldKind::Sha256:
            return std::string(64, 'a');
    }
    return {};
}

template <class T>
T filled() {
    T entry;
    for (const model::Field<T>& field : T::fields()) entry.*field.text = textFor(field.info);
    return entry;
}

inline model::OrderTerms filledTerms() {
    auto terms = filled<model::OrderTerms>();
    terms.tests = {filled<model::OrderedTest>(), filled<model::OrderedTest>()};
    terms.tests[1].zone.clear();
    terms.witnessPoints = {filled<model::WitnessPoint>()};
    return terms;
}

inline model::TestConditions filledConditions() {
    auto conditions = filled<model::TestConditions>();
    conditions.measurements = {filled<model::Measurement>(), {}};
    conditions.measurements[1].value = "half-typed";
    conditions.settingChecks = {filled<model::SettingCheck>()};
    conditions.scans = {filled<model::Scan>()};
    conditions.acknowledgements = {filled<model::Acknowledgement>()};
    return conditions;
}

}  // namespace foundry
