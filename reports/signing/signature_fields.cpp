// SPDX-License-Identifier: Apache-2.0
#include "signing/signature_fields.h"

#include <cmath>
#include <cstdio>
#include <map>
#include <set>

#include "signing/pdf_file.h"
#include "signing/revision.h"

namespace reports {

namespace {

using namespace signing;

std::string points(double mm) {
    char text[32];
    std::snprintf(text, sizeof text, "%.2f", mm * 72 / 25.4);
    return text;
}

std::string rectangleText(const SignatureField& field) {
    return "[ " + points(field.leftMm) + " " + points(field.bottomMm) + " " +
           points(field.leftMm + field.widthMm) + " " + points(field.bottomMm + field.heightMm) +
           " ]";
}

bool sensible(const SignatureField& field) {
    constexpr double kLargestMm = 5000;
    for (const double length : {field.leftMm, field.bottomMm, field.widthMm, field.heightMm})
        if (!(std::abs(length) <= kLargestMm)) return false;
    return field.widthMm >= 0 && field.heightMm >= 0;
}

// "[ old items references ]"
std::string grown(QPDFObjectHandle array, const std::string& references) {
    std::string text = "[";
    if (array.isArray())
        for (QPDFObjectHandle& item : array.getArrayAsVector()) text += " " + item.unparse();
    return text + references + " ]";
}

void rewrite(Revision& revision, const QPDFObjectHandle& object,
             const std::map<std::string, std::string>& replaced) {
    revision.write(object.getObjectID(), object.getGeneration(), dictionaryText(object, replaced));
}

model::Result<std::string> withFields(std::string_view pdf, QPDF& file,
                                      const std::vector<SignatureField>& fields) {
    auto revision = Revision::after(pdf, file, 4096 + 512 * fields.size());
    if (!revision) return revision.error();
    std::vector<QPDFObjectHandle> pages = file.getAllPages();
    QPDFObjectHandle root = file.getRoot();
    QPDFObjectHandle form = root.getKey("/AcroForm");
    std::set<std::string> names;
    if (form.isDictionary() && form.getKey("/Fields").isArray())
        for (QPDFObjectHandle& field : form.getKey("/Fields").getArrayAsVector())
            names.insert(textAt(field, "/T"));

    std::map<std::size_t, std::string> ofPage;
    std::string all;
    for (const SignatureField& field : fields) {
        if (field.page >= pages.size())
            return model::inputError("", "the PDF file has no page %1",
                                     {std::to_string(field.page + 1)});
        if (field.name.empty() || field.name.find('.') != std::string::npos || !sensible(field))
            return model::inputError("", "the signature field \"%1\" has no usable name or place",
                                     {field.name});
        if (!names.insert(field.name).second)
            return model::inputError("", "the PDF file has a field \"%1\" already", {field.name});
        const int number = revision->newNumber();
        // 132: printed, and not to be moved.
        revision->write(number, 0,
                        "<< /Type /Annot /Subtype /Widget /FT /Sig /F 132 /T " +
                            stringText(field.name) + " /P " + pages[field.page].unparse() +
                            " /Rect " + rectangleText(field) + " >>");
        const std::string reference = " " + std::to_string(number) + " 0 R";
        ofPage[field.page] += reference;
        all += reference;
    }
    for (const auto& [page, references] : ofPage) {
        QPDFObjectHandle object = pages[page];
        rewrite(*revision, object, {{"/Annots", grown(object.getKey("/Annots"), references)}});
    }
    // 3: the file has signatures, and is only to be appended to.
    if (!form.isDictionary()) {
        const int number = revision->newNumber();
        revision->write(number, 0, "<< /Fields [" + all + " ] /SigFlags 3 >>");
        rewrite(*revision, root, {{"/AcroForm", std::to_string(number) + " 0 R"}});
    } else {
        const std::map<std::string, std::string> replaced{
            {"/Fields", grown(form.getKey("/Fields"), all)}, {"/SigFlags", "3"}};
        if (form.isIndirect())
            rewrite(*revision, form, replaced);
        else
            rewrite(*revision, root, {{"/AcroForm", dictionaryText(form, replaced)}});
    }
    return revision->finish();
}

}  // namespace

model::Result<std::string> addSignatureFields(std::string_view pdf,
                                              const std::vector<SignatureField>& fields) {
    if (fields.empty()) return model::inputError("", "no signature field is named");
    if (pdf.find("/ByteRange") != std::string_view::npos)
        return model::inputError("", "the PDF file is signed already");
    auto file = openPdf(pdf);
    if (!file) return file.error();
    return guarded([&] { return withFields(pdf, **file, fields); });
}

}  // namespace reports
