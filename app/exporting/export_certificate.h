// SPDX-License-Identifier: Apache-2.0
// A certificate with its record, for another program or an auditor.
#pragma once

#include <cstdint>
#include <string>

#include "archive/archive.h"

namespace app {

/// Makes the folder `out`, whole or not at all: the certificate's PDF, byte for byte;
/// certificate-N.json, what it states; sheet.json and verdict.json, what was judged and how;
/// indications.csv and checks.csv, the same for a spreadsheet; where anything was read by
/// ultrasound readings.json, settings.csv and readings.csv; record.json, everything that it rests
/// on (record_json.h), and of it records.csv, conditions.csv and registers.csv; and SHA256SUMS.
/// Without a record for a certificate that was made before records were signed. Input: no such
/// certificate, or something of that name is there already.
model::Result<void> exportCertificate(const model::Archive& archive, std::int64_t number,
                                      const std::string& out);

}  // namespace app
