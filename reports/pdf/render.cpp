// SPDX-License-Identifier: Apache-2.0
#include "pdf/render.h"

#include "pdf/faces.h"
#include "pdf/haru_file.h"
#include "pdf/pages.h"
#include "pdf/photos.h"
#include "pdf/strip.h"
#include "pdf/visible_text.h"

namespace reports {

namespace {

std::string information(const std::string& text) {
    return toUtf8(visibleText(text));
}

}  // namespace

model::Result<Rendered> renderPdf(const Document& document, const FontFiles& fonts) {
    HaruFile file;
    if (auto failed = file.error("starting")) return *failed;
    Faces faces(file, fonts);
    if (faces.error()) return *faces.error();
    file.setInformation(information(document.title + ": " + document.subject),
                        information(document.subject), information(document.producer),
                        information(document.language));
    const auto photos = loadedPhotos(file, document);
    if (!photos) return photos.error();
    const Strips strips = stripsOf(document, *photos, faces);
    if (faces.error()) return *faces.error();
    std::vector<SignatureField> fields = drawPages(file, faces, document, strips);
    if (faces.error()) return *faces.error();
    faces.finish();
    file.setIdFromContents();
    auto bytes = file.bytes();
    if (!bytes) return bytes.error();
    return Rendered{std::move(*bytes), std::move(fields)};
}

}  // namespace reports
