// SPDX-License-Identifier: Apache-2.0
#include "measure/signing_measurements.h"

#include <array>
#include <exception>
#include <qpdf/QPDF.hh>

#include "base/digest.h"
#include "measure/stopwatch.h"
#include "pdf/render.h"
#include "signing/appearance.h"
#include "signing/sign_pdf.h"
#include "signing/signature_fields.h"
#include "trust/authority.h"
#include "trust/signature.h"

namespace app {
namespace {

using model::Result;

constexpr int kRuns = 40;
constexpr std::array<const char*, 2> kFields{"Inspector", "Release"};

/// Many pages of rows of numbers, as the lists of indications are, and places for two signatures.
reports::Document longDocument() {
    reports::Document document;
    document.title = "Inspection certificate 3.1";
    document.issuer = "Quillmere Foundry";
    document.pageOf = "Page %1 of %2";
    document.endMark = "End of certificate";
    reports::Table table;
    for (const char* heading : {"No.", "x", "y", "Length", "Width", "Kind"})
        table.columns.push_back({heading});
    constexpr int kRows = 1000;
    for (int row = 0; row < kRows; ++row)
        table.rows.push_back({{std::to_string(row)},
                              {std::to_string(row * 7 % 600)},
                              {std::to_string(row * 13 % 400)},
                              {std::to_string(row % 11) + ".5"},
                              {"0." + std::to_string(1 + row % 9)},
                              {"porosity"}});
    document.blocks.emplace_back(std::move(table));
    document.blocks.emplace_back(
        reports::SignatureBoxes{{{kFields[0], "Inspector"}, {kFields[1], "QA manager"}}});
    return document;
}

Result<std::string> drawn(const std::string& name) {
    return reports::drawAppearance(
        {name, "QA manager", "Releases this certificate, type 3.1 of EN 10204",
         "2026-11-25T09:30:00Z, by the signer's own clock",
         "Identity issued by Quillmere inspection authority"},
        reports::kSignatureBoxWidthMm, reports::kSignatureBoxHeightMm);
}

/// Everything that is not measured, made once.
struct Bench {
    std::string file;  ///< with empty fields
    std::vector<model::SigningKey> keys;
    std::array<reports::PdfSigning, 2> signings;
    model::UtcTime now{};
};

Result<model::SigningKey> keyOf(const model::Authority& authority, const char* id,
                                model::UtcTime now) {
    const model::SecretBytes passphrase(std::string_view("measured, not kept"));
    const auto identity = authority.issue({.name = std::string("Person ") + id,
                                           .personId = id,
                                           .from = now,
                                           .until = now + std::chrono::days(30),
                                           .key = model::KeyKind::P256},
                                          passphrase);
    if (!identity) return identity.error();
    return model::unlock(*identity, passphrase, now);
}

Result<Bench> makeBench() {
    Bench bench;
    bench.now = model::systemClock().now();
    const model::SecretBytes passphrase(std::string_view("measured, not kept"));
    const auto own = model::Authority::create({.name = "Measured authority",
                                               .organisation = "Quillmere Foundry",
                                               .country = "",
                                               .from = bench.now,
                                               .until = bench.now + std::chrono::days(60)},
                                              passphrase);
    if (!own) return own.error();
    const auto authority = model::Authority::unlock(*own, passphrase, bench.now);
    if (!authority) return authority.error();
    for (std::size_t i = 0; i < kFields.size(); ++i) {
        auto key = keyOf(*authority, kFields[i], bench.now);
        if (!key) return key.error();
        bench.keys.push_back(std::move(key).value());
        auto appearance = drawn(kFields[i]);
        if (!appearance) return appearance.error();
        bench.signings[i] = {.field = kFields[i],
                             .appearance = std::move(appearance).value(),
                             .reason = "measured",
                             .place = "Quillmere",
                             .time = bench.now};
    }
    const auto rendered = reports::renderPdf(longDocument());
    if (!rendered) return rendered.error();
    auto file = reports::addSignatureFields(rendered->bytes, rendered->signatureFields);
    if (!file) return file.error();
    bench.file = std::move(file).value();
    return bench;
}

/// The file signed once, and signed twice.
using Revisions = std::array<std::string, 2>;

Result<Revisions> signedTwice(const Bench& bench) {
    Revisions revisions;
    const std::string* before = &bench.file;
    for (std::size_t i = 0; i < kFields.size(); ++i) {
        auto next = reports::signPdf(*before, bench.signings[i], bench.keys[i]);
        if (!next) return next.error();
        revisions[i] = std::move(next).value();
        before = &revisions[i];
    }
    return revisions;
}

void parse(const std::string& bytes) {
    QPDF file;
    file.setAttemptRecovery(false);
    file.processMemoryFile("PDF", bytes.data(), bytes.size());
    if (file.getAllPages().empty()) throw std::runtime_error("no page");
}

/// What cannot be left out of signing twice.
Result<void> yardstick(const Bench& bench, const Revisions& revisions) {
    for (std::size_t i = 0; i < kFields.size(); ++i) {
        try {
            parse(i == 0 ? bench.file : revisions[i - 1]);
            parse(bench.signings[i].appearance);
        } catch (const std::exception& failure) {
            return model::refusal("sign-certificate", "%1", {failure.what()});
        }
        const model::Digest digest = model::sha256(revisions[i]);
        const std::string_view hash(reinterpret_cast<const char*>(digest.data()), digest.size());
        if (const auto made = model::signDetached(hash, bench.keys[i], bench.now); !made)
            return made.error();
    }
    return {};
}

}  // namespace

Result<std::vector<Measurement>> measureSignCertificate() {
    const auto bench = makeBench();
    if (!bench) return bench.error();
    const auto revisions = signedTwice(*bench);
    if (!revisions) return revisions.error();

    Measurement line;
    line.name = "sign-certificate";
    line.size = revisions->back().size();
    bool failed = false;
    line.value = shortestMilliseconds(kRuns, [&] { failed = failed || !signedTwice(*bench).ok(); });
    line.yardstick = shortestMilliseconds(
        kRuns, [&] { failed = failed || !yardstick(*bench, *revisions).ok(); });
    line.note = "two signatures; size is the signed file's, bytes";
    Measurement drawing;
    drawing.name = "sign-certificate-drawing";
    drawing.size = bench->signings.front().appearance.size();
    drawing.value = shortestMilliseconds(kRuns, [&] {
        for (const char* name : kFields) failed = failed || !drawn(name).ok();
    });
    drawing.note = "drawing both appearances; size is one's, bytes";
    if (failed) return model::refusal(line.name, "signing failed while it was measured");
    return std::vector{line, drawing};
}

}  // namespace app
