# The build that tests/run uses: optimised as users get it, with assertions of the library on.
include(${CMAKE_CURRENT_LIST_DIR}/unity.cmake)
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(CMAKE_CXX_FLAGS "-D_GLIBCXX_ASSERTIONS" CACHE STRING "")
set(SHOULDERLINE_TESTS ON CACHE BOOL "")
set(SHOULDERLINE_BENCH ON CACHE BOOL "")
