// SPDX-License-Identifier: Apache-2.0
#include "signing/appearance.h"

#include "pdf/canvas.h"
#include "pdf/faces.h"
#include "pdf/haru_file.h"
#include "pdf/line_breaking.h"

namespace reports {

namespace {

constexpr double kPointsInMm = 72 / 25.4;
constexpr double kPaddingMm = 1.5;
constexpr double kLineMmPerPt = 0.44;  // 1.25 times the font size
constexpr Colour kInk{0.1F, 0.1F, 0.1F};

double neededHeight(const std::vector<Glyphs>& texts, double size, double width) {
    double lines = 0;
    for (const Glyphs& text : texts)
        lines += static_cast<double>(brokenLines(text, width * kPointsInMm / size * 1000).size());
    return lines * size * kLineMmPerPt;
}

/// The page's visible part is its upper left corner: the canvas counts from there.
void crop(HPDF_Doc file, HPDF_Page page, double widthMm, double heightMm) {
    HPDF_Page_SetWidth(page, static_cast<HPDF_REAL>(kPageWidthMm * kPointsInMm));
    HPDF_Page_SetHeight(page, static_cast<HPDF_REAL>(kPageHeightMm * kPointsInMm));
    HPDF_Box box;
    box.left = 0;
    box.bottom = static_cast<HPDF_REAL>((kPageHeightMm - heightMm) * kPointsInMm);
    box.right = static_cast<HPDF_REAL>(widthMm * kPointsInMm);
    box.top = static_cast<HPDF_REAL>(kPageHeightMm * kPointsInMm);
    HPDF_Dict_Add(page, "CropBox", HPDF_Box_Array_New(file->mmgr, box));
}

}  // namespace

model::Result<std::string> drawAppearance(const std::vector<std::string>& lines, double widthMm,
                                          double heightMm, const FontFiles& fonts) {
    if (!(widthMm >= 10 && widthMm <= 200 && heightMm >= 10 && heightMm <= 200))
        return model::inputError("", "a signature's appearance must be 10 to 200 mm wide and high");
    HaruFile file;
    if (auto failed = file.error("starting")) return *failed;
    Faces faces(file, fonts);
    if (faces.error()) return *faces.error();
    std::vector<Glyphs> texts;
    texts.reserve(lines.size());
    for (const std::string& line : lines)
        texts.push_back(faces.lay(line, texts.empty() ? Weight::Bold : Weight::Regular));
    if (faces.error()) return *faces.error();

    const double width = widthMm - 2 * kPaddingMm;
    const double height = heightMm - 2 * kPaddingMm;
    double size = 9;
    while (size >= 4 && neededHeight(texts, size, width) > height) size -= 0.25;
    if (size < 4)
        return model::inputError("", "the signature's text does not fit into %1 x %2 mm",
                                 {std::to_string(widthMm), std::to_string(heightMm)});

    HPDF_Page page = HPDF_AddPage(file.get());
    if (page == nullptr) return *file.error("adding a page");
    crop(file.get(), page, widthMm, heightMm);
    Canvas canvas(page, faces);
    constexpr double kLine = 0.25;
    canvas.rectangle(kLine, kLine, widthMm - 2 * kLine, heightMm - 2 * kLine, std::nullopt,
                     Pen{kLine, kInk, Dash::Solid});
    double y = kPaddingMm - size * kLineMmPerPt * 0.25;
    for (const Glyphs& text : texts)
        for (const Line line : brokenLines(text, width * kPointsInMm / size * 1000))
            canvas.text(kPaddingMm, y += size * kLineMmPerPt, line, size, kInk);
    if (faces.error()) return *faces.error();
    faces.finish();
    file.setIdFromContents();
    return file.bytes();
}

}  // namespace reports
