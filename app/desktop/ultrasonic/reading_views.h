// SPDX-License-Identifier: Apache-2.0
// The pictures of a reading as widgets: diagram and cross-section. What they show is also said in
// words, to whoever does not see them.
#pragma once

#include <QWidget>

#include "ultrasonic_bench/beam_section.h"
#include "ultrasonic_bench/echo_diagram.h"

namespace app {

class EchoDiagramView : public QWidget {
    Q_OBJECT

public:
    explicit EchoDiagramView(QWidget* parent = nullptr);
    void show(EchoDiagram diagram);
    [[nodiscard]] const EchoDiagram& diagram() const { return diagram_; }
    [[nodiscard]] QSize sizeHint() const override { return {380, 280}; }
    [[nodiscard]] QSize minimumSizeHint() const override {
        return {fontMetrics().height() * 19 / 2, fontMetrics().height() * 8};
    }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    EchoDiagram diagram_;
};

class BeamSectionView : public QWidget {
    Q_OBJECT

public:
    explicit BeamSectionView(QWidget* parent = nullptr);
    void show(BeamSection section);
    [[nodiscard]] const BeamSection& section() const { return section_; }
    [[nodiscard]] QSize sizeHint() const override { return {380, 240}; }
    [[nodiscard]] QSize minimumSizeHint() const override {
        return {fontMetrics().height() * 19 / 2, fontMetrics().height() * 6};
    }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    BeamSection section_;
};

}  // namespace app
