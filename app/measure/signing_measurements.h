// SPDX-License-Identifier: Apache-2.0
// How long it takes to sign a certificate in the names of an inspector and a QA manager.
#pragma once

#include "measure/measure.h"

namespace app {

/// sign-certificate: two signatures in a certificate of some twenty pages, their appearances drawn
/// beforehand. The yardstick is what cannot be left out, done as often: libqpdf reads the file and
/// the appearance, the bytes are hashed, and the hash is signed as CMS.
/// sign-certificate-drawing: drawing both appearances, nearly all of it reading fonts; without a
/// yardstick.
model::Result<std::vector<Measurement>> measureSignCertificate();

}  // namespace app
