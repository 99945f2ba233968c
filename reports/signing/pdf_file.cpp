// SPDX-License-Identifier: Apache-2.0
#include "signing/pdf_file.h"

#include <charconv>

namespace reports::signing {

bool usesStreamsForStructure(std::string_view bytes) {
    // Both at once: the search goes through the whole file.
    for (std::size_t at = bytes.find('/'); at != std::string_view::npos; at = bytes.find('/', at)) {
        const std::string_view name = bytes.substr(++at);
        if (name.starts_with("XRef") || name.starts_with("ObjStm")) return true;
    }
    return false;
}

model::Result<std::size_t> lastTable(std::string_view bytes) {
    const model::Error damaged{model::ErrorKind::Damaged,
                               "",
                               "the PDF file's last cross-reference table is not found",
                               {}};
    std::size_t at = bytes.rfind("startxref");
    if (at == std::string_view::npos) return damaged;
    at = bytes.find_first_of("0123456789", at);
    if (at == std::string_view::npos) return damaged;
    std::size_t offset = 0;
    const auto read = std::from_chars(bytes.data() + at, bytes.data() + bytes.size(), offset);
    if (read.ec != std::errc() || offset >= bytes.size() || bytes.substr(offset, 4) != "xref")
        return damaged;
    return offset;
}

model::Result<std::unique_ptr<QPDF>> openPdf(std::string_view bytes) {
    using File = std::unique_ptr<QPDF>;
    if (bytes.size() > kLongestPdf)
        return model::inputError("", "the PDF file is longer than %1 bytes",
                                 {std::to_string(kLongestPdf)});
    // Readers look for the header there; strictly it comes first (ISO 32000-1, 7.5.2).
    constexpr std::size_t kHeaderWithin = 1024;
    if (bytes.substr(0, kHeaderWithin).find("%PDF-") == std::string_view::npos)
        return model::Error{model::ErrorKind::Damaged, "", "does not begin as a PDF file", {}};
    if (usesStreamsForStructure(bytes))
        return model::inputError(
            "",
            "the PDF file has cross-reference streams, which this program does not sign or "
            "check");
    if (auto table = lastTable(bytes); !table) return table.error();
    return guarded([&]() -> model::Result<File> {
        auto file = std::make_unique<QPDF>();
        file->setSuppressWarnings(true);
        file->setAttemptRecovery(false);
        file->processMemoryFile("PDF", bytes.data(), bytes.size());
        if (file->isEncrypted()) return model::inputError("", "the PDF file is encrypted");
        if (file->anyWarnings() || !file->getRoot().isDictionary())
            return model::Error{
                model::ErrorKind::Damaged, "", "the PDF file would have to be repaired", {}};
        return file;
    });
}

std::string textAt(const QPDFObjectHandle& dictionary, const std::string& key) {
    QPDFObjectHandle object = dictionary;
    if (!object.isDictionary()) return {};
    QPDFObjectHandle value = object.getKey(key);
    return value.isString() ? value.getUTF8Value() : "";
}

bool isName(const QPDFObjectHandle& object, const std::string& name) {
    QPDFObjectHandle copy = object;
    return copy.isName() && copy.getName() == name;
}

}  // namespace reports::signing
