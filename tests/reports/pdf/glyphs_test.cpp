// SPDX-License-Identifier: Apache-2.0
// What is printed against what it should look like: each character of a PDF, drawn by poppler, is
// compared with the same character drawn by Qt from the same font file. Text extraction cannot
// show that a part of a character is missing; this does.
#include <QFont>
#include <QFontDatabase>
#include <QGuiApplication>
#include <QPainter>
#include <algorithm>
#include <gtest/gtest.h>
#include <memory>

#include "pdf/render.h"
#include "tools.h"

namespace {

constexpr int kDotsPerInch = 600;
constexpr double kTextSizePt = 9;  // of a paragraph
constexpr int kDark = 140;

/// The dark points of an image, cut to the smallest rectangle that holds them all.
struct Ink {
    int width = 0;
    int height = 0;
    std::vector<bool> dark;

    [[nodiscard]] bool at(int x, int y) const {
        if (x < 0 || y < 0 || x >= width || y >= height) return false;
        return dark[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                    static_cast<std::size_t>(x)];
    }
};

Ink inkOf(const QImage& image) {
    const QImage grey = image.convertToFormat(QImage::Format_Grayscale8);
    QRect box;
    for (int y = 0; y < grey.height(); ++y)
        for (int x = 0; x < grey.width(); ++x)
            if (grey.constScanLine(y)[x] < kDark) box |= QRect(x, y, 1, 1);
    Ink ink{box.width(), box.height(), {}};
    for (int y = box.top(); y <= box.bottom(); ++y)
        for (int x = box.left(); x <= box.right(); ++x)
            ink.dark.push_back(grey.constScanLine(y)[x] < kDark);
    return ink;
}

/// Common dark points as a share of all dark points, at the best shift of up to 2 points.
double similarity(const Ink& a, const Ink& b) {
    double best = 0;
    for (int dx = -2; dx <= 2; ++dx)
        for (int dy = -2; dy <= 2; ++dy) {
            int both = 0;
            int any = 0;
            for (int y = -3; y < std::max(a.height, b.height) + 3; ++y)
                for (int x = -3; x < std::max(a.width, b.width) + 3; ++x) {
                    const bool inA = a.at(x, y);
                    const bool inB = b.at(x + dx, y + dy);
                    both += inA && inB ? 1 : 0;
                    any += inA || inB ? 1 : 0;
                }
            if (any > 0) best = std::max(best, static_cast<double>(both) / any);
        }
    return best;
}

/// Two rasterisers differ at the edges of strokes, by one dot; a part missing is more than that.
testing::AssertionResult same(const Ink& a, const Ink& b) {
    constexpr double kLeastSimilarity = 0.92;
    constexpr int kMostDots = 2;
    const double share = similarity(a, b);
    const bool sameSize =
        std::abs(a.width - b.width) <= kMostDots && std::abs(a.height - b.height) <= kMostDots;
    const bool equal = sameSize && share >= kLeastSimilarity;
    return (equal ? testing::AssertionSuccess() : testing::AssertionFailure())
           << "similarity " << share << ", " << a.width << " x " << a.height << " against "
           << b.width << " x " << b.height;
}

class Glyphs : public testing::Test {
protected:
    static void SetUpTestSuite() {
        qputenv("QT_QPA_PLATFORM", "offscreen");
        static int argc = 1;
        static char name[] = "test";
        static char* argv[] = {name, nullptr};
        application_ = std::make_unique<QGuiApplication>(argc, argv);
    }
    static void TearDownTestSuite() { application_.reset(); }

    /// `character` drawn from a font file at the size a PDF's paragraph has.
    static Ink expected(const std::string& fontFile, char16_t character) {
        static std::map<std::string, QString> families;
        const auto known = families.find(fontFile);
        QString family;
        if (known == families.end()) {
            const int id = QFontDatabase::addApplicationFont(QString::fromStdString(fontFile));
            const QStringList names = QFontDatabase::applicationFontFamilies(id);
            EXPECT_FALSE(names.isEmpty()) << fontFile;
            family = families[fontFile] = names.value(0);
        } else {
            family = known->second;
        }
        const int size = static_cast<int>(kTextSizePt * kDotsPerInch / 72);
        QFont font(family);
        font.setPixelSize(size);
        font.setHintingPreference(QFont::PreferNoHinting);
        font.setStyleStrategy(QFont::NoFontMerging);
        QImage image(size * 3, size * 3, QImage::Format_Grayscale8);
        image.fill(Qt::white);
        QPainter painter(&image);
        painter.setRenderHint(QPainter::TextAntialiasing);
        painter.setFont(font);
        painter.setPen(Qt::black);
        painter.drawText(size, size * 2, QString(QChar(character)));
        painter.end();
        return inkOf(image);
    }

