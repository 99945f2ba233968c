// SPDX-License-Identifier: Apache-2.0
#include "issuing/printed_pictures.h"

#include "archive/registers.h"

namespace app {

model::Result<std::map<std::string, std::string>> printedPictures(const model::Archive& archive,
                                                                  const model::CastingFile& file) {
    std::map<std::string, std::string> pictures;
    for (const model::Attachment& attachment : file.dossier.attachments) {
        if (attachment.printed != "yes" || pictures.contains(attachment.fileSha256)) continue;
        auto bytes = model::entryFile(archive, attachment.fileSha256);
        if (!bytes) return bytes.error();
        pictures[attachment.fileSha256] = std::move(*bytes);
    }
    return pictures;
}

}  // namespace app
