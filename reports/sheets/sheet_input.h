// SPDX-License-Identifier: Apache-2.0
// What the papers of the workshop are made from. They accompany a casting through its repair and
// certify nothing.
#pragma once

#include <string>

#include "judge/verdict.h"
#include "record/records.h"

namespace reports {

/// What is pointed to is borrowed.
struct SheetInput {
    const model::CastingFile& file;
    const model::Verdict& verdict;  ///< of the file's examinations
    std::string printedOn{};        ///< date; concessions have to hold on it
    std::string worksName{};
    std::string programVersion{};
    bool demonstration = false;
};

}  // namespace reports
