// SPDX-License-Identifier: Apache-2.0
#include "repair_bench/sheet_writing.h"

#include <QCoreApplication>
#include <QPointer>
#include <QThreadPool>

#include "fields/field_words.h"
#include "pdf/render.h"
#include "pdf/write_file.h"
#include "sheets/marking_out.h"
#include "sheets/weld_map.h"

namespace app {
namespace {

model::Result<void> write(const SheetOrder& order) {
    const reports::SheetInput input{order.file,  order.verdict, dateToday(),
                                    order.works, order.version, order.demonstration};
    const auto document = order.sheet == WorkshopSheet::MarkingOut ? reports::markingOutOf(input)
                                                                   : reports::weldMapOf(input);
    if (!document) return document.error();
    const auto pdf = reports::renderPdf(*document);
    if (!pdf) return pdf.error();
    return reports::writeFile(order.path, pdf->bytes);
}

}  // namespace

void writeSheet(std::shared_ptr<const SheetOrder> order, QObject* context,
                std::function<void(const model::Result<void>&)> then) {
    QThreadPool::globalInstance()->start(
        [order = std::move(order), then = std::move(then), guard = QPointer<QObject>(context)] {
            auto result = std::make_shared<const model::Result<void>>(write(*order));
            QMetaObject::invokeMethod(
                QCoreApplication::instance(),
                [result, then, guard] {
                    if (guard) then(*result);
                },
                Qt::QueuedConnection);
        });
}

}  // namespace app
