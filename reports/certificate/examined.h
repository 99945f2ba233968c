// SPDX-License-Identifier: Apache-2.0
// A casting file and its verdict brought together: what was typed beside how it was judged.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/result.h"
#include "certificate/certificate.h"

namespace reports {

/// One row of an examination that holds an indication.
struct ExaminedIndication {
    const model::TypedIndication* typed = nullptr;
    model::Indication read;
    const model::JudgedIndication* judged = nullptr;
};

/// The same of an ultrasonic examination.
struct ExaminedReflector {
    const model::TypedReflector* typed = nullptr;
    model::Reflector read;
    std::optional<model::Size> size;  ///< where there is a reading
    const model::JudgedIndication* judged = nullptr;
};

struct Examined {
    const model::ExaminationDraft* draft = nullptr;
    const model::ExaminationVerdict* verdict = nullptr;
    const model::PlannedZone* planned = nullptr;  ///< null: not in the zone plan
    const model::LimitTable* table = nullptr;     ///< as judged by; null: none was named
    std::vector<ExaminedIndication> indications;  ///< MT and PT
    std::vector<ExaminedReflector> reflectors;    ///< UT
    const Recorded* recorded = nullptr;           ///< null: nobody signed it
    const std::vector<model::ConditionFinding>* findings = nullptr;  ///< null: nobody asked

    /// "Z1 MT, as cast, after repair 1"; unlike for any two examinations of a casting.
    [[nodiscard]] std::string name() const;
    /// Whether anything at all is stated of the test conditions.
    [[nodiscard]] bool conditionsStated() const;
};

/// Every examination, in the file's order. Fails as certificateOf does.
model::Result<std::vector<Examined>> examinedOf(const CertificateInput& input);

}  // namespace reports