    /// Each character of `characters` as printed, one to a line.
    static std::vector<Ink> printed(const std::u16string& characters) {
        std::string text;
        for (const char16_t character : characters)
            text += QString(QChar(character)).toStdString() + "\n";
        reports::Document document =
            tools::documentOf({reports::Paragraph{reports::Paragraph::Tone::Plain, text}});
        document.title = {};
        document.pageOf = {};
        document.endMark = " ";
        const tools::PdfOnDisk pdf(tools::rendered(document));
        // Where the first page's text begins, and its line height, see reports/pdf/style.h.
        const double mm = kDotsPerInch / 25.4;
        const double step = kTextSizePt * 0.455 * mm;
        const int lines = static_cast<int>(characters.size());
        const QImage column =
            pdf.image(1, kDotsPerInch,
                      QRect(static_cast<int>(20 * mm), static_cast<int>(22 * mm) - 4,
                            static_cast<int>(20 * mm), static_cast<int>((lines + 1) * step)));
        std::vector<Ink> inks;
        inks.reserve(characters.size());
        for (int i = 0; i < lines; ++i)
            inks.push_back(inkOf(column.copy(0, static_cast<int>(i * step), column.width(),
                                             static_cast<int>(step))));
        return inks;
    }

    static void expectPrintedFrom(const std::string& fontFile, const std::u16string& characters) {
        const std::vector<Ink> inks = printed(characters);
        ASSERT_EQ(inks.size(), characters.size());
        for (std::size_t i = 0; i < characters.size(); ++i)
            EXPECT_TRUE(same(inks[i], expected(fontFile, characters[i])))
                << QString(QChar(characters[i])).toStdString() << " in " << fontFile;
    }

private:
    static std::unique_ptr<QGuiApplication> application_;
};

std::unique_ptr<QGuiApplication> Glyphs::application_;

TEST_F(Glyphs, OfEastAsianTextHaveAllTheirParts) {
    // Built from parts in the font: radicals left, above, around and below; Hangul syllables.
    expectPrintedFrom(reports::FontFiles::installed().wide.path,
                      u"鋳造検査鉄鋼溶接疵割湯境縮孔部品番号鑄鐵裂紋磁粉滲透超聲波한글검사カナぜ");
}

TEST_F(Glyphs, OfAccentedLettersHaveTheirAccents) {
    expectPrintedFrom(reports::FontFiles::installed().regular[0].path, u"éüŁÅộǻőđẤĠάΏйЙ");
}

TEST_F(Glyphs, ThatTheFirstFontLacksComeFromTheSecond) {
    expectPrintedFrom(reports::FontFiles::installed().regular[1].path, u"≤≥≈");
}

TEST_F(Glyphs, AreToldFromThoseWithAPartMissing) {
    // The comparison itself: a character against itself without its left part, without its accent,
    // and against characters that differ in one part.
    const std::string wide = reports::FontFiles::installed().wide.path;
    const std::string first = reports::FontFiles::installed().regular[0].path;
    const std::vector<std::u16string> pairs = {u"検験", u"鋳鉄", u"部陪", u"造告"};
    for (const std::u16string& pair : pairs) {
        const Ink ink = printed(pair.substr(0, 1))[0];
        EXPECT_TRUE(same(ink, expected(wide, pair[0])));
        EXPECT_FALSE(same(ink, expected(wide, pair[1])))
            << QString::fromStdU16String(pair).toStdString();
    }
    EXPECT_FALSE(same(printed(u"é")[0], expected(first, u'e')));
    EXPECT_FALSE(same(printed(u"ộ")[0], expected(first, u'ô')));
}

}  // namespace
