// SPDX-License-Identifier: Apache-2.0
// What Qt needs from a program that opens an archive.
#pragma once

#include <QCoreApplication>

namespace app {

/// Lives while a command uses an archive, and longer than the archive does. Qt's own warnings are
/// silent meanwhile: what goes wrong is in the command's error.
class QtCore {
public:
    QtCore();
    QtCore(const QtCore&) = delete;
    QtCore& operator=(const QtCore&) = delete;
    ~QtCore();

private:
    int count_ = 1;
    char name_[15] = "fettlemark-cli";
    char* arguments_[2] = {name_, nullptr};
    QtMessageHandler earlier_;
    QCoreApplication application_;
};

}  // namespace app
