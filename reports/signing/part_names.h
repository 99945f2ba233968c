// SPDX-License-Identifier: Apache-2.0
// What the numbered objects of a PDF are to a reader. For the .cpp files of this folder only.
#pragma once

#include <map>
#include <qpdf/QPDF.hh>
#include <string>

namespace reports::signing {

class PartNames {
public:
    explicit PartNames(QPDF& file);

    /// "what is drawn on page 2", "the signature field Release", "object 17".
    [[nodiscard]] std::string of(QPDFObjGen object) const;

private:
    void name(const QPDFObjectHandle& object, const std::string& text);
    void nameResources(QPDFObjectHandle resources, const std::string& page);

    std::map<QPDFObjGen, std::string> names_;
};

}  // namespace reports::signing
