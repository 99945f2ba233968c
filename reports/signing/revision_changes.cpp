// SPDX-License-Identifier: Apache-2.0
#include "signing/revision_changes.h"

#include <cstring>
#include <map>
#include <qpdf/Buffer.hh>
#include <set>

#include "signing/part_names.h"
#include "signing/pdf_file.h"
#include "signing/revision.h"

namespace reports::signing {
namespace {

bool sameStream(QPDFObjectHandle a, QPDFObjectHandle b) {
    if (a.getDict().unparseResolved() != b.getDict().unparseResolved()) return false;
    const auto x = a.getRawStreamData();
    const auto y = b.getRawStreamData();
    return x->getSize() == y->getSize() &&
           std::memcmp(x->getBuffer(), y->getBuffer(), x->getSize()) == 0;
}

bool same(QPDFObjectHandle a, QPDFObjectHandle b) {
    if (a.isStream() || b.isStream()) return a.isStream() && b.isStream() && sameStream(a, b);
    return a.unparseResolved() == b.unparseResolved();
}

// The dictionary's text without some of its keys.
std::string without(QPDFObjectHandle dictionary, const std::vector<const char*>& keys) {
    QPDFObjectHandle rest = dictionary.shallowCopy();
    for (const char* key : keys) rest.removeKey(key);
    return rest.unparseResolved();
}

// A field that shows nothing: whatever is seen on a page must have been there when it was signed.
bool isUnseenSignatureField(QPDFObjectHandle object) {
    if (!object.isDictionary() || !isName(object.getKey("/FT"), "/Sig")) return false;
    if (object.hasKey("/Subtype") && !isName(object.getKey("/Subtype"), "/Widget")) return false;
    if (!object.hasKey("/AP")) return true;
    QPDFObjectHandle rectangle = object.getKey("/Rect");
    if (!rectangle.isRectangle()) return false;
    const auto sides = rectangle.getArrayAsRectangle();
    return sides.llx == sides.urx && sides.lly == sides.ury;
}

// The old items in their order, and unseen signature fields behind them.
bool onlyGained(QPDFObjectHandle before, QPDFObjectHandle after) {
    if (before.isNull() && after.isNull()) return true;
    if (!after.isArray()) return false;
    const int kept = before.isArray() ? before.getArrayNItems() : 0;
    if ((!before.isArray() && !before.isNull()) || after.getArrayNItems() < kept) return false;
    for (int i = 0; i < after.getArrayNItems(); ++i) {
        if (i < kept) {
            if (before.getArrayItem(i).unparse() != after.getArrayItem(i).unparse()) return false;
        } else if (!isUnseenSignatureField(after.getArrayItem(i))) {
            return false;
        }
    }
    return true;
}

bool formOnlyGained(QPDFObjectHandle before, QPDFObjectHandle after) {
    if (before.isNull()) {
        if (!after.isDictionary()) return after.isNull();
        return without(after, {"/Fields", "/SigFlags"}) == "<< >>" &&
               onlyGained(before, after.getKey("/Fields"));
    }
    return before.isDictionary() && after.isDictionary() &&
           without(before, {"/Fields", "/SigFlags"}) == without(after, {"/Fields", "/SigFlags"}) &&
           onlyGained(before.getKey("/Fields"), after.getKey("/Fields"));
}

class Comparison {
public:
    Comparison(QPDF& before, QPDF& after) : before_(before), after_(after), names_(before) {
        form_ = before.getRoot().getKey("/AcroForm");
        if (form_.isDictionary() && form_.getKey("/Fields").isArray()) {
            if (form_.getKey("/Fields").isIndirect())
                growing_.insert(form_.getKey("/Fields").getObjGen());
            for (QPDFObjectHandle& field : form_.getKey("/Fields").getArrayAsVector())
                if (field.isIndirect()) fields_.insert(field.getObjGen());
        }
        for (QPDFObjectHandle page : before.getAllPages()) {
            pages_.insert(page.getObjGen());
            QPDFObjectHandle annotations = page.getKey("/Annots");
            if (annotations.isIndirect()) growing_.insert(annotations.getObjGen());
        }
    }

    std::vector<Change> changes() {
        compareTrailers();
        const auto tableBefore = before_.getXRefTable();
        const auto tableAfter = after_.getXRefTable();
        for (QPDFObjectHandle& object : before_.getAllObjects()) {
            const QPDFObjGen id = object.getObjGen();
            const auto old = tableBefore.find(id);
            const auto now = tableAfter.find(id);
            if (old == tableBefore.end()) {
                // Nothing may be slipped in where the signed revision refers to nothing.
                if (now != tableAfter.end()) add(id, "was missing and was added", false);
            } else if (now == tableAfter.end()) {
                add(id, "was removed", false);
            } else if (old->second.getType() != now->second.getType() ||
                       old->second.getOffset() != now->second.getOffset()) {
                // At the same place stand the same bytes.
                compare(object, after_.getObject(id));
            }
        }
        return std::move(changes_);
    }

private:
    void add(QPDFObjGen id, const char* what, bool permitted) {
        changes_.push_back({names_.of(id) + " " + what, permitted});
    }

    void compareTrailers() {
        for (const char* key : {"/Root", "/Info"}) {
            if (before_.getTrailer().getKey(key).unparse() ==
                after_.getTrailer().getKey(key).unparse())
                continue;
            changes_.push_back({std::string("the file's ") +
                                    (std::strcmp(key, "/Root") == 0 ? "catalogue" : "information") +
                                    " was replaced",
                                false});
        }
    }

    void compare(const QPDFObjectHandle& before, QPDFObjectHandle after) {
        if (same(before, after)) return;
        const QPDFObjGen id = before.getObjGen();
        if (fields_.count(id) != 0 && isFilled(before, after)) return add(id, "was signed", true);
        if (gained(before, after)) return add(id, "gained a signature field", true);
        add(id, after.isNull() ? "was removed" : "was changed", false);
    }

    static bool isFilled(QPDFObjectHandle before, QPDFObjectHandle after) {
        return before.isDictionary() && after.isDictionary() &&
               isName(before.getKey("/FT"), "/Sig") && !before.hasKey("/V") &&
               after.getKey("/V").isDictionary() && after.getKey("/V").hasKey("/ByteRange") &&
               without(before, {"/V", "/AP"}) == without(after, {"/V", "/AP"});
    }

    bool gained(QPDFObjectHandle before, QPDFObjectHandle after) {
        const QPDFObjGen id = before.getObjGen();
        if (growing_.count(id) != 0) return onlyGained(before, after);
        if (!before.isDictionary() || !after.isDictionary()) return false;
        if (form_.isIndirect() && form_.getObjGen() == id) return formOnlyGained(before, after);
        if (before_.getRoot().getObjGen() == id)
            return without(before, {"/AcroForm"}) == without(after, {"/AcroForm"}) &&
                   formOnlyGained(before.getKey("/AcroForm"), after.getKey("/AcroForm"));
        return pages_.count(id) != 0 &&
               without(before, {"/Annots"}) == without(after, {"/Annots"}) &&
               onlyGained(before.getKey("/Annots"), after.getKey("/Annots"));
    }

    QPDF& before_;
    QPDF& after_;
    PartNames names_;
    QPDFObjectHandle form_;
    std::set<QPDFObjGen> fields_;
    std::set<QPDFObjGen> pages_;
    std::set<QPDFObjGen> growing_;  // arrays of fields and annotations
    std::vector<Change> changes_;
};

}  // namespace

std::vector<Change> changesBetween(QPDF& before, QPDF& after) {
    return Comparison(before, after).changes();
}

}  // namespace reports::signing
