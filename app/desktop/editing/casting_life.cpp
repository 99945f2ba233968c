// SPDX-License-Identifier: Apache-2.0
#include "editing/casting_life.h"

#include <algorithm>

#include "editing/casting_editor.h"

namespace app {

const model::ExaminationState* CastingLife::stateOf(std::int64_t examination) const {
    const auto found =
        std::ranges::find(examinations, examination, &model::ExaminationState::examination);
    return examination == 0 || found == examinations.end() ? nullptr : &*found;
}

const model::SignedRecord* CastingLife::standing(std::int64_t examination) const {
    const auto* state = stateOf(examination);
    return state ? state->standing() : nullptr;
}

std::optional<model::SignedAct> CastingLife::givenBack(std::int64_t examination) const {
    const auto* state = stateOf(examination);
    if (!state || state->standing() || state->records.empty()) return std::nullopt;
    return state->records.back().givenBack;
}

const model::Presented* CastingLife::newest() const {
    return certificates.empty() ? nullptr : &certificates.back();
}

bool CastingLife::waits() const {
    return std::ranges::any_of(certificates, [](const model::Presented& presented) {
        return presented.state() == model::CertificateState::Waiting;
    });
}

model::Result<CastingLife> castingLife(const model::Archive& archive, const std::string& serial) {
    CastingLife life;
    auto states = model::examinationStates(archive, serial);
    if (!states) return states.error();
    auto certificates = model::presentedOf(archive, serial);
    if (!certificates) return certificates.error();
    life.examinations = std::move(*states);
    life.certificates = std::move(*certificates);
    return life;
}

void applyLife(CastingEditor& editor, const CastingLife& life) {
    const auto objection = [](const model::SignedAct& act) {
        return model::Objection{act.name, act.reason};
    };
    std::set<int> locked;
    for (int i = 0; i < editor.examinations(); ++i) {
        const auto* record = life.standing(editor.draft(i).id);
        std::optional<model::Objection> rejected;
        std::optional<model::Objection> invalid;
        if (record) {
            locked.insert(i);
            if (!record->recorded.reason.empty()) rejected = objection(record->recorded);
            if (record->invalid) invalid = objection(*record->invalid);
        }
        editor.setObjections(i, std::move(rejected), std::move(invalid));
    }
    editor.setSigned(std::move(locked));
}

}  // namespace app
