// SPDX-License-Identifier: Apache-2.0
#include "certificate/coverage.h"

#include "certificate/certificate.h"

namespace reports {

model::Word resultOf(const model::CastingFile& file, const model::Verdict& verdict) {
    return model::castingWord(file, verdict);
}

}  // namespace reports
