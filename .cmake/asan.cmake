# Every test under the address and undefined-behaviour sanitizers. No build type: its flags would
# come after these and win. Left out of the second: null, which the first reports where it is read,
# and alignment, object-size and vptr; those four take half the time of compiling.
include(${CMAKE_CURRENT_LIST_DIR}/unity.cmake)
set(CMAKE_BUILD_TYPE "" CACHE STRING "")
set(CMAKE_CXX_FLAGS "-fsanitize=address,undefined -fno-sanitize=null,alignment,object-size,vptr -fno-sanitize-recover=all -fno-omit-frame-pointer -O1 -g1 -D_GLIBCXX_ASSERTIONS -Wno-maybe-uninitialized" CACHE STRING "")
set(SHOULDERLINE_TESTS ON CACHE BOOL "")
