// SPDX-License-Identifier: Apache-2.0
// The demonstration archive: the scenario, entered through the archive's public face as the people
// of the scenario would have, on the days on which they would have.
#pragma once

#include <cstdint>
#include <functional>
#include <string>

#include "archive/archive.h"
#include "archive/sign_in.h"
#include "base/clock.h"
#include "base/result.h"

namespace demo {

/// Making and signing the PDFs, which this folder cannot: it knows no PDF. The clock stands at the
/// scenario's time.
struct Issuing {
    std::function<model::Result<std::int64_t>(model::Archive&, const std::string& serial,
                                              const model::SignedIn&, const model::Clock&)>
        present;
    std::function<model::Result<void>(model::Archive&, std::int64_t number, const model::SignedIn&,
                                      const model::Clock&)>
        endorse;
    std::function<model::Result<void>(model::Archive&, std::int64_t number, const model::SignedIn&,
                                      const model::Clock&)>
        release;
};

/// Writes a demonstration archive to `path`, certificates included; without `issuing` nothing is
/// presented or released. Refuses a path where anything exists (Input); where it fails later, what
/// it had begun is removed. Every call writes the same content, times included, but keys and
/// signatures. A QCoreApplication must exist, see archive/archive.h.
model::Result<void> writeDemonstration(const std::string& path, const Issuing& issuing = {});

}  // namespace demo
