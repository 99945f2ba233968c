// SPDX-License-Identifier: Apache-2.0
// Certificates as they are issued from an archive of the invented foundry, and other programs' word
// on them.
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <optional>
#include <string>

#include "archive/identities.h"
#include "archive/lifecycle.h"
#include "busy_archive.h"
#include "people/shell.h"
#include "trust/identity_certificate.h"

namespace app {

class Issued : public testing::Test {
protected:
    [[nodiscard]] std::string path(const std::string& name) const { return folder_.path(name); }
    [[nodiscard]] model::Archive& archive() { return foundry_.archive(); }

    /// One casting presented; its number.
    std::int64_t presented(const std::string& order = "O-31") {
        foundry_.signedCasting("Q-1", order);
        return foundry_.present("Q-1");
    }
    std::string releasedFile(std::int64_t number) {
        foundry_.release(number);
        return must(archive().certificateFile(number));
    }
    /// The archive's own authority, as PEM in "ca.pem".
    void writeAuthority() {
        const auto trusted = must(model::trustedCertificates(archive()));
        folder_.write("ca.pem", model::certificateToPem(trusted.anchors.front()));
    }

    people::Folder folder_;
    BusyArchive foundry_{folder_.path("works.fettlemark")};
};

}  // namespace app
