// SPDX-License-Identifier: Apache-2.0
#include "foundry/old_certificates.h"

#include "archive/archive_access.h"
#include "archive/certificate_store.h"
#include "archive/history_store.h"

namespace foundry {

model::Result<std::int64_t> addCertificate(model::Archive& archive, const model::IssueFacts& facts,
                                           std::string_view pdf, const model::Actor& actor,
                                           std::optional<std::int64_t> number) {
    return model::ArchiveAccess::write(
        archive, actor, [&](model::WriteTransaction& transaction) -> model::Result<std::int64_t> {
            if (!number) {
                const auto reserved = model::reserveNumber(transaction);
                if (!reserved) return reserved;
                number = *reserved;
            }
            const auto record = [&](model::Canonical::Object content) {
                return transaction.record(model::action::kCertificateAdded, std::to_string(*number),
                                          std::move(content));
            };
            const auto stored = model::storeCertificate(
                transaction, model::ArchiveAccess::folder(archive), facts, pdf, *number, record);
            if (!stored) return stored.error();
            return *number;
        });
}

}  // namespace foundry
