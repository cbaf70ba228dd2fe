# What every target shares: the language, the warnings, and one function per kind of target.

set(CMAKE_CXX_EXTENSIONS OFF)
find_program(CCACHE_PROGRAM ccache)
if(CCACHE_PROGRAM)
    set(CMAKE_CXX_COMPILER_LAUNCHER ${CCACHE_PROGRAM})
endif()

find_package(tl-expected REQUIRED)

add_library(shoulderline_options INTERFACE)
target_compile_features(shoulderline_options INTERFACE cxx_std_20)
target_include_directories(shoulderline_options INTERFACE ${CMAKE_SOURCE_DIR})
target_compile_options(shoulderline_options INTERFACE
    -Wall -Wextra -Wpedantic -Wconversion -Wsign-conversion -Wdouble-promotion
    -Wold-style-cast -Wcast-qual -Wcast-align -Wnon-virtual-dtor -Woverloaded-virtual
    -Wextra-semi -Wimplicit-fallthrough -Wswitch-enum -Wundef -Werror)
# Where sources are compiled together a local name may be another source's.
target_compile_options(shoulderline_options INTERFACE
    $<IF:$<BOOL:${CMAKE_UNITY_BUILD}>,-Wshadow=local,-Wshadow>)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
    target_compile_options(shoulderline_options INTERFACE
        -Wduplicated-cond -Wduplicated-branches -Wlogical-op
        -Wno-restrict)  # g++ 12 sees overlaps in joined std::strings that are not there
endif()

# shoulderline_library(NAME SOURCES ... LINKS ... PRIVATE_LINKS ...)
# One static library for one folder, linking just the folders that its headers may see.
function(shoulderline_library name)
    cmake_parse_arguments(arg "" "" "SOURCES;LINKS;PRIVATE_LINKS" ${ARGN})
    add_library(shoulderline_${name} STATIC ${arg_SOURCES})
    add_library(shoulderline::${name} ALIAS shoulderline_${name})
    target_link_libraries(shoulderline_${name}
        PUBLIC tl::expected ${arg_LINKS} PRIVATE shoulderline_options ${arg_PRIVATE_LINKS})
    target_include_directories(shoulderline_${name} PUBLIC ${CMAKE_SOURCE_DIR})
    target_compile_features(shoulderline_${name} PUBLIC cxx_std_20)
endfunction()
