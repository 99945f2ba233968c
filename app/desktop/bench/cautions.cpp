// SPDX-License-Identifier: Apache-2.0
#include "bench/cautions.h"

#include <QCoreApplication>

namespace app {
namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("Cautions", text);
}

QStringList everywhere() {
    return {tr("Heavy casting: never under a hanging or unsteady load; support it before reaching "
               "in."),
            tr("Surface may be hot: measure before touching, spraying or coupling."),
            tr("Grinding: silica dust and vibration. Extraction, mask and eye protection on.")};
}

}  // namespace

QStringList cautionsFor(model::Method method) {
    QStringList lines;
    if (method == model::Method::Magnetic) {
        lines << tr("Strong magnetic field: people with an active implant keep away; watches, "
                    "cards and meters too.")
              << tr("Prods and yokes: check cable and residual-current device; current off before "
                    "a contact moves.")
              << tr("Arc strikes burn and damage the casting: clean contacts, firm pressure; "
                    "remove and test again.");
    }
    if (method == model::Method::Magnetic || method == model::Method::Penetrant) {
        lines << tr("UV-A: never look into the lamp; cover skin; a cracked or dirty filter means "
                    "lamp off. Photosensitive people ask first.")
              << tr("Solvents and aerosols burn: no flame, spark or hot casting near; ventilate.");
    }
    if (method == model::Method::Penetrant) {
        lines << tr(
            "Vapour and spray: forced ventilation, gloves and goggles; read the safety "
            "sheet.");
    }
    if (method == model::Method::Magnetic) {
        lines << tr("Dry powder and contrast paint: do not breathe the dust; wear a mask.")
              << tr("After demagnetising the part may still draw chips: check the field before "
                    "machining.");
    }
    if (method == model::Method::Ultrasonic) {
        lines << tr("Couplant on the floor is slippery; wash skin; no cable across a walkway.");
    }
    return lines + everywhere();
}

}  // namespace app
