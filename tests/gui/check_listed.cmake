# Fails unless the test program PROGRAM can start and lists at least one case.
execute_process(COMMAND ${PROGRAM} --list-tests OUTPUT_VARIABLE listed ERROR_VARIABLE complaint)
if(NOT listed MATCHES "([1-9][0-9]*) test case")
    message(FATAL_ERROR "${PROGRAM} lists no test case:\n${listed}${complaint}")
endif()
message(STATUS "${CMAKE_MATCH_1} window test cases")
