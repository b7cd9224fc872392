# One program a target, fuzz_NAME: its file, the driver, and no more rooms than it needs. clang alone has libFuzzer.
if(NOT CMAKE_CXX_COMPILER_ID STREQUAL Clang)
    message(FATAL_ERROR "FETTLE_FUZZ needs -DCMAKE_CXX_COMPILER=clang++")
endif()
add_custom_target(fuzzers)
set(fuzz_folder ${PROJECT_SOURCE_DIR}/tests/fuzz)

function(fuzz room)
    foreach(name IN LISTS ARGN)
        add_executable(fuzz_${name} EXCLUDE_FROM_ALL ${fuzz_folder}/${name}.cpp ${fuzz_folder}/target.cpp
                                                     ${fuzz_folder}/driver/driver.cpp)
        target_link_libraries(fuzz_${name} PRIVATE fettle_${room})
        target_link_options(fuzz_${name} PRIVATE -fsanitize=fuzzer)
        add_dependencies(fuzzers fuzz_${name})
    endforeach()
endfunction()

fuzz(signal csv_recording sound_file universal_file sidecar variable_file variable_list)
add_dependencies(fuzz_variable_file fettle-variables)
fuzz(machine machine_description)
fuzz(simulate scenario)
fuzz(workshop balance trial)
fuzz(exchange recording examination round)
fuzz(store waveform_unpack waveform_pack packed_text spectrum_lines)
fuzz(fleet register_csv event_table small_documents alert_ways)
fuzz(intake reading_rule level_table)
# The check of a virtual table asks for memory's bounds through a pipe, and this program may open nothing more.
target_compile_options(fettle-variables PRIVATE -fno-sanitize=vptr)
