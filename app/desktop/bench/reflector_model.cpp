// SPDX-License-Identifier: Apache-2.0
#include "bench/reflector_model.h"

namespace app {

const std::vector<model::TypedReflector>& ReflectorModel::rows() const {
    static const std::vector<model::TypedReflector> kNone;
    return editor_ && examination_ >= 0 ? editor_->draft(examination_).reflectors : kNone;
}

const std::vector<model::FieldError>& ReflectorModel::errors(int row) const {
    return editor_->reflector(examination_, row).errors;
}

/// A new row goes on with the setting and the drop of the row above.
model::TypedReflector ReflectorModel::freshRow(int ahead) const {
    auto fresh = TypedRows::freshRow(ahead);
    fresh.drop = rows().empty() ? "6" : rows().back().drop;
    if (!rows().empty()) {
        fresh.setting = rows().back().setting;
    } else if (editor_ && examination_ >= 0 && !editor_->draft(examination_).settings.empty()) {
        fresh.setting = editor_->draft(examination_).settings.front().name;
    }
    return fresh;
}

/// What is wrong with probe, material, part or reference stands at the row's setting.
std::optional<int> ReflectorModel::columnFor(const std::string& field) const {
    if (const auto column = TypedRows::columnFor(field)) return column;
    if (field.find('.') != std::string::npos || field == "transfer_db") {
        return at(ReflectorColumn::Setting);
    }
    return std::nullopt;
}

/// Place and reading, then kind; without a reading place, typed sizes and kind.
std::optional<int> ReflectorModel::cellAfter(int row, int column) const {
    using C = ReflectorColumn;
    if (row >= indications()) return column < at(C::Kind) ? column + 1 : firstCell();
    const bool read = model::hasReading(rows()[static_cast<std::size_t>(row)]);
    if (column == at(C::SoundPath) && !read) return at(C::Depth);
    if (column == at(C::Across) && read) return at(C::ThroughWall);
    if (column == at(C::Kind) || column == columnCount() - 1) return std::nullopt;
    return column + 1;
}

std::optional<model::Length> ReflectorModel::computed(int row, ReflectorColumn column) const {
    const auto& value = editor_->reflector(examination_, row).value;
    if (!value) return std::nullopt;
    switch (column) {
        case ReflectorColumn::Depth:
            return value->depth;
        case ReflectorColumn::Fbh:
            return value->fbh;
        case ReflectorColumn::Length:
            return value->length;
        case ReflectorColumn::Width:
            return value->width;
        default:
            return std::nullopt;
    }
}

bool ReflectorModel::tooShort(int row, ReflectorColumn column) const {
    const auto& value = editor_->reflector(examination_, row).value;
    if (!value) return false;
    return (column == ReflectorColumn::Length && value->lengthNotMeasurable) ||
           (column == ReflectorColumn::Width && value->widthNotMeasurable) ||
           (column == ReflectorColumn::ThroughWall && value->throughWallNotMeasurable);
}

QString ReflectorModel::suggested(int row, int column) const {
    const auto shown = static_cast<ReflectorColumn>(column);
    if (const auto length = computed(row, shown)) {
        return QStringLiteral("= ") + qt(model::formatLength(*length, unit_));
    }
    if (tooShort(row, shown)) return tr("not measurable");
    switch (shown) {
        case ReflectorColumn::Angle:
            return QStringLiteral("0");
        case ReflectorColumn::Relevance:
            return tr("relevant");
        default:
            return {};
    }
}

QString ReflectorModel::suggestedBy(int row, int column) const {
    const auto shown = static_cast<ReflectorColumn>(column);
    if (computed(row, shown)) {
        return tr("Computed from the reading. What you type here goes before it.");
    }
    if (tooShort(row, shown)) {
        return tr("The probe moved by no more than the beam's width: not measurable, not zero.");
    }
    return {};
}

}  // namespace app
