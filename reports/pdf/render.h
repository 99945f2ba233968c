// SPDX-License-Identifier: Apache-2.0
// A document as a PDF of A4 pages.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "certificate/document.h"
#include "pdf/signature_field.h"

namespace reports {

/// A font file in the order of preference, and the Debian package that holds it.
struct FontFile {
    std::string path;
    std::string package;
};

/// A character is drawn with the first font that has it. `wide` (Chinese, Japanese, Korean; no
/// bold face) is opened only when a text needs it; the others must be there.
struct FontFiles {
    std::vector<FontFile> regular;
    std::vector<FontFile> bold;
    FontFile wide;

    /// Noto Sans, DejaVu Sans and WenQuanYi Micro Hei where Debian installs them.
    static FontFiles installed();
};

/// A PDF, and where on its pages the document's signature boxes lie.
struct Rendered {
    std::string bytes;
    std::vector<SignatureField> signatureFields;  ///< in the order of the document's boxes
};

/// Equal documents give equal bytes. Texts are normalised to NFC. A
/// character that no font has, and every control or direction character, is printed as its code
/// point, such as [U+0007]. Fails with ErrorKind::Refused, naming file and package, when a font
/// is missing, and with ErrorKind::Input, naming its place, where a photo cannot be decoded safely
/// (picture/picture.h).
model::Result<Rendered> renderPdf(const Document& document,
                                  const FontFiles& fonts = FontFiles::installed());

}  // namespace reports
