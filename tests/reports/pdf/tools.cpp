// SPDX-License-Identifier: Apache-2.0
#include "tools.h"

#include <QFile>
#include <QProcess>
#include <gtest/gtest.h>

#include "pdf/render.h"

namespace tools {

Outcome run(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    constexpr int kTwoMinutes = 120'000;
    if (!process.waitForFinished(kTwoMinutes)) return {};
    return {process.exitStatus() == QProcess::NormalExit ? process.exitCode() : -1,
            process.readAllStandardOutput().toStdString(),
            process.readAllStandardError().toStdString()};
}

PdfOnDisk::PdfOnDisk(const std::string& bytes) {
    QFile file(path());
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(bytes.data(), static_cast<qsizetype>(bytes.size()));
}

std::string PdfOnDisk::text(int page) const {
    QStringList arguments = {"-raw", "-enc", "UTF-8"};
    if (page > 0) arguments << "-f" << QString::number(page) << "-l" << QString::number(page);
    const Outcome outcome = run("pdftotext", arguments << path() << "-");
    EXPECT_EQ(outcome.code, 0) << outcome.errors;
    // Poppler warns here of a broken ToUnicode map, font or structure.
    EXPECT_EQ(outcome.errors, "");
    return outcome.output;
}

int PdfOnDisk::pages() const {
    const Outcome outcome = run("pdfinfo", {path()});
    EXPECT_EQ(outcome.code, 0) << outcome.errors;
    const QString text = QString::fromStdString(outcome.output);
    for (const QString& line : text.split('\n'))
        if (line.startsWith("Pages:")) return line.mid(6).trimmed().toInt();
    return 0;
}

QImage PdfOnDisk::image(int page, int dotsPerInch, QRect part) const {
    QStringList arguments = {"-gray", "-png", "-singlefile"};
    const auto add = [&arguments](const char* option, int value) {
        arguments << option << QString::number(value);
    };
    add("-r", dotsPerInch);
    add("-f", page);
    add("-l", page);
    add("-x", part.x());
    add("-y", part.y());
    add("-W", part.width());
    add("-H", part.height());
    const QString root = folder_.filePath("page" + QString::number(page));
    const Outcome outcome = run("pdftoppm", arguments << path() << root);
    EXPECT_EQ(outcome.code, 0) << outcome.errors;
    EXPECT_EQ(outcome.errors, "");
    QImage image(root + ".png");
    EXPECT_FALSE(image.isNull());
    return image;
}

reports::Document documentOf(std::vector<reports::Block> blocks) {
    reports::Document document;
    document.title = "Trial";
    document.subject = "A trial page";
    document.language = "en";
    document.pageOf = "Page %1 of %2";
    document.continued = "continued";
    document.endMark = "The end";
    document.blocks = std::move(blocks);
    return document;
}

std::string rendered(const reports::Document& document) {
    const auto bytes = reports::renderPdf(document);
    EXPECT_TRUE(bytes.ok()) << (bytes.ok() ? "" : bytes.error().message());
    return bytes.ok() ? bytes->bytes : std::string();
}

}  // namespace tools
