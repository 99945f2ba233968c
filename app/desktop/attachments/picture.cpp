// SPDX-License-Identifier: Apache-2.0
#include "attachments/picture.h"

#include <QBuffer>
#include <QImageReader>
#include <QMimeDatabase>

namespace app {
namespace {

constexpr int kMostMegabytes = 450;  // four bytes for each of the most pixels, and some

/// The decoder's name for what the bytes begin with; empty: neither of the two.
QByteArray formatOf(const QByteArray& bytes) {
    if (bytes.startsWith("\x89PNG\r\n\x1a\n")) return "png";
    if (bytes.startsWith("\xff\xd8\xff")) return "jpeg";
    return {};
}

}  // namespace

bool isPicture(const QByteArray& bytes) {
    return !formatOf(bytes).isEmpty();
}

model::Result<QImage> readPicture(const QByteArray& bytes, QSize within) {
    const QByteArray format = formatOf(bytes);
    if (format.isEmpty()) return model::inputError("", "the file is no PNG or JPEG picture");
    QByteArray copy = bytes;
    QBuffer buffer(&copy);
    buffer.open(QIODevice::ReadOnly);
    QImageReader::setAllocationLimit(kMostMegabytes);
    QImageReader reader(&buffer, format);
    reader.setAutoDetectImageFormat(false);
    reader.setAutoTransform(true);
    const QSize size = reader.size();
    if (!size.isValid() || size.isEmpty()) {
        return model::inputError("", "the picture is broken: it does not say how large it is");
    }
    if (qint64(size.width()) * size.height() > kMostPixels) {
        return model::inputError("",
                                 "the picture has %1 x %2 pixels; at most %3 in all are decoded",
                                 {std::to_string(size.width()), std::to_string(size.height()),
                                  std::to_string(kMostPixels)});
    }
    if (size.width() > within.width() || size.height() > within.height()) {
        reader.setScaledSize(size.scaled(within, Qt::KeepAspectRatio).expandedTo(QSize(1, 1)));
    }
    QImage image;
    if (!reader.read(&image)) {
        return model::inputError("", "the picture is broken: %1",
                                 {reader.errorString().toStdString()});
    }
    return image;
}

QString mediaTypeOf(const QByteArray& bytes, const QString& fileName) {
    const QByteArray format = formatOf(bytes);
    if (!format.isEmpty()) return QStringLiteral("image/") + QString::fromLatin1(format);
    if (bytes.startsWith("%PDF-")) return QStringLiteral("application/pdf");
    return QMimeDatabase().mimeTypeForFileNameAndData(fileName, bytes).name();
}

}  // namespace app
