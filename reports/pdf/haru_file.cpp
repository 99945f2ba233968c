// SPDX-License-Identifier: Apache-2.0
#include "pdf/haru_file.h"

#include <iomanip>
#include <sstream>

#include "base/digest.h"

namespace reports {

namespace {

void freeFile(HPDF_Doc file) {
    if (file != nullptr) HPDF_Free(file);
}

std::string inXml(const std::string& text) {
    std::string escaped;
    for (const char c : text) {
        switch (c) {
            case '&':
                escaped += "&amp;";
                break;
            case '<':
                escaped += "&lt;";
                break;
            case '>':
                escaped += "&gt;";
                break;
            default:
                // XML 1.0 has no other control characters.
                escaped += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
        }
    }
    return escaped;
}

/// Metadata in XMP (ISO 16684-1), beside the older information dictionary. No dates: the file
/// says only what the document says.
std::string xmp(const std::string& title, const std::string& subject, const std::string& producer,
                const std::string& language) {
    return "<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
           "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n"
           "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n"
           "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\""
           " xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\">\n"
           "<dc:format>application/pdf</dc:format>\n"
           "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">" +
           inXml(title) +
           "</rdf:li></rdf:Alt></dc:title>\n"
           "<dc:description><rdf:Alt><rdf:li xml:lang=\"x-default\">" +
           inXml(subject) +
           "</rdf:li></rdf:Alt></dc:description>\n"
           "<dc:language><rdf:Bag><rdf:li>" +
           inXml(language) +
           "</rdf:li></rdf:Bag></dc:language>\n"
           "<xmp:CreatorTool>" +
           inXml(producer) +
           "</xmp:CreatorTool>\n"
           "</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"r\"?>\n";
}

}  // namespace

void HaruFile::store(HPDF_STATUS code, HPDF_STATUS detail, void* failure) {
    auto* first = static_cast<Failure*>(failure);
    if (first->code == 0) *first = {code, detail};
}

HaruFile::HaruFile() : file_(HPDF_New(&HaruFile::store, failure_.get()), &freeFile) {
    if (file_ == nullptr) return;
    HPDF_UseUTFEncodings(file_.get());
    // Decides how the information dictionary and bookmarks are written.
    HPDF_SetCurrentEncoder(file_.get(), "UTF-8");
    HPDF_SetCompressionMode(file_.get(), HPDF_COMP_ALL);
}

std::optional<model::Error> HaruFile::error(std::string_view doing) const {
    if (file_ == nullptr) return model::refusal("", "not enough memory for a PDF file");
    if (failure_->code == 0) return std::nullopt;
    std::ostringstream code;
    code << "0x" << std::hex << std::uppercase << failure_->code;
    return model::refusal("", "the PDF library failed at %1 (error %2, %3)",
                          {std::string(doing), code.str(), std::to_string(failure_->detail)});
}

void HaruFile::setInformation(const std::string& title, const std::string& subject,
                              const std::string& producer, const std::string& language) {
    if (file_ == nullptr) return;
    HPDF_Doc file = file_.get();
    HPDF_SetInfoAttr(file, HPDF_INFO_TITLE, title.c_str());
    HPDF_SetInfoAttr(file, HPDF_INFO_SUBJECT, subject.c_str());
    HPDF_SetInfoAttr(file, HPDF_INFO_CREATOR, producer.c_str());
    HPDF_Dict_Add(file->catalog, "Lang", HPDF_String_New(file->mmgr, language.c_str(), nullptr));

    const std::string text = xmp(title, subject, producer, language);
    HPDF_Dict metadata = HPDF_DictStream_New(file->mmgr, file->xref);
    if (metadata == nullptr) return;
    HPDF_Dict_AddName(metadata, "Type", "Metadata");
    HPDF_Dict_AddName(metadata, "Subtype", "XML");
    HPDF_Stream_WriteStr(metadata->stream, text.c_str());
    HPDF_Dict_Add(file->catalog, "Metadata", metadata);
    file->pdf_version = HPDF_VER_17;
}

void HaruFile::setIdFromContents() {
    if (file_ == nullptr) return;
    HPDF_Doc file = file_.get();
    std::string contents;
    for (HPDF_UINT i = 0; i < file->page_list->count; ++i) {
        auto* page = static_cast<HPDF_Page>(HPDF_List_ItemAt(file->page_list, i));
        HPDF_Stream stream = static_cast<HPDF_PageAttr>(page->attr)->stream;
        const HPDF_UINT buffers = HPDF_MemStream_GetBufCount(stream);
        for (HPDF_UINT k = 0; k < buffers; ++k) {
            HPDF_UINT size = 0;
            const HPDF_BYTE* bytes = HPDF_MemStream_GetBufPtr(stream, k, &size);
            contents.append(reinterpret_cast<const char*>(bytes), size);
        }
        contents += '\f';
    }
    model::Digest digest = model::sha256(contents);
    constexpr HPDF_UINT kIdBytes = 16;
    HPDF_Array id = HPDF_Array_New(file->mmgr);
    if (id == nullptr) return;
    HPDF_Dict_Add(file->trailer, "ID", id);
    for (int part = 0; part < 2; ++part)
        HPDF_Array_Add(id, HPDF_Binary_New(file->mmgr, digest.data(), kIdBytes));
}

model::Result<std::string> HaruFile::bytes() {
    if (auto failed = error("drawing")) return *failed;
    HPDF_SaveToStream(file_.get());
    if (auto failed = error("saving")) return *failed;
    HPDF_ResetStream(file_.get());
    std::string bytes(HPDF_GetStreamSize(file_.get()), '\0');
    auto size = static_cast<HPDF_UINT32>(bytes.size());
    HPDF_ReadFromStream(file_.get(), reinterpret_cast<HPDF_BYTE*>(bytes.data()), &size);
    if (auto failed = error("saving")) return *failed;
    bytes.resize(size);
    return bytes;
}

}  // namespace reports
