// SPDX-License-Identifier: Apache-2.0
// A picture from outside, decoded within limits: a file that somebody sent is never trusted.
#pragma once

#include <QByteArray>
#include <QImage>
#include <QString>

#include "base/result.h"

namespace app {

/// The most pixels that a picture may have; a photo of a large camera has fewer.
inline constexpr qint64 kMostPixels = 100'000'000;

/// Whether bytes begin as PNG or JPEG do; other pictures are not shown and not taken as photos.
bool isPicture(const QByteArray& bytes);
/// The picture, turned upright as its camera says, no larger than `within`. Input: it is neither
/// PNG nor JPEG, larger than kMostPixels, or broken.
model::Result<QImage> readPicture(const QByteArray& bytes, QSize within);
/// "image/png", "image/jpeg", "application/pdf" ... by the bytes first, then by the name.
QString mediaTypeOf(const QByteArray& bytes, const QString& fileName);

}  // namespace app
