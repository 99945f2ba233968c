// SPDX-License-Identifier: Apache-2.0
// A PDF as libqpdf reads it, strictly: nothing is repaired. For the .cpp files of this folder only.
#pragma once

#include <exception>
#include <memory>
#include <qpdf/QPDF.hh>
#include <string>
#include <string_view>

#include "base/result.h"

namespace reports::signing {

inline constexpr std::size_t kLongestPdf = 512U << 20U;

/// libqpdf throws; nothing of that leaves this folder.
template <class Work>
auto guarded(Work&& work) -> decltype(work()) {
    try {
        return work();
    } catch (const std::exception& failure) {
        return model::Error{
            model::ErrorKind::Damaged, "", "the PDF file is damaged: %1", {failure.what()}};
    }
}

/// Whether the file is of a kind that is refused: with cross-reference or object streams.
bool usesStreamsForStructure(std::string_view bytes);

/// `bytes` must outlive what is returned. Fails with Damaged where the file would have to be
/// repaired, with Input where it is encrypted, too long, or usesStreamsForStructure().
model::Result<std::unique_ptr<QPDF>> openPdf(std::string_view bytes);

/// The offset after the last "startxref". Fails unless a classic table stands there.
model::Result<std::size_t> lastTable(std::string_view bytes);

/// A dictionary's key as a text; empty where it is none.
std::string textAt(const QPDFObjectHandle& dictionary, const std::string& key);
bool isName(const QPDFObjectHandle& object, const std::string& name);

}  // namespace reports::signing
