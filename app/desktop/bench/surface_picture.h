// SPDX-License-Identifier: Apache-2.0
// What a zone's developed surface shows, in the coordinates of that zone: the zone, its
// neighbours on the same surface, and every indication that can be read so far.
#pragma once

#include <QString>
#include <QTransform>
#include <map>
#include <string>
#include <vector>

#include "editing/casting_editor.h"
#include "editing/live_verdict.h"
#include "surface/capsule.h"

namespace app {

struct PictureZone {
    QString name;
    QTransform toOwn;  ///< from its own millimetres to the shown zone's
    double width = 0;  ///< mm
    double height = 0;
};

struct PictureIndication {
    QString label;  ///< "7", or "Z2/7" of a neighbour
    model::Capsule capsule;
    int row = -1;            ///< of the shown examination; -1: a neighbour's
    bool considered = true;  ///< false: left out by the threshold, or stated not relevant
};

/// A row that cannot be read yet, but says where it is.
struct PicturePending {
    int row = 0;
    double x = 0;  ///< mm
    double y = 0;
};

struct PictureGroup {
    QString id;
    std::vector<int> members;  ///< indices of indications
};

struct SurfacePicture {
    PictureZone zone;
    std::vector<PictureZone> neighbours;
    std::vector<PictureIndication> indications;
    std::vector<PicturePending> pending;
    std::vector<PictureGroup> groups;
    std::map<QString, std::vector<int>> byName;  ///< indication or group -> indices of indications
};

/// `live` may be null or older than the rows: what it does not know is shown as counted.
SurfacePicture pictureOf(const CastingEditor& editor, int examination, const LiveVerdict* live);

}  // namespace app
