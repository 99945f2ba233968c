// SPDX-License-Identifier: Apache-2.0
#include "certificate/document.h"

#include <iomanip>
#include <sstream>
#include <string_view>

namespace reports {

namespace {

std::string_view sign(Mark mark) {
    switch (mark) {
        case Mark::Acceptable:
            return "[+] ";
        case Mark::NotJudged:
            return "[?] ";
        case Mark::NotAcceptable:
            return "[x] ";
        case Mark::Caution:
            return "[!] ";
        case Mark::None:
            break;
    }
    return "";
}

std::string coded(const std::string& code) {
    return code.empty() ? "" : " {" + code + "}";
}

std::string_view roleText(FigureCapsule::Role role) {
    switch (role) {
        case FigureCapsule::Role::NotCounted:
            return "not counted";
        case FigureCapsule::Role::Failing:
            return "failing";
        case FigureCapsule::Role::Neighbour:
            return "neighbour";
        case FigureCapsule::Role::Counted:
            break;
    }
    return "counted";
}

class TextWriter {
public:
    TextWriter() { out_ << std::setprecision(10); }

    void operator()(const Heading& heading) {
        out_ << '\n'
             << std::string(static_cast<std::size_t>(heading.level), '#') << ' ' << heading.text
             << coded(heading.code) << '\n';
    }
    void operator()(const Paragraph& paragraph) { out_ << paragraph.text << '\n'; }
    void operator()(const Statement& statement) {
        out_ << sign(statement.mark) << statement.word << coded(statement.code) << '\n';
        if (!statement.meaning.empty()) out_ << statement.meaning << '\n';
        if (!statement.text.empty()) out_ << statement.text << '\n';
    }
    void operator()(const Fields& fields) {
        for (const Field& field : fields.fields)
            out_ << field.name << coded(field.code) << ": " << field.value << '\n';
    }
    void operator()(const Table& table) {
        for (const Column& column : table.columns) out_ << "| " << column.heading << ' ';
        out_ << "|\n";
        for (const auto& row : table.rows) {
            for (const TableCell& cell : row) out_ << "| " << sign(cell.mark) << cell.text << ' ';
            out_ << "|\n";
        }
    }
    void operator()(const SignatureBoxes& signatures) {
        for (const SignatureBoxes::Box& box : signatures.boxes)
            out_ << "signature: " << box.label << " [" << box.field << "]\n";
    }
    void operator()(const Photo& photo) {
        out_ << "photo: " << photo.caption << '\n';
        (*this)(Fields{photo.facts});
    }
    void operator()(const Figure& figure) {
        out_ << "figure: " << figure.caption << "; " << figure.scaleText << "; bar "
             << figure.barText << "; window " << figure.left << ' ' << figure.bottom << ' '
             << figure.right << ' ' << figure.top << '\n';
        if (figure.zoneWidth && figure.zoneHeight)
            out_ << "outline: " << figure.zoneLabel << ' ' << *figure.zoneWidth << " x "
                 << *figure.zoneHeight << '\n';
        out_ << "axes: " << figure.xAxis << ", " << figure.yAxis << " from " << figure.datum
             << '\n';
        for (const FigureCapsule& one : figure.capsules)
            out_ << "capsule: " << one.label << ' ' << one.x << ' ' << one.y << ' ' << one.length
                 << " x " << one.width << " at " << one.angleDegrees << ", " << roleText(one.role)
                 << '\n';
        for (const FigureFrame& one : figure.frames)
            out_ << "frame: " << one.label << ' ' << one.x << ' ' << one.y << ' ' << one.width
                 << " x " << one.height << " at " << one.angleDegrees
                 << (one.circle ? ", circle" : "") << (one.failing ? ", failing" : "") << '\n';
        for (const FigureGroup& one : figure.groups) {
            out_ << "group: " << one.label << " of";
            for (const std::size_t member : one.members)
                out_ << ' ' << figure.capsules[member].label;
            out_ << '\n';
        }
        out_ << figure.legend << '\n';
    }

    std::ostringstream out_;
};

}  // namespace

std::string asText(const Document& document) {
    TextWriter writer;
    writer.out_ << document.issuer << coded(document.issuerCode) << '\n'
                << document.issuerAddress << '\n'
                << document.title << coded(document.titleCode) << '\n'
                << document.subtitle << '\n'
                << document.identity << '\n';
    for (const std::string& notice : document.pageNotices)
        writer.out_ << "every page: " << notice << '\n';
    if (!document.watermark.empty())
        writer.out_ << "across every page: " << document.watermark << '\n';
    for (const Block& block : document.blocks) std::visit(writer, block);
    writer.out_ << '\n' << document.endMark << '\n';
    return std::move(writer.out_).str();
}

}  // namespace reports
