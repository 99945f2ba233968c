// SPDX-License-Identifier: Apache-2.0
// The indications of one MT or PT examination as a table.
#pragma once

#include "bench/typed_rows.h"

namespace app {

class IndicationModel : public TypedRows<model::TypedIndication> {
    Q_OBJECT

public:
    using TypedRows::TypedRows;

    [[nodiscard]] int firstCell() const override { return at(Column::X); }
    [[nodiscard]] std::optional<int> cellAfter(int row, int column) const override;

protected:
    [[nodiscard]] const std::vector<model::TypedIndication>& rows() const override;
    [[nodiscard]] const std::vector<model::FieldError>& errors(int row) const override;
    [[nodiscard]] QString suggested(int row, int column) const override;
    [[nodiscard]] QString suggestedBy(int row, int column) const override;
};

}  // namespace app
