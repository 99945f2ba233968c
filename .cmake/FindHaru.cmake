# SPDX-License-Identifier: Apache-2.0
# libharu installs neither a CMake configuration nor a pkg-config file.
include(FindPackageHandleStandardArgs)
find_path(Haru_INCLUDE_DIR NAMES hpdf.h)
find_library(Haru_LIBRARY NAMES hpdf libhpdf)
if(Haru_INCLUDE_DIR)
  file(STRINGS "${Haru_INCLUDE_DIR}/hpdf_version.h" _v REGEX "HPDF_VERSION_TEXT")
  string(REGEX REPLACE ".*\"([0-9.]+).*\".*" "\\1" Haru_VERSION "${_v}")
endif()
find_package_handle_standard_args(Haru REQUIRED_VARS Haru_LIBRARY Haru_INCLUDE_DIR VERSION_VAR Haru_VERSION)
if(Haru_FOUND AND NOT TARGET Haru::Haru)
  add_library(Haru::Haru UNKNOWN IMPORTED)
  set_target_properties(Haru::Haru PROPERTIES IMPORTED_LOCATION "${Haru_LIBRARY}"
                        INTERFACE_INCLUDE_DIRECTORIES "${Haru_INCLUDE_DIR}")
endif()
