// SPDX-License-Identifier: Apache-2.0
// The signed acts from an examination to a certificate; see HISTORY.md.
#pragma once

namespace model::action {

inline constexpr char kTableAttested[] = "limit table attested";
inline constexpr char kAttestationWithdrawn[] = "attestation withdrawn";
inline constexpr char kRecordSigned[] = "examination signed";
inline constexpr char kRecordInvalidated[] = "examination declared invalid";
inline constexpr char kCastingPresented[] = "casting presented";
inline constexpr char kPresentationReturned[] = "casting returned";
inline constexpr char kPresentationEndorsed[] = "certificate endorsed";
inline constexpr char kCertificateReleased[] = "certificate released";
inline constexpr char kCertificateWithdrawn[] = "certificate withdrawn";
inline constexpr char kCastingReopened[] = "casting reopened";

}  // namespace model::action
