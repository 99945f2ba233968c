// SPDX-License-Identifier: Apache-2.0
#include "signing/part_names.h"

#include "signing/pdf_file.h"

namespace reports::signing {

PartNames::PartNames(QPDF& file) {
    QPDFObjectHandle root = file.getRoot();
    QPDFObjectHandle form = root.getKey("/AcroForm");
    if (form.isDictionary() && form.getKey("/Fields").isArray())
        for (QPDFObjectHandle& field : form.getKey("/Fields").getArrayAsVector())
            if (field.isDictionary()) {
                name(field, "the signature field " + textAt(field, "/T"));
                name(field.getKey("/V"), "the signature in the field " + textAt(field, "/T"));
            }
    std::size_t number = 0;
    for (QPDFObjectHandle page : file.getAllPages()) {
        const std::string text = "page " + std::to_string(++number);
        name(page, text);
        QPDFObjectHandle contents = page.getKey("/Contents");
        name(contents, "what is drawn on " + text);
        if (contents.isArray())
            for (QPDFObjectHandle& part : contents.getArrayAsVector())
                name(part, "what is drawn on " + text);
        nameResources(page.getKey("/Resources"), text);
        QPDFObjectHandle annotations = page.getKey("/Annots");
        name(annotations, "the list of annotations of " + text);
        if (annotations.isArray())
            for (QPDFObjectHandle& part : annotations.getArrayAsVector())
                name(part, "an annotation on " + text);
    }
    name(root, "the document's catalogue");
    name(form, "the document's form");
    name(root.getKey("/Metadata"), "the document's metadata");
    name(root.getKey("/Pages"), "the document's list of pages");
    name(file.getTrailer().getKey("/Info"), "the document's information");
}

void PartNames::name(const QPDFObjectHandle& object, const std::string& text) {
    if (object.isIndirect()) names_.emplace(object.getObjGen(), text);
}

void PartNames::nameResources(QPDFObjectHandle resources, const std::string& page) {
    name(resources, "the list of fonts and images of " + page);
    if (!resources.isDictionary()) return;
    for (const auto& [kind, text] :
         {std::pair{"/Font", "a font of "}, std::pair{"/XObject", "an image of "}}) {
        QPDFObjectHandle all = resources.getKey(kind);
        if (!all.isDictionary()) continue;
        for (const std::string& key : all.getKeys()) name(all.getKey(key), text + page);
    }
}

std::string PartNames::of(QPDFObjGen object) const {
    const auto found = names_.find(object);
    return found != names_.end() ? found->second : "object " + std::to_string(object.getObj());
}

}  // namespace reports::signing
