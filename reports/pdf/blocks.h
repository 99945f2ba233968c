// SPDX-License-Identifier: Apache-2.0
// Each kind of block as strips.
#pragma once

#include "pdf/photos.h"
#include "pdf/strip.h"

namespace reports {

/// Appends to `strips`. `continued` is the word over a table that goes on on the next page.
void addHeading(Strips& strips, const Heading& heading, Faces& faces);
void addParagraph(Strips& strips, const Paragraph& paragraph, Faces& faces);
void addStatement(Strips& strips, const Statement& statement, Faces& faces);
void addFields(Strips& strips, const Fields& fields, Faces& faces);
void addTable(Strips& strips, const Table& table, const std::string& continued, Faces& faces);
/// Two side by side, all on one page with what follows them.
void addSignatureBoxes(Strips& strips, const SignatureBoxes& signatures, Faces& faces);
/// Figures that follow one another stand side by side where the page is wide enough.
void addFigures(Strips& strips, const std::vector<Figure>& figures, Faces& faces);
/// The picture on the left, its facts on the right.
void addPhoto(Strips& strips, const Photo& photo, const LoadedPhoto& loaded, Faces& faces);

/// Appends `more`, the first of them after a gap.
void append(Strips& strips, Strips more, double gapBefore);

}  // namespace reports
