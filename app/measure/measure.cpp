// SPDX-License-Identifier: Apache-2.0
#include "measure/measure.h"

#include <iterator>

#include "measure/frame_measurements.h"
#include "measure/search_measurements.h"
#include "measure/signing_measurements.h"
#include "measure/sizing_measurements.h"
#include "measure/verify_measurements.h"

namespace app {

std::vector<MeasurementMaker> builtInMeasurements() {
    return {
        {"frame-spread", measureFrameSpread},
        {"frame-zone", measureFrameZone},
        {"frame-dense", measureFrameDense},
        {"frame-edit", measureFrameEdit},
        {"sign-certificate", measureSignCertificate},
        {"search-median", measureSearchMedian},
        {"search-p99", measureSearchP99},
        {"verify-archive", measureVerifyArchive},
        {"verify-archive-large", measureVerifyArchiveLarge, true},
        {"size-reading", measureSizeReading},
        {"diagram", measureDiagram},
    };
}

model::Result<std::vector<Measurement>> runMeasurements(const std::vector<MeasurementMaker>& makers,
                                                        const std::optional<std::string>& only) {
    std::vector<Measurement> results;
    bool known = !only;
    for (const MeasurementMaker& maker : makers) {
        if (only ? maker.name != *only : maker.onlyByName) continue;
        known = true;
        auto lines = maker.run();
        if (!lines) return lines.error();
        results.insert(results.end(), std::make_move_iterator(lines->begin()),
                       std::make_move_iterator(lines->end()));
    }
    if (!known) {
        std::string names;
        for (const MeasurementMaker& maker : makers)
            names += (names.empty() ? "" : ", ") + maker.name;
        return model::inputError(
            "--only", "there is no measurement \"%1\"; the measurements are %2", {*only, names});
    }
    return results;
}

}  // namespace app
