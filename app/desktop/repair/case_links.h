// SPDX-License-Identifier: Apache-2.0
// What names what among the entries and examinations of a casting, in both directions.
#pragma once

#include <QString>
#include <string>
#include <vector>

#include "record/records.h"

namespace app {

/// An entry of a register of the casting, or one of its examinations.
struct CaseItem {
    std::string registerName;  ///< as T::kRegister; empty: an examination
    std::string key;           ///< as keyOf()
    int examination = -1;      ///< index in the file

    friend bool operator==(const CaseItem&, const CaseItem&) = default;
};

/// "excavation C-1/E1", "examination Z1 MT, as cast, repair cycle 1"
QString nameOf(const model::CastingFile& file, const CaseItem& item);
/// "Z1 MT, as cast, repair cycle 1"
QString examinationName(const model::ExaminationDraft& draft);

struct CaseLink {
    bool named = false;  ///< the other names this one; else this one names the other
    CaseItem other;
};

/// What an item names first, then what names it.
std::vector<CaseLink> linksOf(const model::CastingFile& file, const CaseItem& item);

}  // namespace app
