// SPDX-License-Identifier: Apache-2.0
#include "pdf/pages.h"

#include <array>
#include <cmath>
#include <numbers>

#include "pdf/line_breaking.h"
#include "pdf/style.h"

namespace reports {

namespace {

constexpr double kHeadLine = 14;   // base line of the page's head
constexpr double kFootLine = 286;  // base line of the page's foot
constexpr double kFootRule = 281;
constexpr double kNoticePadding = 1.6;

std::string replaced(std::string phrase, const std::string& placeholder, const std::string& value) {
    const std::size_t at = phrase.find(placeholder);
    if (at != std::string::npos) phrase.replace(at, placeholder.size(), value);
    return phrase;
}

/// As much of `text` as fits into one line of `width` mm, with an ellipsis where it is cut. What
/// is cut stands in full on the first page.
Glyphs oneLine(Faces& faces, const std::string& text, Weight weight, double size, double width) {
    Glyphs glyphs = faces.lay(text, weight);
    for (Glyph& glyph : glyphs)
        if (glyph.code == u'\n') glyph = faces.lay(" ", weight).front();
    if (widthMm(glyphs, size) <= width) return glyphs;
    const Glyphs ellipsis = faces.lay("…", weight);
    while (!glyphs.empty() && widthMm(glyphs, size) + widthMm(ellipsis, size) > width)
        glyphs.pop_back();
    glyphs.insert(glyphs.end(), ellipsis.begin(), ellipsis.end());
    return glyphs;
}

class Pages {
public:
    Pages(HaruFile& file, Faces& faces, const Document& document)
        : file_(file), faces_(faces), document_(document) {}

    std::vector<SignatureField> draw(const Strips& strips) {
        for (std::size_t i = 0; i < strips.size(); ++i) {
            const Strip& strip = strips[i];
            const double gap = atTop_ ? 0 : strip.gapBefore;
            if (pages_.empty() || (!atTop_ && y_ + gap + heightFrom(strips, i) > style::kBottom)) {
                if (!startPage()) return {};
                if (strip.headedBy != nullptr) place(*strip.headedBy, 0);
            }
            place(strip, atTop_ ? 0 : strip.gapBefore);
        }
        for (std::size_t i = 0; i < pages_.size(); ++i) drawFurniture(i);
        return std::move(fields_);
    }

private:
    /// The height of a strip and all that must stay with it on the page, if that fits on one.
    static double heightFrom(const Strips& strips, std::size_t i) {
        double height = strips[i].height;
        double all = height;
        while (strips[i].keepWithNext && i + 1 < strips.size()) {
            ++i;
            all += strips[i].gapBefore + strips[i].height;
            if (all > style::kHeight) return height;
        }
        return all;
    }

    bool startPage() {
        HPDF_Page page = HPDF_AddPage(file_.get());
        if (page == nullptr) return false;
        constexpr double kPointsInMm = 72 / 25.4;
        HPDF_Page_SetWidth(page, static_cast<HPDF_REAL>(kPageWidthMm * kPointsInMm));
        HPDF_Page_SetHeight(page, static_cast<HPDF_REAL>(kPageHeightMm * kPointsInMm));
        pages_.emplace_back(page, faces_);
        drawWatermark(pages_.back());
        y_ = style::kTop;
        atTop_ = true;
        return true;
    }

    void place(const Strip& strip, double gap) {
        y_ += gap;
        Canvas& canvas = pages_.back();
        if (!strip.bookmark.empty()) addBookmark(canvas, strip);
        strip.draw(canvas, y_);
        for (const SignatureBoxPlace& box : strip.signatureBoxes)
            fields_.push_back({box.field, pages_.size() - 1, box.x, kPageHeightMm - y_ - box.height,
                               box.width, box.height});
        y_ += strip.height;
        atTop_ = false;
    }

    void addBookmark(Canvas& canvas, const Strip& strip) {
        HPDF_Outline parent = strip.bookmarkLevel > 1 ? chapter_ : nullptr;
        HPDF_Outline entry = canvas.bookmark(file_.get(), parent, strip.bookmark, y_ - 2);
        if (strip.bookmarkLevel == 1) chapter_ = entry;
    }

    /// First on the page, so that everything else stands over it.
    void drawWatermark(Canvas& canvas) {
        if (document_.watermark.empty()) return;
        constexpr double kSize = 62;
        constexpr double kDegrees = 52;
        const Glyphs glyphs = faces_.lay(document_.watermark, Weight::Bold);
        const double half = widthMm(glyphs, kSize) / 2;
        const double turn = kDegrees * std::numbers::pi / 180;
        const double drop = style::ascent(kSize) / 2;
        const double x = kPageWidthMm / 2 - half * std::cos(turn) + drop * std::sin(turn);
        const double y = kPageHeightMm / 2 + half * std::sin(turn) + drop * std::cos(turn);
        canvas.text(x, y, Line(glyphs), kSize, style::kWatermark, kDegrees);
    }

    void drawFurniture(std::size_t index) {
        Canvas& canvas = pages_[index];
        drawHead(canvas, index == 0);
        const std::string number =
            replaced(replaced(document_.pageOf, "%1", std::to_string(index + 1)), "%2",
                     std::to_string(pages_.size()));
        const double right = style::kLeft + style::kWidth;
        canvas.line({style::kLeft, kFootRule}, {right, kFootRule}, Pen{0.12, style::kFaint});
        const Glyphs page = faces_.lay(number, Weight::Regular);
        const double pageWidth = widthMm(page, style::kSmallSize);
        canvas.text(right - pageWidth, kFootLine, Line(page), style::kSmallSize, style::kInk);
        const Glyphs identity = oneLine(faces_, document_.identity, Weight::Regular,
                                        style::kSmallSize, style::kWidth - pageWidth - 5);
        canvas.text(style::kLeft, kFootLine, Line(identity), style::kSmallSize, style::kInk);
    }

    /// The notices boxed on the right; on the left the works, which the first page has below.
    void drawHead(Canvas& canvas, bool first) {
        double right = style::kLeft + style::kWidth;
        const Colour colour = style::colourOf(Mark::Caution);
        for (std::size_t i = document_.pageNotices.size(); i > 0; --i) {
            const Glyphs notice = faces_.lay(document_.pageNotices[i - 1], Weight::Bold);
            const double width = widthMm(notice, style::kSmallSize) + 2 * kNoticePadding;
            canvas.rectangle(right - width, kHeadLine - 3.4, width, 5, style::kWhite,
                             Pen{0.3, colour});
            canvas.text(right - width + kNoticePadding, kHeadLine, Line(notice), style::kSmallSize,
                        colour);
            right -= width + 2;
        }
        if (first) return;
        const Glyphs issuer = oneLine(faces_, document_.issuer, Weight::Regular, style::kSmallSize,
                                      right - style::kLeft - 5);
        canvas.text(style::kLeft, kHeadLine, Line(issuer), style::kSmallSize, style::kMuted);
    }

    HaruFile& file_;
    Faces& faces_;
    const Document& document_;
    std::vector<Canvas> pages_;
    std::vector<SignatureField> fields_;
    double y_ = 0;
    bool atTop_ = true;
    HPDF_Outline chapter_ = nullptr;
};

}  // namespace

std::vector<SignatureField> drawPages(HaruFile& file, Faces& faces, const Document& document,
                                      const Strips& strips) {
    return Pages(file, faces, document).draw(strips);
}

}  // namespace reports
