# Qwt 6.2 or newer built for Qt 6, as the imported target Qwt6::Qwt. pkg-config is of no use: the file Qwt 6.3 installs
# asks for Qt 5 whatever it was built for. Looks at Qwt6_ROOT, the system, and the folder resources/setup/qwt keeps.
# Call find_package(Qt6 COMPONENTS Widgets Concurrent PrintSupport Svg) before. Sets Qwt6_FOUND, Qwt6_VERSION.
include(FindPackageHandleStandardArgs)

# Sets Qwt6_INCLUDE_DIR, Qwt6_LIBRARY and Qwt6_VERSION if there is one for Qt 6 below root (empty: in the usual places).
macro(_qwt6_look root)
    set(_where)
    if(NOT "${root}" STREQUAL "")
        set(_where PATHS "${root}" NO_DEFAULT_PATH)
    endif()
    find_path(_qwt6_header qwt_global.h ${_where} NO_CACHE
              PATH_SUFFIXES include include/qwt include/qwt-qt6 qwt-qt6 qt6/qwt qwt6 qwt)
    find_library(_qwt6_library NAMES qwt-qt6 qwt6-qt6 qwt6 qwt ${_where} NO_CACHE PATH_SUFFIXES lib)
    if(_qwt6_header AND _qwt6_library)
        file(STRINGS "${_qwt6_header}/qwt_global.h" _line REGEX "define +QWT_VERSION_STR")
        string(REGEX MATCH "[0-9]+\\.[0-9]+\\.[0-9]+" _version "${_line}")
        file(STRINGS "${_qwt6_library}" _links REGEX "libQt[0-9]Widgets")
        if(_links MATCHES "libQt6Widgets")
            set(Qwt6_INCLUDE_DIR "${_qwt6_header}")
            set(Qwt6_LIBRARY "${_qwt6_library}")
            set(Qwt6_VERSION "${_version}")
        else()
            string(APPEND _qwt6_refused " ${_qwt6_library} is not built for Qt 6.")
        endif()
    endif()
    unset(_qwt6_header)
    unset(_qwt6_library)
endmacro()

# What the set-up script keeps, newest first.
if(NOT "$ENV{XDG_CACHE_HOME}" STREQUAL "")
    set(_store "$ENV{XDG_CACHE_HOME}")
else()
    set(_store "$ENV{HOME}/.cache")
endif()
file(GLOB _kept "${_store}/fettle/qwt-6.*" "${PROJECT_SOURCE_DIR}/build/.fettle/qwt-6.*")
list(SORT _kept COMPARE NATURAL ORDER DESCENDING)

unset(Qwt6_LIBRARY)
set(_qwt6_refused)
foreach(_root IN ITEMS "${Qwt6_ROOT}" "" LISTS _kept)
    if(NOT Qwt6_LIBRARY)
        _qwt6_look("${_root}")
    endif()
endforeach()

if(Qwt6_LIBRARY AND NOT TARGET Qwt6::Qwt)
    add_library(Qwt6::Qwt UNKNOWN IMPORTED)
    set_target_properties(Qwt6::Qwt PROPERTIES
        IMPORTED_LOCATION "${Qwt6_LIBRARY}"
        INTERFACE_INCLUDE_DIRECTORIES "${Qwt6_INCLUDE_DIR}"
        INTERFACE_COMPILE_DEFINITIONS QWT_DLL
        INTERFACE_LINK_LIBRARIES "Qt6::Widgets;Qt6::Concurrent;Qt6::PrintSupport;Qt6::Svg")
endif()

# A program that uses it must link.
if(TARGET Qwt6::Qwt AND NOT "${Qwt6_LINKS}" STREQUAL "${Qwt6_LIBRARY}")
    set(_program "${CMAKE_BINARY_DIR}/CMakeFiles/qwt6_links.cpp")
    file(WRITE "${_program}" "#include <qwt_plot_curve.h>\nint main() {\n    QwtPlotCurve curve;\n"
                             "    curve.setSamples(QVector<QPointF>());\n}\n")
    try_compile(_links "${CMAKE_BINARY_DIR}/qwt6_links" "${_program}" LINK_LIBRARIES Qwt6::Qwt CXX_STANDARD 20
                OUTPUT_VARIABLE _said)
    if(_links)
        set(Qwt6_LINKS "${Qwt6_LIBRARY}" CACHE INTERNAL "the Qwt a test program linked with")
    else()
        string(APPEND _qwt6_refused " A test program does not link with ${Qwt6_LIBRARY}: ${_said}")
        unset(Qwt6_LIBRARY)
    endif()
endif()

find_package_handle_standard_args(Qwt6 REQUIRED_VARS Qwt6_LIBRARY Qwt6_INCLUDE_DIR VERSION_VAR Qwt6_VERSION
    REASON_FAILURE_MESSAGE "Fettle's desktop needs Qwt 6.2 or newer built for Qt 6.${_qwt6_refused} \
resources/setup/setup builds one. To leave the desktop out: -DFETTLE_DESKTOP=OFF.")
