// SPDX-License-Identifier: Apache-2.0
#include "signing/revision.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <qpdf/Buffer.hh>

#include "base/digest.h"
#include "signing/pdf_file.h"

namespace reports::signing {

namespace {

void addEntry(std::string& text, const std::string& key, std::string_view value) {
    text += ' ';
    text += nameText(key);
    text += ' ';
    text += value;
}

}  // namespace

std::string nameText(const std::string& name) {
    return QPDFObjectHandle::newName(name).unparse();
}

std::string stringText(const std::string& utf8) {
    return QPDFObjectHandle::newUnicodeString(utf8).unparse();
}

std::string dictionaryText(QPDFObjectHandle dictionary,
                           const std::map<std::string, std::string>& replaced) {
    std::string text = "<<";
    // getKeys() would read whatever the values refer to.
    for (auto& [key, value] : dictionary.getDictAsMap())
        if (replaced.count(key) == 0) addEntry(text, key, value.unparse());
    for (const auto& [key, value] : replaced) addEntry(text, key, value);
    return text + " >>";
}

model::Result<Revision> Revision::after(std::string_view pdf, QPDF& file, std::size_t room) {
    const auto table = lastTable(pdf);
    if (!table) return table.error();
    QPDFObjectHandle trailer = file.getTrailer();
    QPDFObjectHandle size = trailer.getKey("/Size");
    constexpr long long kMostObjects = 8'000'000;
    if (!size.isInteger() || size.getIntValue() < 1 || size.getIntValue() > kMostObjects)
        return model::inputError("", "the PDF file states no usable number of objects");
    Revision revision;
    revision.previous_ = *table;
    revision.next_ = static_cast<int>(size.getIntValue());
    const auto known = file.getXRefTable();
    if (!known.empty())
        revision.next_ = std::max(revision.next_, known.rbegin()->first.getObj() + 1);
    revision.root_ = trailer.getKey("/Root").unparse();
    if (trailer.hasKey("/Info")) revision.information_ = trailer.getKey("/Info").unparse();
    QPDFObjectHandle id = trailer.getKey("/ID");
    if (id.isArray() && id.getArrayNItems() == 2 && id.getArrayItem(0).isString())
        revision.firstId_ = id.getArrayItem(0).unparseBinary();
    revision.bytes_.reserve(pdf.size() + room);
    revision.bytes_.assign(pdf);
    if (revision.bytes_.back() != '\n') revision.bytes_ += '\n';
    return revision;
}

std::size_t Revision::begin(int number, int generation) {
    places_[number] = {bytes_.size(), generation};
    bytes_ += std::to_string(number) + " " + std::to_string(generation) + " obj\n";
    return bytes_.size();
}

std::size_t Revision::write(int number, int generation, std::string_view text) {
    const std::size_t begun = begin(number, generation);
    bytes_ += text;
    end(begun);
    return begun;
}

void Revision::end(std::size_t begun) {
    // How an object begins, with where all of them are, says which revision it is; fonts, pictures
    // and the place of a signature take long to hash.
    constexpr std::size_t kIdentifying = 1024;
    identifying_ += std::string_view(bytes_).substr(begun, kIdentifying);
    bytes_ += "\nendobj\n";
}

std::string Revision::copiedText(const QPDFObjectHandle& object, Copies& copies) {
    if (!object.isIndirect()) return copiedContent(object, copies);
    const auto [place, added] = copies.numbers.try_emplace(object.getObjGen(), next_);
    if (added) {
        ++next_;
        copies.waiting.emplace_back(place->second, object);
    }
    return std::to_string(place->second) + " 0 R";
}

std::string Revision::copiedContent(QPDFObjectHandle object, Copies& copies) {
    if (object.isArray()) {
        std::string text = "[";
        for (const QPDFObjectHandle& item : object.getArrayAsVector())
            text += " " + copiedText(item, copies);
        return text + " ]";
    }
    if (object.isDictionary()) {
        std::string text = "<<";
        for (const auto& [key, value] : object.getDictAsMap())
            addEntry(text, key, copiedText(value, copies));
        return text + " >>";
    }
    return object.unparseResolved();
}

std::string Revision::copy(const QPDFObjectHandle& object) {
    Copies copies;
    std::string reference = copiedText(object, copies);
    for (std::size_t done = 0; done < copies.waiting.size(); ++done) {
        auto [number, next] = copies.waiting[done];
        const std::size_t begun = begin(number, 0);
        if (next.isStream()) {
            const auto data = next.getRawStreamData();
            next.getDict().replaceKey(
                "/Length", QPDFObjectHandle::newInteger(static_cast<long long>(data->getSize())));
            bytes_ += copiedContent(next.getDict(), copies) + "\nstream\n";
            bytes_.append(reinterpret_cast<const char*>(data->getBuffer()), data->getSize());
            bytes_ += "\nendstream";
        } else {
            bytes_ += copiedContent(next, copies);
        }
        end(begun);
    }
    return reference;
}

std::string Revision::finish() {
    const std::size_t table = bytes_.size();
    bytes_ += "xref\n";
    for (auto first = places_.begin(); first != places_.end();) {
        auto end = first;
        int count = 0;
        while (end != places_.end() && end->first == first->first + count) {
            ++end;
            ++count;
        }
        bytes_ += std::to_string(first->first) + " " + std::to_string(count) + "\n";
        for (; first != end; ++first) {
            std::array<char, 32> entry{};
            std::snprintf(entry.data(), entry.size(), "%010zu %05d n\r\n", first->second.offset,
                          first->second.generation);
            bytes_ += entry.data();
        }
    }
    bytes_ += "trailer\n<< /Size " + std::to_string(next_) + " /Root " + root_;
    if (!information_.empty()) bytes_ += " /Info " + information_;
    bytes_ += " /Prev " + std::to_string(previous_);
    if (!firstId_.empty()) {
        // The second part changes with every revision; from its bytes, so that it is no clock's.
        identifying_ += std::string_view(bytes_).substr(table);
        const model::Digest digest = model::sha256(identifying_);
        constexpr std::size_t kIdBytes = 16;
        const std::string id(digest.begin(), digest.begin() + kIdBytes);
        bytes_ +=
            " /ID [ " + firstId_ + " " + QPDFObjectHandle::newString(id).unparseBinary() + " ]";
    }
    bytes_ += " >>\nstartxref\n" + std::to_string(table) + "\n%%EOF\n";
    return std::move(bytes_);
}

}  // namespace reports::signing
