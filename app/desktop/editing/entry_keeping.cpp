// SPDX-License-Identifier: Apache-2.0
#include "editing/entry_keeping.h"

#include <QFile>
#include <QFileInfo>

namespace app {

model::Result<std::string> bytesOf(const QString& path) {
    const std::string name = path.toStdString();
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) {
        return model::inputError(name, "the file cannot be read: %1",
                                 {file.errorString().toStdString()});
    }
    // One byte more than is kept tells that there is more, whatever the file says of its size.
    const QByteArray bytes = file.read(static_cast<qint64>(model::kLargestEntryFile) + 1);
    if (bytes.isEmpty()) return model::inputError(name, "the file is empty");
    if (static_cast<std::size_t>(bytes.size()) > model::kLargestEntryFile) {
        return model::inputError(name, "the file is larger than %1 bytes, the most that is kept",
                                 {std::to_string(model::kLargestEntryFile)});
    }
    return bytes.toStdString();
}

}  // namespace app
