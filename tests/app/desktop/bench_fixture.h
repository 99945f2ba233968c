// SPDX-License-Identifier: Apache-2.0
// The whole window on a real archive, driven by keys alone.
#pragma once

#include <QStringList>
#include <memory>

#include "bench/bench_page.h"
#include "foundry_fixture.h"
#include "window/main_window.h"

namespace app {

class BenchTest : public FoundryTest {
protected:
    explicit BenchTest(const model::CastingFile& file = sampleFile());

    /// Opens the archive and the casting, by keys.
    void openWindow();
    /// Begins the examination of the zone in this line of the list, or opens it, by keys.
    void goToZone(int line);

    /// Keys to whatever has the focus.
    static void type(const QString& text);
    static void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier);
    /// Types cells, each ended by Enter.
    static void typeCells(const QStringList& cells);
    /// Presses a shortcut of the window, and lets it act.
    void shortcut(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::ControlModifier);

    /// Lets the verdict come, then returns its word as shown.
    std::string verdict();
    bool saved();

    BenchPage& bench() { return window_->bench(); }
    CastingEditor& editor() { return bench().desk()->editor(); }
    [[nodiscard]] const std::vector<model::TypedIndication>& rows() {
        return editor().draft(0).rows;
    }

    std::unique_ptr<MainWindow> window_;
};

}  // namespace app
