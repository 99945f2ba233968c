// SPDX-License-Identifier: Apache-2.0
#include "exporting/certificate_json.h"

#include "judge/sheet_words.h"

namespace app {
namespace {

using model::JsonValue;

JsonValue numberOrNull(const std::optional<std::int64_t>& number) {
    return number ? JsonValue::count(*number) : JsonValue();
}

}  // namespace

JsonValue::Members certificateMembers(const model::FoundCertificate& certificate) {
    return {{"number", JsonValue::count(certificate.number)},
            {"state", JsonValue::string(model::word(certificate.state))},
            {"verdict", JsonValue::string(model::word(certificate.verdict))},
            {"serial", JsonValue::string(certificate.serial)},
            {"heat", JsonValue::string(certificate.heat)},
            {"part", JsonValue::string(certificate.part)},
            {"order", JsonValue::string(certificate.order)},
            {"customer", JsonValue::string(certificate.customer)},
            {"customer_order", JsonValue::string(certificate.customerOrder)},
            {"type", JsonValue::string(certificate.type)},
            {"issued_at", JsonValue::string(certificate.issuedAt)},
            {"issued_by", JsonValue::string(certificate.issuedBy)},
            {"supersedes", numberOrNull(certificate.supersedes)},
            {"superseded_by", numberOrNull(certificate.supersededBy)}};
}

}  // namespace app
