// SPDX-License-Identifier: Apache-2.0
// The papers of the workshop as text, of castings that tests change.
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "repaired/repaired_casting.h"
#include "sheets/marking_out.h"
#include "sheets/weld_map.h"

namespace sheet {

inline reports::SheetInput inputOf(const model::CastingFile& file, const model::Verdict& verdict) {
    reports::SheetInput input{file, verdict};
    input.printedOn = "2026-03-20";
    input.worksName = "Quillmere Foundry";
    input.programVersion = "0.1";
    return input;
}

/// With plain spaces for those that do not break a line.
inline std::string plain(std::string text) {
    const std::string unbroken = "\u00a0";
    for (std::size_t at = text.find(unbroken); at != std::string::npos; at = text.find(unbroken))
        text.replace(at, unbroken.size(), " ");
    return text;
}

inline std::string textOf(const model::Result<reports::Document>& document) {
    return document ? plain(reports::asText(*document)) : "refused: " + document.error().message();
}

inline std::string markingOut(const model::CastingFile& file, const std::string& zone = {}) {
    const model::Verdict verdict = repaired::judged(file);
    return textOf(reports::markingOutOf(inputOf(file, verdict), zone));
}

inline std::string weldMap(const model::CastingFile& file) {
    const model::Verdict verdict = repaired::judged(file);
    return textOf(reports::weldMapOf(inputOf(file, verdict)));
}

}  // namespace sheet
