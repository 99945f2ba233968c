// SPDX-License-Identifier: Apache-2.0
// That the places reported for signatures are where the boxes are drawn.
#include <cmath>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "certificate/certificate.h"
#include "pdf/render.h"
#include "sample/sample_casting.h"
#include "tools.h"

namespace {

reports::Rendered renderedOf(const reports::Document& document) {
    auto rendered = reports::renderPdf(document);
    EXPECT_TRUE(rendered.ok()) << (rendered.ok() ? "" : rendered.error().message());
    return rendered.ok() ? std::move(rendered).value() : reports::Rendered{};
}

reports::Rendered certificateOf(const char* type) {
    sample::Sample sample = sample::signedCasting();
    sample.file.order.certificateType = type;
    const auto document = reports::certificateOf(sample.input());
    EXPECT_TRUE(document.ok());
    return document.ok() ? renderedOf(*document) : reports::Rendered{};
}

TEST(SignatureBoxes, LieOnTheLastPageUnderTheirLabels) {
    const reports::Rendered rendered = certificateOf("3.2");
    const tools::PdfOnDisk pdf(rendered.bytes);
    ASSERT_EQ(rendered.signatureFields.size(), 3U);
    const auto last = static_cast<std::size_t>(pdf.pages()) - 1;
    for (const reports::SignatureField& field : rendered.signatureFields)
        EXPECT_EQ(field.page, last) << field.name;
    const std::string text = pdf.text(pdf.pages());
    for (const char* label :
         {"Signatures", "Inspector, who presents the results",
          "Purchaser's or official inspector, for type 3.2",
          "QA manager, who releases for the manufacturer", "End of certificate"})
        EXPECT_THAT(text, testing::HasSubstr(label));
}

/// Whether a thin line stands at a place on the page, mm from its upper left corner.
bool isDrawnAt(const tools::PdfOnDisk& pdf, int page, double x, double y) {
    constexpr int kDotsPerInch = 254;  // ten in a millimetre
    const QRect around(static_cast<int>(x * 10) - 3, static_cast<int>(y * 10) - 3, 7, 7);
    const QImage image = pdf.image(page, kDotsPerInch, around);
    int darkest = 255;
    for (int row = 0; row < image.height(); ++row)
        for (int column = 0; column < image.width(); ++column)
            darkest = std::min(darkest, qGray(image.pixel(column, row)));
    return darkest < 200;
}

TEST(SignatureBoxes, AreDrawnExactlyWhereTheyAreReported) {
    const reports::Rendered rendered = certificateOf("3.2");
    const tools::PdfOnDisk pdf(rendered.bytes);
    for (const reports::SignatureField& field : rendered.signatureFields) {
        const int page = static_cast<int>(field.page) + 1;
        const double right = field.leftMm + field.widthMm;
        const double bottom = 297 - field.bottomMm;
        const double top = bottom - field.heightMm;
        for (const double x : {field.leftMm, field.leftMm + field.widthMm / 3, right})
            for (const double y : {top, bottom})
                EXPECT_TRUE(isDrawnAt(pdf, page, x, y)) << field.name << ' ' << x << ' ' << y;
        EXPECT_FALSE(
            isDrawnAt(pdf, page, field.leftMm + field.widthMm / 3, top + field.heightMm / 2))
            << field.name << " is empty inside";
    }
}

TEST(SignatureBoxes, GoToAPageOfTheirOwnWhereThereIsNoRoom) {
    reports::SignatureBoxes boxes{{{"One", "First"}, {"Two", "Second"}, {"Three", "Third"}}};
    const auto documentAfter = [&boxes](int lines) {
        std::string text;
        for (int i = 0; i < lines; ++i) text += "line " + std::to_string(i) + "\n";
        return tools::documentOf({reports::Paragraph{reports::Paragraph::Tone::Plain, text + "x"},
                                  reports::Heading{1, "Signatures"},
                                  reports::Paragraph{reports::Paragraph::Tone::Plain, "why", true},
                                  boxes});
    };
    bool together = false;
    bool apart = false;
    for (int lines = 10; lines <= 60; lines += 5) {
        const reports::Rendered rendered = renderedOf(documentAfter(lines));
        const tools::PdfOnDisk pdf(rendered.bytes);
        const int page = static_cast<int>(rendered.signatureFields.front().page) + 1;
        EXPECT_EQ(page, pdf.pages()) << lines;
        EXPECT_EQ(rendered.signatureFields.back().page, rendered.signatureFields.front().page);
        const std::string text = pdf.text(page);
        EXPECT_THAT(text, testing::HasSubstr("Signatures")) << lines;
        EXPECT_THAT(text, testing::HasSubstr("why")) << lines;
        EXPECT_THAT(text, testing::HasSubstr("The end")) << lines;
        (page == 1 ? together : apart) = true;
    }
    EXPECT_TRUE(together && apart);
}

TEST(SignatureBoxes, AreNotInADocumentThatNobodyReleases) {
    const auto document = reports::certificateOf(sample::soundCasting().input());
    ASSERT_TRUE(document.ok());
    EXPECT_TRUE(renderedOf(*document).signatureFields.empty());
}

}  // namespace
