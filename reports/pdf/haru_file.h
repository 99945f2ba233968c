// SPDX-License-Identifier: Apache-2.0
// Owner of a libharu document. libharu reports failures through a callback from its C frames:
// the first one is stored, libharu refuses everything after it, and error() tells of it.
#pragma once

#include <hpdf.h>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "base/result.h"

namespace reports {

class HaruFile {
public:
    HaruFile();

    [[nodiscard]] HPDF_Doc get() const { return file_.get(); }

    /// What went wrong first, if anything did; `doing` says at what.
    [[nodiscard]] std::optional<model::Error> error(std::string_view doing) const;

    /// Title, subject, program and language, for the reader's file list and for search.
    void setInformation(const std::string& title, const std::string& subject,
                        const std::string& producer, const std::string& language);

    /// The file's /ID, from what its pages draw: equal contents, equal id.
    void setIdFromContents();

    /// The finished file.
    model::Result<std::string> bytes();

private:
    struct Failure {
        HPDF_STATUS code = 0;
        HPDF_STATUS detail = 0;
    };
    static void store(HPDF_STATUS code, HPDF_STATUS detail, void* failure);

    // Before file_, which is freed first and may still report.
    std::unique_ptr<Failure> failure_ = std::make_unique<Failure>();
    std::unique_ptr<_HPDF_Doc_Rec, void (*)(HPDF_Doc)> file_;
};

}  // namespace reports
