// SPDX-License-Identifier: Apache-2.0
#include "demo_db/course.h"

#include <array>

namespace demo {

std::span<const Course> courses() {
    static constexpr std::array<Course, 8> kCourses{{
        {"PS-31-07", "Θεοδώρα Καλογρίδου", "2026-10-15", "", "2026-10-16", "", ""},
        {"RH-12-03", "Θεοδώρα Καλογρίδου", "2026-10-08", "2026-10-09", "2026-10-12", "", ""},
        {"RH-12-04", "Мирослава Ждановец", "2026-10-09", "2026-10-12", "2026-10-13", "", ""},
        {"CD-09-02", "Ingrid Sjöquist-Åhlén", "2026-11-11", "", "", "2026-11-13",
         "The places in Z2 were measured from another corner than the zone plan names; measure "
         "them again from its datum."},
        {"VB-14-01", "Rhys Penhallow", "2026-11-18", "", "", "", ""},
        {"TB-18-01", "Θεοδώρα Καλογρίδου", "2026-11-19", "", "2026-11-20", "", ""},
        {"BS-22-01", "Ingrid Sjöquist-Åhlén", "2026-11-23", "", "2026-11-24", "", ""},
        {"BS-22-02", "Ingrid Sjöquist-Åhlén", "2026-11-24", "", "2026-11-25", "", ""},
    }};
    return kCourses;
}

}  // namespace demo
