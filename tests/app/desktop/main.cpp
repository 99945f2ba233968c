// SPDX-License-Identifier: Apache-2.0
// Drives the real widgets, without a screen where there is none, with settings of its own.
#include <QApplication>
#include <QSettings>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <gmock/gmock.h>

#include "looks/appearance.h"

int main(int argc, char** argv) {
    testing::InitGoogleMock(&argc, argv);
    if (GTEST_FLAG_GET(list_tests)) return RUN_ALL_TESTS();
    if (qEnvironmentVariableIsEmpty("DISPLAY")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QTemporaryDir folder;
    if (qEnvironmentVariableIsEmpty("XDG_RUNTIME_DIR")) {
        qputenv("XDG_RUNTIME_DIR", folder.path().toUtf8());
    }
    QSettings::setPath(QSettings::NativeFormat, QSettings::UserScope, folder.path());
    QStandardPaths::setTestModeEnabled(true);
    QApplication application(argc, argv);
    QApplication::setOrganizationName("Fettlemark");
    QApplication::setApplicationName("fettlemark-tests");
    app::applyAppearance(application, app::Appearance::Light, 1.0);
    return RUN_ALL_TESTS();
}
