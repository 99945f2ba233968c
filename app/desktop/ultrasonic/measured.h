// SPDX-License-Identifier: Apache-2.0
// What a setting's readings on the casting give: velocity and attenuation, and what is to be said
// about them.
#pragma once

#include <QString>
#include <optional>

#include "judge/sheet.h"
#include "record/typed_reflector.h"

namespace app {

struct MeasuredMaterial {
    std::optional<double> velocityMPerS;
    std::optional<double> attenuationDbPerM;
    QString velocityText;     ///< the result, or what is missing or wrong; empty: nothing was typed
    QString attenuationText;  ///< likewise
    QString nodularity;       ///< a warning with its source, or empty
};

MeasuredMaterial measuredOn(const model::TypedSetting& setting, model::Material material);

/// Wavelength, near field and spread of the setting's probe in words; empty while it cannot be
/// computed.
QString beamText(const model::TypedSetting& setting);

}  // namespace app
