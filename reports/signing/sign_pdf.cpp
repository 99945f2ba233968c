// SPDX-License-Identifier: Apache-2.0
#include "signing/sign_pdf.h"

#include <array>
#include <cstdio>

#include "signing/pdf_file.h"
#include "signing/revision.h"
#include "trust/signature.h"

namespace reports {

namespace {

using namespace signing;

constexpr std::size_t kByteRangeWidth = 48;

std::string dateText(model::UtcTime time) {
    const std::string iso = model::toText(time);  // 2026-11-25T09:30:00Z
    std::string text = "(D:";
    for (const char c : iso)
        if (c >= '0' && c <= '9') text += c;
    return text + "Z)";
}

model::Result<QPDFObjectHandle> emptyField(QPDF& file, const std::string& name) {
    QPDFObjectHandle form = file.getRoot().getKey("/AcroForm");
    if (form.isDictionary() && form.getKey("/Fields").isArray())
        for (QPDFObjectHandle& field : form.getKey("/Fields").getArrayAsVector()) {
            if (textAt(field, "/T") != name) continue;
            if (!field.isIndirect() || !isName(field.getKey("/FT"), "/Sig")) break;
            if (field.hasKey("/V"))
                return model::inputError("", "the field \"%1\" is signed already", {name});
            return field;
        }
    return model::inputError("", "the PDF file has no signature field \"%1\"", {name});
}

// Appends the first page of `appearance` as a form that the field shows.
model::Result<std::string> addAppearance(Revision& revision, std::string_view appearance) {
    auto drawn = openPdf(appearance);
    if (!drawn) return drawn.error();
    std::vector<QPDFObjectHandle> pages = (*drawn)->getAllPages();
    if (pages.empty()) return model::inputError("", "the signature's appearance has no page");
    // What the page draws becomes the form itself. libqpdf's own way makes a new object, for which
    // it first reads every object of the file.
    QPDFObjectHandle page = pages.front();
    QPDFObjectHandle form = page.getKey("/Contents");
    if (!form.isStream()) return model::inputError("", "the signature's appearance draws nothing");
    QPDFObjectHandle facts = form.getDict();
    facts.replaceKey("/Type", QPDFObjectHandle::newName("/XObject"));
    facts.replaceKey("/Subtype", QPDFObjectHandle::newName("/Form"));
    facts.replaceKey("/BBox", page.getKey(page.hasKey("/CropBox") ? "/CropBox" : "/MediaBox"));
    facts.replaceKey("/Resources", page.getKey("/Resources"));
    return revision.copy(form);
}

void writeHex(std::string& bytes, std::size_t at, std::string_view value) {
    constexpr std::string_view kHex = "0123456789abcdef";
    for (const char byte : value) {
        bytes[at++] = kHex[static_cast<unsigned char>(byte) >> 4U];
        bytes[at++] = kHex[static_cast<unsigned char>(byte) & 15U];
    }
}

// Where the two values stand that are known last.
struct Blanks {
    std::size_t byteRange = 0;
    std::size_t contents = 0;  ///< its "<"
    std::size_t end = 0;       ///< behind its ">"
};

Blanks writeSignature(Revision& revision, int number, const PdfSigning& signing,
                      const std::string& signer, std::size_t room) {
    std::string text = "<< /Type /Sig /Filter /Adobe.PPKLite /SubFilter /ETSI.CAdES.detached /M " +
                       dateText(signing.time);
    if (!signer.empty()) text += " /Name " + stringText(signer);
    if (!signing.reason.empty()) text += " /Reason " + stringText(signing.reason);
    if (!signing.place.empty()) text += " /Location " + stringText(signing.place);
    text += "\n/ByteRange ";
    Blanks blanks;
    blanks.byteRange = text.size();
    text += std::string(kByteRangeWidth, ' ') + "\n/Contents ";
    blanks.contents = text.size();
    text += "<" + std::string(2 * room, '0') + ">";
    blanks.end = text.size();
    const std::size_t begin = revision.write(number, 0, text + " >>");
    blanks.byteRange += begin;
    blanks.contents += begin;
    blanks.end += begin;
    return blanks;
}

model::Result<std::string> signedFile(std::string_view pdf, QPDF& file, const PdfSigning& signing,
                                      const model::SigningKey& key,
                                      std::span<const std::string> revocationLists,
                                      const model::TimeStampService* timeStamps) {
    auto field = emptyField(file, signing.field);
    if (!field) return field.error();
    const std::size_t room =
        model::longestSignature(key) + (timeStamps != nullptr ? model::kLongestTimeStamp : 0);
    auto revision = Revision::after(pdf, file, signing.appearance.size() + 2 * room + 8192);
    if (!revision) return revision.error();

    std::map<std::string, std::string> filled;
    if (!signing.appearance.empty()) {
        auto form = addAppearance(*revision, signing.appearance);
        if (!form) return form.error();
        filled["/AP"] = "<< /N " + *form + " >>";
    }
    const int number = revision->newNumber();
    const Blanks blanks = writeSignature(*revision, number, signing, key.name(), room);
    filled["/V"] = std::to_string(number) + " 0 R";
    revision->write(field->getObjectID(), field->getGeneration(), dictionaryText(*field, filled));
    std::string bytes = revision->finish();

    std::string range = "[0 " + std::to_string(blanks.contents) + " " + std::to_string(blanks.end) +
                        " " + std::to_string(bytes.size() - blanks.end) + "]";
    if (range.size() > kByteRangeWidth)
        return model::inputError("", "the PDF file is too long to be signed");
    bytes.replace(blanks.byteRange, range.size(), range);
    const std::string_view whole = bytes;
    const auto signature =
        model::signDetached(std::array{whole.substr(0, blanks.contents), whole.substr(blanks.end)},
                            key, signing.time, revocationLists, timeStamps);
    if (!signature) return signature.error();
    if (signature->size() > room)
        return model::inputError("", "the signature is longer than the %1 bytes kept for it",
                                 {std::to_string(room)});
    writeHex(bytes, blanks.contents + 1, *signature);
    return bytes;
}

}  // namespace

model::Result<std::string> signPdf(std::string_view pdf, const PdfSigning& signing,
                                   const model::SigningKey& key,
                                   std::span<const std::string> revocationLists,
                                   const model::TimeStampService* timeStamps) {
    auto file = openPdf(pdf);
    if (!file) return file.error();
    return guarded(
        [&] { return signedFile(pdf, **file, signing, key, revocationLists, timeStamps); });
}

}  // namespace reports
