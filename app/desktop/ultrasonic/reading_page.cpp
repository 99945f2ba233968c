// SPDX-License-Identifier: Apache-2.0
#include "ultrasonic_bench/reading_page.h"

#include <QLabel>
#include <QToolButton>
#include <array>

#include "looks/heading.h"
#include "looks/text.h"
#include "ultrasonic_bench/reading_result.h"
#include "ultrasonic_bench/setting_fields.h"

namespace app {
namespace {

using model::TypedReflector;

/// As they stand in the form.
constexpr std::array kTexts = {&TypedReflector::setting,   &TypedReflector::x,
                               &TypedReflector::y,         &TypedReflector::heading,
                               &TypedReflector::soundPath, &TypedReflector::gain,
                               &TypedReflector::screen,    &TypedReflector::along,
                               &TypedReflector::across,    &TypedReflector::drop};

/// The setting with whatever a picture of the part needs and nobody has typed yet. Nothing is sized
/// with it.
model::TypedSetting withAnyReference(model::TypedSetting setting) {
    setting.reference = "back wall";
    setting.referenceOn = "casting";
    setting.transfer.clear();
    setting.referenceVelocity.clear();
    setting.referenceAttenuation.clear();
    setting.referencePath = "1";
    setting.referenceGain = "0";
    setting.referenceScreen = "80";
    return setting;
}

TypedReflector withAnyEcho(TypedReflector row) {
    row.gain = "0";
    row.screen = "80";
    row.along.clear();
    row.across.clear();
    return row;
}

}  // namespace

void ReadingPage::show(CastingDesk* desk, int examination) {
    if (desk_ && desk_ != desk) desk_->editor().disconnect(this);
    if (desk && desk_ != desk) {
        auto& editor = desk->editor();
        connect(&editor, &CastingEditor::rowsReplaced, this, [this](int changed) {
            if (changed == examination_) refresh();
        });
        connect(&editor, &CastingEditor::settingsChanged, this, [this](int changed) {
            if (changed == examination_) refresh();
        });
        connect(&editor, &CastingEditor::locksChanged, this, &ReadingPage::refresh);
        connect(desk, &QObject::destroyed, this, [this] {
            desk_ = nullptr;
            examination_ = -1;
        });
    }
    const bool other = desk_ != desk || examination_ != examination;
    desk_ = desk;
    examination_ = examination;
    if (other) row_ = 0;
    refresh();
}

void ReadingPage::setRow(int row) {
    if (row == row_) return;
    finishEditing();
    row_ = row;
    refresh();
}

const TypedReflector* ReadingPage::storedRow() const {
    if (!desk_ || examination_ < 0 || row_ < 0) return nullptr;
    const auto& rows = desk_->editor().draft(examination_).reflectors;
    const auto at = static_cast<std::size_t>(row_);
    return at < rows.size() ? &rows[at] : nullptr;
}

TypedReflector ReadingPage::typedRow() const {
    TypedReflector row = storedRow() ? *storedRow() : fresh_ ? fresh_() : TypedReflector();
    for (std::size_t i = 0; i < kTexts.size(); ++i) {
        row.*kTexts[i] = form_->text(static_cast<int>(i));
    }
    return row;
}

const model::TypedSetting* ReadingPage::settingOf(const TypedReflector& row) const {
    if (!desk_ || examination_ < 0) return nullptr;
    for (const auto& setting : desk_->editor().draft(examination_).settings) {
        if (setting.name == row.setting) return &setting;
    }
    return nullptr;
}

const model::RimZone* ReadingPage::rim() const {
    if (!desk_ || !desk_->tables()) return nullptr;
    const auto* table = desk_->tables()->find(desk_->editor().draft(examination_).header.table);
    return table ? &table->rim : nullptr;
}

void ReadingPage::commit(int field) {
    if (!desk_ || examination_ < 0) return;
    const bool there = storedRow() != nullptr;
    auto row = typedRow();
    if (!there && model::isBlank(row)) return;
    auto& editor = desk_->editor();
    const int at = there ? row_ : static_cast<int>(editor.draft(examination_).reflectors.size());
    row_ = at;
    editor.replaceRows(examination_, at, there ? 1 : 0, std::vector<TypedReflector>{std::move(row)},
                       tr("reading, %1").arg(form_->editor(field)->accessibleName()));
}

void ReadingPage::finishEditing() {
    form_->finishEditing();
}

void ReadingPage::focusFirst() {
    form_->editor(form_->find(typedRow().setting.empty() ? "setting" : "x_mm"))
        ->setFocus(Qt::TabFocusReason);
}

void ReadingPage::refreshChoices() {
    Choices choices{{"", tr("none")}};
    for (const auto& setting : desk_->editor().draft(examination_).settings) {
        const QString name = qt(setting.name);
        choices.emplace_back(setting.name, setting.probe.empty()
                                               ? name
                                               : name + QStringLiteral(" · ") + qt(setting.probe));
    }
    form_->setChoices(0, choices);
}

void ReadingPage::refresh() {
    if (!desk_ || examination_ < 0) return;
    const int rows = static_cast<int>(desk_->editor().draft(examination_).reflectors.size());
    row_ = std::min(row_, rows);
    const TypedReflector row = storedRow() ? *storedRow() : fresh_ ? fresh_() : TypedReflector();
    refreshChoices();
    for (std::size_t i = 0; i < kTexts.size(); ++i) {
        form_->setText(static_cast<int>(i), row.*kTexts[i]);
    }
    const QString unit = QString::fromUtf8(model::symbol(row.unit).data());
    for (const char* field :
         {"x_mm", "y_mm", "echo.sound_path_mm", "movement.along_mm", "movement.across_mm"}) {
        form_->setUnit(form_->find(field), unit);
    }
    form_->setReadOnly(desk_->editor().locked(examination_));
    previous_->setEnabled(row_ > 0);
    next_->setEnabled(row_ < rows);
    title_->setText(storedRow() ? tr("Indication %1").arg(qt(row.id)) : tr("New indication"));
    refreshResult();
}

void ReadingPage::refreshResult() {
    if (!desk_ || examination_ < 0) return;
    form_->clearErrors();
    const auto row = typedRow();
    const auto* setting = settingOf(row);
    const bool angle = setting && setting->kind == "angle";
    form_->setShown(form_->find("heading_deg"), angle || !row.heading.empty());
    if (!setting) {
        const bool none = desk_->editor().draft(examination_).settings.empty();
        result_->showTrouble(none ? tr("First make a setting: page \"Setting\".")
                                  : tr("Choose the setting with which it was read."),
                             false);
        diagram_->show(EchoDiagram());
        section_->show(BeamSection());
        return;
    }
    showSize(row, *setting);
}

/// Errors go to their fields; what is wrong with the setting is said in the result.
void ReadingPage::showSize(const TypedReflector& row, const model::TypedSetting& setting) {
    for (const auto& error : model::read(row, {setting}).errors) {
        const int field = form_->find(error.field);
        if (field >= 0 && !form_->text(field).empty()) {
            form_->setError(field, reasonText(error.error));
        }
    }
    const auto read = model::readingOf(row, setting);
    std::optional<model::Size> size;
    QStringList said;
    QStringList lacking;
    bool wrong = false;
    const auto say = [&](const std::string& place, const model::Error& error) {
        const int field = form_->find(place);
        if (field < 0) {
            const auto* text = settingText(setting, place);
            if (text && text->empty()) {
                lacking << settingFieldName(place);
            } else {
                said << tr("Setting %1, %2: %3")
                            .arg(qt(setting.name), settingFieldName(place), reasonText(error));
            }
            return;
        }
        const QString name = form_->editor(field)->accessibleName();
        said << tr("%1: %2").arg(name, reasonText(error));
        if (form_->text(field).empty()) return;
        form_->setError(field, reasonText(error));
        wrong = true;
    };
    for (const auto& error : read.errors) {
        // A field that is empty in a row without any reading is not missing yet.
        if (model::hasReading(row) || form_->find(error.field) < 0) say(error.field, error.error);
    }
    if (read.value) {
        const auto sized = model::sizeOf(*read.value);
        if (sized) {
            size = *sized;
            result_->showSize(*size, *read.value);
        } else {
            wrong = true;
            say(sized.error().place, sized.error());
        }
    }
    if (!size) {
        if (!lacking.isEmpty()) {
            said << tr("Setting %1 lacks %2.").arg(qt(setting.name), lacking.join(", "));
        }
        if (said.isEmpty()) said << tr("Type sound path, gain and screen height.");
        result_->showTrouble(said.join('\n'), wrong);
    }
    showPictures(row, setting, read.value, size ? &*size : nullptr);
}

void ReadingPage::showPictures(const TypedReflector& row, const model::TypedSetting& setting,
                               const std::optional<model::Reading>& reading,
                               const model::Size* size) {
    auto drawn = withAnyEcho(row);
    auto geometry = model::readingOf(drawn, withAnyReference(setting)).value;
    const bool pathKnown = geometry.has_value();
    if (!pathKnown) {
        drawn.soundPath = "1";
        geometry = model::readingOf(drawn, withAnyReference(setting)).value;
    }
    if (!geometry) {  // probe, material or part are not known yet
        BeamSection section;
        section.message = tr("Probe, material and part of the setting are not complete.");
        section_->show(std::move(section));
        EchoDiagram diagram;
        diagram.message =
            tr("The diagram needs the probe's element and frequency and the "
               "velocity.");
        diagram_->show(std::move(diagram));
        return;
    }
    auto section = beamSectionOf(*geometry, rim());
    auto diagram = echoDiagramOf(reading ? *reading : *geometry, size);
    if (!pathKnown) {
        section.trace = {};
        section.message.clear();
        diagram.flawPathMm = 0;
        if (diagram.nearFieldMm > 0) diagram.message.clear();
    }
    if (!reading) diagram.reference.reset();
    section_->show(std::move(section));
    diagram_->show(std::move(diagram));
}

}  // namespace app
