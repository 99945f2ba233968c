// SPDX-License-Identifier: Apache-2.0
// Photos and other files of a casting: decoded within limits, kept byte for byte.
#include <QBuffer>
#include <QFile>
#include <QImage>
#include <QLabel>
#include <QListWidget>
#include <QPainter>
#include <QPushButton>
#include <QtEndian>

#include "attachments/attachments_page.h"
#include "attachments/picture.h"
#include "registers_fixture.h"

namespace app {
namespace {

constexpr QSize kAny(4000, 4000);

QByteArray encoded(const QSize& size, const char* format) {
    QImage image(size, QImage::Format_RGB32);
    image.fill(Qt::darkGreen);
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    EXPECT_TRUE(image.save(&buffer, format));
    return bytes;
}

/// The checksum of a PNG's chunk: CRC-32 as ISO 3309 has it (PNG, annex D).
quint32 crc32(const char* bytes, qsizetype count) {
    quint32 sum = 0xffffffffU;
    for (qsizetype i = 0; i < count; ++i) {
        sum ^= static_cast<quint8>(bytes[i]);
        for (int bit = 0; bit < 8; ++bit) sum = (sum >> 1) ^ ((sum & 1U) ? 0xedb88320U : 0U);
    }
    return ~sum;
}

/// A PNG that says in its header that it has so many pixels, and has none.
QByteArray pngOf(quint32 width, quint32 height) {
    QByteArray bytes = encoded(QSize(2, 2), "PNG");
    constexpr qsizetype kWidthAt = 16;
    constexpr qsizetype kTypeAt = 12;
    constexpr qsizetype kHeaderSize = 17;
    qToBigEndian(width, bytes.data() + kWidthAt);
    qToBigEndian(height, bytes.data() + kWidthAt + 4);
    const quint32 sum = crc32(bytes.constData() + kTypeAt, kHeaderSize);
    qToBigEndian(sum, bytes.data() + kTypeAt + kHeaderSize);
    return bytes;
}

TEST(Picture, IsDecodedFromPngAndJpegNoLargerThanAsked) {
    for (const char* format : {"PNG", "JPEG"}) {
        const auto whole = readPicture(encoded(QSize(400, 200), format), kAny);
        ASSERT_TRUE(whole) << format;
        EXPECT_EQ(whole->size(), QSize(400, 200));
        const auto small = readPicture(encoded(QSize(400, 200), format), QSize(100, 100));
        ASSERT_TRUE(small) << format;
        EXPECT_EQ(small->size(), QSize(100, 50));
    }
}

TEST(Picture, IsNothingElseWhateverItsNameSays) {
    EXPECT_FALSE(readPicture(encoded(QSize(4, 4), "BMP"), kAny));
    EXPECT_FALSE(readPicture("<svg xmlns='http://www.w3.org/2000/svg'/>", kAny));
    EXPECT_FALSE(readPicture({}, kAny));
    EXPECT_EQ(mediaTypeOf("%PDF-1.7 ...", "photo.png"), "application/pdf");
    EXPECT_EQ(mediaTypeOf(encoded(QSize(4, 4), "PNG"), "chart.pdf"), "image/png");
}

TEST(Picture, ABrokenOneIsSaidToBe) {
    const QByteArray whole = encoded(QSize(300, 300), "PNG");
    EXPECT_FALSE(readPicture(whole.left(whole.size() / 2), kAny));
    EXPECT_FALSE(readPicture(whole.left(20), kAny));
}

TEST(Picture, OneOfTooManyPixelsIsRefusedBeforeItIsDecoded) {
    const auto huge = readPicture(pngOf(60'000, 60'000), kAny);
    ASSERT_FALSE(huge);
    EXPECT_THAT(huge.error().message(), testing::HasSubstr("60000 x 60000"));
    EXPECT_FALSE(readPicture(pngOf(0x7fffffff, 0x7fffffff), kAny));
}

class Photos : public RegistersTest {
protected:
    Photos() {
        openCasting();
        signInAs(foundry::kInspector);
        bench().begin();
        bench().showAttachments();
    }
    AttachmentsPage& page() { return bench().attachments(); }
    QString file(const QString& name, const QByteArray& bytes) {
        QString path = pathOf(name);
        QFile out(path);
        EXPECT_TRUE(out.open(QIODevice::WriteOnly) && out.write(bytes) == bytes.size());
        return path;
    }
    EntryDialog* add(const QString& path) {
        page().addButton().click();
        auto* asked = dialog<EntryDialog>("attachmentDialog");
        if (asked) asked->setFile(path);
        return asked;
    }
    bool shown(int files) {
        return eventually([&] { return page().list().count() == files; });
    }
};

TEST_F(Photos, APhotoNeedsItsScaleAndItsDatum) {
    const QByteArray bytes = encoded(QSize(640, 480), "JPEG");
    auto* asked = add(file("crack.jpg", bytes));
    ASSERT_NE(asked, nullptr);
    auto& form = asked->fields();
    EXPECT_EQ(form.text(form.find("kind")), "photo") << "a picture is taken for a photo";
    EXPECT_EQ(form.text(form.find("zone")), "Z1") << "of the zone in view";
    enter(form, "title", "Crack at the flange");
    asked->actButton().click();
    EXPECT_TRUE(eventually([&] { return !asked->working(); }));
    EXPECT_TRUE(asked->isVisible());
    EXPECT_FALSE(form.error(form.find("scale")).isEmpty());
    EXPECT_FALSE(form.error(form.find("datum")).isEmpty());
    enter(form, "scale", "100 mm rule");
    enter(form, "datum", "corner at the gate, up is y");
    enter(form, "printed", "yes");
    ASSERT_TRUE(doIt(asked));
    ASSERT_TRUE(shown(1));
    ASSERT_TRUE(eventually([&] { return !page().shownPicture().isNull(); }));
    EXPECT_TRUE(eventually([&] { return !page().list().item(0)->icon().isNull(); }));

    const auto kept = stored().dossier.attachments;
    ASSERT_EQ(kept.size(), 1U);
    EXPECT_EQ(kept[0].number, "C-1/A1");
    EXPECT_EQ(kept[0].mediaType, "image/jpeg");
    EXPECT_EQ(kept[0].bytes, std::to_string(bytes.size()));
    const auto back = model::entryFile(openAgain(), kept[0].fileSha256);
    ASSERT_TRUE(back);
    EXPECT_EQ(QByteArray::fromStdString(*back), bytes) << "byte for byte";
}

TEST_F(Photos, WhatIsNoPictureIsNotTakenAsAPhoto) {
    auto* asked = add(file("photo.png", "this is text"));
    ASSERT_NE(asked, nullptr);
    auto& form = asked->fields();
    enter(form, "title", "No photo");
    enter(form, "scale", "none");
    enter(form, "datum", "none");
    asked->actButton().click();
    EXPECT_TRUE(eventually([&] { return !form.error(form.find("kind")).isEmpty(); }));
    EXPECT_TRUE(stored().dossier.attachments.empty());
    enter(form, "kind", "other");
    ASSERT_TRUE(doIt(asked));
    ASSERT_TRUE(shown(1));
    EXPECT_TRUE(page().shownPicture().isNull());
}

TEST_F(Photos, WhatIsSaidOfAFileChangesAndTheFileStays) {
    auto* asked = add(file("chart.pdf", "%PDF-1.7 chart"));
    ASSERT_NE(asked, nullptr);
    enter(asked->fields(), "title", "Furnace chart");
    enter(asked->fields(), "kind", "chart");
    ASSERT_TRUE(doIt(asked));
    ASSERT_TRUE(shown(1));
    const auto digest = stored().dossier.attachments[0].fileSha256;
    page().changeButton().click();
    asked = dialog<EntryDialog>("attachmentDialog");
    ASSERT_NE(asked, nullptr);
    enter(asked->fields(), "title", "Furnace chart, corrected");
    ASSERT_TRUE(doIt(asked));
    ASSERT_TRUE(eventually(
        [&] { return page().list().item(0)->text().startsWith("Furnace chart, corrected"); }));
    EXPECT_EQ(stored().dossier.attachments[0].fileSha256, digest);
    const auto versions = model::versionsOf<model::Attachment>(openAgain(), "C-1/A1");
    ASSERT_TRUE(versions);
    EXPECT_EQ(versions->size(), 2U);
    EXPECT_EQ(versions->front().value.title, "Furnace chart");
}

TEST_F(Photos, WhoMayNotEnterMayLook) {
    window_->session().signOut();
    EXPECT_TRUE(eventually([&] { return !page().addButton().isEnabled(); }));
    EXPECT_FALSE(page().addButton().toolTip().isEmpty());
}

}  // namespace
}  // namespace app
