// SPDX-License-Identifier: Apache-2.0
// A further revision of a PDF, appended behind its bytes (ISO 32000-1, 7.5.6) with a classic
// cross-reference table. For the .cpp files of this folder only.
#pragma once

#include <map>
#include <qpdf/QPDF.hh>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/result.h"

namespace reports::signing {

class Revision {
public:
    /// `file` is what openPdf() made of `pdf`. `room`: bytes expected to be added.
    static model::Result<Revision> after(std::string_view pdf, QPDF& file, std::size_t room);

    /// A number for a new object.
    int newNumber() { return next_++; }

    /// Appends an object, new or in place of an old one; returns where its text begins.
    std::size_t write(int number, int generation, std::string_view text);

    /// Appends what `object` refers to or is as new objects; returns its reference. For objects of
    /// another file, which must outlive the call and is used up by it.
    std::string copy(const QPDFObjectHandle& object);

    /// Appends table and trailer: the whole file.
    std::string finish();

private:
    struct Place {
        std::size_t offset = 0;
        int generation = 0;
    };
    /// Objects of another file, with the numbers that they get here.
    struct Copies {
        std::map<QPDFObjGen, int> numbers;
        std::vector<std::pair<int, QPDFObjectHandle>> waiting;  ///< in the order of their numbers
    };
    Revision() = default;
    /// Where an object's text begins; end() closes it.
    std::size_t begin(int number, int generation);
    void end(std::size_t begun);
    /// The object as it is written where it stands: a reference, or what it is.
    std::string copiedText(const QPDFObjectHandle& object, Copies& copies);
    std::string copiedContent(QPDFObjectHandle object, Copies& copies);

    std::string bytes_;
    std::string identifying_;   ///< what the file's new /ID is made from
    std::size_t previous_ = 0;  ///< offset of the last table before
    int next_ = 0;
    std::string root_;
    std::string information_;
    std::string firstId_;
    std::map<int, Place> places_;
};

/// "<< ... >>" of a dictionary with some keys set to other texts.
std::string dictionaryText(QPDFObjectHandle dictionary,
                           const std::map<std::string, std::string>& replaced);

/// "/Name" as it is written.
std::string nameText(const std::string& name);
/// A text string as it is written.
std::string stringText(const std::string& utf8);

}  // namespace reports::signing
