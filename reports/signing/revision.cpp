// SPDX-License-Identifier: Apache-2.0
#include "signing/revision.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <qpdf/Buffer.hh>

#include "base/digest.h"
#include "signing/pdf_file.h"

namespace reports::signing {

std::string nameText(const std::string& name) {
    return QPDFObjectHandle::newName(name).unparse();
}

std::string stringText(const std::string& utf8) {
    return QPDFObjectHandle::newUnicodeString(utf8).unparse();
}

std::string dictionaryText(QPDFObjectHandle dictionary,
                           const std::map<std::string, std::string>& replaced) {
    std::string text = "<<";
    for (const std::string& key : dictionary.getKeys())
        if (replaced.count(key) == 0)
            text += " " + nameText(key) + " " + dictionary.getKey(key).unparse();
    for (const auto& [key, value] : replaced) text += " " + nameText(key) + " " + value;
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

std::size_t Revision::write(int number, int generation, std::string_view text) {
    places_[number] = {bytes_.size(), generation};
    bytes_ += std::to_string(number) + " " + std::to_string(generation) + " obj\n";
    const std::size_t begin = bytes_.size();
    bytes_ += text;
    bytes_ += "\nendobj\n";
    // Fonts and pictures say nothing about which revision it is, and take long to hash.
    constexpr std::size_t kLongestIdentifying = 16 * 1024;
    if (text.size() <= kLongestIdentifying) identifying_ += text;
    return begin;
}

std::string Revision::copiedText(QPDFObjectHandle object, std::map<QPDFObjGen, int>& numbers,
                                 std::map<int, QPDFObjectHandle>& waiting) {
    if (object.isIndirect()) {
        const auto [place, added] = numbers.try_emplace(object.getObjGen(), next_);
        if (added) {
            ++next_;
            waiting.insert_or_assign(place->second, object);
        }
        return std::to_string(place->second) + " 0 R";
    }
    if (object.isArray()) {
        std::string text = "[";
        for (QPDFObjectHandle& item : object.getArrayAsVector())
            text += " " + copiedText(item, numbers, waiting);
        return text + " ]";
    }
    if (object.isDictionary()) {
        std::string text = "<<";
        for (const std::string& key : object.getKeys())
            text += " " + nameText(key) + " " + copiedText(object.getKey(key), numbers, waiting);
        return text + " >>";
    }
    return object.unparse();
}

std::string Revision::copy(QPDFObjectHandle object) {
    std::map<QPDFObjGen, int> numbers;
    std::map<int, QPDFObjectHandle> waiting;
    std::string reference = copiedText(object, numbers, waiting);
    while (!waiting.empty()) {
        const int number = waiting.begin()->first;
        QPDFObjectHandle next = waiting.begin()->second;
        waiting.erase(waiting.begin());
        if (next.isStream()) {
            const auto data = next.getRawStreamData();
            QPDFObjectHandle dictionary = next.getDict().shallowCopy();
            dictionary.replaceKey(
                "/Length", QPDFObjectHandle::newInteger(static_cast<long long>(data->getSize())));
            std::string text = copiedText(dictionary, numbers, waiting) + "\nstream\n";
            text.append(reinterpret_cast<const char*>(data->getBuffer()), data->getSize());
            write(number, 0, text + "\nendstream");
        } else {
            QPDFObjectHandle direct = next.isDictionary() || next.isArray()
                                          ? next.shallowCopy()
                                          : QPDFObjectHandle::parse(next.unparseResolved());
            write(number, 0, copiedText(direct, numbers, waiting));
        }
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
