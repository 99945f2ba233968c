// SPDX-License-Identifier: Apache-2.0
// What the casting's repairs and concessions make of its verdict, in the certificate's words.
#pragma once

#include <string>
#include <vector>

#include "certificate/certificate.h"
#include "certificate/document.h"
#include "repair/outcome.h"
#include "repair/repair_case.h"

namespace reports {

struct Conclusion {
    model::Word word = model::Word::NotJudged;
    model::Outcome outcome = model::Outcome::NotJudged;
    std::vector<model::RepairCase> cases;
    std::vector<model::Error> looseEnds;

    /// Whether something is open although what counts is acceptable: then the casting's own word
    /// would mislead.
    [[nodiscard]] bool acceptableButOpen() const {
        return word == model::Word::Acceptable && outcome == model::Outcome::DoesNotConform;
    }
};

Conclusion conclusionOf(const CertificateInput& input);

/// "Conforms after repair R1 (NCR-4) to ...", whole sentences.
std::string outcomeText(const Conclusion& conclusion);

/// The nonconformances on the first page, one row each; nothing where there is none.
void addRepairTable(std::vector<Block>& blocks, const Conclusion& conclusion);
/// What keeps nonconformances open, and what none of them accounts for.
std::vector<std::string> openItems(const Conclusion& conclusion);

}  // namespace reports
