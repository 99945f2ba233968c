// SPDX-License-Identifier: Apache-2.0
#include "bench/indication_model.h"

#include "limits/words.h"

namespace app {

const std::vector<model::TypedIndication>& IndicationModel::rows() const {
    static const std::vector<model::TypedIndication> kNone;
    return editor_ && examination_ >= 0 ? editor_->draft(examination_).rows : kNone;
}

const std::vector<model::FieldError>& IndicationModel::errors(int row) const {
    return editor_->reading(examination_, row).errors;
}

/// x, y, length, width, angle and kind, and for a hairline the class.
std::optional<int> IndicationModel::cellAfter(int row, int column) const {
    if (row >= indications()) {  // nothing was typed: stay in the row, it is still empty
        return column < at(Column::Kind) ? column + 1 : firstCell();
    }
    const bool hairline = rows()[static_cast<std::size_t>(row)].width.empty();
    const int last = hairline ? at(Column::Stated) : at(Column::Kind);
    if (column == last || column == at(Column::Reason)) return std::nullopt;
    return column + 1;
}

QString IndicationModel::suggested(int row, int column) const {
    if (column == at(Column::Angle)) return QStringLiteral("0");
    if (column == at(Column::Relevance)) return tr("relevant");
    if (column == at(Column::Stated)) {
        const auto* known = judged(row);
        if (known && known->classified) {
            const QString word = classText(std::string(model::word(*known->classified)));
            return known->group.empty() ? word : word + " · " + qt(known->group);
        }
    }
    return {};
}

QString IndicationModel::suggestedBy(int row, int column) const {
    if (column == at(Column::Stated) && !suggested(row, column).isEmpty()) {
        return tr("By length and width; nothing was stated.");
    }
    return {};
}

}  // namespace app
