// SPDX-License-Identifier: Apache-2.0
// Under what conditions an examination was made, and what is to be said of them.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "certificate/examined.h"

namespace reports {

/// Names of examinations by what was printed of their conditions: those of a later examination that
/// are the same are not printed again.
using PrintedConditions = std::map<std::string, std::string>;

void addConditions(std::vector<Block>& blocks, const CertificateInput& input,
                   const Examined& examined, PrintedConditions& printed);

/// Number and revision of the written procedure.
std::string procedureText(const model::ExaminationDraft& draft);

/// Ids of findings that stand against signing, and of those for which a reason was typed.
std::vector<std::string> standingFindings(const Examined& examined);
std::vector<std::string> reasonedFindings(const Examined& examined);

}  // namespace reports
