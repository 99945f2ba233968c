// SPDX-License-Identifier: Apache-2.0
// A printed document as plain data: what it says, in which order, and what its figures show. It
// knows no page, font or file format; texts are UTF-8 and already in the document's language.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace reports {

/// What a text says about a result. A mark is drawn as a sign beside the word, never as colour
/// alone.
enum class Mark { None, Acceptable, NotJudged, NotAcceptable, Caution };

struct Heading {
    int level = 1;  ///< 1 a chapter, 2 a section, 3 what stands over one table
    std::string text;
    std::string code = {};  ///< EN 10168 field code, such as "B02"; empty for none
};

/// Running text; "\n" ends a line.
struct Paragraph {
    enum class Tone { Plain, Strong, Small } tone = Tone::Plain;
    std::string text;
    bool keepWithNext = false;  ///< stays whole, on the page of what follows
};

/// A sentence that must not be overlooked: sign, word and explanation.
struct Statement {
    Mark mark = Mark::None;
    std::string word;          ///< "NOT ACCEPTABLE"
    std::string text;          ///< why, or what it means
    std::string code = {};     ///< EN 10168 field code
    bool large = false;        ///< the document's own result
    std::string meaning = {};  ///< what the word means for a delivery, under it
};

struct Field {
    std::string code;  ///< EN 10168 field code; empty for none
    std::string name;
    std::string value;  ///< never empty: what is not recorded says so
};

/// Names and values, side by side in `columns` columns, filled row by row.
struct Fields {
    std::vector<Field> fields;
    int columns = 2;
};

enum class Align { Left, Right, Centre };

struct Column {
    std::string heading;
    Align align = Align::Left;
    double share = 1;  ///< of the width, relative to the other columns; > 0
};

struct TableCell {
    std::string text;
    Mark mark = Mark::None;
    bool strong = false;
};

/// Rows have as many cells as there are columns. The headings stand again on every page.
struct Table {
    std::vector<Column> columns;
    std::vector<std::vector<TableCell>> rows;
};

/// Places for approval signatures. They stay together on one page, with the heading and the
/// paragraphs before them that are marked to stay with what follows.
struct SignatureBoxes {
    struct Box {
        std::string field;  ///< name of the field in the file; no full stop
        std::string label;  ///< over the box: who signs, and as what
    };
    std::vector<Box> boxes;
};

/// An indication in the zone's coordinates: mm from the datum, degrees counter-clockwise.
struct FigureCapsule {
    std::string label;
    double x = 0;
    double y = 0;
    double length = 0;
    double width = 0;  ///< 0: a hairline
    double angleDegrees = 0;
    enum class Role { Counted, NotCounted, Failing, Neighbour } role = Role::Counted;
};

/// An evaluation frame, centre and turn of its width side.
struct FigureFrame {
    std::string label;
    double x = 0;
    double y = 0;
    double width = 0;
    double height = 0;  ///< equal to width for a circle
    double angleDegrees = 0;
    bool circle = false;
    bool failing = false;
};

/// Indications that count as one: indices into Figure::capsules.
struct FigureGroup {
    std::string label;
    std::vector<std::size_t> members;
};

/// A zone drawn to scale. The visible window is in the zone's coordinates, mm; on paper every
/// length is multiplied by scale. The zone's outline is the rectangle from (0, 0).
struct Figure {
    std::string caption;
    double left = 0;  ///< window
    double bottom = 0;
    double right = 0;
    double top = 0;
    double scale = 1;                 ///< paper mm per mm of the casting, > 0
    std::string scaleText;            ///< "Scale 1 : 5"
    double barLength = 0;             ///< mm of the casting
    std::string barText;              ///< "100 mm"
    std::optional<double> zoneWidth;  ///< none: not recorded, no outline is drawn
    std::optional<double> zoneHeight;
    std::string zoneLabel;
    std::string xAxis;  ///< "x"
    std::string yAxis;  ///< "y"
    std::string datum;  ///< label of the point (0, 0)
    std::vector<FigureCapsule> capsules;
    std::vector<FigureFrame> frames;
    std::vector<FigureGroup> groups;
    std::string legend;  ///< explains the ways of drawing
    /// Printed with the number for %1 where labels would cover one another and were left out.
    std::string labelsLeftOut;
};

/// The largest figure, in mm on paper: what a figure's window times its scale must fit into.
inline constexpr double kFigureWidthMm = 112;
inline constexpr double kFigureHeightMm = 88;

/// A picture with what is needed to make sense of it, printed beside it.
struct Photo {
    std::string caption;
    std::vector<Field> facts;
    std::string place;  ///< which file, where it cannot be printed: "attachment A-3"
    std::string bytes;  ///< of a PNG or JPEG file, from anybody: decoded by who draws it
};

using Block =
    std::variant<Heading, Paragraph, Statement, Fields, Table, Figure, Photo, SignatureBoxes>;

struct Document {
    std::string title;                     ///< "Inspection certificate 3.1"
    std::string titleCode;                 ///< EN 10168 field code of the title
    std::string subtitle;                  ///< under the title on the first page
    std::string subject;                   ///< one line for a reader's file list
    std::string producer;                  ///< program and version
    std::string language;                  ///< BCP 47: "en"
    std::string issuer;                    ///< at the head of every page
    std::string issuerCode;                ///< EN 10168 field code of the issuer
    std::string issuerAddress;             ///< on the first page
    std::string identity;                  ///< at the foot of every page: number and casting
    std::vector<std::string> pageNotices;  ///< at the head of every page: "NOT RELEASED" ...
    std::string watermark;                 ///< across every page, beneath the text; empty for none
    std::string pageOf;                    ///< "Page %1 of %2"
    std::string continued;                 ///< "continued", over a table that goes on
    std::string endMark;                   ///< "End of certificate"
    std::vector<Block> blocks;
};

/// The whole document as plain text, one line a heading, field, row or figure item; for searching
/// and comparing. Every text and every figure coordinate is in it.
std::string asText(const Document& document);

}  // namespace reports
