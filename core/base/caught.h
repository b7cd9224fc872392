// Why: no exception leaves a worker's thread, where it would end the program: what the standard library
// throws, memory that is not there above all, becomes words. Thread: any. Errors: the end of a sentence about
// what was worked on.
#pragma once

#include <exception>
#include <new>
#include <string>

namespace fettle {

// Empty: `work` came to its end.
template <class Work>
std::string caught(Work&& work) {
    try {
        work();
        return {};
    } catch (const std::bad_alloc&) {
        return "needs more memory than there is";
    } catch (const std::exception& problem) {
        return std::string("could not be worked on: ") + problem.what();
    }
}

}  // namespace fettle
