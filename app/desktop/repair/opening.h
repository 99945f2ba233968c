// SPDX-License-Identifier: Apache-2.0
// A nonconformance as it follows from an examination, for whoever opens it to complete.
#pragma once

#include "judge/verdict.h"
#include "record/records.h"

namespace app {

/// Its failing indications and the rule that the first failing check breaks. `record`: number of
/// the signed record; 0: not signed.
model::Nonconformance nonconformanceFrom(const model::ExaminationDraft& draft,
                                         const model::ExaminationVerdict& verdict,
                                         std::int64_t record);

/// "C-1/N3": the first of this form that is not among `taken`.
template <class T>
std::string nextNumber(const std::vector<T>& taken, const std::string& serial, char letter) {
    for (std::size_t number = taken.size() + 1;; ++number) {
        std::string key = serial + "/" + letter + std::to_string(number);
        bool free = true;
        for (const T& entry : taken) free = free && keyOf(entry) != key;
        if (free) return key;
    }
}

}  // namespace app
