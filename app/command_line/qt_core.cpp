// SPDX-License-Identifier: Apache-2.0
#include "qt_core.h"

namespace app {
namespace {

void dropMessage(QtMsgType /*type*/, const QMessageLogContext& /*context*/,
                 const QString& /*message*/) {}

}  // namespace

QtCore::QtCore()
    : earlier_(qInstallMessageHandler(&dropMessage)), application_(count_, arguments_) {}

QtCore::~QtCore() {
    qInstallMessageHandler(earlier_);
}

}  // namespace app
