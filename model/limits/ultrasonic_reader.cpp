// SPDX-License-Identifier: Apache-2.0
#include "limits/ultrasonic_reader.h"

#include "base/decimal.h"

namespace model {
namespace {

/// What a recording limit or a condition on that measure is stated in.
Measured measuredBy(ReflectorMeasure measure) {
    switch (measure) {
        case ReflectorMeasure::Fbh:
        case ReflectorMeasure::IndicationLength:
            return Measured::Mm;
        case ReflectorMeasure::OverReference:
            return Measured::SignedDecibel;
        case ReflectorMeasure::LengthToWidth:
        case ReflectorMeasure::BackWallLoss:
            break;
    }
    return Measured::Plain;
}

}  // namespace

void UltrasonicReader::rim(Statement& in) {
    RimZone& read = table_.rim;
    read.known = in.known();
    if (read.known == Known::Given) {
        read.share = in.fraction("rim's share");
        in.expect({"of", "the", "wall"});
        if (!in.error() && read.share > Rational(1, 2))
            in.fail("a rim of more than half the wall on each side leaves no core");
        if (in.take({"at", "most"})) read.atMost = in.length("rim's greatest depth");
    }
    read.source = in.sourceClause();
}

void UltrasonicReader::notMeasurable(Statement& in) {
    NotMeasurableRule& read = table_.notMeasurable;
    const std::size_t from = in.here();
    if (!in.take({"unknown"})) {
        if (in.take({"through-wall"})) read.throughWall = in.length("through-wall extent");
        if (in.take({"area"})) read.area = in.area("area");
        if (!read.throughWall && !read.area)
            in.fail("expected one of: through-wall, area, unknown");
        read.written = in.since(from);
    }
    read.source = in.sourceClause();
}

void UltrasonicReader::clusters(Statement& in) {
    ClusterRule& read = table_.clusters;
    read.known = in.known();
    if (read.known == Known::Given) {
        const std::size_t from = in.here();
        in.expect({"cube"});
        read.cube = in.length("cube's edge");
        if (in.take({"spread"})) read.spread = in.area("spread");
        read.written = in.since(from);
    }
    read.source = in.sourceClause();
}

void UltrasonicReader::recording(Statement& in) {
    line_ = in.line();
    columnsStated_ = false;
    const bool absent = in.take({"absent"});
    if (!table_.recordingSource.locator.empty() || (absent && !table_.recording.empty()))
        return in.fail("a table has recording limits or states that they are absent");
    if (absent) {
        table_.recordingSource = in.sourceClause();
        return;
    }
    RecordingLimit read;
    read.of = in.reflectorMeasure();
    read.comparison = in.comparison({Comparison::AtLeast, Comparison::More});
    in.expect({"limit"});
    if (in.take({"measurable"}))
        read.measurable = true;
    else if (in.take({"not", "measurable"}))
        read.measurable = false;
    if (in.error()) return;
    if (read.of == ReflectorMeasure::LengthToWidth)
        return in.fail("a ratio of length to width is no recording limit");
    for (const RecordingLimit& other : table_.recording)
        if (other.of == read.of && other.measurable == read.measurable)
            return in.fail("this recording limit is already stated");
    inRecording_ = true;
    table_.recording.push_back(std::move(read));
}

void UltrasonicReader::columns(Statement& in) {
    if (columnsStated_) return in.fail("\"columns\" is already stated for this recording limit");
    columnsStated_ = true;
    banded_ = in.take({"from", "to"});
    in.expect({"limit", "locator", "grade"});
}

void UltrasonicReader::row(Statement& in) {
    if (!columnsStated_) return in.fail("\"columns\" must stand above the rows");
    RecordingLimit& limit = table_.recording.back();
    RecordingLimit::Row read;
    read.line = in.line();
    if (banded_) read.band = in.band();
    read.cell = in.cell(measuredBy(limit.of));
    if (!in.error() && read.cell.type != Cell::Type::Number &&
        read.cell.type != Cell::Type::Unknown)
        in.fail("a recording limit is a number or unknown");
    std::string notMonotone;
    in.rowEnd(read.cell, notMonotone);
    if (!notMonotone.empty()) in.fail("a recording limit is not compared between levels");
    limit.rows.push_back(std::move(read));
}

std::optional<Error> UltrasonicReader::finish() {
    if (!inRecording_) return std::nullopt;
    inRecording_ = false;
    if (table_.recording.back().rows.empty())
        return inputError(placeInTable(table_.file, line_), "the recording limit has no row");
    return std::nullopt;
}

Condition readCondition(Statement& in) {
    Condition read;
    read.of = in.reflectorMeasure();
    read.comparison = in.comparison(
        {Comparison::Less, Comparison::AtMost, Comparison::AtLeast, Comparison::More});
    const Measured measured = measuredBy(read.of);
    if (measured == Measured::Mm) {
        read.value = in.length("length").millionths();
    } else if (read.of == ReflectorMeasure::LengthToWidth) {
        read.value = Rational(in.positive("ratio"), kMillion);
    } else {
        const Cell level = in.cell(measured);
        if (!in.error() && level.type != Cell::Type::Number) in.fail("expected a number in dB");
        in.expect({"dB"});
        read.value = level.number;
    }
    read.source = in.sourceClause();
    return read;
}

}  // namespace model
