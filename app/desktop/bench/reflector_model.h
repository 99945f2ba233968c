// SPDX-License-Identifier: Apache-2.0
// The indications of one ultrasonic examination as a table. Sizes that follow from a row's reading
// are shown in its cells until somebody types over them.
#pragma once

#include "bench/typed_rows.h"

namespace app {

class ReflectorModel : public TypedRows<model::TypedReflector> {
    Q_OBJECT

public:
    using TypedRows::TypedRows;

    [[nodiscard]] int firstCell() const override { return at(ReflectorColumn::X); }
    [[nodiscard]] std::optional<int> cellAfter(int row, int column) const override;
    /// The row that comes next, nothing typed yet.
    [[nodiscard]] model::TypedReflector nextRow() const { return freshRow(0); }

protected:
    [[nodiscard]] const std::vector<model::TypedReflector>& rows() const override;
    [[nodiscard]] const std::vector<model::FieldError>& errors(int row) const override;
    [[nodiscard]] model::TypedReflector freshRow(int ahead) const override;
    [[nodiscard]] std::optional<int> columnFor(const std::string& field) const override;
    [[nodiscard]] QString suggested(int row, int column) const override;
    [[nodiscard]] QString suggestedBy(int row, int column) const override;

private:
    [[nodiscard]] std::optional<model::Length> computed(int row, ReflectorColumn column) const;
    [[nodiscard]] bool tooShort(int row, ReflectorColumn column) const;
};

}  // namespace app
