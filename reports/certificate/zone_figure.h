// SPDX-License-Identifier: Apache-2.0
// The zone of an examination drawn to scale: indications, groups and the frames that decided.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "certificate/document.h"
#include "certificate/examined.h"

namespace reports {

struct ZoneFigures {
    std::vector<Figure> figures;  ///< the zone, then details of failing frames printed small in it
    std::map<std::size_t, std::string> frameOfCheck;  ///< index of a drawn check -> "F1"
};

/// Nothing where the examination has no indications. Frames are those of every check that fails;
/// where none fails, that of the check with the greatest share of its limit. `all` gives the
/// indications of neighbouring zones that such a check counts.
ZoneFigures figuresOf(const Examined& examined, const std::vector<Examined>& all);

}  // namespace reports
