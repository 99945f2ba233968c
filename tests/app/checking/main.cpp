// SPDX-License-Identifier: Apache-2.0
// Qt loads its database driver as a plugin and needs an application object for that.
#include <QCoreApplication>
#include <gmock/gmock.h>

int main(int argc, char** argv) {
    testing::InitGoogleMock(&argc, argv);
    const QCoreApplication application(argc, argv);
    return RUN_ALL_TESTS();
}
