# What is installed where, and the Debian package made of it (cpack -G DEB). Qwt comes along where it is not the system's:
# Debian 12 has it for Qt 5 only. The MIME, menu and icon caches are refreshed by the triggers of their own packages.
include(GNUInstallDirs)
set(package_dir ${PROJECT_SOURCE_DIR}/resources/package)

install(TARGETS fettle-cli RUNTIME)
install(TARGETS fettle-variables RUNTIME DESTINATION libexec/fettle) # started by the others alone
install(FILES ${package_dir}/copyright DESTINATION ${CMAKE_INSTALL_DOCDIR})
install(DIRECTORY ${PROJECT_SOURCE_DIR}/sample_fleet DESTINATION ${CMAKE_INSTALL_DATADIR}/fettle
        FILES_MATCHING PATTERN "*.json")
set(manuals fettle-cli.1)
if(TARGET fettle)
    list(APPEND manuals fettle.1)
    install(TARGETS fettle RUNTIME)
    install(FILES ${package_dir}/fettle.desktop DESTINATION ${CMAKE_INSTALL_DATADIR}/applications)
    install(FILES ${package_dir}/fettle.svg DESTINATION ${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/apps)
    install(FILES ${package_dir}/fettle.mime.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/mime/packages RENAME fettle.xml)
    install(FILES ${package_dir}/local.fettle.Fettle.metainfo.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/metainfo)
    get_target_property(qwt_library Qwt6::Qwt IMPORTED_LOCATION)
    file(REAL_PATH "${qwt_library}" qwt_library)
    if(NOT qwt_library MATCHES "^/usr/lib")
        # Under the name the programs ask for.
        execute_process(COMMAND ${CMAKE_OBJDUMP} -p ${qwt_library} OUTPUT_VARIABLE qwt_head)
        string(REGEX MATCH "SONAME +([^ \n]+)" found "${qwt_head}")
        install(FILES ${qwt_library} DESTINATION lib/fettle RENAME ${CMAKE_MATCH_1})
        set_target_properties(fettle PROPERTIES INSTALL_RPATH "$ORIGIN/../lib/fettle")
        cmake_path(GET qwt_library PARENT_PATH qwt_folder)
        set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS_PRIVATE_DIRS ${qwt_folder})
    endif()
endif()
find_program(GZIP gzip)
foreach(manual IN LISTS manuals) # Debian policy 12.1: compressed, without a date
    add_custom_command(OUTPUT ${PROJECT_BINARY_DIR}/${manual}.gz
                       COMMAND ${GZIP} -9 -n -c ${package_dir}/${manual} > ${PROJECT_BINARY_DIR}/${manual}.gz
                       DEPENDS ${package_dir}/${manual} VERBATIM)
    install(FILES ${PROJECT_BINARY_DIR}/${manual}.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1)
    list(APPEND packed_manuals ${PROJECT_BINARY_DIR}/${manual}.gz)
endforeach()
add_custom_target(manuals ALL DEPENDS ${packed_manuals})
add_dependencies(programs manuals)

set(CPACK_PACKAGE_NAME fettle)
set(CPACK_PACKAGE_VENDOR "The Fettle authors")
set(CPACK_PACKAGE_CONTACT "The Fettle authors <fettle@localhost>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "condition of a fleet of electric motors, with the evidence")
set(CPACK_DEBIAN_PACKAGE_DESCRIPTION
    "Weighs short vibration and flux recordings of electric motors and the machines\nthey drive, lists once a week what needs work, shows which lines drove each\nverdict and what speaks against it, and prints a findings sheet a job.")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_GENERATOR DEB)
set(CPACK_STRIP_FILES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
# A plugin draws the window's icon and the page bar's signs; the time zones of sites; a font, or every letter is a box.
set(CPACK_DEBIAN_PACKAGE_DEPENDS "tzdata, libqt6svg6, fonts-dejavu-core | fonts-liberation | fonts-noto-core")
set(CPACK_DEBIAN_PACKAGE_RECOMMENDS "qt6-translations-l10n") # the words on Qt's own buttons
include(CPack)
