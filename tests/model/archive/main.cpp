// SPDX-License-Identifier: Apache-2.0
// Qt loads its database driver as a plugin and needs an application object for that.
#include <QCoreApplication>
#include <gmock/gmock.h>

#include "second_program.h"

int main(int argc, char** argv) {
    testing::InitGoogleMock(&argc, argv);
    const QCoreApplication application(argc, argv);
    const int code = model::runAsSecondProgram({argv + 1, argv + argc});
    return code >= 0 ? code : RUN_ALL_TESTS();
}
