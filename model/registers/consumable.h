// SPDX-License-Identifier: Apache-2.0
// What is used up in tests: penetrant systems, detection media, couplants.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "registers/field.h"

namespace model {

/// One batch of a product.
struct Consumable {
    static constexpr std::string_view kRegister = "consumable";
    static std::span<const Field<Consumable>> fields();

    std::string id;
    std::string kind;
    std::string product;
    std::string maker;
    std::string batch;
    std::string expiresOn;
    std::string type;
    std::string designation;
    std::string sensitivityLevel;
    std::string batchCertificate;
    std::string sulphur;
    std::string halogens;
    std::string openedOn;
    std::string state;
    std::string remarks;

    friend bool operator==(const Consumable&, const Consumable&) = default;
};

}  // namespace model
