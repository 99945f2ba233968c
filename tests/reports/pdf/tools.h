// SPDX-License-Identifier: Apache-2.0
// Other people's programs that read our PDFs: qpdf, and poppler's pdftotext, pdfinfo, pdftoppm.
#pragma once

#include <QImage>
#include <QRect>
#include <QString>
#include <QStringList>
#include <QTemporaryDir>
#include <string>

#include "certificate/document.h"

namespace tools {

struct Outcome {
    int code = -1;  ///< -1: the program did not run
    std::string output;
    std::string errors;
};

Outcome run(const QString& program, const QStringList& arguments);

/// A PDF in a folder of its own, as other programs see it.
class PdfOnDisk {
public:
    explicit PdfOnDisk(const std::string& bytes);

    [[nodiscard]] QString path() const { return folder_.filePath("one.pdf"); }
    /// Text in reading order; of one page, counted from 1, or of all for 0.
    [[nodiscard]] std::string text(int page = 0) const;
    [[nodiscard]] int pages() const;
    /// A part of a page in shades of grey; `part` in dots from the page's upper left corner.
    [[nodiscard]] QImage image(int page, int dotsPerInch, QRect part) const;

private:
    QTemporaryDir folder_;
};

/// A document of only these blocks, without anything across or around the pages but numbers.
reports::Document documentOf(std::vector<reports::Block> blocks);

/// The bytes of a PDF, or "" with a failed expectation.
std::string rendered(const reports::Document& document);

}  // namespace tools
