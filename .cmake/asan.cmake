set(CMAKE_BUILD_TYPE RelWithDebInfo CACHE STRING "")
set(CMAKE_CXX_FLAGS "-fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer -O1 -g1 -D_GLIBCXX_ASSERTIONS -Wno-maybe-uninitialized" CACHE STRING "")
set(SHOULDERLINE_TESTS ON CACHE BOOL "")
