// SPDX-License-Identifier: Apache-2.0
// Where a casting's examinations stand between draft and certificate, as of one moment.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "archive/lifecycle.h"

namespace app {

class CastingEditor;

struct CastingLife {
    std::vector<model::ExaminationState> examinations;
    std::vector<model::Presented> certificates;  ///< by number, whatever became of them

    /// Null: never signed, or not stored yet.
    [[nodiscard]] const model::ExaminationState* stateOf(std::int64_t examination) const;
    /// The record that stands; null: a draft.
    [[nodiscard]] const model::SignedRecord* standing(std::int64_t examination) const;
    /// Who gave a draft back last, and why; none: it was not given back, or is signed again.
    [[nodiscard]] std::optional<model::SignedAct> givenBack(std::int64_t examination) const;
    /// The newest certificate; null: never presented.
    [[nodiscard]] const model::Presented* newest() const;
    [[nodiscard]] bool waits() const;
};

model::Result<CastingLife> castingLife(const model::Archive& archive, const std::string& serial);

/// Locks what is signed, and judges it with what was stated against it.
void applyLife(CastingEditor& editor, const CastingLife& life);

}  // namespace app
