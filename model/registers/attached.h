// SPDX-License-Identifier: Apache-2.0
// What comes from outside the program's own tests: verdicts of other tests, photos and other files.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "registers/field.h"

namespace model {

/// The verdict of a visual, radiographic, dimensional or other test, or of an outside laboratory.
struct OtherResult {
    static constexpr std::string_view kRegister = "other result";
    static std::span<const Field<OtherResult>> fields();

    std::string number;
    std::string casting;
    std::string zone;
    std::string test;
    std::string standard;
    std::string criteria;
    std::string verdict;
    std::string performedBy;
    std::string subcontracted;
    std::string customerSupplied;
    std::string performedOn;
    std::string report;
    std::string fileSha256;
    std::string remarks;

    friend bool operator==(const OtherResult&, const OtherResult&) = default;
};

/// A file that belongs to a casting: photo, drawing, chart, report.
struct Attachment {
    static constexpr std::string_view kRegister = "attachment";
    static std::span<const Field<Attachment>> fields();

    std::string number;
    std::string casting;
    std::string zone;
    std::string indication;
    std::string record;
    std::string title;
    std::string revision;
    std::string kind;
    std::string scale;
    std::string datum;
    std::string fileName;
    std::string mediaType;
    std::string fileSha256;
    std::string bytes;
    std::string printed;
    std::string remarks;

    friend bool operator==(const Attachment&, const Attachment&) = default;
};

}  // namespace model
